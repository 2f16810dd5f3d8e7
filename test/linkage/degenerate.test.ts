/** Bad geometry is named, and nothing that comes out of a corner is ever not a number. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Corner } from "../../server/linkage/corner.js";
import {
  type Degenerate,
  type HardpointGeometry,
  isDegenerate,
  type PlanarGeometry,
} from "../../server/linkage/geometry.js";
import { hardpointCorner } from "../../server/linkage/hardpoint.js";
import { planarCorner } from "../../server/linkage/planar.js";
import { ratioCorner } from "../../server/linkage/ratio.js";
import { add, scale, sub, type Vec3 } from "../../server/maths/vec3.js";
import { parallelogram } from "../support/planar-cases.js";
import { wishboneGeometry as g } from "../support/wishbone-case.js";

const rod = g.rod ?? { kind: "push-rod", on: "upright", outer: [0, 0, 0], inner: [0, 0, 0] };
const rocker = g.rocker ?? { pivot: [0, 0, 0], axis: [1, 0, 0] };
const between = (a: Vec3, b: Vec3, share: number): Vec3 => add(a, scale(sub(b, a), share));
const trackOuterOnAxis = between(g.lower.outer, g.upper.outer, 0.4);

const cases: [string, HardpointGeometry, Omit<Degenerate, "kind">][] = [
  [
    "wishbone without an axis",
    { ...g, lower: { ...g.lower, aft: g.lower.fore } },
    { part: "lower-wishbone", reason: "no-axis" },
  ],
  [
    "joint on the wishbone's own axis",
    { ...g, upper: { ...g.upper, outer: between(g.upper.fore, g.upper.aft, 1.4) } },
    { part: "upper-wishbone", reason: "on-axis" },
  ],
  [
    "outer joints in one place",
    { ...g, upper: { ...g.upper, outer: g.lower.outer } },
    { part: "upright", reason: "coincident" },
  ],
  [
    "track rod of no length",
    { ...g, trackRod: { inner: g.trackRod.outer, outer: g.trackRod.outer } },
    { part: "track-rod", reason: "coincident" },
  ],
  [
    "track rod on the steering axis",
    { ...g, trackRod: { ...g.trackRod, outer: trackOuterOnAxis } },
    { part: "track-rod", reason: "on-axis" },
  ],
  [
    "track rod in line with its arm",
    { ...g, trackRod: { inner: between(trackOuterOnAxis, g.trackRod.outer, 5), outer: g.trackRod.outer } },
    { part: "track-rod", reason: "in-line" },
  ],
  [
    "upper wishbone in line with the upright",
    {
      ...g,
      upper: { fore: [0.1, 0.72, 0.6], aft: [-0.1, 0.72, 0.6], outer: [0, 0.72, 0.45] },
      lower: { ...g.lower, outer: [0, 0.72, 0.15] },
    },
    { part: "upper-wishbone", reason: "in-line" },
  ],
  ["rocker without an axis", { ...g, rocker: { ...rocker, axis: [0, 0, 0] } }, { part: "rocker", reason: "no-axis" }],
  ["rod of no length", { ...g, rod: { ...rod, inner: rod.outer } }, { part: "push-rod", reason: "coincident" }],
  ["rod shortened to nothing", { ...g, rod: { ...rod, lengthen: -5 } }, { part: "push-rod", reason: "coincident" }],
  ["rod too long to be fitted", { ...g, rod: { ...rod, lengthen: 0.5 } }, { part: "push-rod", reason: "in-line" }],
  [
    "rod's end on the rocker's axis",
    { ...g, rod: { ...rod, inner: add(rocker.pivot, scale(rocker.axis, 2)) } },
    { part: "rocker", reason: "on-axis" },
  ],
  [
    "rod through the rocker's axis",
    { ...g, rod: { ...rod, kind: "pull-rod", outer: between(rod.inner, rocker.pivot, 6) } },
    { part: "pull-rod", reason: "in-line" },
  ],
  [
    "a coordinate that is no number",
    { ...g, trackRod: { ...g.trackRod, inner: [0, Number.NaN, 0] } },
    { part: "track-rod", reason: "not-finite" },
  ],
  [
    "an endless wheel",
    { ...g, wheel: { ...g.wheel, loadedRadius: Number.POSITIVE_INFINITY } },
    { part: "wheel", reason: "not-finite" },
  ],
];

describe("a degenerate corner is named", () => {
  it.each(cases)("%s", (_, geometry, expected) => {
    expect(hardpointCorner(geometry)).toEqual({ kind: "degenerate", ...expected });
  });

  it("planar ones likewise", () => {
    const p = parallelogram();
    const flat: PlanarGeometry = { ...p, upper: { ...p.upper, outer: p.lower.outer } };
    expect(planarCorner(flat)).toEqual({ kind: "degenerate", part: "upright", reason: "coincident" });
    // The wheel centre under the instant centre, where the line of the upper arm meets that of the level lower one.
    const centre: Vec3 = [0, -0.7, 0.3];
    const still: PlanarGeometry = {
      ...p,
      upper: { inner: [0.3, 0.4], outer: [0.7, 0.5] },
      wheel: { ...p.wheel, centre },
    };
    expect(planarCorner(still)).toEqual({ kind: "degenerate", part: "wheel", reason: "no-travel" });
  });
});

describe("a corner without a rod", () => {
  const { rod: _rod, rocker: _rocker, ...bare } = g;
  it.each([
    ["neither rod nor rocker", bare],
    ["a rocker that nothing drives", { ...bare, rocker }],
    ["a rod to nowhere", { ...bare, rod }],
  ])("moves all the same: %s", (_, geometry) => {
    const corner = hardpointCorner(geometry);
    if (isDegenerate(corner)) throw new Error(corner.reason);
    const motion = corner.motion(0.02);
    if ("kind" in motion) throw new Error("out of reach");
    expect(motion.rocker).toBeUndefined();
    expect(motion.wheel?.centre.p[2]).toBeCloseTo(0.34, 13);
    expect(motion.point("rocker", [1, 2, 3])).toEqual({ p: [1, 2, 3], d: [0, 0, 0], dd: [0, 0, 0] });
    expect(corner.reach(-0.03, 0.03).toggles.map(({ link }) => link)).not.toContain("push-rod");
  });
});

/** Every number anywhere inside a value. */
function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

