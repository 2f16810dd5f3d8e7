/**
 * Where in a file to show what a car does, and whether it has to be shown there at all.
 *
 * A car's own fault stands at its element. What a set-up does stands at the line of the set-up that
 * touches the element, else at its name; and it is not told again where its base does the same.
 */
import type { CarModel, ElementModel, ResolvedBlock } from "../model/car.js";
import type { Origin } from "../model/origin.js";
import type { CheckedCar, RuleContext } from "./context.js";

/** The place in this file for something that is written at `origin` and concerns `element`. */
export function placeFor(
  context: RuleContext,
  car: CheckedCar,
  origin: Origin,
  element?: ElementModel,
): Origin | undefined {
  const { model } = car;
  if (model.setup === undefined) return origin.uri === context.uri ? origin : model.nameOrigin;
  if (isInside(origin, model.origin)) return origin;
  return (element && touching(element, model)) ?? model.nameOrigin;
}

/** The set-up's own line inside the element, if it has one. */
function touching(element: ElementModel, { origin }: CarModel): Origin | undefined {
  const lines = everyOrigin(element.block).filter((line) => isInside(line, origin));
  return lines.sort((a, b) => a.start - b.start)[0];
}

function everyOrigin(block: ResolvedBlock): readonly Origin[] {
  return block.statements.flatMap((statement) => [
    statement.origin,
    ...(statement.block === undefined ? [] : everyOrigin(statement.block)),
  ]);
}

const isInside = (inner: Origin, outer: Origin): boolean =>
  inner.uri === outer.uri && outer.start <= inner.start && inner.end <= outer.end;

/** Whether the car or set-up underneath has the same fault, so that it is told there. */
export function standsInBase(car: CheckedCar, has: (base: CheckedCar) => boolean): boolean {
  return car.base !== undefined && has(car.base);
}
