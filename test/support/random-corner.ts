/** Random corners: the check case with every point moved, on any rod, carrier and sense of axis. For property tests. */
import fc from "fast-check";
import type { Corner, CornerMotion } from "../../server/linkage/corner.js";
import type { HardpointGeometry, RodCarrier } from "../../server/linkage/geometry.js";
import { isDegenerate } from "../../server/linkage/geometry.js";
import { hardpointCorner } from "../../server/linkage/hardpoint.js";
import { add, scale, type Vec3 } from "../../server/maths/vec3.js";
import { hardpoint, wishboneGeometry } from "./wishbone-case.js";

const nudge = (most: number): fc.Arbitrary<Vec3> => {
  const one = fc.double({ min: -most, max: most, noNaN: true });
  return fc.tuple(one, one, one);
};

/** Where a rod may start, so that it works on each carrier. */
const STARTS: { readonly [C in RodCarrier]: Vec3 } = {
  "lower-wishbone": hardpoint("PRO"),
  "upper-wishbone": [0, 0.62, 0.42],
  upright: [0.01, 0.7, 0.2],
};

const flip = (v: Vec3, isFlipped: boolean): Vec3 => (isFlipped ? scale(v, -1) : v);

export const randomGeometry: fc.Arbitrary<HardpointGeometry> = fc
  .record({
    moves: fc.array(nudge(0.02), { minLength: 12, maxLength: 12 }),
    on: fc.constantFrom<RodCarrier>("lower-wishbone", "upper-wishbone", "upright"),
    kind: fc.constantFrom<"push-rod" | "pull-rod">("push-rod", "pull-rod"),
    senses: fc.tuple(fc.boolean(), fc.boolean(), fc.boolean()),
    tilt: nudge(0.3),
    lengthen: fc.constantFrom(0, 0.002, -0.003),
  })
  .map(({ moves, on, kind, senses, tilt, lengthen }) => {
    const moved = (p: Vec3, i: number): Vec3 => add(p, moves[i] ?? [0, 0, 0]);
    const g = wishboneGeometry;
    const wishbone = (w: HardpointGeometry["lower"], i: number, isTurned: boolean) => {
      const [fore, aft] = [moved(w.fore, i), moved(w.aft, i + 1)];
      return { fore: isTurned ? aft : fore, aft: isTurned ? fore : aft, outer: moved(w.outer, i + 2) };
    };
    const axis = flip(add(g.rocker?.axis ?? [1, 0, 0], scale(tilt, 0.04)), senses[2]);
    return {
      lower: wishbone(g.lower, 0, senses[0]),
      upper: wishbone(g.upper, 3, senses[1]),
      trackRod: { inner: moved(g.trackRod.inner, 6), outer: moved(g.trackRod.outer, 7) },
      rod: { kind, on, outer: moved(STARTS[on], 8), inner: moved(hardpoint("PRI"), 9), lengthen },
      rocker: { pivot: moved(g.rocker?.pivot ?? [0, 0, 0], 10), axis },
      wheel: { ...g.wheel, centre: moved(g.wheel.centre, 11) },
    };
  });

/** The corner of a geometry; fast-check draws again where it is degenerate. */
export function cornerOrSkip(g: HardpointGeometry): Corner {
  const corner = hardpointCorner(g);
  fc.pre(!isDegenerate(corner));
  return corner;
}

/** Its motion; fast-check draws again where the travel is out of reach. */
export function motionOrSkip(corner: Corner, travel: number): CornerMotion {
  const motion = corner.motion(travel);
  fc.pre(!("kind" in motion));
  return motion;
}

export const smallTravel = fc.double({ min: -0.03, max: 0.03, noNaN: true });

/** Whether all links stand well clear of their toggles at this travel and a little to both sides. */
export function isClearOfToggles(corner: Corner, travel: number, angle: number): boolean {
  const reach = corner.reach(travel - 0.002, travel + 0.002);
  if (reach.bound.low !== undefined || reach.bound.high !== undefined) return false;
  return reach.toggles.every((toggle) => toggle.angle > angle);
}
