/** Where the usual ranges and hard limits of the table come from. */
import type { Limits, UsualRange } from "./word.js";

const practice = "common practice, no published source";

/** A range in SI, seen in practice on competition cars. */
export const seen = (from: number, to: number): UsualRange => ({ from, to, source: practice });

export const positive: Limits = { above: 0 };
export const notNegative: Limits = { atLeast: 0 };
export const aShare: Limits = { atLeast: 0, atMost: 1 };
/** Angles in radians: a quarter turn either way is a car on its side. */
export const lessThanQuarterTurn: Limits = { above: -Math.PI / 2, below: Math.PI / 2 };

export const degrees = (value: number): number => (value * Math.PI) / 180;

/** Standard gravities in m/s². */
export const gravities = (value: number): number => value * 9.80665;
