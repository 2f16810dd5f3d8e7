/** A spring with one rate: a coil, a torsion bar, or any rate as it is stated. */
import type { Curve } from "./curve.js";

/** F = k x. @param rate N/m, or N·m/rad */
export function linear(rate: number): Curve {
  return {
    force: (x) => rate * x,
    rate: () => rate,
    energy: (x) => 0.5 * rate * x * x,
    constantRate: rate,
    range: undefined,
  };
}
