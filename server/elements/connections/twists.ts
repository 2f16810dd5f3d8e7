/**
 * A torsional element on a rocker's axis: against the chassis, or rocker against rocker.
 *
 * Angles are those of `CornerMotion.rocker`: rad from design, positive as the wheel's own bump
 * makes it, the right one in the mirrored frame; so equal travels give equal angles.
 */
import type { AxleMotion, Jet } from "../../linkage/corner.js";
import { fromDesign } from "../deflection.js";
import type { Connection, Deflection } from "../element.js";
import { STILL } from "./still.js";

type Side = "left" | "right";
type Basis = "hardpoints" | "planar";

const NONE: Jet = { value: 0, d: 0, dd: 0 };

const torsional = (basis: Basis, deflection: Connection["deflection"]): Connection => ({
  kind: "twists",
  basis,
  torsional: true,
  idle: undefined,
  statedFor: undefined,
  deflection,
});

/** Rocker against chassis: s = θ of its own side. */
export function rockerToChassis(side: Side, basis: Basis): Connection {
  return torsional(basis, (motion: AxleMotion): Deflection => {
    const { value, d, dd } = motion[side].rocker ?? NONE;
    const at = fromDesign(value);
    return side === "left" ? { ...STILL, s: at, dL: d, dLL: dd } : { ...STILL, s: at, dR: d, dRR: dd };
  });
}

/**
 * One rocker against the other, joined by one straight bar: s = θ_L − σ θ_R.
 *
 * Mirroring turns the sense of a rotation round for an axis along the car and leaves it for one
 * across the car. Rockers with axes across the car turn alike in heave, so that the bar twists in
 * roll (σ = +1); rockers with axes along the car turn against each other in heave (σ = −1).
 */
export function rockerToRocker(sense: 1 | -1, basis: Basis): Connection {
  return torsional(basis, (motion: AxleMotion): Deflection => {
    const left = motion.left.rocker ?? NONE;
    const right = motion.right.rocker ?? NONE;
    return {
      s: fromDesign(left.value - sense * right.value),
      dL: left.d,
      dR: -sense * right.d,
      dLL: left.dd,
      dLR: 0,
      dRR: -sense * right.dd,
    };
  });
}
