/**
 * Where in a file to show what a car does, and whether it has to be shown there at all.
 *
 * A car's own fault stands at its element. What a set-up does stands at its line that does it, else at
 * its line inside the element, else at its only line about the axle, else at its name; and it is not
 * told again where its base does the same.
 */
import type { AxleModel, CarModel, ElementModel, ResolvedBlock } from "../model/car.js";
import type { Origin } from "../model/origin.js";
import type { CheckedCar, RuleContext } from "./context.js";
import { isInside, linesOf } from "./setup-lines.js";

/** What a fault is about. */
export interface Subject {
  /** Places that it rests on, the one to show first. */
  readonly places: readonly Origin[];
  readonly element?: ElementModel | undefined;
  readonly axle?: AxleModel["name"] | undefined;
}

/** The place in this file for a fault; a car's is always in its own text, if it is not in a part's. */
export function placeFor(context: RuleContext, { model }: CheckedCar, subject: Subject): Origin {
  const own = subject.places.find((place) => isInside(place, model.origin));
  if (own !== undefined || model.setup === undefined) return own ?? model.nameOrigin;
  return touching(subject, model) ?? onlyLine(context, model, subject) ?? model.nameOrigin;
}

/** The set-up's own line inside the element, if it has one. */
function touching({ element }: Subject, { origin }: CarModel): Origin | undefined {
  const lines = element === undefined ? [] : everyOrigin(element.block).filter((line) => isInside(line, origin));
  return lines.sort((a, b) => a.start - b.start)[0];
}

function everyOrigin(block: ResolvedBlock): readonly Origin[] {
  return block.statements.flatMap((statement) => [
    statement.origin,
    ...(statement.block === undefined ? [] : everyOrigin(statement.block)),
  ]);
}

/** Where a set-up says but one thing about an axle, that is what does it. */
function onlyLine(context: RuleContext, model: CarModel, { axle, element }: Subject): Origin | undefined {
  const name = axle ?? element?.axle;
  const [only, more] = name === undefined ? [] : linesOf(context, model, name);
  return only === undefined || more !== undefined ? undefined : { uri: context.uri, start: only.start, end: only.end };
}

/** Whether the car or set-up underneath has the same fault, so that it is told there. */
export function standsInBase(car: CheckedCar, has: (base: CheckedCar) => boolean): boolean {
  return car.base !== undefined && has(car.base);
}

/** What a car or set-up is called, in messages and to find it again. */
export const nameOf = ({ model }: CheckedCar): string => model.setup ?? model.name;
