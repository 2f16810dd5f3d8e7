/**
 * Modes of a car about a case: eigenvalues λ of M q̈ + C q̇ + K q = 0 with inerters in M, the air's height slopes and their lag.
 *
 * An oscillating mode has f = |λ|/2π and ζ = −Re λ/|λ|; an overdamped pair is two real roots and is shown as such. A real
 * root above zero is a static divergence; a pair with a positive real part swings up (`growing`): two different things.
 *
 * A mirrored car is taken as two smaller ones (`halves.ts`): the same modes, in a third of the time.
 *
 * Invariant: as many roots as states; nothing is paired, merged or left out.
 */
import { applied, type Rows } from "../../maths/rows.js";
import type { WholeCar } from "./car-data.js";
import { carDynamics } from "./dynamics.js";
import { type ModeName, nameOf, type Shape, type Shares, sharesOf } from "./mode-names.js";
import { type Part, partsOf } from "./parts.js";

export type Root =
  | {
      readonly kind: "oscillation";
      /** Re λ, 1/s, and Im λ > 0, rad/s. */
      readonly re: number;
      readonly im: number;
      /** |λ|/2π, Hz. */
      readonly frequency: number;
      /** Im λ/2π, Hz. */
      readonly dampedFrequency: number;
      /** −Re λ/|λ|; negative where it grows. */
      readonly dampingRatio: number;
    }
  /** One real root, 1/s; its time constant is −1/re. */
  | { readonly kind: "decay" | "divergence"; readonly re: number };

export interface Mode {
  readonly name: ModeName;
  readonly root: Root;
  /** Over [z, φ, θ, z_FL, z_FR, z_RL, z_RR]; the largest amplitude by energy is 1 + 0i. */
  readonly shape: Shape;
  readonly shares: Shares;
}

export type Stability =
  | { readonly kind: "stable" }
  | { readonly kind: "static-divergence" | "growing-oscillation"; readonly mode: Mode };

export interface Modes {
  readonly kind: "modes";
  /** By |λ|, rising. */
  readonly modes: readonly Mode[];
  readonly stability: Stability;
}

/** What keeps modes from being computed: a mass that is not above zero, or a number that is none. */
export interface NoModes {
  readonly kind: "no-modes";
}

/** Real parts this small against the fastest root count as zero. */
const NEUTRAL = 1e-10;

export function modesOf(car: WholeCar): Modes | NoModes {
  const parts = partsOf(carDynamics(car));
  return parts === undefined ? { kind: "no-modes" } : modesOfParts(car, parts);
}

/** @param parts of this car */
export function modesOfParts(car: WholeCar, parts: readonly Part[]): Modes {
  const modes = parts.flatMap((part) => modesOfPart(car, part));
  modes.sort((a, b) => size(a.root) - size(b.root));
  return { kind: "modes", modes, stability: stabilityOf(modes) };
}

const size = (root: Root): number => (root.kind === "oscillation" ? Math.hypot(root.re, root.im) : Math.abs(root.re));

function modesOfPart(car: WholeCar, { space, spectrum, half }: Part): Mode[] {
  const modes: Mode[] = [];
  for (let k = 0; k < spectrum.re.length; k++) {
    const pair = spectrum.im[k]! > 0;
    const column = (of: number): number[] => space.scale.map((scale, i) => spectrum.basis[i]![of]! / scale);
    const re = column(k);
    const im = pair ? column(k + 1) : re.map(() => 0);
    const part = { re: re.slice(0, space.freedoms), im: im.slice(0, space.freedoms) };
    const shape = half === undefined ? part : expanded(part, half.coordinates);
    const shares = sharesOf(car, shape);
    const name = isAir(spectrum.basis, k, pair, space.freedoms) ? "air" : nameOf(shape, shares);
    modes.push({ name, root: rootOf(spectrum.re[k]!, spectrum.im[k]!), shape: normalised(shape, shares), shares });
    if (pair) k++;
  }
  return modes;
}

function rootOf(re: number, im: number): Root {
  if (im === 0) return { kind: re > 0 ? "divergence" : "decay", re };
  const length = Math.hypot(re, im);
  const [frequency, dampedFrequency] = [length / (2 * Math.PI), im / (2 * Math.PI)];
  return { kind: "oscillation", re, im, frequency, dampedFrequency, dampingRatio: -re / length };
}

const expanded = ({ re, im }: Shape, rows: Rows): Shape => ({ re: applied(rows, re), im: applied(rows, im) });

/** Whether a real root sits in the lagging heights: their part of the scaled states outweighs q and v. */
function isAir(basis: readonly (readonly number[])[], k: number, pair: boolean, freedoms: number): boolean {
  if (pair || basis.length <= 2 * freedoms) return false;
  let [moving, lagging] = [0, 0];
  for (const [i, row] of basis.entries()) {
    if (i < 2 * freedoms) moving += row[k]! ** 2;
    else lagging += row[k]! ** 2;
  }
  return lagging > moving;
}

/** Turned and scaled so that the freedom with the most energy has amplitude 1. */
function normalised({ re, im }: Shape, { heave, roll, pitch, wheels }: Shares): Shape {
  const energies = [heave, roll, pitch, ...wheels];
  const lead = energies.indexOf(Math.max(...energies));
  const [a, b] = [re[lead]!, im[lead]!];
  const square = a * a + b * b;
  if (!(square > 0)) return { re, im };
  return {
    re: re.map((value, i) => (value * a + im[i]! * b) / square),
    im: im.map((value, i) => (value * a - re[i]! * b) / square),
  };
}

/** The fastest growing root decides. */
function stabilityOf(modes: readonly Mode[]): Stability {
  const floor = NEUTRAL * Math.max(...modes.map((mode) => size(mode.root)));
  let worst: Mode | undefined;
  for (const mode of modes) {
    if (mode.root.re > Math.max(floor, worst?.root.re ?? 0)) worst = mode;
  }
  if (worst === undefined) return { kind: "stable" };
  return { kind: worst.root.kind === "oscillation" ? "growing-oscillation" : "static-divergence", mode: worst };
}
