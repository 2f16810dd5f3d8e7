/** How far a bar is twisted at rest, and what that does to the wheels: what the check and the proof of its fix go by. */
import type { CheckedElement } from "../axle-parts.js";
import type { CheckedCar } from "../context.js";

export interface StaticTwist {
  /** rad, and the moment that it takes, N·m. */
  readonly angle: number;
  readonly moment: number;
  /** Change of each wheel's load by it, N. */
  readonly atWheel: number;
  readonly loads: "left" | "right";
}

/** Of the wheel's load. */
const TOLD = 0.005;

/** @returns undefined where the bar hangs free, or its moment or the wheel's load are not known */
export function twistOf(car: CheckedCar, { figures, axle }: CheckedElement): StaticTwist | undefined {
  const { deflection: angle, staticLoad: moment, sensitivity } = figures;
  const load = axle && car.analysis.axles[axle.name]?.atRest.left.load;
  if (typeof angle !== "number" || typeof moment !== "number" || "kind" in sensitivity) return undefined;
  // Twist for each wheel's own bump, as virtual work has it: half of what both do, opposed.
  const atLeft = (-moment * sensitivity.roll) / 2;
  const atWheel = Math.abs(atLeft);
  if (typeof load !== "number" || !(atWheel > TOLD * load)) return undefined;
  return { angle, moment, atWheel, loads: atLeft > 0 ? "left" : "right" };
}
