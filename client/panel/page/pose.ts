/**
 * A pose of the car, as the sliders state it, and the wheel travels that it comes to.
 *
 * Signs as everywhere (ISO 8855): roll positive lifts the left side, pitch positive is nose down, travel is bump positive,
 * heave positive is body down. All in m and rad; angles are taken as small (travel is angle times arm), as the analyses do.
 *
 * Invariant: a travel is linear in each motion, so what a motion may still do is closed form.
 */

export type Motion = "heave" | "roll" | "pitch" | "single" | "steer";
export type AxleName = "front" | "rear";
export type SideName = "left" | "right";

export type Pose = Readonly<Record<Motion, number>>;

export const AT_REST: Pose = { heave: 0, roll: 0, pitch: 0, single: 0, steer: 0 };

/** What of the car turns an angle into travels, m. */
export interface Arms {
  readonly track: number;
  /** Between the axles; pitch turns about the middle of it. */
  readonly wheelbase: number;
  /** The axle whose left wheel `single` moves. */
  readonly singleAxle: AxleName;
}

export interface CornerName {
  readonly axle: AxleName;
  readonly side: SideName;
}

/** d(travel)/d(motion): m per m, or m per rad. Steer moves no wheel up or down by itself. */
export function gain(motion: Motion, { axle, side }: CornerName, { track, wheelbase, singleAxle }: Arms): number {
  switch (motion) {
    case "heave":
      return 1;
    case "roll":
      return side === "left" ? -track / 2 : track / 2;
    case "pitch":
      return axle === "front" ? wheelbase / 2 : -wheelbase / 2;
    case "single":
      return side === "left" && axle === singleAxle ? 1 : 0;
    case "steer":
      return 0;
  }
}

const MOVES_WHEELS: readonly Motion[] = ["heave", "roll", "pitch", "single"];

export const travelOf = (pose: Pose, corner: CornerName, arms: Arms): number =>
  MOVES_WHEELS.reduce((travel, motion) => travel + gain(motion, corner, arms) * pose[motion], 0);

/** The same pose with every motion but these at rest. */
export const only = (pose: Pose, ...motions: readonly Motion[]): Pose =>
  Object.fromEntries(
    Object.entries(AT_REST).map(([motion, rest]) => [
      motion,
      motions.includes(motion as Motion) ? pose[motion as Motion] : rest,
    ]),
  ) as Pose;

/** How far a corner can go, and why not further. */
export interface CornerRange extends CornerName {
  readonly arms: Arms;
  readonly from: number;
  readonly to: number;
}

export interface Limit {
  readonly at: number;
  /** The corner that ends there, and at which end of its travel. */
  readonly corner: CornerRange | undefined;
  readonly end: "droop" | "bump" | undefined;
}

export interface Allowed {
  readonly low: Limit;
  readonly high: Limit;
}

/** How far one motion can go while the others stay, within the slider's own ends. */
export function allowed(
  motion: Motion,
  pose: Pose,
  corners: readonly CornerRange[],
  ends: { readonly from: number; readonly to: number },
): Allowed {
  let low: Limit = { at: ends.from, corner: undefined, end: undefined };
  let high: Limit = { at: ends.to, corner: undefined, end: undefined };
  for (const corner of corners) {
    const k = gain(motion, corner, corner.arms);
    if (k === 0) continue;
    const rest = travelOf({ ...pose, [motion]: 0 }, corner, corner.arms);
    const droop: Limit = { at: (corner.from - rest) / k, corner, end: "droop" };
    const bump: Limit = { at: (corner.to - rest) / k, corner, end: "bump" };
    const [first, last] = k > 0 ? [droop, bump] : [bump, droop];
    if (first.at > low.at) low = first;
    if (last.at < high.at) high = last;
  }
  return { low, high };
}

/** The pose with one motion changed as far as it can be, and what stopped it. */
export function moved(
  pose: Pose,
  motion: Motion,
  to: number,
  corners: readonly CornerRange[],
  ends: { readonly from: number; readonly to: number },
): { readonly pose: Pose; readonly stopped: Limit | undefined } {
  const { low, high } = allowed(motion, pose, corners, ends);
  if (low.at > high.at) return { pose, stopped: low };
  const at = Math.min(high.at, Math.max(low.at, to));
  const stopped = to > high.at ? high : to < low.at ? low : undefined;
  return { pose: { ...pose, [motion]: at }, stopped };
}

/** After the car has changed: every motion drawn back by the same share until no wheel is beyond its travel. */
export function drawnBack(pose: Pose, corners: readonly CornerRange[]): Pose {
  const share = corners.reduce((least, corner) => {
    const travel = travelOf(pose, corner, corner.arms);
    const limit = travel > 0 ? corner.to : corner.from;
    return travel !== 0 && Math.abs(travel) > Math.abs(limit) ? Math.min(least, Math.max(0, limit / travel)) : least;
  }, 1);
  if (share === 1) return pose;
  const scaled = MOVES_WHEELS.map((motion) => [motion, pose[motion] * share] as const);
  return { ...pose, ...Object.fromEntries(scaled) };
}
