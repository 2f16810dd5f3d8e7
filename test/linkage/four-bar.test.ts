/**
 * The planar solver against the four-bar linkage a = 40, b = 120, c = 80, d = 100 at a crank angle of 40°.
 * Source: R. L. Norton, Design of Machinery, position analysis (ch. 4), figures from memory; the Freudenstein equation
 * K₁ cos θ₄ − K₂ cos θ₂ + K₃ = cos(θ₂ − θ₄) as in A. Ghosal, "The Freudenstein Equation", Resonance, Aug 2010.
 */
import { describe, expect, it } from "vitest";
import type { PlanarGeometry, Vec2 } from "../../server/linkage/geometry.js";
import { expectClose } from "../support/approx.js";
import { parallelogram, planarOf, reachedAt } from "../support/planar-cases.js";
import { CHECK_CASE } from "../support/tolerances.js";
import { DEGREE } from "../support/wishbone-case.js";

const [A, B, C, D] = [0.04, 0.12, 0.08, 0.1];
const CRANK: Vec2 = [0.2, 0.3];
const ROCKER: Vec2 = [0.2 + D, 0.3];
const STARTS = [75, 60, 25];

const crankEnd = (degrees: number): Vec2 => [
  CRANK[0] + A * Math.cos(degrees * DEGREE),
  CRANK[1] + A * Math.sin(degrees * DEGREE),
];

/** The rocker's angle by the law of cosines in the triangle of crank end, rocker pivot and rocker end. */
function rockerAngle(degrees: number, crossed: boolean): number {
  const [y, z] = crankEnd(degrees);
  const [dy, dz] = [y - ROCKER[0], z - ROCKER[1]];
  const inside = Math.acos((C * C + dy * dy + dz * dz - B * B) / (2 * C * Math.hypot(dy, dz)));
  return Math.atan2(dz, dy) - (crossed ? -inside : inside);
}

const rockerEnd = (angle: number): Vec2 => [ROCKER[0] + C * Math.cos(angle), ROCKER[1] + C * Math.sin(angle)];

const CASES = [
  { branch: "open", crossed: false, rocker: 57.3248800704, coupler: 20.2978827882, book: [57.33, 20.3] },
  { branch: "crossed", crossed: true, rocker: -98.004964078, coupler: -60.9779667959, book: [-98.01, -60.98] },
];
const RUNS = CASES.flatMap((c) => STARTS.map((start) => ({ ...c, start })));
const AT = 40;

const wrapped = (degrees: number): number => degrees - 360 * Math.round(degrees / 360);

describe.each(RUNS)("four-bar, $branch branch, drawn at $start°", ({ crossed, rocker, coupler, start, book }) => {
  const drawn = rockerAngle(start, crossed);
  const travel = A * (Math.sin(AT * DEGREE) - Math.sin(start * DEGREE));
  const centre = crankEnd(start);

  it("as wishbones and upright: crank, coupler and rocker", () => {
    const geometry: PlanarGeometry = {
      lower: { inner: CRANK, outer: centre },
      upper: { inner: ROCKER, outer: rockerEnd(drawn) },
      wheel: { centre: [0, ...centre], camber: 0, toe: 0, loadedRadius: 0.2 },
    };
    const motion = reachedAt(planarOf(geometry), travel);
    const [, y, z] = motion.point("upper-wishbone", [0, ...rockerEnd(drawn)]).p;
    const [, cy, cz] = motion.point("lower-wishbone", [0, ...centre]).p;
    expectClose(wrapped(Math.atan2(cz - CRANK[1], cy - CRANK[0]) / DEGREE), AT, 0, CHECK_CASE);
    const theta4 = wrapped(Math.atan2(z - ROCKER[1], y - ROCKER[0]) / DEGREE);
    const theta3 = wrapped(Math.atan2(z - cz, y - cy) / DEGREE);
    expectClose(theta4, rocker, 0, CHECK_CASE);
    expectClose(theta3, coupler, 0, CHECK_CASE);
    expect(Math.abs(theta4 - (book[0] ?? 0))).toBeLessThan(0.02);
    expect(Math.abs(theta3 - (book[1] ?? 0))).toBeLessThan(0.02);
  });

  it("as a rocker on a rod: crank on the lower wishbone, coupler the rod", () => {
    const geometry = parallelogram({
      lower: { inner: CRANK, outer: centre },
      upper: { inner: [CRANK[0] - 0.02, CRANK[1] + 0.2], outer: [centre[0] - 0.02, centre[1] + 0.2] },
      rod: { kind: "push-rod", on: "lower-wishbone", outer: centre, inner: rockerEnd(drawn) },
      rocker: { pivot: ROCKER },
      wheel: { centre: [0, ...centre], camber: 0, toe: 0, loadedRadius: 0.2 },
    });
    const motion = reachedAt(planarOf(geometry), travel);
    const turn = wrapped(rocker - drawn / DEGREE);
    expectClose(Math.abs((motion.rocker?.value ?? 0) / DEGREE), Math.abs(turn), 0, CHECK_CASE);
    const [, y, z] = motion.point("rocker", [0, ...rockerEnd(drawn)]).p;
    expectClose(wrapped(Math.atan2(z - ROCKER[1], y - ROCKER[0]) / DEGREE), rocker, 0, CHECK_CASE);
  });
});
