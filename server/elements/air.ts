/**
 * Downforce areas of both axles against both ride heights, and the drag.
 *
 * Force = ½ ρ v² · area, down positive. By slopes: area = A₀ + Σ slope · (height − design height). By a table: monotone
 * between its points, straight on outside of them.
 */
import type { Surface } from "../maths/monotone-surface.js";

/** Over both heights, m² and m²/m. */
export interface AreaAt {
  readonly area: number;
  readonly byFront: number;
  readonly byRear: number;
}

export interface Areas {
  readonly front: AreaAt;
  readonly rear: AreaAt;
  readonly drag: AreaAt;
}

export interface Air {
  readonly front: AreaLaw;
  readonly rear: AreaLaw;
  /** Its area, and the height above the ground at which it acts, at the drawn ride heights, m. */
  readonly drag: { readonly law: AreaLaw; readonly height: number } | undefined;
  /** Time constant of the downforce, s. */
  readonly lag: number | undefined;
}

export type AreaLaw =
  | {
      readonly kind: "slopes";
      readonly area: number;
      readonly byFront: number;
      readonly byRear: number;
      /** Ride heights at which `area` holds, m. */
      readonly at: readonly [front: number, rear: number];
    }
  | { readonly kind: "table"; readonly surface: Surface };

export function areaAt(law: AreaLaw, front: number, rear: number): AreaAt {
  if (law.kind === "slopes") {
    const { area, byFront, byRear, at } = law;
    return { area: area + byFront * (front - at[0]) + byRear * (rear - at[1]), byFront, byRear };
  }
  const { value, dx, dy } = law.surface.at(front, rear);
  return { area: value, byFront: dx, byRear: dy };
}

const NO_AREA: AreaAt = { area: 0, byFront: 0, byRear: 0 };

/** Of downforce and drag; none where there is no air. */
export function areasAt(air: Air | undefined, front: number, rear: number): Areas {
  if (air === undefined) return { front: NO_AREA, rear: NO_AREA, drag: NO_AREA };
  const { drag } = air;
  return {
    front: areaAt(air.front, front, rear),
    rear: areaAt(air.rear, front, rear),
    drag: drag === undefined ? NO_AREA : areaAt(drag.law, front, rear),
  };
}

/** Whether a table is asked beyond its points. */
export const isOutside = (law: AreaLaw, front: number, rear: number): boolean =>
  law.kind === "table" && law.surface.isOutside(front, rear);

/** The same air with its areas kept as they are at these heights: for telling what their slopes do. */
export function frozen(air: Air, front: number, rear: number): Air {
  const kept = (law: AreaLaw): AreaLaw => ({
    kind: "slopes",
    area: areaAt(law, front, rear).area,
    byFront: 0,
    byRear: 0,
    at: [front, rear],
  });
  const drag = air.drag && { ...air.drag, law: kept(air.drag.law) };
  return { ...air, front: kept(air.front), rear: kept(air.rear), drag };
}

/** Of the standard atmosphere at sea level. */
const STANDARD = { temperature: 288.15, pressure: 101_325, lapse: 0.0065, gas: 287.05287, gravity: 9.80665 };

/**
 * Density of dry air, kg/m³: ρ = p/(R T) with p = p₀ (1 − L h/T₀)^(g/(R L)) of the standard atmosphere and T the standard
 * one at that height, or as it is measured.
 *
 * @param altitude m, up to 11 km @param temperature K
 * Source: ISO 2533:1975.
 */
export function isoDensity(altitude: number, temperature?: number): number {
  const { lapse, gas, gravity, pressure, temperature: atSea } = STANDARD;
  const standard = atSea - lapse * altitude;
  const there = pressure * (standard / atSea) ** (gravity / (gas * lapse));
  return there / (gas * (temperature ?? standard));
}
