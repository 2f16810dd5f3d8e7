/** The rate and the shear stress of a straight round bar or tube in torsion. */

export interface TorsionBarGeometry {
  /** Outer diameter d, m. */
  readonly diameter: number;
  /** Bore b, m; 0 for a solid bar. */
  readonly bore: number;
  /** Length that twists, m. */
  readonly length: number;
  /** Shear modulus G, Pa. */
  readonly shearModulus: number;
}

/** k = G J / L with J = π (d⁴ − b⁴) / 32, N·m/rad. Source: Saint-Venant torsion of a circular tube; DIN 2091. */
export function torsionBarRate(bar: TorsionBarGeometry): number {
  const polar = (Math.PI * (bar.diameter ** 4 - bar.bore ** 4)) / 32;
  return (bar.shearModulus * polar) / bar.length;
}

/** Shear stress at the surface for each newton-metre, Pa/(N·m): 16 d/(π (d⁴ − b⁴)). Source: as the rate. */
export function torsionBarStress({ diameter, bore }: Pick<TorsionBarGeometry, "diameter" | "bore">): number {
  return (16 * diameter) / (Math.PI * (diameter ** 4 - bore ** 4));
}
