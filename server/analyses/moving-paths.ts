/**
 * Paths of figures of pure motions: `heave-damping-ratio`, `front.wheel-hop-frequency`, `rear.left.corner-damping-ratio`.
 * They are read here, without working anything out; `whole-car/motion-paths.ts` has the figures.
 */
import { absent } from "./absent.js";

export interface MotionPath {
  readonly motion: "heave" | "roll" | "pitch" | "corner" | "wheel-hop";
  /** Of a corner's or a wheel's motion. */
  readonly axle: "front" | "rear" | undefined;
  /** Undefined for the mean of both. */
  readonly side: "left" | "right" | undefined;
  readonly figure: "frequency" | "damping-ratio";
}

const BODY = /^(heave|roll|pitch)-(frequency|damping-ratio)$/;
const WHEEL = /^(front|rear)\.(?:(left|right)\.)?(corner|wheel-hop)-(frequency|damping-ratio)$/;

/** Undefined where the path names no such figure. */
export function motionAt(path: string): MotionPath | undefined {
  const body = BODY.exec(path);
  if (body !== null) {
    const [, motion, figure] = body;
    return { motion, figure, axle: undefined, side: undefined } as MotionPath;
  }
  const [, axle, side, motion, figure] = WHEEL.exec(path) ?? [];
  return axle === undefined ? undefined : ({ motion, figure, axle, side } as MotionPath);
}

/** What is said of such a figure where nobody works out how the whole car moves. */
export const OF_MOVING_CAR = absent("it is told of a car that moves only");
