/**
 * The straight line that an element of any law has on a random road, nearest to it in the mean square for movements that
 * are normally distributed: c = E[F v]/E[v²] of a damper, k = E[F s]/E[s²] of a spring with its gaps and stops, and the
 * mean force E[F], which moves the mean ride height.
 *
 * Source: Booton's and Caughey's statistical linearisation (from memory); for a knee from c₁ to c₂ at v_k it is
 * c₂ + (c₁ − c₂) erf(v_k/(σ√2)).
 */
import type { DamperLaw } from "../../elements/element.js";
import { type GaussianLine, gaussianLine } from "../../maths/gaussian-mean.js";
import type { Carrier } from "../equilibrium/carriers.js";
import { forceOf, rateOf } from "../equilibrium/carriers.js";

const isFinite = ({ mean, slope }: GaussianLine): boolean => Number.isFinite(mean) && Number.isFinite(slope);

/** @param sigma RMS speed of deflection; at none it is the low-speed damping */
export function damperOnRoad(law: DamperLaw, sigma: number): GaussianLine {
  const none = { mean: 0, slope: law.lowSpeed };
  if (!(sigma > 0) || !Number.isFinite(sigma)) return none;
  const line = gaussianLine(
    (v) => law.force(v),
    sigma,
    (law.marks ?? []).map(({ at }) => at),
  );
  return isFinite(line) ? line : none;
}

/** @param at its deflection in the mean @param sigma RMS of what it does about that; at none it is the law itself */
export function springOnRoad(carrier: Carrier, at: number, sigma: number): GaussianLine {
  const none = { mean: forceOf(carrier, at), slope: rateOf(carrier, at) };
  if (!(sigma > 0) || !Number.isFinite(sigma)) return none;
  const { law } = carrier.element;
  const marks = law?.kind === "spring" ? (law.marks ?? []) : [];
  const line = gaussianLine(
    (s) => forceOf(carrier, at + s),
    sigma,
    marks.map((mark) => mark.at - carrier.seat - at),
  );
  return isFinite(line) ? line : none;
}
