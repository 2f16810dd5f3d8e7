/** The position-only solver: the very numbers of `Corner.motion`, whatever was solved before. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isDegenerate, type HardpointGeometry } from "../../server/linkage/geometry.js";
import { mechanismOf } from "../../server/linkage/mechanism.js";
import { asHardpoints } from "../../server/linkage/planar.js";
import {
  POSITION_LENGTH,
  type PositionSolver,
  positionSolver,
  positionsOf,
} from "../../server/linkage/position-solver.js";
import { ARM, parallelogram } from "../support/planar-cases.js";
import { cornerOrSkip, motionOrSkip, randomGeometry } from "../support/random-corner.js";
import { CLEAR_OF_LIMITS, LIMIT, LINK_LENGTH, NEXT_TO_LIMIT } from "../support/tolerances.js";
import { wishboneGeometry } from "../support/wishbone-case.js";

const solverOf = (g: HardpointGeometry): PositionSolver => {
  const solver = positionSolver(g);
  if (isDegenerate(solver)) throw new Error(solver.reason);
  return solver;
};

const solved = (solver: PositionSolver, travel: number): readonly number[] => {
  const out = new Float64Array(POSITION_LENGTH);
  return solver.solve(travel, out) ? [...out] : [];
};

describe("the position solver", () => {
  it("gives the positions of the corner's motion", () => {
    fc.assert(
      fc.property(randomGeometry, fc.double({ min: -0.2, max: 0.2, noNaN: true }), (g, travel) => {
        const { wheel, rocker } = motionOrSkip(cornerOrSkip(g), travel);
        const [x, y, z, cos = Number.NaN, sin = Number.NaN] = solved(solverOf(g), travel);
        const centre = wheel?.centre.p ?? [];
        [x, y, z].forEach((value, i) => {
          expect(Math.abs((value ?? Number.NaN) - (centre[i] ?? Number.NaN))).toBeLessThan(LINK_LENGTH);
        });
        expect(Math.abs(Math.atan2(sin, cos) - (rocker?.value ?? Number.NaN))).toBeLessThan(LINK_LENGTH);
      }),
      { numRuns: 200 },
    );
  });

  it("does not remember: the same travel gives the same bits after any others", () => {
    const travel = fc.double({ min: -0.119, max: 0.119, noNaN: true });
    fc.assert(
      fc.property(fc.array(travel, { maxLength: 5 }), travel, (before, z) => {
        const used = solverOf(wishboneGeometry);
        for (const earlier of [...before, 4, Number.NaN]) solved(used, earlier);
        expect(solved(used, z)).toEqual(solved(solverOf(wishboneGeometry), z));
      }),
      { numRuns: 50 },
    );
  });

  it("meets the demanded travel all the way to both limits", () => {
    fc.assert(
      fc.property(randomGeometry, fc.double({ min: 0, max: 1, noNaN: true }), (g, share) => {
        const { bound } = cornerOrSkip(g).reach(-10, 10);
        const [low = 0, high = 0] = [bound.low?.limit, bound.high?.limit];
        const travel = Math.min(high, low + share * (high - low));
        const [, , z] = solved(solverOf(g), travel);
        const toLimit = Math.min(travel - low, high - travel);
        const allowed = toLimit > CLEAR_OF_LIMITS ? LINK_LENGTH : NEXT_TO_LIMIT;
        expect(Math.abs((z ?? Number.NaN) - g.wheel.centre[2] - travel)).toBeLessThan(allowed);
      }),
      { numRuns: 300 },
    );
  });

  it("closes in on the crest of the wheel centre's path without a step too far", () => {
    const m = mechanismOf(asHardpoints(parallelogram()), true);
    if ("kind" in m) throw new Error(m.reason);
    const solver = positionsOf(m);
    for (let digits = 1; digits < 13; digits++) {
      const travel = ARM * (1 - 10 ** -digits);
      const [, y, z] = solved(solver, Math.min(travel, m.branch.limits.high.travel));
      expect(Math.abs((z ?? Number.NaN) - 0.3 - travel)).toBeLessThan(LINK_LENGTH);
      // y falls by ARM (1 − √(1 − (z/ARM)²)), steep as a circle is.
      const fall = ARM * (1 - Math.sqrt(1 - (travel / ARM) ** 2));
      expect(Math.abs((y ?? Number.NaN) - 0.75 + fall)).toBeLessThan(LIMIT * 10);
    }
  });

  it("writes nothing where a travel is out of reach", () => {
    const out = new Float64Array(POSITION_LENGTH).fill(7);
    const solver = solverOf(wishboneGeometry);
    for (const travel of [5, -5, Number.NaN, Number.POSITIVE_INFINITY]) expect(solver.solve(travel, out)).toBe(false);
    expect([...out]).toEqual([7, 7, 7, 7, 7]);
  });

  it("holds the rocker still where there is none", () => {
    const { rod: _rod, rocker: _rocker, ...bare } = wishboneGeometry;
    expect(solved(solverOf(bare), 0.02).slice(3)).toEqual([1, 0]);
  });

  it("says what is degenerate", () => {
    const flat = { ...wishboneGeometry, upper: { ...wishboneGeometry.upper, outer: wishboneGeometry.lower.outer } };
    expect(positionSolver(flat)).toEqual({ kind: "degenerate", part: "upright", reason: "coincident" });
  });
});
