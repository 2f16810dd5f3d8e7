/**
 * What each wheel carries on the flat patch, with the body level at its ride heights as the mechanic has set it.
 *
 * Three balances leave one of the four loads open: how much the diagonals carry. The seats of an axle that has one on
 * each side can be set for any difference between its wheels; the mechanic uses that for the cross weight.
 *
 *   N_fl + N_fr = s m,  N_rl + N_rr = (1 − s) m
 *   (N_fl − N_fr) t_f/2 + (N_rl − N_rr) t_r/2 = m y          y: centre of gravity left of y = 0
 *   N_fr + N_rl = c m                                        c: cross weight
 *
 * with loads as masses, kg. An axle with a single seat (a heave spring, a mono-shock) carries its two wheels alike, and
 * the other one takes what y asks; then the cross weight is what comes of it. Source: statics; that the last line is
 * the mechanic's choice is common practice, no published source.
 */
import type { AxleName } from "./mechanism.js";
import type { Known } from "./masses.js";

export interface Standing {
  readonly total: Known;
  readonly frontShare: Known;
  /** Of the centre of gravity, m. */
  readonly left: Known;
  readonly tracks: { readonly [A in AxleName]: number | undefined };
  /** Wanted cross weight, 0 … 1. */
  readonly crossWeight: number;
  /** Whether the axle can hold its two wheels at different loads. */
  readonly hasSeatEachSide: { readonly [A in AxleName]: boolean };
}

/** Left less right, kg, of each axle. */
export type Differences = { readonly [A in AxleName]: number };

const NO_SEATS =
  "neither axle is trimmed on each side, so that the body cannot be held level under a centre of gravity beside the centre plane";

/** By how much more the left wheel of each axle carries than the right one, or why that is not known. */
export function differencesOf(standing: Standing): Differences | string {
  const { total, left, crossWeight, tracks } = standing;
  const { front: f, rear: r } = standing.hasSeatEachSide;
  if (typeof left === "string") return left;
  const wantsMore = crossWeight !== 0.5 && f && r;
  if (left === 0 && !wantsMore) return { front: 0, rear: 0 };
  if (typeof total === "string") return total;
  if (!f && !r) return NO_SEATS;
  const { front, rear } = tracks;
  if (front === undefined) return "the front axle has no track";
  if (rear === undefined) return "the rear axle has no track";
  const moment = 2 * total * left;
  if (!r) return { front: moment / front, rear: 0 };
  if (!f) return { front: 0, rear: moment / rear };
  const diagonal = (2 * crossWeight - 1) * total;
  const atFront = (moment - rear * diagonal) / (front + rear);
  return { front: atFront, rear: atFront + diagonal };
}

/** FL, FR, RL, RR, kg. */
export type CornerLoads = readonly [number, number, number, number];

export function cornerLoads(standing: Standing): CornerLoads | string {
  const { total, frontShare } = standing;
  const more = differencesOf(standing);
  if (typeof total === "string") return total;
  if (typeof frontShare === "string") return frontShare;
  if (typeof more === "string") return more;
  const front = total * frontShare;
  const rear = total - front;
  return [(front + more.front) / 2, (front - more.front) / 2, (rear + more.rear) / 2, (rear - more.rear) / 2];
}
