/**
 * A spring that only pushes, or only pulls: outside of its working side it is slack.
 */
import { type Curve, reversed } from "./curve.js";
import { deflectionAt } from "./inverse.js";

/**
 * Carries force in compression only: F = F₀(x) while that is positive, else 0.
 * Touching counts as working: at the kink the rate is the curve's own.
 */
export function pushOnly(curve: Curve): Curve {
  const free = deflectionAt(curve, 0) ?? 0;
  const stored = curve.energy(free);
  return {
    force: (x) => (x >= free ? curve.force(x) : 0),
    rate: (x) => (x >= free ? curve.rate(x) : 0),
    energy: (x) => (x >= free ? curve.energy(x) - stored : 0),
    constantRate: undefined,
    range: curve.range,
    marks: [{ at: free, what: "free" }, ...(curve.marks ?? []).filter(({ at }) => at > free)],
  };
}

/** Carries force in tension only. */
export function pullOnly(curve: Curve): Curve {
  return reversed(pushOnly(reversed(curve)));
}
