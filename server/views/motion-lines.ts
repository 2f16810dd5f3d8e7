/** How the body moves in heave, pitch and roll alone, in one line: for the hover of a car, set-up or case, and the lens. */
import type { PureMode } from "../analyses/whole-car/pure-modes.js";
import type { CheckedCar } from "../findings/context.js";
import { isAbsent, showFigure, showRatio } from "./figures.js";

const MOTIONS = ["heave", "pitch", "roll"] as const;

/** "Alone, wheels still: heave 4.73 Hz (damping ratio 0.79), …", or why there is none. */
export function motionLine(car: CheckedCar, at: string | undefined): string {
  const pure = car.ride.pure(at);
  if (isAbsent(pure)) return `No frequencies and damping ratios: ${pure.reason}.`;
  const told = MOTIONS.map((name) => {
    const { dampingRatio, frequency } = pure[name];
    const ratio = isAbsent(dampingRatio) ? "" : ` (damping ratio ${showRatio(dampingRatio)})`;
    return `${name} ${showFigure(frequency, "Hz", 3)}${ratio}`;
  });
  return `Body alone, wheels still and dampers at low speed: ${told.join(", ")}.`;
}

/** "heave 4.73 Hz at 0.79 of critical, …"; nothing where there are no figures, since a lens has no room for reasons. */
export function motionTitle(car: CheckedCar): string {
  const pure = car.ride.pure(undefined);
  if (isAbsent(pure)) return "";
  return MOTIONS.flatMap((name) => shortly(name, pure[name])).join(", ");
}

function shortly(name: string, { frequency, dampingRatio }: PureMode): readonly string[] {
  if (isAbsent(frequency) || isAbsent(dampingRatio)) return [];
  return [`${name} ${showFigure(frequency, "Hz", 3)} at ${Number(dampingRatio.toPrecision(2))} of critical`];
}
