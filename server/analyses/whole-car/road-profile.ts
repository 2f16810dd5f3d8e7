/**
 * Road unevenness after ISO 8608: one-sided power spectral density of height over spatial frequency n (cycle/m),
 *
 *   G_d(n) = G_d(n₀) (n/n₀)⁻²,  n₀ = 0.1 cycle/m;  in time at speed v: S_d(f) = G_d(f/v)/v, velocity S_v = (2πn₀)² G_d(n₀) v.
 *
 * Left and right: the surface is taken as *isotropic* (it looks alike in every direction), for which the exponent 2 gives the
 * share γ = x K₁(x), x = 2πnt, of the spectrum that two tracks at distance t have in common: both the same at long waves,
 * independent at short ones. Front and rear: the same track, later by wheelbase/v.
 *
 * Sources: ISO 8608:2016, tables of Annex C (from memory); isotropy: K. M. A. Kamash, J. D. Robson, J. Sound Vib. 57 (1978) 89
 * (from memory; γ for exponent 2 derived from the autocorrelation −|δ| at distance √(δ² + t²)).
 */
import { timesK1 } from "../../maths/bessel.js";

export type RoadClass = "A" | "B" | "C" | "D" | "E" | "F" | "G" | "H";

/** n₀, cycle/m. */
export const REFERENCE = 0.1;

/** Geometric mean of G_d(n₀) of each class, m³; bounds are half and twice of it (A has no lower, H no upper one). */
const MEANS: Readonly<Record<RoadClass, number>> = {
  A: 16e-6,
  B: 64e-6,
  C: 256e-6,
  D: 1024e-6,
  E: 4096e-6,
  F: 16384e-6,
  G: 65536e-6,
  H: 262144e-6,
};

export const isRoadClass = (text: string): text is RoadClass => Object.hasOwn(MEANS, text);

/** G_d(n₀) of a class, m³. */
export const roughnessOf = (road: RoadClass): number => MEANS[road];

/** The class that a G_d(n₀) in m³ belongs to. */
export function classOf(roughness: number): RoadClass {
  const classes = Object.keys(MEANS) as RoadClass[];
  return classes.find((name) => roughness < 2 * MEANS[name]) ?? "H";
}

/** G_d(n), m³ (m² per cycle/m), one-sided. */
export const heightDensity = (roughness: number, n: number): number => roughness * (REFERENCE / n) ** 2;

/** S_v, (m/s)²/Hz, one-sided: the same at every frequency. */
export const velocityDensity = (roughness: number, speed: number): number =>
  (2 * Math.PI * REFERENCE) ** 2 * roughness * speed;

/** S_d(f), m²/Hz, one-sided. */
export const heightDensityInTime = (roughness: number, speed: number, frequency: number): number =>
  heightDensity(roughness, frequency / speed) / speed;

/** RMS height between two spatial frequencies, m: n₀ √(G_d(n₀) (1/n₁ − 1/n₂)). */
export const profileRms = (roughness: number, from: number, to: number): number =>
  REFERENCE * Math.sqrt(roughness * (1 / from - 1 / to));

const SIDES = ["isotropic", "same", "independent"] as const;

export type Sides = (typeof SIDES)[number];

export const isSides = (text: string): text is Sides => SIDES.some((one) => one === text);

/** What left and right have in common, 0 … 1: the cross spectrum over the spectrum, at n cycle/m and `track` m apart. */
export function commonShare(sides: Sides, n: number, track: number): number {
  if (sides === "isotropic") return timesK1(2 * Math.PI * n * track);
  return sides === "same" ? 1 : 0;
}

/** |sin(πnℓ)/(πnℓ)|²: what is left of the spectrum when the tyre averages over its contact length ℓ, m. */
export function contactFilter(n: number, length: number): number {
  const x = Math.PI * n * length;
  return x < 1e-6 ? 1 : (Math.sin(x) / x) ** 2;
}
