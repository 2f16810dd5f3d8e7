/** An axle as its figures were worked out: with the rods as trim set them and the wheels where they came to rest. */
import type { AxleMechanism } from "../elements/mechanism.js";
import type { AxleAnalysis } from "./results.js";

/** @param mechanism as it is written; on kept seats its wheels stand elsewhere, the mean of both sides is taken */
export function asItStands(mechanism: AxleMechanism, { rates, atRest }: AxleAnalysis): AxleMechanism {
  const { rods } = rates;
  const set = (rods && mechanism.rods?.longer(rods.left, rods.right)) ?? mechanism;
  return { ...set, staticTravel: (atRest.left.travel + atRest.right.travel) / 2 };
}
