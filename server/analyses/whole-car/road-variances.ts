/**
 * Mean squares of what moves in a linear car on a random road: σ² = ∫ |H(jω)|² S_d(f) df over the band, in ln f.
 *
 * Channels (left and right together, or opposed) are independent of each other: their mean squares add.
 *
 * Invariant: a car that does not settle has no mean squares; nothing is summed for it.
 */
import { type Accuracy, type Integral, integrate } from "../../maths/quadrature.js";
import type { Rows } from "../../maths/rows.js";
import type { Channel, Driven } from "./channels.js";
import { commonShare, contactFilter, heightDensityInTime, type Sides } from "./road-profile.js";
import { swingingOf } from "./swinging.js";
import type { Operator } from "./transfer.js";

export interface RoadConditions {
  /** G_d(n₀), m³. */
  readonly roughness: number;
  /** m/s. */
  readonly speed: number;
  /** Spatial frequencies that count, cycle/m. */
  readonly band: { readonly from: number; readonly to: number };
  /** Contact length over which a tyre averages, m; 0 for a point. */
  readonly contactLength: number;
  readonly sides: Sides;
  /** Distance of the two tracks that the wheels run in, m: both axles in the same ones. */
  readonly track: number;
}

/** ISO 8608 speaks of 0.01 to 10 cycle/m; waves outside are hills, or texture that a tyre swallows. */
export const USUAL_BAND = { from: 0.01, to: 10 };

/** Octaves of one interval of the first look. */
const OCTAVES = 1;

export interface Question {
  /** Each with the same outputs in the same order. */
  readonly driven: readonly Driven[];
  readonly operators: readonly Operator[];
  /** Of the rear axle's road behind the front's, s. */
  readonly delay: number;
}

/**
 * Mean squares of the outputs.
 *
 * @returns undefined where a transfer function has no value somewhere in the band
 */
export function meanSquares(asked: Question, road: RoadConditions, accuracy: Accuracy): Integral | undefined {
  const edges = bandOf(road);
  if (edges === undefined) return undefined;
  const { of, first } = unlike(asked);
  const density = densityOf(asked, first, road);
  let missing = false;
  const found = integrate(
    (u, out) => {
      if (!density(u, out)) missing = true;
    },
    first.length,
    edges,
    accuracy,
  );
  const values = Float64Array.from(of, (own) => found.values[own]!);
  return missing || !values.every(Number.isFinite) ? undefined : { ...found, values };
}

/** ln f where the band begins, where it is cut, and where it ends; undefined where there is none. */
export function bandOf({ band, speed }: RoadConditions, octaves = OCTAVES): readonly number[] | undefined {
  const [from, to] = [Math.log(band.from * speed), Math.log(band.to * speed)];
  if (!Number.isFinite(from) || !Number.isFinite(to) || !(to > from)) return undefined;
  const parts = Math.ceil((to - from) / (octaves * Math.LN2));
  return Array.from({ length: parts + 1 }, (_, i) => from + ((to - from) * i) / parts);
}

/** At u = ln f: ω, what left and right have in common, and the spectrum of heights over u, m². */
export function heightsAt(
  road: RoadConditions,
  u: number,
): { readonly omega: number; readonly common: number; readonly density: number } {
  const frequency = Math.exp(u);
  const n = frequency / road.speed;
  const density =
    frequency * heightDensityInTime(road.roughness, road.speed, frequency) * contactFilter(n, road.contactLength);
  return { omega: 2 * Math.PI * frequency, common: commonShare(road.sides, n, road.track), density };
}

/** Outputs that have the same mean square whatever the road is (left and right of a mirrored car): each is summed once. */
function unlike({ driven, operators }: Question): {
  readonly of: readonly number[];
  readonly first: readonly number[];
} {
  const first: number[] = [];
  const isLike = (a: number, b: number): boolean =>
    driven.every(({ of }) => of[a] === of[b]) && operators[a]!.every((value, i) => value === operators[b]![i]);
  const of = operators.map((_, output) => {
    const known = first.findIndex((other) => isLike(output, other));
    if (known >= 0) return known;
    first.push(output);
    return first.length - 1;
  });
  return { of, first };
}

