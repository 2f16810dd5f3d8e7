/**
 * Puts preload, gap and direction on a curve: the law of a spring as it sits in the car.
 *
 * Deflection is counted from design position plus the seat that trims the axle; `gap` and
 * `preload` hold at design position (seat 0).
 *
 * Invariant: continuous; a spring in its gap carries nothing.
 */
import type { SpringLaw } from "../element.js";
import { type Curve, shifted } from "./curve.js";
import { deflectionAt } from "./inverse.js";
import { pullOnly, pushOnly } from "./one-way.js";

export type Acts = "in-compression" | "in-tension" | "both-ways";

export interface Fitting {
  readonly acts: Acts;
  /** Play before it works, m or rad; on each side for one that acts both ways. */
  readonly gap: number | undefined;
  /** Force that it carries at design position, N or N·m, as it works (positive also in tension). */
  readonly preload: number | undefined;
}

/** What keeps a fitting from being computed. */
export type Unfit = "gap-and-preload" | "preload-out-of-reach";

const sum = (a: Curve, b: Curve): Curve => ({
  force: (x) => a.force(x) + b.force(x),
  rate: (x) => a.rate(x) + b.rate(x),
  energy: (x) => a.energy(x) + b.energy(x),
  constantRate: undefined,
  range: a.range,
  marks: [...(b.marks ?? []), ...(a.marks ?? [])].sort((one, other) => one.at - other.at),
});

function worked(curve: Curve, acts: Acts, gap: number): Curve {
  const pushed = () => shifted(pushOnly(curve), -gap);
  const pulled = () => shifted(pullOnly(curve), gap);
  if (acts === "in-compression") return pushed();
  if (acts === "in-tension") return pulled();
  return gap === 0 ? curve : sum(pushed(), pulled());
}

const law = (curve: Curve, stated: boolean): SpringLaw => ({ kind: "spring", ...curve, stated });

/**
 * The law of a spring.
 *
 * @param curve through the origin where it is free
 * @returns the law, or why gap and preload cannot be met
 */
export function springLaw(curve: Curve, fitting: Fitting): SpringLaw | Unfit {
  const { acts, gap = 0, preload = 0 } = fitting;
  if (gap !== 0 && preload !== 0) return "gap-and-preload";
  const bare = worked(curve, acts, gap);
  const stated = fitting.gap !== undefined || fitting.preload !== undefined;
  if (preload === 0) return law(bare, stated);
  const seat = deflectionAt(bare, acts === "in-tension" ? -preload : preload);
  return seat === undefined ? "preload-out-of-reach" : law(shifted(bare, seat), stated);
}
