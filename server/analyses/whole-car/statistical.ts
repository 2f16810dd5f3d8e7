/**
 * The damping that a damper of any law has on a random road: the straight line nearest to it in the mean square, for
 * speeds that are normally distributed about nought, c = E[F v]/E[v²].
 *
 * Source: Booton's and Caughey's statistical linearisation (from memory); for a knee from c₁ to c₂ at v_k it is
 * c₂ + (c₁ − c₂) erf(v_k/(σ√2)).
 */
import type { DamperLaw } from "../../elements/element.js";
import { integrate } from "../../maths/quadrature.js";

/** Beyond eight standard deviations there is nothing. */
const FAR = 8;

/** @param sigma RMS speed of deflection; at none it is the low-speed damping */
export function dampingOnRoad(law: DamperLaw, sigma: number): number {
  const { lowSpeed, marks = [] } = law;
  if (!(sigma > 0) || !Number.isFinite(sigma)) return lowSpeed;
  const kinks = marks.map(({ at }) => at / sigma).filter((at) => Math.abs(at) < FAR);
  const edges = [...new Set([-FAR, -2, 0, 2, FAR, ...kinks])].sort((a, b) => a - b);
  const found = integrate(
    (u, out) => {
      out[0] = (law.force(u * sigma) * u * Math.exp((-u * u) / 2)) / (sigma * Math.sqrt(2 * Math.PI));
    },
    1,
    edges,
    { relative: 1e-4 },
  ).values[0];
  return found === undefined || !Number.isFinite(found) ? lowSpeed : found;
}
