/**
 * Where things are and how they move on: corners, levers and what is read off them.
 * Frames and signs: NOTATION.md. Knows plain geometry only; never text, never a car model.
 */
export type {
  AxleMotion,
  BindingLink,
  Body,
  Corner,
  CornerMotion,
  Jet,
  PointMotion,
  Reach,
  Unreachable,
  WheelMotion,
} from "./corner.js";
export {
  type Degenerate,
  type HardpointGeometry,
  isDegenerate,
  type PlanarGeometry,
  type RodCarrier,
} from "./geometry.js";
export { hardpointCorner } from "./hardpoint.js";
export { type Lever, leverAngle, leverMotion, leverOf, type LinkBinds } from "./lever.js";
export { planarCorner } from "./planar.js";
export { ratioCorner } from "./ratio.js";
