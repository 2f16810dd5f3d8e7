/**
 * Mean squares of what moves in a linear car on a random road: σ² = ∫ |H(jω)|² S_d(f) df over the band, in ln f.
 *
 * Channels (left and right together, or opposed) are independent of each other: their mean squares add.
 *
 * Invariant: a car that does not settle has no mean squares; nothing is summed for it.
 */
import { type Accuracy, type Integral, integrate } from "../../maths/quadrature.js";
import type { Channel } from "./channels.js";
import { commonShare, contactFilter, heightDensityInTime, type Sides } from "./road-profile.js";

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
const OCTAVES = 2;

/**
 * Mean squares of the outputs, which every channel has in the same order.
 *
 * @returns undefined where a transfer function has no value somewhere in the band
 */
export function meanSquares(
  channels: readonly Channel[],
  road: RoadConditions,
  accuracy: Accuracy,
): Integral | undefined {
  const edges = bandOf(road);
  if (edges === undefined) return undefined;
  const { of, first } = unlike(channels);
  const density = densityOf(channels, first, road);
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
function unlike(channels: readonly Channel[]): { readonly of: readonly number[]; readonly first: readonly number[] } {
  const first: number[] = [];
  const operators = channels[0]?.operators ?? [];
  const isLike = (a: number, b: number): boolean =>
    channels.every(({ of }) => of[a] === of[b]) && operators[a]!.every((value, i) => value === operators[b]![i]);
  const of = operators.map((_, output) => {
    const known = first.findIndex((other) => isLike(output, other));
    if (known >= 0) return known;
    first.push(output);
    return first.length - 1;
  });
  return { of, first };
}

/** dσ²/d ln f of some outputs at u = ln f; false where something has no value. */
function densityOf(channels: readonly Channel[], outputs: readonly number[], road: RoadConditions) {
  const adders = channels.map((channel) => adderOf(channel, outputs));
  return (u: number, out: Float64Array): boolean => {
    const { omega, common, density } = heightsAt(road, u);
    out.fill(0);
    for (const add of adders) if (!add(omega, common, density, out)) return false;
    return true;
  };
}

/** Adds what one channel does at a frequency. */
function adderOf(channel: Channel, outputs: readonly number[]) {
  const { responder, front, rear, delay, sign, displacements } = channel;
  const heights = new Float64Array(2 * front.length);
  const answer = new Float64Array(2 * displacements);
  const of = Uint16Array.from(outputs, (output) => channel.of[output]!);
  const operators = Float64Array.from(outputs.flatMap((output) => channel.operators[output]!));
  return (omega: number, common: number, density: number, out: Float64Array): boolean => {
    const own = (density * (1 + sign * common)) / 2;
    if (own === 0) return true;
    const cos = Math.cos(omega * delay);
    const sin = -Math.sin(omega * delay);
    for (let c = 0; c < front.length; c++) {
      heights[2 * c] = front[c]! + rear[c]! * cos;
      heights[2 * c + 1] = rear[c]! * sin;
    }
    if (!responder.at(omega, heights, answer)) return false;
    for (let o = 0; o < of.length; o++) {
      const at = 2 * of[o]!;
      const re = answer[at]!;
      const im = answer[at + 1]!;
      // |m₀ + m₁ jω − m₂ ω²|²
      const real = operators[3 * o]! - operators[3 * o + 2]! * omega * omega;
      const imaginary = operators[3 * o + 1]! * omega;
      out[o]! += own * (real * real + imaginary * imaginary) * (re * re + im * im);
    }
    return true;
  };
}
