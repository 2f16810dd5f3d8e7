/**
 * The pressure that oil loses on its way between a side of a cylinder and the accumulator, against its flow.
 *
 * Units: m³/s and Pa; flow out of the cylinder positive. The accumulator (or the middle of the oil without one) is
 * taken to lie half-way along each line, so that oil which goes from cylinder to cylinder passes all of it.
 *
 * Invariant: no pressure without flow, and never one that drives it.
 */
import type { DamperLaw } from "../element.js";
import { constantDamping, damperLaw } from "./damper-law.js";

/** One line as its end at a cylinder sees it; Pa·s/m³ of the whole line. */
export interface LineEnd {
  readonly resistance: number;
  /** The way that its valve lets oil pass freely, as seen from this cylinder; undefined without a valve. */
  readonly free: "out" | "in" | undefined;
}

/** Half-lines side by side: 1/R = Σ 2/R_i; one that is free lets everything pass. */
function together(ends: readonly LineEnd[], way: "out" | "in"): number {
  let conductance = 0;
  for (const { resistance, free } of ends) {
    if (free === way || !(resistance > 0)) return 0;
    conductance += 2 / resistance;
  }
  return conductance > 0 ? 1 / conductance : 0;
}

/** @returns undefined where oil flows freely both ways */
export function lineResistance(ends: readonly LineEnd[]): DamperLaw | undefined {
  const out = together(ends, "out");
  const into = together(ends, "in");
  return out === 0 && into === 0 ? undefined : damperLaw(constantDamping(out), constantDamping(into));
}
