/**
 * What each dimension is made of, as exponents of the base dimensions.
 *
 * Angle is kept as a base of its own, so that a moment (N*m) and a torsional rate (N*m/rad) are
 * not taken for each other; so is the turn of an adjuster, which is never an angle of the car.
 */
import type { DimensionName } from "./word.js";

export interface Exponents {
  readonly length: number;
  readonly mass: number;
  readonly time: number;
  readonly angle: number;
  readonly temperature: number;
  readonly turn: number;
}

export const baseDimensions = ["length", "mass", "time", "angle", "temperature", "turn"] as const;

const of = (exponents: Partial<Exponents>): Exponents => ({
  length: 0,
  mass: 0,
  time: 0,
  angle: 0,
  temperature: 0,
  turn: 0,
  ...exponents,
});

/** `any` is left out: it is decided by what the value stands for. */
export const dimensions: Readonly<Record<Exclude<DimensionName, "any">, Exponents>> = {
  number: of({}),
  count: of({}),
  share: of({}),
  length: of({ length: 1 }),
  mass: of({ mass: 1 }),
  time: of({ time: 1 }),
  angle: of({ angle: 1 }),
  area: of({ length: 2 }),
  "piston-area": of({ length: 2 }),
  volume: of({ length: 3 }),
  speed: of({ length: 1, time: -1 }),
  "damper-speed": of({ length: 1, time: -1 }),
  "angular-speed": of({ angle: 1, time: -1 }),
  acceleration: of({ length: 1, time: -2 }),
  force: of({ mass: 1, length: 1, time: -2 }),
  moment: of({ mass: 1, length: 2, time: -2 }),
  pressure: of({ mass: 1, length: -1, time: -2 }),
  modulus: of({ mass: 1, length: -1, time: -2 }),
  stress: of({ mass: 1, length: -1, time: -2 }),
  rate: of({ mass: 1, time: -2 }),
  "torsional-rate": of({ mass: 1, length: 2, time: -2, angle: -1 }),
  damping: of({ mass: 1, time: -1 }),
  "torsional-damping": of({ mass: 1, length: 2, time: -1, angle: -1 }),
  inertia: of({ mass: 1, length: 2 }),
  thread: of({ length: 1, turn: -1 }),
  turns: of({ turn: 1 }),
  "area-slope": of({ length: 1 }),
  "angle-per-length": of({ angle: 1, length: -1 }),
  "angle-per-acceleration": of({ angle: 1, length: -1, time: 2 }),
  "per-length": of({ length: -1 }),
  "flow-resistance": of({ mass: 1, length: -4, time: -1 }),
  density: of({ mass: 1, length: -3 }),
  temperature: of({ temperature: 1 }),
  frequency: of({ time: -1 }),
};
