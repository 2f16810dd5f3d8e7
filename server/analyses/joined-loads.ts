/**
 * What the elements between the axles carry for each wheel at design, for the trim of each axle: charges and preloads
 * of theirs take part of the weight.
 */
import type { CarElement, Sides } from "../elements/mechanism.js";
import { carParts } from "./car-parts.js";
import { type CarAxles, carPositions } from "./car-positions.js";

/** N at each wheel, or why it is not known. */
export interface JoinedLoads {
  readonly front: Sides<number> | string;
  readonly rear: Sides<number> | string;
}

/** @returns undefined where they carry nothing */
export function joinedLoads(joining: {
  readonly elements: readonly CarElement[];
  readonly axles: CarAxles;
}): JoinedLoads | undefined {
  if (joining.elements.length === 0) return undefined;
  const { loads } = carParts(joining.elements, carPositions(joining.axles));
  if (typeof loads === "string") return { front: loads, rear: loads };
  if (loads.every((load) => load === 0)) return undefined;
  const [frontLeft, frontRight, rearLeft, rearRight] = loads;
  return { front: { left: frontLeft, right: frontRight }, rear: { left: rearLeft, right: rearRight } };
}
