/**
 * At which position the rates of a car are taken, in words. A set-up's other ride height does not move
 * the wheels in them yet: they are those of the position that the linkage is drawn at, and say so.
 */
import type { CarModel } from "../model/car.js";

export function restWords({ axles }: CarModel): string {
  const moved = [axles.front, axles.rear].some((axle) => (axle?.rideHeight?.chain.length ?? 0) > 0);
  return moved
    ? "at the ride height that the linkage is drawn at (the set-up's own is not carried into rates yet)"
    : "at static trim";
}
