/** How an element is moved in the mode that it is for and in the one that it is not for, at design and over the travel. */
import type { ProbedElement } from "../../assemble/eye-probe.js";
import type { CheckedElement } from "../axle-parts.js";
import { leakOf } from "./leak.js";

export type AxleMode = "heave" | "roll";

/** The mode of its axle that an element leaks into. */
export function leaksInto({ figures, axle }: CheckedElement): AxleMode | undefined {
  const mode = leakOf(figures)?.mode;
  return axle !== undefined && (mode === "heave" || mode === "roll") ? mode : undefined;
}

const inMode = ({ design }: ProbedElement, mode: AxleMode): number =>
  mode === "heave" ? design.dL + design.dR : design.dR - design.dL;

const otherThan = (mode: AxleMode): AxleMode => (mode === "heave" ? "roll" : "heave");

/** @param into the mode that the element is not for */
export const unclaimedMotion = (probed: ProbedElement, into: AxleMode): number => inMode(probed, into);
export const claimedMotion = (probed: ProbedElement, into: AxleMode): number => inMode(probed, otherThan(into));

/** The leak over the travel, as a fraction of the motion in its own mode. */
export function leakOverTravel(probed: ProbedElement, into: AxleMode): number {
  const travel = probed.overTravel();
  const own = travel[otherThan(into)];
  return own > 0 ? travel[into] / own : Number.POSITIVE_INFINITY;
}
