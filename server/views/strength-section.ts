/** Strength and room of all elements as tables: what they bear against what is allowed, what room is left, and their stages. */
import type { StressFigures, StrengthFigures } from "../analyses/results.js";
import type { CheckedCar } from "../findings/context.js";
import { elementUnits } from "./element-units.js";
import { isAbsent, showFigure } from "./figures.js";
import { left, right, type Section } from "./section.js";
import { stageRows } from "./strength-card.js";
import { everyElement } from "./subject.js";
import { type ShowUnit, unitsOfCar } from "./units-of-car.js";

type Cells = readonly [what: string, atRest: string, worst: string, limit: string];

/** One row for each stress, coil and direction of stroke; at the worst: over the whole travel. */
export function strengthSection(car: CheckedCar, reasons: Set<string>): Section {
  const unit = unitsOfCar(car.model);
  const rows = everyElement(car).flatMap(({ figures }) => {
    if (figures?.strength === undefined) return [];
    const { path, strength } = figures;
    if (!isAbsent(strength))
      return cellsOf(strength, unit, elementUnits(figures, unit).travel).map((cells) => [path, ...cells]);
    reasons.add(strength.reason);
    return [[path, "", "-", "-", "-"]];
  });
  const columns = [left("element"), left(""), right("at rest"), right("at the worst"), right("limit")];
  return { title: "Strength and room", columns, rows };
}

function cellsOf({ stresses, coil, stroke }: StrengthFigures, unit: ShowUnit, own: string): readonly Cells[] {
  const length = (value: number): string => showFigure(value, unit("length"), 3);
  const room = (value: number): string => showFigure(value, own, 3);
  const bound: Cells[] =
    coil === undefined
      ? []
      : [["coil's length", length(coil.atRest), length(coil.solid + coil.margin), `${length(coil.solid)} closed up`]];
  const strokes = (["bump", "rebound"] as const).flatMap((way): readonly Cells[] =>
    stroke === undefined ? [] : [[`stroke left in ${way}`, room(stroke[way].atRest), room(stroke[way].least), room(0)]],
  );
  return [...stresses.map((stress) => stressCells(stress, unit("stress"))), ...bound, ...strokes];
}

function stressCells({ part, kind, atRest, most, allowable, stated }: StressFigures, unit: string): Cells {
  const [rest, worst, limit] = [atRest, most, allowable].map((value) => showFigure(value, unit, 3)) as [
    string,
    string,
    string,
  ];
  return [`${part} in ${kind}`, rest, worst, `${limit} ${stated ? "allowed" : "usual"}`];
}

/** Where laws go over into another stage, when link springs are used up, what inerters add at the wheels. */
export function stageSection(car: CheckedCar): Section {
  const unit = unitsOfCar(car.model);
  const rows = everyElement(car).flatMap(({ figures }) =>
    figures === undefined
      ? []
      : stageRows(figures, car.analysis, unit, elementUnits(figures, unit).travel).map((line) => [figures.path, line]),
  );
  return { title: "Stages, and inertance at the wheels", columns: [left("element"), left("")], rows };
}
