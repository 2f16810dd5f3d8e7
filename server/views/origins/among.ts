/**
 * Lines of which several stand side by side (expectations, motion ratios, measured figures): found by the place that each keeps of what
 * it replaced, since a path alone does not tell them apart.
 */
import type { CheckedCar } from "../../findings/context.js";
import type { CarModel } from "../../model/car.js";
import type { Origin } from "../../model/origin.js";
import { treeOf } from "../../model/property-at.js";
import type { Found } from "../../model/steps.js";
import type { TreeBlock } from "../../model/tree.js";
import { nameOf } from "../comparison/pairs.js";
import { letsBehind } from "./behind.js";
import type { ValueChain } from "./chain.js";
import { type Step, valueOf } from "./steps.js";
import { type FileOf, writtenAt } from "./written.js";

/** The line in force in a car that is this one, or has replaced it. */
export function lineFrom(model: CarModel, origin: Origin): Found | undefined {
  const { block, right } = treeOf(model);
  for (const start of [block, right.front, right.rear]) {
    const found = start && findIn(start, origin);
    if (found !== undefined) return found;
  }
  return undefined;
}

function findIn(block: TreeBlock, origin: Origin): Found | undefined {
  for (const statement of block.statements) {
    if (placesOf(statement).some((place) => isSamePlace(place, origin)))
      return { statement, parent: block, segment: 0 };
    const inside = statement.block && findIn(statement.block, origin);
    if (inside !== undefined) return inside;
  }
  return undefined;
}

/** Oldest first. */
const placesOf = ({ chain, origin }: Pick<Found["statement"], "chain" | "origin">): readonly Origin[] => [
  ...chain,
  origin,
];

export const isSamePlace = (a: Origin | undefined, b: Origin): boolean => a?.uri === b.uri && a.start === b.start;

/** The first line that this one goes back to. */
export function beginningOf(model: CarModel, origin: Origin): Origin {
  const found = lineFrom(model, origin);
  return (found && placesOf(found.statement)[0]) ?? origin;
}

/** A line that could not be read stands for itself alone. */
export function amongChain({ model }: CheckedCar, origin: Origin, fileOf: FileOf): ValueChain | undefined {
  const found = lineFrom(model, origin);
  const places = found === undefined ? [origin] : placesOf(found.statement);
  const value = valueOf(found, []);
  const steps = [...places].reverse().flatMap((place, i): readonly Step[] => {
    const written = writtenAt(place, fileOf);
    if (written === undefined) return [];
    const isFirst = i === places.length - 1;
    const step: Step = { ...written, kind: isFirst ? "written" : "replaced", value: i === 0 ? value : undefined };
    return [step, ...letsBehind(written.origin, fileOf)];
  });
  const [first] = steps;
  return first && { of: nameOf(model), path: found?.statement.word ?? first.text, value, steps };
}
