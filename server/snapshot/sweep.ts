/**
 * A table of figures over set-ups that differ in a few properties.
 *
 * In: properties with the values to try, as text of the language; figures as `expect` names them. Out: one row a set-up,
 * each figure in its unit, or the reason why there is none.
 *
 * Invariant: a row depends on its number alone, so that rows may be made anywhere and in any order.
 */
import { figureAt } from "../../grammar/vocabulary/figures.js";
import { figureAsked } from "../analyses/expectations.js";
import type { Figure } from "../analyses/results.js";
import type { CheckedCar } from "../findings/context.js";
import { nameOf } from "../findings/where.js";
import { fromSI } from "../quantities/index.js";
import { unitsOfCar } from "../views/units-of-car.js";
import type { FileView } from "./workspace.js";

export interface SweptAxis {
  readonly path: string;
  /** As they stand in a set-up behind the path. */
  readonly values: readonly string[];
}

export interface SweptFigure {
  /** "load-transfer-front at hairpin" */
  readonly name: string;
  readonly figure: string;
  readonly at: string | undefined;
  readonly unit: string;
}

/** A figure in its unit, or why there is none. */
export type Cell = number | { readonly why: string };

/** The figures that are expected of the car, else its rates. */
export function usualFigures({ model }: CheckedCar): readonly string[] {
  const expected = model.expectations.map(({ figure, at }) => (at === undefined ? figure : `${figure} at ${at}`));
  if (expected.length > 0) return [...new Set(expected)];
  const axles = (["front", "rear"] as const).filter((axle) => model.axles[axle] !== undefined);
  return axles.flatMap((axle) => [`${axle}.heave-rate`, `${axle}.roll-stiffness`]);
}

/** The figure with the unit that it is told in; or what is wrong with its name. */
export function sweptFigure(file: FileView, car: CheckedCar, name: string): SweptFigure | { readonly why: string } {
  const [figure = "", at] = name.trim().split(/\s+at\s+/);
  const dimensions = figureAt(figure)?.figure.dimensions ?? (["number"] as const);
  let why = `"${name}" is no figure`;
  for (const dimension of dimensions) {
    const unit = unitsOfCar(car.model)(dimension);
    const [complaint] = file.vary(nameOf(car), [`expect ${name.trim()} above 0 ${unit}`]).complaints;
    if (complaint === undefined) return { name: name.trim(), figure, at, unit };
    why = complaint;
  }
  return { why };
}

/** What is wrong with an axis as a whole: with its first value and its last alike. */
export function complaintAbout(file: FileView, car: CheckedCar, { path, values }: SweptAxis): string | undefined {
  const about = (value: string | undefined) => file.vary(nameOf(car), [`${path} ${value ?? ""}`]).complaints[0];
  const first = about(values[0]);
  return first === undefined || about(values.at(-1)) === undefined ? undefined : first;
}

export const rowCount = (axes: readonly SweptAxis[]): number =>
  axes.reduce((count, { values }) => count * values.length, 1);

/** The values of one row; the last axis goes fastest. */
export function valuesAt(axes: readonly SweptAxis[], row: number): readonly string[] {
  let left = row;
  return [...axes]
    .reverse()
    .map(({ values }) => {
      const value = values[left % values.length] ?? "";
      left = Math.floor(left / values.length);
      return value;
    })
    .reverse();
}

export function sweepRow(
  file: FileView,
  car: CheckedCar,
  axes: readonly SweptAxis[],
  figures: readonly SweptFigure[],
  row: number,
): readonly Cell[] {
  const values = valuesAt(axes, row);
  const varied = file.vary(
    nameOf(car),
    axes.map(({ path }, i) => `${path} ${values[i] ?? ""}`),
  );
  const [why = "it could not be built"] = varied.complaints;
  if (varied.complaints.length > 0 || varied.car === undefined) return figures.map(() => ({ why }));
  const made = varied.car;
  const { analysis, cases, ride } = made;
  return figures.map(({ unit, ...asked }) => cellOf(figureAsked(asked, analysis, cases, ride), unit));
}

function cellOf(figure: Figure, unit: string): Cell {
  if (typeof figure !== "number") return { why: figure.reason };
  return fromSI(figure, unit) ?? { why: `"${unit}" is not a unit` };
}
