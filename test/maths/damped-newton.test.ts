/** Roots of systems with kinks, bad starts and no roots at all: found, or told why not. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dampedNewton, type NewtonProblem } from "../../server/maths/damped-newton.js";
import { expectClose } from "../support/approx.js";

/** Rosenbrock's valley as a system, 10 (y − x²) = 0 and 1 − x = 0 (J. J. Moré et al., ACM TOMS 7 (1981) 17, no. 1). */
const rosenbrock = (start: readonly number[]): NewtonProblem => ({
  evaluate: ([x = 0, y = 0]) => ({
    residual: [10 * (y - x * x), 1 - x],
    jacobian: [
      [-20 * x, 10],
      [-1, 0],
    ],
  }),
  start,
  scale: [1, 1],
  tolerance: 1e-10,
});

/** The helical valley (the same collection, no. 7): root (1, 0, 0), start on the other side of the axis. */
const helix: NewtonProblem = {
  evaluate: ([x = 0, y = 0, z = 0]) => {
    const r = Math.hypot(x, y);
    const turn = Math.atan2(y, x) / (2 * Math.PI);
    const [byX, byY] = [-y / (2 * Math.PI * r * r), x / (2 * Math.PI * r * r)];
    return {
      residual: [10 * (z - 10 * turn), 10 * (r - 1), z],
      jacobian: [
        [-100 * byX, -100 * byY, 10],
        [(10 * x) / r, (10 * y) / r, 0],
        [0, 0, 1],
      ],
    };
  },
  start: [-1, 0.01, 0],
  scale: [1, 1, 1],
  tolerance: 1e-10,
};

/** Freudenstein and Roth (no. 2): from (0.5, −2) the way goes down to a lowest point that is no root. */
const lowest: NewtonProblem = {
  evaluate: ([x = 0, y = 0]) => ({
    residual: [-13 + x + ((5 - y) * y - 2) * y, -29 + x + ((y + 1) * y - 14) * y],
    jacobian: [
      [1, (10 - 3 * y) * y - 2],
      [1, (3 * y + 2) * y - 14],
    ],
  }),
  start: [0.5, -2],
  scale: [1, 1],
  tolerance: 1e-10,
};

/** A spring with a stop: soft up to 1, a thousand times as stiff beyond it. */
const stop = (force: number, start: number): NewtonProblem => ({
  evaluate: ([x = 0]) => ({
    residual: [(x > 1 ? 1 + 1000 * (x - 1) : x) - force],
    jacobian: [[x > 1 ? 1000 : 1]],
  }),
  start: [start],
  scale: [1],
  tolerance: 1e-10,
});

describe("damped Newton", () => {
  it("solves published systems from their standard starts", () => {
    const valley = dampedNewton(rosenbrock([-1.2, 1]));
    expect(valley.kind).toBe("solved");
    expectClose(valley.x[0]!, 1, 1e-9);
    expectClose(valley.x[1]!, 1, 1e-9);
    const turned = dampedNewton(helix);
    expect(turned.kind).toBe("solved");
    expectClose(turned.x[0]!, 1, 1e-9);
    expectClose(turned.x[2]!, 0, 0, 1e-9);
  });

  it("gets over a kink from either side, from anywhere", () => {
    const force = fc.double({ min: -5, max: 500, noNaN: true });
    const start = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(force, start, (f, x) => {
        const found = dampedNewton(stop(f, x));
        expect(found.kind).toBe("solved");
        expectClose(found.x[0]!, f <= 1 ? f : 1 + (f - 1) / 1000, 1e-9, 1e-9);
      }),
    );
  });

  it("says that there is no root, where the sum of squares has a lowest point above nought", () => {
    const found = dampedNewton({
      evaluate: ([x = 0]) => ({ residual: [x * x + 1], jacobian: [[2 * x]] }),
      start: [3],
      scale: [1],
      tolerance: 1e-10,
    });
    expect(found).toMatchObject({ kind: "not-converged", reason: "stationary", where: 0 });
    expectClose(found.x[0]!, 0, 0, 1e-3);
    expectClose(found.residual, 1, 1e-5);
    // The published lowest sum of squares.
    const { x, kind } = dampedNewton(lowest);
    expect(kind).toBe("not-converged");
    const { residual } = lowest.evaluate(x) ?? { residual: [] };
    expectClose(
      residual.reduce((sum, value) => sum + value * value, 0),
      48.9842,
      1e-4,
    );
  });

  it("keeps within what can be evaluated, and says where nothing can", () => {
    const log = (start: number): NewtonProblem => ({
      evaluate: ([x = 0]) => (x > 0 ? { residual: [Math.log(x)], jacobian: [[1 / x]] } : undefined),
      start: [start],
      scale: [1],
      tolerance: 1e-12,
    });
    expectClose(dampedNewton(log(20)).x[0]!, 1, 1e-9);
    expect(dampedNewton(log(-1))).toMatchObject({ kind: "not-converged", reason: "no-value" });
  });

  it("without its fallback stops where Newton's step does not help", () => {
    const found = dampedNewton({ ...rosenbrock([0, 0]), plain: true });
    expect(["solved", "not-converged"]).toContain(found.kind);
    const none = dampedNewton({
      evaluate: ([x = 0]) => ({ residual: [x * x + 1], jacobian: [[2 * x]] }),
      start: [0.5],
      scale: [1],
      tolerance: 1e-10,
      plain: true,
    });
    expect(none).toMatchObject({ kind: "not-converged", reason: "stationary" });
    expect(none.iterations).toBeLessThan(10);
  });

  it("never lets the sum of squares rise, and ends within its iterations", () => {
    const seen: number[] = [];
    const problem = rosenbrock([-1.2, 1]);
    const found = dampedNewton({ ...problem, iterations: 3, tolerance: 0 });
    expect(found.iterations).toBeLessThanOrEqual(3);
    for (const iterations of [0, 1, 2, 3]) {
      const { x } = dampedNewton({ ...problem, iterations, tolerance: 0 });
      const { residual } = problem.evaluate(x) ?? { residual: [Infinity] };
      seen.push(residual.reduce((sum, value) => sum + value * value, 0));
    }
    for (const [i, sum] of seen.slice(1).entries()) expect(sum).toBeLessThanOrEqual(seen[i]!);
  });
});
