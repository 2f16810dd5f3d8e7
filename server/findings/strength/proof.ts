/**
 * Whether a fix really clears a fault of strength or room: the checks are made again on the changed text. The fault is
 * then gone, no element has a new one, all travel is there that was, and everything is still computed.
 */
import type { CheckedElement } from "../axle-parts.js";
import { elementAt, elementsOf } from "../axle-parts.js";
import type { CheckedCar } from "../context.js";
import type { Fix } from "../finding.js";
import { changedBy } from "../proven.js";
import { nameOf } from "../where.js";
import { everyFault, type FaultKind, nameOfFault } from "./faults.js";
import type { Faulty } from "./faulty.js";

export type Mending<K extends FaultKind = FaultKind> = Faulty<K> & { readonly both: boolean };

/** @returns the element as the changed text has it; undefined where the change does not clear the fault */
export function clearedBy(mending: Mending, fix: Pick<Fix, "edits">): CheckedElement | undefined {
  const { context, car, element, fault } = mending;
  const after = changedBy(context, fix)?.cars.find((one) => nameOf(one) === nameOf(car));
  const mended = after && elementAt(after, element.model.path);
  if (after === undefined || mended === undefined) return undefined;
  const [before, later] = [everyFault(car), everyFault(after)];
  const isGone = pathsOf(mending).every((path) => !later.has(`${path} ${nameOfFault(fault)}`));
  const isNoWorse = [...later].every((one) => before.has(one)) && binds(after) <= binds(car);
  const isKnown = elementsOf(after).every(({ model, figures }) => isJudged(figures) || !wasJudged(car, model.path));
  return isGone && isNoWorse && isKnown ? mended : undefined;
}

/** Both sides where they are mended together. */
const pathsOf = ({ car, element: { model }, both }: Mending): readonly string[] =>
  both
    ? elementsOf(car)
        .filter((one) => one.model.name === model.name && one.model.axle === model.axle)
        .map((one) => one.model.path)
    : [model.path];

/** What has nothing to be judged is no less known. */
const isJudged = ({ strength }: CheckedElement["figures"]): boolean => strength === undefined || !("kind" in strength);

function wasJudged(car: CheckedCar, path: string): boolean {
  const before = elementAt(car, path);
  return before !== undefined && isJudged(before.figures);
}

function binds({ analysis }: CheckedCar): number {
  const { front, rear } = analysis.axles;
  return [front, rear].flatMap((axle) => axle?.reach ?? []).reduce((sum, reach) => sum + reach.binds.length, 0);
}
