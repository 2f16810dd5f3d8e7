/** What the movements of a car take besides its equilibrium: inertias and the tyres' damping. */
import type { CarModel } from "../model/car.js";
import { massesOfCar } from "./masses.js";

export function rideNumbersOf(car: CarModel): {
  readonly rollInertia: number | string;
  readonly pitchInertia: number | string;
  readonly tyreDamping: readonly number[];
} {
  const { rollInertia, pitchInertia } = massesOfCar(car).sprung;
  const { front, rear } = car.axles;
  const tyreDamping = [front?.wheel.left, front?.wheel.right, rear?.wheel.left, rear?.wheel.right].map(
    (wheel) => wheel?.tyreDamping?.value ?? 0,
  );
  return { rollInertia, pitchInertia, tyreDamping };
}
