/**
 * Whether an edit really mends an element: the check is made again on the changed text. The element is
 * then moved in every mode that it is for and leaks into no other, no other element is worse off, all
 * travel is there that was, and the text has no new problem.
 */
import { type CheckedElement, elementAt, elementsOf } from "../axle-parts.js";
import type { CheckedCar, RuleContext } from "../context.js";
import type { Fix } from "../finding.js";
import { changedBy } from "../proven.js";
import { nameOf } from "../where.js";
import { severityOf } from "./severity.js";

export function mends(context: RuleContext, fix: Fix, car: CheckedCar, path: string): boolean {
  const after = changedBy(context, fix)?.cars.find((one) => nameOf(one) === nameOf(car));
  const element = after && elementAt(after, path);
  return (
    after !== undefined &&
    element !== undefined &&
    faults(after, element) === 0 &&
    elementsOf(car).every((before) => before.model.path === path || isNoWorse(before, car, after)) &&
    binds(after) <= binds(car)
  );
}

/** 0 for none, more for worse; a motion that is not known is no proof. */
function faults(car: CheckedCar, element: CheckedElement): number {
  const { sensitivity, idleIn, leak } = element.figures;
  if ("kind" in sensitivity || (leak !== undefined && "kind" in leak)) return 3;
  const leaks = severityOf(car, element);
  return idleIn.length > 0 || leaks === "warning" ? 2 : leaks === "information" ? 1 : 0;
}

function isNoWorse(before: CheckedElement, car: CheckedCar, after: CheckedCar): boolean {
  const element = elementAt(after, before.model.path);
  return element !== undefined && faults(after, element) <= faults(car, before);
}

function binds({ analysis }: CheckedCar): number {
  const { front, rear } = analysis.axles;
  return [front, rear].flatMap((axle) => axle?.reach ?? []).reduce((sum, reach) => sum + reach.binds.length, 0);
}
