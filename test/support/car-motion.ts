/** Motions of both axles at four travels, each corner written down instead of solved. */
import type { CarConnection, CarDeflection, CarMotion, Wheels } from "../../server/elements/car-connection.js";
import type { AxleMotion, Corner } from "../../server/linkage/corner.js";
import { syntheticCorner } from "./synthetic-corner.js";

export const ahead = syntheticCorner();
export const behind = syntheticCorner({ pivot: [-2.5, 0.2, 0.4], axis: [1, -0.2, 0.1], rocker: [7, -15, 20] });

function axleMotion(corner: Corner, left: number, right: number): AxleMotion {
  const [l, r] = [corner.motion(left), corner.motion(right)];
  if ("kind" in l || "kind" in r) throw new Error("unreachable");
  return { left: l, right: r };
}

export const motionAt = ([fl, fr, rl, rr]: Wheels): CarMotion => ({
  front: axleMotion(ahead, fl, fr),
  rear: axleMotion(behind, rl, rr),
});

export function deflected(connection: CarConnection, travels: Wheels): CarDeflection {
  const d = connection.deflection(motionAt(travels));
  if ("kind" in d) throw new Error(d.reason);
  return d;
}