/** dσ²/d ln f of some outputs at u = ln f; false where something has no value. */
function densityOf({ driven, operators, delay }: Question, outputs: readonly number[], road: RoadConditions) {
  const adders = driven.map((one) => adderOf(one, operators, outputs, delay));
  return (u: number, out: Float64Array): boolean => {
    const { omega, common, density } = heightsAt(road, u);
    out.fill(0);
    for (const add of adders) if (!add(omega, common, density, out)) return false;
    return true;
  };
}

/** Adds what a car, or a half of it, does at a frequency. */
function adderOf(one: Driven, all: readonly Operator[], outputs: readonly number[], delay: number) {
  const { system, channels, shown } = one;
  const swinging = swingingOf(system);
  const columns = channels.length;
  const road = new Float64Array(2 * swinging.inputs * columns);
  const q = new Float64Array(2 * swinging.freedoms * columns);
  const motion = sparse(shown.map((displacement) => displacement.motion));
  const through = sparse(shown.map((displacement) => displacement.road));
  const squares = new Float64Array(shown.length);
  const of = Uint16Array.from(outputs, (output) => one.of[output]!);
  const operators = Float64Array.from(outputs.flatMap((output) => all[output]!));
  const weights = new Float64Array(columns);
  return (omega: number, common: number, density: number, out: Float64Array): boolean => {
    for (let c = 0; c < columns; c++) weights[c] = (density * (1 + channels[c]!.sign * common)) / 2;
    entered(channels, omega * delay, road);
    if (!swinging.at(omega, road, q, columns)) return false;
    for (let d = 0; d < squares.length; d++) squares[d] = squareOf(d, motion, q, through, road, weights);
    for (let o = 0; o < of.length; o++) {
      // |m₀ + m₁ jω − m₂ ω²|²
      const real = operators[3 * o]! - operators[3 * o + 2]! * omega * omega;
      const imaginary = operators[3 * o + 1]! * omega;
      out[o]! += (real * real + imaginary * imaginary) * squares[of[o]!]!;
    }
    return true;
  };
}

/** Heights × channels as they stand with the rear axle's late by an angle, rad. */
export function entered(channels: readonly Channel[], late: number, road: Float64Array, width = channels.length): void {
  const cos = Math.cos(late);
  const sin = -Math.sin(late);
  for (let c = 0; c < channels.length; c++) {
    const { front, rear } = channels[c]!;
    for (let i = 0; i < front.length; i++) {
      const at = 2 * (i * width + c);
      road[at] = front[i]! + rear[i]! * cos;
      road[at + 1] = rear[i]! * sin;
    }
  }
}

/** Motion and road of each displacement without their noughts: entry `from[d]` to `from[d + 1]` adds `share` of number `index`. */
interface Sparse {
  readonly from: Uint16Array;
  readonly index: Uint16Array;
  readonly share: Float64Array;
}

function sparse(rows: Rows): Sparse {
  const [from, index, share]: [number[], number[], number[]] = [[0], [], []];
  for (const row of rows) {
    for (let i = 0; i < row.length; i++) {
      if (row[i] === 0) continue;
      index.push(i);
      share.push(row[i]!);
    }
    from.push(index.length);
  }
  return { from: Uint16Array.from(from), index: Uint16Array.from(index), share: Float64Array.from(share) };
}

/** Σ weight |motion · q + through · road|² of displacement d, over the channels. */
function squareOf(
  d: number,
  motion: Sparse,
  q: Float64Array,
  through: Sparse,
  road: Float64Array,
  weights: Float64Array,
): number {
  const columns = weights.length;
  let sum = 0;
  for (let c = 0; c < columns; c++) {
    let re = 0;
    let im = 0;
    for (let i = motion.from[d]!; i < motion.from[d + 1]!; i++) {
      const at = 2 * (motion.index[i]! * columns + c);
      const share = motion.share[i]!;
      re += share * q[at]!;
      im += share * q[at + 1]!;
    }
    for (let i = through.from[d]!; i < through.from[d + 1]!; i++) {
      const at = 2 * (through.index[i]! * columns + c);
      const share = through.share[i]!;
      re += share * road[at]!;
      im += share * road[at + 1]!;
    }
    sum += weights[c]! * (re * re + im * im);
  }
  return sum;
}
