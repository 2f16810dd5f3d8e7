/**
 * One wheel with its share of the body: q = [z_s, z_u], both up, one road input. For closed-form checks and quick figures.
 */
import type { LinearSystem } from "./linear-system.js";

export interface QuarterCar {
  readonly sprungMass: number;
  readonly unsprungMass: number;
  /** At the wheel, between wheel and body: N/m, N·s/m, kg. */
  readonly stiffness: number;
  readonly damping: number;
  readonly inertance?: number;
  readonly tyreRate: number;
  readonly tyreDamping?: number;
}

/** M = [[m_s + b, −b], [−b, m_u + b]] and so on. Source: M. C. Smith, IEEE TAC 47 (2002), for the inerter's place. */
export function quarterCar(car: QuarterCar): LinearSystem {
  const { stiffness: k, damping: c, inertance: b = 0, tyreRate, tyreDamping = 0 } = car;
  return {
    mass: [
      [car.sprungMass + b, -b],
      [-b, car.unsprungMass + b],
    ],
    damping: [
      [c, -c],
      [-c, c + tyreDamping],
    ],
    stiffness: [
      [k, -k],
      [-k, k + tyreRate],
    ],
    roadStiffness: [[0], [tyreRate]],
    roadDamping: [[0], [tyreDamping]],
    air: undefined,
  };
}
