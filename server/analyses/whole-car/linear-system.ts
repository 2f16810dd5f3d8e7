/**
 * A linear car, or a part of one, on a road: what modes and road response work on.
 *
 *   M q̈ + C q̇ + K q + Nᵀ D η = Kᵣ r + Cᵣ ṙ
 *   τ η̇ + η = N q − R r      (τ = 0: η = N q − R r)
 *
 * q: displacements from a case's equilibrium, up positive, ISO 8855; r: heights of the road, one an input; η: changes of the
 * ride heights as the air feels them. Units m, rad, kg, N, s.
 *
 * Invariant: plain data; nothing here knows which coordinate is what.
 */
import { addCoupling, type Rows } from "../../maths/rows.js";

export interface LinearSystem {
  readonly mass: Rows;
  readonly damping: Rows;
  /** Springs, tyres and gravity; the air is apart. */
  readonly stiffness: Rows;
  /** Kᵣ and Cᵣ, one column an input. */
  readonly roadStiffness: Rows;
  readonly roadDamping: Rows;
  readonly air: AirCoupling | undefined;
}

export interface AirCoupling {
  /** N: ride heights over q, one row a height. */
  readonly heights: Rows;
  /** R: what the road takes off each ride height. */
  readonly road: Rows;
  /** D: ∂downforce/∂height, N/m, one row a downforce. Negative where the car sucks itself down: a stiffness taken away. */
  readonly slopes: Rows;
  /** τ, s; 0 for air that follows at once. */
  readonly lag: number;
}

/** K + NᵀD N: the stiffness against movements so slow that the air follows. */
export function steadyStiffness({ stiffness, air }: LinearSystem): Rows {
  if (air === undefined) return stiffness;
  const total = stiffness.map((row) => [...row]);
  addCoupling(total, air.heights, air.slopes);
  return total;
}

/** Kᵣ + NᵀD R, likewise. */
export function steadyRoadStiffness({ roadStiffness, air }: LinearSystem): Rows {
  if (air === undefined) return roadStiffness;
  const total = roadStiffness.map((row) => [...row]);
  addCoupling(total, air.heights, air.slopes, air.road);
  return total;
}
