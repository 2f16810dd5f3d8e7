/**
 * The modes that an element can be for. Sign patterns are told in the help, in the order
 * FL, FR, RL, RR (axle: L, R), bump positive, unit amplitude at every wheel.
 */
import type { Concept } from "./word.js";

export const modeHelp = {
  corner: "one wheel by itself; the element exists on each side",
  heave: "all wheels of its scope together, (+, +, +, +); positive means the body is down",
  roll: "sides against each other, (−, +, −, +); positive lifts the left side of the body",
  pitch: "axles against each other, (+, +, −, −); positive is nose down",
  warp: "diagonals against each other, (−, +, +, −): the road twists, the body does not move",
} as const;

export const axleModes = ["corner", "heave", "roll"] as const;
export const carModes = ["heave", "pitch", "roll", "warp"] as const;

/** The modes that `for` takes where the element stands. */
export function modesIn(concept: Concept): readonly string[] {
  return concept === "car" ? carModes : axleModes;
}
