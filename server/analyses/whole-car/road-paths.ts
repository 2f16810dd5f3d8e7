/** Figures on the road that is written for a car: `front.contact`, `rear.platform`, at a case or on the straight. */
import { absent, isAbsent } from "../absent.js";
import type { Figure } from "../results.js";
import type { CarRide } from "./car-ride.js";

const PATH = /^(front|rear)\.(contact|platform)$/;

/** Undefined where the path names no such figure; nothing is worked out for it then. */
export function roadFigure(ride: CarRide | undefined, path: string, at: string | undefined): Figure | undefined {
  const [, axle, name] = PATH.exec(path) ?? [];
  if (axle === undefined) return undefined;
  if (ride?.written === undefined) return absent("the car has no road block that says how rough and how fast");
  const found = ride.road(at, ride.written);
  if (isAbsent(found)) return found;
  const { contact, platform } = axle === "front" ? found.front : found.rear;
  return name === "contact" ? contact : platform;
}
