/** A spring with one rate: a coil, a torsion bar, or any rate as it is stated; or with two, one after the other. */
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

/**
 * F = soft x up to the knee, then with `hard` on: two springs in line of which the softer one is used up there.
 *
 * @param soft the rate of both in line
 * @param hard of what is left; not below `soft`
 */
export function kneeCurve(soft: number, knee: number, hard: number): Curve {
  const at = soft * knee;
  const stored = (at * knee) / 2;
  return {
    force: (x) => (x <= knee ? soft * x : at + hard * (x - knee)),
    rate: (x) => (x < knee ? soft : hard),
    energy: (x) => (x <= knee ? (soft * x * x) / 2 : stored + (x - knee) * (at + (hard * (x - knee)) / 2)),
    constantRate: soft === hard ? soft : undefined,
    range: undefined,
    marks: soft === hard ? undefined : [{ at: knee, what: "stage" }],
  };
}