const expectFinite = (value: unknown): void => {
  for (const n of numbersIn(value)) expect(Number.isFinite(n)).toBe(true);
};

/** Everything that a corner can be asked for at one travel. */
function askAll(corner: Corner, travel: number): void {
  const motion = corner.motion(travel);
  if ("kind" in motion) {
    expect(Number.isFinite(motion.limit)).toBe(true);
    return;
  }
  expectFinite([motion.travel, motion.rocker, motion.wheel]);
  for (const body of ["chassis", "lower-wishbone", "upper-wishbone", "upright", "track-rod", "rocker"] as const) {
    expectFinite(motion.point(body, [0.1, 0.6, 0.3]));
  }
}

describe("nothing is ever not a number", () => {
  /** Few values, so that points coincide, links fall in line and sizes differ by hundreds of digits. */
  const coordinate = fc.oneof(
    { weight: 12, arbitrary: fc.constantFrom(-0.2, 0, 0.1, 0.2, 0.3, 0.5, 0.7) },
    { weight: 4, arbitrary: fc.double({ min: -1, max: 1, noNaN: true }) },
    { weight: 1, arbitrary: fc.constantFrom(1e-300, 1e300, -1e155, 1e8, 5e-324) },
    { weight: 1, arbitrary: fc.double() },
  );
  const wild: fc.Arbitrary<Vec3> = fc.tuple(coordinate, coordinate, coordinate);
  const someOf = (drawn: Vec3): fc.Arbitrary<Vec3> =>
    fc.oneof({ weight: 3, arbitrary: fc.constant(drawn) }, { weight: 2, arbitrary: wild });
  const wishbone = (w: HardpointGeometry["lower"]) =>
    fc.record({ fore: someOf(w.fore), aft: someOf(w.aft), outer: someOf(w.outer) });
  const geometry: fc.Arbitrary<HardpointGeometry> = fc.record({
    lower: wishbone(g.lower),
    upper: wishbone(g.upper),
    trackRod: fc.record({ inner: someOf(g.trackRod.inner), outer: someOf(g.trackRod.outer) }),
    rod: fc.record({
      kind: fc.constantFrom("push-rod" as const, "pull-rod" as const),
      on: fc.constantFrom("lower-wishbone" as const, "upper-wishbone" as const, "upright" as const),
      outer: someOf(rod.outer),
      inner: someOf(rod.inner),
      lengthen: fc.oneof(fc.constant(0), coordinate),
    }),
    rocker: fc.record({ pivot: someOf(rocker.pivot), axis: someOf(rocker.axis) }),
    wheel: fc.record({
      centre: someOf(g.wheel.centre),
      camber: fc.constantFrom(-0.02, 0, 1.5, Math.PI / 2),
      toe: fc.constantFrom(0, 0.01, 2),
      loadedRadius: fc.oneof(fc.constant(0.3), coordinate),
    }),
  });
  const travel = fc.oneof(fc.double({ min: -0.1, max: 0.1, noNaN: true }), fc.double(), fc.constantFrom(0, 1e300));

  it("from any hardpoints at any travel", () => {
    let built = 0;
    fc.assert(
      fc.property(geometry, travel, (drawn, z) => {
        const corner = hardpointCorner(drawn);
        if (isDegenerate(corner)) return;
        built++;
        askAll(corner, z);
        const { bound, toggles } = corner.reach(-0.05, 0.05);
        expectFinite([bound, toggles]);
        for (const end of [bound.low, bound.high]) if (end !== undefined) askAll(corner, end.limit);
      }),
      { numRuns: 3000 },
    );
    expect(built).toBeGreaterThan(100);
  });

  it("at the end of a wishbone a hundred thousand kilometres long, in line with its upright to the last digit", () => {
    const corner = planarCorner({
      ...parallelogram(),
      lower: { inner: [0.1, 0.1], outer: [0.3, 1e8] },
      upper: { inner: [0.25, 0.45 - 2 ** -54], outer: [0.65 - 2 ** -53, 0.45 - 2 ** -54] },
      rod: { kind: "push-rod", on: "lower-wishbone", outer: [0.62, 0.17], inner: [0.38, 0.46] },
      rocker: { pivot: [-0.2, 0] },
    });
    if (isDegenerate(corner)) throw new Error(corner.reason);
    const ends = Object.values(corner.reach(-1, 1).bound).flatMap((end) => end ?? []);
    expect(ends).toHaveLength(2);
    for (const { limit } of ends) askAll(corner, limit);
  });

  it("from any planar joints", () => {
    const p = parallelogram();
    const joint = (drawn: readonly [number, number]) =>
      fc.oneof(fc.constant(drawn), fc.tuple(coordinate, coordinate)) as fc.Arbitrary<readonly [number, number]>;
    const planar: fc.Arbitrary<PlanarGeometry> = fc.record({
      lower: fc.record({ inner: joint(p.lower.inner), outer: joint(p.lower.outer) }),
      upper: fc.record({ inner: joint(p.upper.inner), outer: joint(p.upper.outer) }),
      rod: fc.record({
        kind: fc.constant("push-rod" as const),
        on: fc.constantFrom("lower-wishbone" as const, "upper-wishbone" as const, "upright" as const),
        outer: joint([0.62, 0.17]),
        inner: joint([0.38, 0.46]),
      }),
      rocker: fc.record({ pivot: joint([0.33, 0.4]) }),
      wheel: fc.constant(p.wheel),
    });
    fc.assert(
      fc.property(planar, travel, (drawn, z) => {
        const corner = planarCorner(drawn);
        if (isDegenerate(corner)) return;
        askAll(corner, z);
        for (const end of Object.values(corner.reach(-1, 1).bound)) if (end !== undefined) askAll(corner, end.limit);
      }),
      { numRuns: 1000 },
    );
  });
});

describe("a corner of ratios", () => {
  it("knows its travel and nothing else", () => {
    const motion = ratioCorner().motion(0.025);
    if ("kind" in motion) throw new Error("out of reach");
    expect(motion.travel).toBe(0.025);
    expect(motion.wheel).toBeUndefined();
    expect(motion.rocker).toBeUndefined();
    expect(motion.point("upright", [0, 0.7, 0.3])).toEqual({ p: [0, 0.7, 0.325], d: [0, 0, 1], dd: [0, 0, 0] });
    expect(motion.point("chassis", [0, 0.7, 0.3]).p).toEqual([0, 0.7, 0.3]);
    const { bound, toggles } = ratioCorner().reach(-5, 5);
    expect([bound.low, bound.high, toggles]).toEqual([undefined, undefined, []]);
  });
});
