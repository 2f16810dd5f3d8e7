/** A stop whose force grows as a power of its deflection. */
import type { Curve } from "./curve.js";

/**
 * F = force · (x / deflection)^exponent after contact (x > 0), 0 before.
 *
 * @param exponent 1 or more, so that the rate stays finite at contact
 */
export function powerLaw(force: number, deflection: number, exponent: number): Curve {
  const share = (x: number): number => Math.max(0, x) / deflection;
  return {
    force: (x) => force * share(x) ** exponent,
    rate: (x) => (x < 0 ? 0 : ((exponent * force) / deflection) * share(x) ** (exponent - 1)),
    energy: (x) => ((force * deflection) / (exponent + 1)) * share(x) ** (exponent + 1),
    constantRate: undefined,
    range: undefined,
    marks: [{ at: 0, what: "free" }],
  };
}
