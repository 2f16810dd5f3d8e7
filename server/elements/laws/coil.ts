/** The rate and the shear stress of a helical compression spring from its wire. */

export interface CoilGeometry {
  /** Wire diameter d, m. */
  readonly wire: number;
  /** Mean coil diameter D (wire centre to wire centre), m. */
  readonly mean: number;
  /** Active turns n. */
  readonly turns: number;
  /** Shear modulus G, Pa. */
  readonly shearModulus: number;
}

/** k = G d⁴ / (8 D³ n), N/m. Source: EN 13906-1, rate of cylindrical helical springs of round wire. */
export function coilRate(coil: CoilGeometry): number {
  return (coil.shearModulus * coil.wire ** 4) / (8 * coil.mean ** 3 * coil.turns);
}

/** Wire and mean coil diameter, m; the coil is larger than its wire. */
export type CoilSection = Pick<CoilGeometry, "wire" | "mean">;

/**
 * Stress correction for the curvature of the wire, k = (w + 0.5)/(w − 0.75) with w = D/d. Source: EN 13906-1 (from
 * memory); the same as Bergsträsser's (4w + 2)/(4w − 3). Singular at w = 0.75, far below any coil that can be wound.
 */
export function curvatureFactor({ wire, mean }: CoilSection): number {
  const w = mean / wire;
  return (w + 0.5) / (w - 0.75);
}

/** Wahl's factor (4w − 1)/(4w − 4) + 0.615/w, the older one and a little larger: for comparison. Singular at w = 1. */
export function wahlFactor({ wire, mean }: CoilSection): number {
  const w = mean / wire;
  return (4 * w - 1) / (4 * w - 4) + 0.615 / w;
}

/** Shear stress for each newton, Pa/N, at the inside of the coil: k · 8 D/(π d³). Source: EN 13906-1 (from memory). */
export function coilStress(coil: CoilSection): number {
  return (curvatureFactor(coil) * 8 * coil.mean) / (Math.PI * coil.wire ** 3);
}
