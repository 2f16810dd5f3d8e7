/**
 * Whether a linear car settles: all of its roots decay. Proven without eigenvalues where that is possible, told by them
 * where it is not.
 */
import { surelyDecays } from "../../maths/decay.js";
import { spectrumOf } from "../../maths/eigen.js";
import type { LinearSystem } from "./linear-system.js";
import { stateSpace } from "./state-space.js";

/** Undefined where every one of them settles; `no-modes` where masses are none or a number is missing. */
export function whyUnsettled(systems: readonly LinearSystem[]): "unstable" | "no-modes" | undefined {
  const spaces = systems.map(stateSpace);
  for (const space of spaces) {
    if (space === undefined) return "no-modes";
    if (surelyDecays(space.a, space.rate)) continue;
    const spectrum = spectrumOf(space.a);
    if (spectrum === undefined) return "no-modes";
    if (spectrum.re.some((re) => re >= 0)) return "unstable";
  }
  return undefined;
}
