/**
 * The tyres' horizontal forces: by axle from the balance of the whole car, then by wheel.
 *
 * Lateral: each axle takes what keeps the car from yawing (m a_y by the lever arms of the centre of gravity), its wheels
 * share it as they carry load: F_i = F N_i/(N_L + N_R). Longitudinal: braking by bias, drive by axle (half and half where
 * both are driven); equal left and right, fading out below a twentieth of the load at rest.
 */
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

interface Loaded {
  readonly load: number;
  readonly loadBy: readonly number[];
}

/** Share of the load at rest below which a wheel begins to pass its longitudinal force on to the other one. */
const FADES = 0.05;

/** Weights of both wheels into shares, with the derivative of the first by both loads. */
interface Split {
  readonly share: number;
  readonly byOwn: number;
  readonly byOther: number;
}

function split(own: number, ownSlope: number, other: number, otherSlope: number): Split {
  const sum = own + other;
  if (!(sum > 0)) return { share: 0, byOwn: 0, byOther: 0 };
  return {
    share: own / sum,
    byOwn: (ownSlope * other) / (sum * sum),
    byOther: (-otherSlope * own) / (sum * sum),
  };
}

/** 1 above the limit, falling to 0 with a continuous slope. */
function fade(load: number, limit: number): readonly [number, number] {
  if (load >= limit) return [1, 0];
  const r = load / limit;
  return [r * (2 - r), (2 - 2 * r) / limit];
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
  total: { readonly lateral: number; readonly longitudinal: number },
): readonly RoadForces[] {
  const shares = longitudinalShares(standing, total.longitudinal < 0) ?? { front: 0, atCentre: true };
  return parts.map((own, i) => {
    const other = parts[i ^ 1]!;
    const isFront = i < 2;
    const lateral = total.lateral * (isFront ? standing.frontShare : 1 - standing.frontShare);
    const longitudinal = total.longitudinal * (isFront ? shares.front : 1 - shares.front);
    const across = split(own.load, 1, other.load, 1);
    const [weight, slope] = fade(own.load, FADES * standing.wheels[i]!.load);
    const [otherWeight, otherSlope] = fade(other.load, FADES * standing.wheels[i ^ 1]!.load);
    const along = split(weight, slope, otherWeight, otherSlope);
    return {
      lateral: lateral * across.share,
      lateralBy: gradient(own, other, across, lateral),
      longitudinal: longitudinal * along.share,
      longitudinalBy: gradient(own, other, along, longitudinal),
      atCentre: shares.atCentre,
    };
  });
}

const gradient = (own: Loaded, other: Loaded, { byOwn, byOther }: Split, force: number): readonly number[] =>
  own.loadBy.map((by, j) => force * (byOwn * by + byOther * other.loadBy[j]!));
