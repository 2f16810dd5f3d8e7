import { describe, expect, it } from "vitest";
import { type Integrand, integrate } from "../../server/maths/quadrature.js";
import { expectClose } from "../support/approx.js";
import { CLOSED_FORM } from "../support/tolerances.js";

/** A resonance of width 0.01, a polynomial, and a kink, over −1 … 1. */
const three: Integrand = (x, out) => {
  out[0] = 1 / (x * x + 1e-4);
  out[1] = x ** 6;
  out[2] = Math.abs(x - 0.3);
};
const closed = [200 * Math.atan(100), 2 / 7, (1.3 ** 2 + 0.7 ** 2) / 2];

describe("integrals of several functions", () => {
  it("meets each closed form", () => {
    const found = integrate(three, 3, [-1, 1], { relative: 1e-10 });
    expect(found.converged).toBe(true);
    for (const [i, expected] of closed.entries()) expectClose(found.values[i]!, expected, CLOSED_FORM);
  });

  it("hands out the nodes and weights that it used", () => {
    const { nodes, weights, values } = integrate(three, 3, [-1, 0.3, 1], { relative: 1e-6 });
    const at = new Float64Array(3);
    const again = [0, 0, 0];
    for (const [k, node] of nodes.entries()) {
      three(node, at);
      for (let i = 0; i < 3; i++) again[i]! += weights[k]! * at[i]!;
    }
    for (let i = 0; i < 3; i++) expectClose(again[i]!, values[i]!, CLOSED_FORM);
  });

  it("ends where it cannot get near enough, and says so", () => {
    const found = integrate((x, out) => (out[0] = 1 / Math.sqrt(Math.abs(x - 0.1234567))), 1, [-1, 1], {
      relative: 1e-14,
      panels: 30,
    });
    expect(found.converged).toBe(false);
    expect(found.error).toBeGreaterThan(1e-14);
    expect(found.evaluations).toBeLessThan(30 * 40);
  });

  it("ends at once on what is no number", () => {
    const found = integrate((_, out) => (out[0] = Number.NaN), 1, [0, 1], { relative: 1e-6 });
    expect(found.values[0]).toBeNaN();
    expect(found.evaluations).toBe(15);
  });
});
