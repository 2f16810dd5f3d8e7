/** The rate of a helical compression spring from its wire. */

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
