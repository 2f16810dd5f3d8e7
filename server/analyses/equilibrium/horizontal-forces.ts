/**
 * The tyres' horizontal forces: by axle from the balance of the whole car, then by wheel.
 *
 * Lateral: each axle takes what keeps the car from yawing (m a_y by the lever arms of the centre of gravity), its wheels
 * share it as they carry load: F_i = F N_i/(N_L + N_R). Longitudinal: braking by bias, drive by axle (half and half where
 * both are driven); equal left and right, unless one wheel carries less than a tenth of its axle: from there on its part
 * fades out, so that a lifted wheel passes all of it to the other.
 */
import { nothing } from "../../maths/rows.js";
import { FREEDOMS } from "./position.js";
import type { Standing } from "./standing.js";

export interface RoadForces {
  readonly lateral: number;
  readonly longitudinal: number;
  /** By the seven freedoms. */
  readonly lateralBy: readonly number[];
  readonly longitudinalBy: readonly number[];
  /** True where the longitudinal force is reacted at the wheel centre: by a drive shaft or an inboard brake. */
  readonly atCentre: boolean;
}

/** Vertical load of a tyre, N. */
export interface Loaded {
  readonly load: number;
  /** By the seven freedoms. */
  readonly loadBy: readonly number[];
}

/** Share of its axle's load below which a wheel passes its longitudinal force on to the other one. */
const FADES = 0.1;

/** A wheel's part of a force on its axle, with the derivatives by both loads. */
interface Split {
  readonly share: number;
  readonly byOwn: number;
  readonly byOther: number;
}

/** @param law the share against the wheel's part of the axle's load, with its slope */
function split(own: number, other: number, law: (part: number) => readonly [number, number]): Split {
  const sum = own + other;
  if (!(sum > 0)) return { share: 0, byOwn: 0, byOther: 0 };
  const [share, slope] = law(own / sum);
  return { share, byOwn: (slope * other) / (sum * sum), byOther: (-slope * own) / (sum * sum) };
}

const asLoaded = (part: number): readonly [number, number] => [part, 1];

/** One half, going over to 0 and 1 at the ends with a continuous slope. */
function evenly(part: number): readonly [number, number] {
  const small = Math.min(part, 1 - part) / FADES;
  if (small >= 1) return [0.5, 0];
  const [share, slope] = [(small * (2 - small)) / 2, (1 - small) / FADES];
  return part < 0.5 ? [share, slope] : [1 - share, slope];
}

/** What braking and drive are shared by; undefined where the car does not say it. */
export function longitudinalShares(
  { car }: Standing,
  isBraking: boolean,
): { readonly front: number; readonly atCentre: boolean } | undefined {
  const { brakes, drive } = car;
  if (isBraking) return brakes && { front: brakes.front, atCentre: brakes.mounting === "inboard" };
  return drive && { front: drive === "front" ? 1 : drive === "rear" ? 0 : 0.5, atCentre: true };
}

/** @param total of all four tyres, N: to the left, and forwards */
export function horizontalForces(
  standing: Standing,
  parts: readonly Loaded[],
  total: {
    readonly lateral: number;
    readonly longitudinal: number;
    /** By the seven freedoms, where drag follows the ride heights. */
    readonly longitudinalBy: readonly number[] | undefined;
  },
): readonly RoadForces[] {
  const shares = longitudinalShares(standing, total.longitudinal < 0) ?? { front: 0, atCentre: true };
  return parts.map((own, i) => {
    const other = parts[i ^ 1]!;
    const isFront = i < 2;
    const lateral = total.lateral * (isFront ? standing.frontShare : 1 - standing.frontShare);
    const part = isFront ? shares.front : 1 - shares.front;
    const longitudinal = total.longitudinal * part;
    const across = split(own.load, other.load, asLoaded);
    const along = split(own.load, other.load, evenly);
    return {
      lateral: lateral * across.share,
      lateralBy: gradient(own, other, across, lateral),
      longitudinal: longitudinal * along.share,
      longitudinalBy: plus(gradient(own, other, along, longitudinal), total.longitudinalBy, part * along.share),
      atCentre: shares.atCentre,
    };
  });
}

const NONE: readonly number[] = nothing(FREEDOMS);

/** Of a force on an axle that is split, by the seven freedoms. */
function gradient(own: Loaded, other: Loaded, { byOwn, byOther }: Split, force: number): readonly number[] {
  if (force === 0 || (byOwn === 0 && byOther === 0)) return NONE;
  const by = nothing(FREEDOMS);
  for (let j = 0; j < FREEDOMS; j++) by[j] = force * (byOwn * own.loadBy[j]! + byOther * other.loadBy[j]!);
  return by;
}

const plus = (a: readonly number[], b: readonly number[] | undefined, by: number): readonly number[] =>
  b === undefined ? a : a.map((value, j) => value + by * b[j]!);
