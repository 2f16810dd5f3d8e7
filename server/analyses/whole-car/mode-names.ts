/**
 * What a mode is called: by what moves in it, weighed with kinetic energy.
 *
 * Words after SAE J670: wheel hop, parallel hop (both wheels of an axle alike), tramp (opposed).
 */
import type { WholeCar } from "./car-data.js";

export type BodyMotion = "heave" | "roll" | "pitch";
type AxleHop = "parallel-hop" | "tramp" | "left-hop" | "right-hop" | "hop";
export type ModeName =
  | BodyMotion
  | `${"front" | "rear"}-${AxleHop}`
  /** Wheels of both axles together, in the sign patterns of wheel travel; `warp` is (−, +, +, −). */
  | "hop-heave"
  | "hop-pitch"
  | "hop-roll"
  | "warp"
  /** A root of the lagging air rather than of anything that moves. */
  | "air";

/** A complex amplitude for each of q. */
export interface Shape {
  readonly re: readonly number[];
  readonly im: readonly number[];
}

/** Shares of the kinetic energy; together 1. */
export interface Shares {
  readonly heave: number;
  readonly roll: number;
  readonly pitch: number;
  /** FL, FR, RL, RR. */
  readonly wheels: readonly number[];
}

/** What has this much of a thing has it alone. */
const ALONE = 0.75;

/** Share of each freedom's mass × amplitude². Inerters are left out: their energy belongs to two places. */
export function sharesOf(car: WholeCar, { re, im }: Shape): Shares {
  const { mass, rollInertia, pitchInertia } = car.sprung;
  const wheels = [car.front.left, car.front.right, car.rear.left, car.rear.right].map((w) => w.unsprungMass);
  const energies = [mass, rollInertia, pitchInertia, ...wheels].map((m, i) => m * (re[i]! ** 2 + im[i]! ** 2));
  const total = energies.reduce((sum, value) => sum + value, 0);
  const [heave, roll, pitch, ...rest] = energies.map((value) => (total > 0 ? value / total : 0));
  return { heave: heave!, roll: roll!, pitch: pitch!, wheels: rest };
}

export function nameOf(shape: Shape, shares: Shares): ModeName {
  const { heave, roll, pitch } = shares;
  if (heave + roll + pitch >= 0.5) {
    if (heave >= roll && heave >= pitch) return "heave";
    return roll >= pitch ? "roll" : "pitch";
  }
  const [fl, fr, rl, rr] = shares.wheels as [number, number, number, number];
  const front = (fl + fr) / (fl + fr + rl + rr);
  if (front >= ALONE) return `front-${hopOf(shape, 3, fl / (fl + fr))}`;
  if (front <= 1 - ALONE) return `rear-${hopOf(shape, 5, rl / (rl + rr))}`;
  return patternOf(shape);
}

/** Energy of the sum of two amplitudes over that of both. */
function alike({ re, im }: Shape, left: number): number {
  const [sumRe, sumIm] = [re[left]! + re[left + 1]!, im[left]! + im[left + 1]!];
  const both = re[left]! ** 2 + im[left]! ** 2 + re[left + 1]! ** 2 + im[left + 1]! ** 2;
  return (sumRe ** 2 + sumIm ** 2) / (2 * both);
}

function hopOf(shape: Shape, left: number, leftShare: number): AxleHop {
  const together = alike(shape, left);
  if (together >= ALONE) return "parallel-hop";
  if (together <= 1 - ALONE) return "tramp";
  if (leftShare >= ALONE) return "left-hop";
  return leftShare <= 1 - ALONE ? "right-hop" : "hop";
}

const PATTERNS = [
  ["hop-heave", [1, 1, 1, 1]],
  ["hop-pitch", [1, 1, -1, -1]],
  ["hop-roll", [-1, 1, -1, 1]],
  ["warp", [-1, 1, 1, -1]],
] as const;

function patternOf({ re, im }: Shape): ModeName {
  let best: { readonly name: ModeName; readonly size: number } = { name: "warp", size: -1 };
  for (const [name, signs] of PATTERNS) {
    const along = (part: readonly number[]): number => signs.reduce((total, sign, i) => total + sign * part[3 + i]!, 0);
    const size = along(re) ** 2 + along(im) ** 2;
    if (size > best.size) best = { name, size };
  }
  return best.name;
}
