/**
 * Positions of both axles at four wheel travels, each corner solved once a travel, and the amplitudes of the four
 * modes that keep every wheel inside its axle's envelope.
 *
 * An axle that the car lacks, or that is not there to be asked, stands still.
 */
import type { CarMotion, Wheels } from "../elements/car-connection.js";
import { eachWheel } from "../elements/car-connection.js";
import type { AxleMechanism } from "../elements/mechanism.js";
import { type CarMode, PATTERNS } from "../elements/patterns.js";
import type { AxleMotion } from "../linkage/corner.js";
import { absent, bindsReason } from "./absent.js";
import type { Absent } from "./results.js";
import { type AxlePositions, axlePositions, isBound } from "./states.js";

export interface CarAxles {
  readonly front: AxleMechanism | undefined;
  readonly rear: AxleMechanism | undefined;
}

export interface CarPositions {
  /** Travels of the four wheels at rest; those of an axle that is not there are 0. */
  readonly rest: Wheels;
  /** The reason names the link that binds. */
  at(travels: Wheels): CarMotion | Absent;
}

const STANDING: AxleMotion["left"] = {
  travel: 0,
  point: (_body, design) => ({ p: design, d: [0, 0, 0], dd: [0, 0, 0] }),
  rocker: undefined,
  wheel: undefined,
};

function motionAt(positions: AxlePositions | undefined, left: number, right: number): AxleMotion | Absent {
  if (positions === undefined) return { left: STANDING, right: STANDING };
  const { motion } = positions.at(left, right);
  return isBound(motion) ? absent(bindsReason(motion.why, motion.side)) : motion;
}

export function carPositions(axles: CarAxles): CarPositions {
  const front = axles.front && axlePositions(axles.front);
  const rear = axles.rear && axlePositions(axles.rear);
  const restFront = axles.front?.staticTravel ?? 0;
  const restRear = axles.rear?.staticTravel ?? 0;
  return {
    rest: [restFront, restFront, restRear, restRear],
    at([fl, fr, rl, rr]) {
      const ahead = motionAt(front, fl, fr);
      if ("kind" in ahead) return ahead;
      const behind = motionAt(rear, rl, rr);
      return "kind" in behind ? behind : { front: ahead, rear: behind };
    },
  };
}

/** Steps on each side of design. */
const STEPS = 4;

/** In heave as far as both envelopes go, else as far as both ways allow. */
function amplitudesOf({ front, rear }: CarAxles, mode: CarMode): readonly number[] {
  const from = Math.max(front?.travel.from ?? -Infinity, rear?.travel.from ?? -Infinity);
  const to = Math.min(front?.travel.to ?? Infinity, rear?.travel.to ?? Infinity);
  if (!Number.isFinite(from) || !Number.isFinite(to)) return [];
  const both = Math.max(0, Math.min(-from, to));
  const [low, high] = mode === "heave" ? [Math.min(from, 0), Math.max(to, 0)] : [-both, both];
  const steps = (end: number): number[] => Array.from({ length: STEPS }, (_, i) => (end * (i + 1)) / STEPS);
  return [...steps(low), ...steps(high)];
}

/** Travels of a pure mode across both envelopes, design left out. */
export const travelsIn = (axles: CarAxles, mode: CarMode): readonly Wheels[] =>
  amplitudesOf(axles, mode).map((amplitude) => eachWheel((wheel) => (PATTERNS[mode][wheel] ?? 0) * amplitude));
