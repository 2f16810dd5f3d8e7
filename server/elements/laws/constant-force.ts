/** A force that stays the same wherever it is moved: an actuator that is set to one. */
import type { SpringLaw } from "../element.js";

/** @param force N, pushing apart positive */
export function constantForce(force: number): SpringLaw {
  return {
    kind: "spring",
    force: () => force,
    rate: () => 0,
    energy: (s) => force * s,
    constantRate: 0,
    range: undefined,
    stated: true,
  };
}
