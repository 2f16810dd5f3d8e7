/**
 * The axle's rates with both wheels moved together: heave rate, single-wheel rate and roll stiffness against travel.
 *
 * At each travel K = Σ k ∇s∇sᵀ + F ∇²s with every element at its own deflection there, seats as trim set them; so what the curves say
 * at rest is what the rates say. N/m, N/m and N·m/rad. Absent where the static figures are.
 */
import type { Deflection, Element } from "../elements/element.js";
import type { AxleMechanism } from "../elements/mechanism.js";
import { contributions } from "./contributions.js";
import { atWheel, inHeave, inRoll } from "./form.js";
import type { TrimResult } from "./results.js";

export interface RatesAt {
  /** Of both wheels, from design, m. */
  readonly travel: number;
  /** Undefined where the links do not reach, or a part of the sum is not known. */
  readonly heave: number | undefined;
  readonly single: number | undefined;
  readonly roll: number | undefined;
}

/** @param mechanism as it stands (`asItStands`) */
export function ratesOverTravel(
  mechanism: AxleMechanism,
  trim: readonly TrimResult[],
  travels: readonly number[],
): readonly RatesAt[] {
  const seats = new Map<Element, number>();
  for (const element of mechanism.elements) {
    const set = trim.find(({ path }) => path === element.path);
    if (set !== undefined && element.part === undefined) seats.set(element, set.seat);
  }
  return travels.map((travel) => {
    const standing = standingAt(mechanism, travel);
    const sum = standing && contributions(mechanism, standing, { results: trim, seats }).stiffnessSum;
    if (sum === undefined || typeof sum === "string")
      return { travel, heave: undefined, single: undefined, roll: undefined };
    const { track } = mechanism;
    return {
      travel,
      heave: inHeave(sum),
      single: atWheel(sum),
      roll: track === undefined ? undefined : inRoll(sum, track),
    };
  });
}

function standingAt(
  { corners, elements }: AxleMechanism,
  travel: number,
): ReadonlyMap<Element, Deflection> | undefined {
  const [left, right] = [corners.left.motion(travel), corners.right.motion(travel)];
  if ("kind" in left || "kind" in right) return undefined;
  const standing = new Map<Element, Deflection>();
  for (const element of elements) {
    const deflection = element.connection?.deflection({ left, right });
    if (deflection !== undefined && !("kind" in deflection)) standing.set(element, deflection);
  }
  return standing;
}
