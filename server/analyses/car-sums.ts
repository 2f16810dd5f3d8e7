/** Stiffness and damping of the whole car over its wheels: a step that its rates and its elements' leaks share. */
import { absent, isAbsent } from "./absent.js";
import type { CarParts } from "./car-parts.js";
import type { Absent, AxleRates } from "./results.js";
import { beside, plusMatrix, type WheelMatrix } from "./wheel-matrix.js";

export interface CarAxleRates {
  readonly front: AxleRates | undefined;
  readonly rear: AxleRates | undefined;
}

/** Over FL, FR, RL, RR, N/m and N·s/m, or why there is none. */
export interface CarSums {
  readonly stiffness: WheelMatrix | Absent;
  readonly damping: WheelMatrix | Absent;
}

function sumOf(
  { front, rear }: CarAxleRates,
  of: (rates: AxleRates) => AxleRates["stiffness"],
  joined: WheelMatrix | string,
): WheelMatrix | Absent {
  if (front === undefined || rear === undefined) return absent("the car has one axle only");
  const [ahead, behind] = [of(front), of(rear)];
  if (isAbsent(ahead)) return ahead;
  if (isAbsent(behind)) return behind;
  return typeof joined === "string" ? absent(joined) : plusMatrix(beside(ahead, behind), joined);
}

export const carSums = (axles: CarAxleRates, parts: CarParts): CarSums => ({
  stiffness: sumOf(axles, ({ stiffness }) => stiffness, parts.stiffnessSum),
  damping: sumOf(axles, ({ damping }) => damping, parts.dampingSum),
});
