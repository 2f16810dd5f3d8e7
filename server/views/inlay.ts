/** What stands behind a line in the editor: the rate at the wheel or axle of each element that has one. */
import type { Span } from "../../grammar/index.js";
import type { ElementModel } from "../model/car.js";
import type { FileView } from "../snapshot/workspace.js";
import { elementCard } from "./element-card.js";
import { atWheelsUnit } from "./element-units.js";
import { isAbsent, showFigure } from "./figures.js";
import { withUnitStars } from "./markdown.js";
import { type ElementSubject, everyElement } from "./subject.js";
import { unitsOfCar } from "./units-of-car.js";

export interface Inlay {
  readonly offset: number;
  readonly label: string;
  readonly tooltip: string;
}

/** Words whose line sets the rate of an element. */
const rateWords = new Set([
  "pressure",
  "accumulator",
  "rate",
  "coil",
  "torsion-bar",
  "fit",
  "damping",
  "bump",
  "knee",
  "curve",
  "torsional-rate",
]);

export function inlaysIn(file: FileView, range: Span): readonly Inlay[] {
  const inlays = new Map<number, Inlay>();
  for (const element of file.cars.flatMap(everyElement)) {
    const offset = anchor(file, element.model);
    if (offset === undefined || offset < range.start || offset > range.end || inlays.has(offset)) continue;
    const label = labelOf(element);
    if (label !== undefined) inlays.set(offset, { offset, label, tooltip: withUnitStars(elementCard([element])) });
  }
  return [...inlays.values()].sort((a, b) => a.offset - b.offset);
}

/** Behind the line that sets the rate, in this file: an override in a set-up gets its own. */
function anchor(file: FileView, model: ElementModel): number | undefined {
  const setting = model.block.statements.find(({ word, origin }) => rateWords.has(word) && origin.uri === file.uri);
  return setting?.origin.end;
}

function labelOf({ car, model, figures }: ElementSubject): string | undefined {
  if (figures === undefined || isAbsent(figures.atWheels)) return undefined;
  return ` → ${showFigure(figures.atWheels, atWheelsUnit(model, unitsOfCar(car.model)))} ${whereIn(model)}`;
}

function whereIn(model: ElementModel): string {
  return model.for.includes("corner") ? "at the wheel" : `in ${model.for[0] ?? "no mode"}`;
}
