/**
 * A car taken apart as far as its mirror symmetry allows, each part with its state space and spectrum: what modes and
 * road response share, so that no eigenvalue problem is solved twice.
 *
 * A mirrored car gives two parts (`halves.ts`), any other one.
 */
import { type Spectrum, spectrumOf } from "../../maths/eigen.js";
import type { Rows } from "../../maths/rows.js";
import { halvesOf } from "./halves.js";
import type { LinearSystem } from "./linear-system.js";
import { type StateSpace, stateSpace } from "./state-space.js";

export interface Part {
  readonly system: LinearSystem;
  readonly space: StateSpace;
  readonly spectrum: Spectrum;
  /** Of a half: the seven freedoms from its own coordinates, and the four road heights from its two. */
  readonly half: { readonly coordinates: Rows; readonly inputs: Rows } | undefined;
}

/** The whole, or left and right together and then opposed; undefined where the masses are none or a number is missing. */
export function partsOf(dynamics: LinearSystem): readonly Part[] | undefined {
  const halves = halvesOf(dynamics);
  if (halves === undefined) {
    const whole = partOf(dynamics, undefined);
    return whole && [whole];
  }
  const [together, opposed] = [partOf(halves.together, halves.together), partOf(halves.opposed, halves.opposed)];
  return together && opposed && [together, opposed];
}

export function partOf(system: LinearSystem, half: Part["half"]): Part | undefined {
  const space = stateSpace(system);
  const spectrum = space && spectrumOf(space.a);
  return space && spectrum && { system, space, spectrum, half };
}
