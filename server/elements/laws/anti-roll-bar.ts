/**
 * The rate of an anti-roll bar: its bar in torsion in series with the bending of both levers,
 * which may be blades that are turned to be stiff or soft.
 *
 * The rate is moment against *relative* twist of the two levers (left lever angle minus right).
 */

export interface BladeGeometry {
  /** Section: thickness and height, m; the larger side is the stiff one. */
  readonly section: readonly [number, number];
  /** Length that bends, m. */
  readonly length: number;
  /** Young's modulus E, Pa. */
  readonly modulus: number;
  /** Angle of the blade from lying flat (softest), rad; a right angle stands it on edge (stiffest). */
  readonly angle: number;
}

/**
 * Angle of a blade at position i of n, evenly spaced from soft to stiff, rad.
 * One position only, or none: the stiff one.
 */
export function bladeAngle(position: number, of: number, soft: number, stiff: number): number {
  return of <= 1 ? stiff : soft + ((stiff - soft) * (position - 1)) / (of - 1);
}

/**
 * Second moment of area of a turned blade for a load along the drop link, m⁴:
 * 1/I = sin²α / I_stiff + cos²α / I_soft, α from lying flat; compliances add.
 * Source: unsymmetrical bending, deflection in the direction of the load.
 */
export function bladeInertia(blade: BladeGeometry): number {
  const [a, b] = blade.section;
  const thin = Math.min(a, b);
  const high = Math.max(a, b);
  const stiff = (thin * high ** 3) / 12;
  const soft = (high * thin ** 3) / 12;
  return 1 / (Math.sin(blade.angle) ** 2 / stiff + Math.cos(blade.angle) ** 2 / soft);
}

/**
 * Bending stress at the root of a turned blade for each newton at its end, Pa/N: the corner of the section, where both
 * bendings add, σ = l (sin α · h/2 / I_stiff + cos α · t/2 / I_soft). Source: unsymmetrical bending of a cantilever.
 */
export function bladeStress(blade: BladeGeometry): number {
  const [a, b] = blade.section;
  const thin = Math.min(a, b);
  const high = Math.max(a, b);
  const stiffWay = Math.sin(blade.angle) / ((thin * high ** 2) / 6);
  const softWay = Math.cos(blade.angle) / ((high * thin ** 2) / 6);
  return blade.length * (stiffWay + softWay);
}

/**
 * Rate of the stem of a T-shaped bar with its cross arm, N·m/rad of the arm's turning against the foot:
 * 1/k = 1/k_T + l³ / (6 E I a²), each half of the arm being a blade of length l that is loaded at a from the stem.
 * Source: beam theory, as for two levers; the moment is that of both links.
 *
 * @param stemRate k_T, N·m/rad
 */
export function teeRate(stemRate: number, arm: number, blade: BladeGeometry | undefined): number {
  if (blade === undefined) return stemRate;
  const bending = blade.length ** 3 / (6 * blade.modulus * bladeInertia(blade));
  return 1 / (1 / stemRate + bending / arm ** 2);
}

/**
 * Rate of the bar with its two levers, N·m/rad of relative twist:
 * 1/k = 1/k_T + Σ l³ / (3 E I a²) over both levers, the blade of length l being the outer part of a lever of length a.
 * With l = a on both sides it is 1/k = 1/k_T + 2a / (3 E I). Source: beam theory, cantilever with a load at its end.
 *
 * @param barRate k_T, N·m/rad
 * @param arms lever lengths a, left and right: from the lever's axis to the drop link's end, m
 */
export function antiRollBarRate(
  barRate: number,
  arms: readonly [number, number],
  blade: BladeGeometry | undefined,
): number {
  if (blade === undefined) return barRate;
  const bending = blade.length ** 3 / (3 * blade.modulus * bladeInertia(blade));
  return 1 / (1 / barRate + bending / arms[0] ** 2 + bending / arms[1] ** 2);
}
