/**
 * Anti-dive, anti-lift and anti-squat, by virtual work: how much of the load that braking or driving moves
 * between the axles is carried by the links instead of the springs. All as fractions: 1 is 100 %.
 *
 * Where the force acts: at the contact point carried by the upright if the upright takes the torque (outboard brakes),
 * at the wheel centre if a shaft takes it to the body (inboard brakes, drive shafts).
 */
import type { PointMotion } from "./corner.js";

/** dx/dz of the point where a longitudinal force acts; undefined where it moves horizontally only. */
export function supportSlope(point: PointMotion): number | undefined {
  const slope = point.d[0] / point.d[2];
  return Number.isFinite(slope) ? slope : undefined;
}

/**
 * share · (wheelbase / height of the centre of gravity) · (±dx/dz); + at the front axle, − at the rear.
 * Under braking: anti-dive (front), anti-lift (rear); under power: anti-lift (front), anti-squat (rear).
 * `share`: this axle's part of the whole braking or driving force, 0 … 1. Undefined for a centre of gravity on the ground.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics, ch. 7 (from memory); sign from virtual work.
 */
export function antiFraction(
  axle: "front" | "rear",
  slope: number,
  share: number,
  wheelbase: number,
  height: number,
): number | undefined {
  const fraction = (share * wheelbase * (axle === "front" ? slope : -slope)) / height;
  return Number.isFinite(fraction) ? fraction : undefined;
}
