/**
 * Where on a pure motion of the wheels from rest something first happens: a step that strength, stages and the
 * changeover of bars share. Looked at in the positions that are solved anyway, and closed in on by halving only where it
 * happens.
 *
 * Invariant: what happens between two neighbouring positions and is over again by the next is not seen.
 */
import type { AxleMechanism } from "../elements/mechanism.js";
import { closedIn } from "../maths/closing-in.js";
import type { Where } from "./results.js";
import type { AxleStates, State } from "./states.js";

/** A pure motion one way from rest. */
export interface Path {
  readonly mode: "heave" | "roll";
  /** How far along, m: travel from rest; rising in size. */
  readonly steps: readonly number[];
  at(step: number): State;
  where(step: number): Where;
}

/** Above 0 where it has happened; undefined where it is not known. */
export type Happens = (state: State) => number | undefined;

/** Halvings from a quarter of an envelope to below a tenth of a micrometre. */
const HALVINGS = 20;

/** Heave up and down to the ends of the envelope, roll to either side. */
export function pathsFromRest({ staticTravel: rest }: AxleMechanism, states: AxleStates): readonly Path[] {
  const heave = (way: 1 | -1): Path => ({
    mode: "heave",
    steps: states.travels
      .map((travel) => travel - rest)
      .filter((step) => way * step > 0)
      .sort((a, b) => way * (a - b)),
    at: (step) => states.at(rest + step, rest + step),
    where: (step) => ({ mode: "heave", travel: rest + step }),
  });
  const roll = (way: 1 | -1): Path => ({
    mode: "roll",
    steps: states.roll
      .map(({ right }) => right - rest)
      .filter((step) => way * step > 0)
      .sort((a, b) => way * (a - b)),
    at: (step) => states.at(rest - step, rest + step),
    where: (step) => ({ mode: "roll", travel: step }),
  });
  return [heave(1), heave(-1), roll(1), roll(-1)];
}

/** The step at which it happens first on one path; undefined where it does not. */
export function stepOf(path: Path, happens: Happens): number | undefined {
  let before = 0;
  for (const step of path.steps) {
    const isBefore = (at: number): boolean => !((happens(path.at(at)) ?? 0) > 0);
    if (!isBefore(step)) return closedIn(before, step, isBefore, HALVINGS).failing;
    before = step;
  }
  return undefined;
}

/** The nearest place to rest where it happens, of all paths; at rest itself where it does so there. */
export function firstWhere(paths: readonly Path[], happens: Happens): Where | undefined {
  const [first] = paths;
  if (first === undefined) return undefined;
  const rest = first.where(0);
  if ((happens(first.at(0)) ?? 0) > 0) return { mode: "rest", travel: first.mode === "heave" ? rest.travel : 0 };
  let nearest: { readonly step: number; readonly path: Path } | undefined;
  for (const path of paths) {
    const step = stepOf(path, happens);
    if (step === undefined || (nearest !== undefined && Math.abs(nearest.step) <= Math.abs(step))) continue;
    nearest = { step, path };
  }
  return nearest?.path.where(nearest.step);
}
