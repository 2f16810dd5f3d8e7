/**
 * What can be adjusted on a car: everything with an adjuster (thread, step, positions, clicks), the parts that are fitted,
 * and plain rates, gaps, preloads and ride heights, each with the path that a set-up changes it by.
 *
 * Invariant: what came with a catalogue part is exchanged with it; only its own adjusters are listed.
 */
import type { CarModel, ElementModel, ResolvedBlock, ResolvedStatement } from "./car.js";
import { type PropertyAt, propertyAt } from "./property-at.js";
import type { TreeStatement } from "./tree.js";

export interface Adjustable {
  readonly property: PropertyAt;
  /** What the element says it is for; empty for ride heights, rods and wheels. */
  readonly for: readonly string[];
  readonly axle: "front" | "rear" | undefined;
}

/** Figures that are chosen freely where there is no adjuster: another spring, a packer, a turn of the collar. */
const chosen: ReadonlySet<string> = new Set(["rate", "gap", "preload", "pressure"]);
const ofAxle = ["ride-height", "camber", "toe", "push-rod", "pull-rod", "track-rod"] as const;

/** In the order of the text: what is of the car, then of each axle, then the elements between the axles. */
export function adjustablesOf(car: CarModel): readonly Adjustable[] {
  const axles = (["front", "rear"] as const).flatMap((axle) => {
    const elements = car.axles[axle]?.elements ?? [];
    return [...around(car, axle), ...elements.flatMap((element) => inElement(car, element))];
  });
  return unique([...axles, ...car.elements.flatMap((element) => inElement(car, element))]);
}

function around(car: CarModel, axle: "front" | "rear"): readonly Adjustable[] {
  return ofAxle.flatMap((word) => {
    const path = `${axle}.${word}`;
    return sided(car, path, `${axle}.left.${word}`, `${axle}.right.${word}`).flatMap((property) =>
      property.kind === "number" && (property.step !== undefined || word === "ride-height")
        ? [{ property, for: [], axle }]
        : [],
    );
  });
}

function inElement(car: CarModel, element: ElementModel): readonly Adjustable[] {
  const { name, axle, block } = element;
  return pathsIn(block, false).flatMap((rest) => {
    const path = [...(axle === undefined ? [] : [axle]), name, ...rest].join(".");
    const properties =
      element.side === undefined || axle === undefined
        ? [propertyAt(car, path)]
        : sided(
            car,
            path,
            ...([`${axle}.left`, `${axle}.right`].map((of) => [of, name, ...rest].join(".")) as [string, string]),
          );
    return properties.flatMap((property) => (property === undefined ? [] : [{ property, for: element.for, axle }]));
  });
}

/** One for both sides where they are set alike. */
function sided(car: CarModel, both: string, left: string, right: string): readonly PropertyAt[] {
  const property = propertyAt(car, both);
  const sides = [propertyAt(car, left), propertyAt(car, right)];
  if (property === undefined || sides.every((side) => side !== undefined && isSetAlike(side, property)))
    return property === undefined ? [] : [property];
  return sides.filter((side) => side !== undefined);
}

function isSetAlike(a: PropertyAt, b: PropertyAt): boolean {
  return a.kind === "part"
    ? b.kind === "part" && a.name === b.name
    : b.kind === "number" && a.given.value === b.given.value;
}

/** Paths within a block to what is adjusted there. */
function pathsIn(block: ResolvedBlock, cameWithPart: boolean): readonly (readonly string[])[] {
  return block.statements.flatMap((statement) => {
    const own = statement.name?.text ?? statement.word;
    const isOfPart = cameWithPart || (statement as TreeStatement).part !== undefined;
    const inner = statement.block === undefined ? [] : pathsIn(statement.block, isOfPart);
    return [...(isAdjusted(statement, isOfPart) ? [[own]] : []), ...inner.map((rest) => [own, ...rest])];
  });
}

function isAdjusted({ word, values, block }: ResolvedStatement, isOfPart: boolean): boolean {
  if (word === "fit") return !isOfPart;
  const [value, second] = values;
  if (value?.kind !== "number")
    return word === "drop-link" && block?.statements.some((line) => line.word === "thread") === true;
  const isCounted = value.dimension === "count" && second !== undefined;
  const hasStep = block?.statements.some((line) => line.word === "step") === true;
  return isCounted || hasStep || (!isOfPart && chosen.has(word) && second === undefined);
}

function unique(all: readonly Adjustable[]): readonly Adjustable[] {
  const seen = new Set<string>();
  return all.filter(({ property: { path } }) => !seen.has(path) && seen.add(path));
}
