/** What the movements of a car take besides its equilibrium: inertias, the tyres' damping, and the road. */
import type { CarModel } from "../model/car.js";
import { massesOfCar } from "./masses.js";
import { blockOf, numberOf, wordOf } from "./reading.js";

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

/** As it is written; undefined where no road is, or half of one. */
export function roadOf(
  car: CarModel,
): { readonly class: string; readonly speed: number; readonly sides: string } | undefined {
  const road = blockOf(car.block, "road");
  const [letter, speed] = [wordOf(road, "class"), numberOf(road, "speed")];
  if (letter === undefined || speed === undefined) return undefined;
  return { class: letter, speed, sides: wordOf(road, "sides") ?? "isotropic" };
}
