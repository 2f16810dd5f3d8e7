/**
 * A corner whose joints all lie in the transverse plane of the wheel centre: wishbones and rocker turn
 * about axes parallel to x, and the upright keeps its steer and caster. The same solver as for hardpoints,
 * with the steering arm held; in: points (y, z), out: a `Corner`, or what is degenerate.
 *
 * Invariant: toe is the stated one at every travel, and nothing moves along x.
 */
import type { Vec3 } from "../maths/vec3.js";
import type { Corner } from "./corner.js";
import type { Degenerate, HardpointGeometry, PlanarGeometry, Vec2 } from "./geometry.js";
import { cornerOf } from "./hardpoint.js";
import { mechanismOf } from "./mechanism.js";

/** A planar corner as hardpoints: every axis runs one metre each way along x through its joint. */
export function asHardpoints(geometry: PlanarGeometry): HardpointGeometry {
  const x = geometry.wheel.centre[0];
  const at = (p: Vec2, ahead = 0): Vec3 => [x + ahead, p[0], p[1]];
  const arm = (w: PlanarGeometry["lower"]) => ({ fore: at(w.inner, 1), aft: at(w.inner, -1), outer: at(w.outer) });
  const { rod, rocker, lower } = geometry;
  return {
    lower: arm(lower),
    upper: arm(geometry.upper),
    // Not used while the steer is held; it follows the lower wishbone, one metre ahead.
    trackRod: { inner: at(lower.inner, 1), outer: at(lower.outer, 1) },
    rod: rod === undefined ? undefined : { ...rod, outer: at(rod.outer), inner: at(rod.inner) },
    rocker: rocker === undefined ? undefined : { pivot: at(rocker.pivot), axis: [1, 0, 0] },
    wheel: geometry.wheel,
  };
}

/** A corner from planar joints. */
export function planarCorner(geometry: PlanarGeometry): Corner | Degenerate {
  const m = mechanismOf(asHardpoints(geometry), true);
  return "kind" in m ? m : cornerOf(m, "planar");
}
