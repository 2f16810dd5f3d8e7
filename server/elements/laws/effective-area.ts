/**
 * The area that a gas pressure acts on, against deflection from design, with the volume that it sweeps.
 *
 * Units: m, m², m³. Invariant: the swept volume is the integral of the area and 0 at design.
 */
import { monotone } from "../../maths/monotone.js";

export interface EffectiveArea {
  area(s: number): number;
  /** dA/ds, m. */
  slope(s: number): number;
  swept(s: number): number;
}

/** A piston or a rod: the same all along. */
export const constantArea = (area: number): EffectiveArea => ({
  area: () => area,
  slope: () => 0,
  swept: (s) => area * s,
});

/**
 * By points, interpolated monotonically; beyond its ends it stays as it is there.
 *
 * @param deflection strictly increasing, two or more
 * @param area positive, as many
 */
export function tabledArea(deflection: readonly number[], area: readonly number[]): EffectiveArea {
  const through = monotone(deflection, area);
  const { from, to } = through;
  const inside = (s: number): number => Math.min(Math.max(s, from), to);
  const integral = (s: number): number => through.integral(inside(s)) + through.value(inside(s)) * (s - inside(s));
  const atDesign = integral(0);
  return {
    area: (s) => through.value(inside(s)),
    slope: (s) => (s < from || s > to ? 0 : through.slope(s)),
    swept: (s) => integral(s) - atDesign,
  };
}
