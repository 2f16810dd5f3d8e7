/** What was measured beside what is predicted, as rows that every face shows. */
import { figureAsked } from "../analyses/expectations.js";
import { residualOf } from "../analyses/residuals.js";
import type { Figure } from "../analyses/results.js";
import { measuredOf } from "../assemble/measured.js";
import type { CheckedCar } from "../findings/context.js";
import { titleOf } from "./car-title.js";
import { isAbsent, showFigure } from "./figures.js";
import type { RatesPage } from "./rates-page.js";
import { asTable, cell, left, right, type Section } from "./section.js";
import { weightsOf } from "./weights-page.js";

export interface MeasuredRow {
  /** "front.ride-height at top-speed" */
  readonly name: string;
  readonly unit: string;
  readonly measured: number;
  readonly predicted: Figure;
  readonly off: Figure;
  readonly allowed: Figure;
  readonly isBeyond: boolean;
}

export interface MeasuredCar {
  readonly when: string | undefined;
  readonly rows: readonly MeasuredRow[];
}

/** Undefined where nothing was measured on this very car or set-up. */
export function measuredCar(car: CheckedCar): MeasuredCar | undefined {
  const measured = measuredOf(car.model);
  if (measured === undefined) return undefined;
  const { analysis, cases, ride } = car;
  const { loads } = weightsOf(car);
  const rows = measured.values.map((value): MeasuredRow => {
    const { figure, at, unit } = value;
    const found = residualOf(value, { figure: (asked) => figureAsked(asked, analysis, cases, ride), loads });
    return { name: at === undefined ? figure : `${figure} at ${at}`, unit, measured: value.value, ...found };
  });
  return { when: measured.when, rows };
}

export function measuredPage(car: CheckedCar): RatesPage {
  const title = titleOf(car.model);
  const measured = measuredCar(car);
  if (measured === undefined) return { title, sections: [], reasons: [NOTHING] };
  const reasons = new Set<string>();
  return { title, sections: [measuredSection(measured, reasons)], reasons: [...reasons] };
}

const NOTHING =
  "nothing was measured on this car or set-up itself: write a measured block, such as measured { figure front.ride-height 32.5 mm }";

/** Hover of the block; undefined where the car or set-up has none of its own. */
export function measuredCard(car: CheckedCar): string | undefined {
  const measured = measuredCar(car);
  if (measured === undefined || measured.rows.length === 0) return undefined;
  const reasons = new Set<string>();
  const table = asTable(measuredSection(measured, reasons));
  const why = [...reasons].map((reason) => `- no figure where ${reason}`);
  return why.length === 0 ? table : `${table}\n\n${why.join("\n")}`;
}

export function measuredSection({ when, rows }: MeasuredCar, reasons: Set<string>): Section {
  return {
    title: when === undefined ? "As measured" : `As measured ${when}`,
    columns: [left("figure"), right("measured"), right("predicted"), right("off"), right("allowed"), left("")],
    rows: rows.map(({ name, unit, measured, predicted, off, allowed, isBeyond }) => [
      name,
      showFigure(measured, unit),
      cell(predicted, unit, reasons),
      isAbsent(off) ? "-" : signed(off, unit),
      isAbsent(allowed) ? "-" : showFigure(allowed, unit, 3),
      isAbsent(off) ? "" : isBeyond ? "beyond" : "within",
    ]),
  };
}

const signed = (value: number, unit: string): string => `${value > 0 ? "+" : ""}${showFigure(value, unit, 3)}`;
