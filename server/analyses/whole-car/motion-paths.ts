/** Figures of pure motions: `heave-damping-ratio`, `front.wheel-hop-frequency`, at rest or in a case. */
import { isAbsent } from "../absent.js";
import { type MotionPath, motionAt, OF_MOVING_CAR } from "../moving-paths.js";
import type { Figure } from "../results.js";
import type { CarRide } from "./car-ride.js";
import type { PureMode, PureModes } from "./pure-modes.js";

/** Undefined where the path names no such figure; nothing is worked out for it then. */
export function motionFigure(ride: CarRide | undefined, path: string, at: string | undefined): Figure | undefined {
  const asked = motionAt(path);
  if (asked === undefined) return undefined;
  const found = ride?.pure(at) ?? OF_MOVING_CAR;
  if (isAbsent(found)) return found;
  const [one, other] = motionsOf(found, asked).map((motion) =>
    asked.figure === "frequency" ? motion.frequency : motion.dampingRatio,
  );
  if (typeof one !== "number" || typeof other !== "number") return one ?? OF_MOVING_CAR;
  return (one + other) / 2;
}

/** One, or both sides' where none is named. */
function motionsOf(pure: PureModes, { motion, axle, side }: MotionPath): readonly PureMode[] {
  if (motion === "heave" || motion === "roll" || motion === "pitch") return [pure[motion]];
  const first = axle === "front" ? 0 : 2;
  const both = (motion === "corner" ? pure.corner : pure.hop).slice(first, first + 2);
  return side === undefined ? both : both.slice(side === "left" ? 0 : 1, side === "left" ? 1 : 2);
}
