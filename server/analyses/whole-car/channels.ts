/**
 * Splits a car on a road into independent random heights: left and right together, and opposed.
 *
 * r_L = r_t + r_o, r_R = r_t − r_o with spectra (1 + γ)/2 and (1 − γ)/2 of the road's. A mirrored car meets each with
 * one of its halves, any other car both with all of itself.
 */
import { product, type Rows } from "../../maths/rows.js";
import { halvesOf, ROAD_OPPOSED, ROAD_TOGETHER } from "./halves.js";
import type { LinearSystem } from "./linear-system.js";
import type { Sides } from "./road-profile.js";
import type { Displacement, Operator } from "./transfer.js";

/** What moves, over the seven freedoms and four heights. */
export interface Output extends Displacement {
  readonly operator: Operator;
}

/** One random height that enters at the front and, later, at the rear. */
export interface Channel {
  /** How much each of the system's heights takes of it: at the front, and of the delayed one. */
  readonly front: readonly number[];
  readonly rear: readonly number[];
  /** 1 where left and right have it alike, −1 where opposed: of what both have in common γ it has (1 + sign γ)/2. */
  readonly sign: 1 | -1;
}

/** A car, or a half of it, with the heights that it meets. */
export interface Driven {
  readonly system: LinearSystem;
  readonly channels: readonly Channel[];
  /** By output: its displacement among those shown, each of which is told once whatever rests on it. */
  readonly of: readonly number[];
  readonly shown: readonly Displacement[];
}

export const TOGETHER = channelOf(ROAD_TOGETHER, 1);
export const OPPOSED = channelOf(ROAD_OPPOSED, -1);

export function drivenOf(system: LinearSystem, sides: Sides, outputs: readonly Output[]): readonly Driven[] {
  const halves = halvesOf(system);
  if (halves === undefined)
    return [{ system, channels: sides === "same" ? [TOGETHER] : [TOGETHER, OPPOSED], ...told(outputs) }];
  const half = (one: typeof halves.together, sign: 1 | -1): Driven => ({
    system: one,
    channels: [channelOf(UNIT, sign)],
    ...told(outputs.map((output) => inHalf(output, one.coordinates, one.inputs))),
  });
  const together = half(halves.together, 1);
  return sides === "same" ? [together] : [together, half(halves.opposed, -1)];
}

function channelOf(columns: Rows, sign: 1 | -1): Channel {
  return { front: columns.map((row) => row[0]!), rear: columns.map((row) => row[1]!), sign };
}

const UNIT: Rows = [
  [1, 0],
  [0, 1],
];

const inHalf = ({ motion, road }: Displacement, coordinates: Rows, inputs: Rows): Displacement => ({
  motion: product([motion], coordinates)[0]!,
  road: product([road], inputs)[0]!,
});

/** Each displacement once: one that is another's opposite has the same mean square. */
function told(all: readonly Displacement[]): Pick<Driven, "of" | "shown"> {
  const shown: Displacement[] = [];
  const of = all.map((one) => {
    const known = shown.findIndex((other) => isSame(one, other, 1) || isSame(one, other, -1));
    if (known >= 0) return known;
    shown.push({ motion: one.motion, road: one.road });
    return shown.length - 1;
  });
  return { of, shown };
}

const isSame = (a: Displacement, b: Displacement, sign: 1 | -1): boolean =>
  isTimes(a.motion, b.motion, sign) && isTimes(a.road, b.road, sign);

function isTimes(a: readonly number[], b: readonly number[], sign: 1 | -1): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== sign * b[i]!) return false;
  return true;
}
