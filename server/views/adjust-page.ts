/** The adjustment matrix as tables of text. */
import type { AdjustedFigure, OffDiagonal, StepEffect } from "../analyses/adjustments.js";
import type { Figure } from "../analyses/results.js";
import type { CheckedCar } from "../findings/context.js";
import { titleOf } from "./car-title.js";
import { isAbsent, showFigure, showShare } from "./figures.js";
import type { RatesPage } from "./rates-page.js";
import { left, right, type Section } from "./section.js";
import { type ShowUnit, unitsOfCar } from "./units-of-car.js";

export interface ShownAdjustments {
  readonly figures: readonly AdjustedFigure[];
  readonly rows: readonly (StepEffect & {
    readonly for: readonly string[];
    readonly now: string;
    readonly step: string;
  })[];
  readonly offDiagonals: readonly OffDiagonal[];
  readonly stuck: readonly { readonly path: string; readonly why: string }[];
}

/** As many as are read. */
const mostOffDiagonals = 8;

export function adjustPage(car: CheckedCar, matrix: ShownAdjustments): RatesPage {
  const unit = unitsOfCar(car.model);
  const reasons = new Set<string>();
  const cases = [...new Set(matrix.figures.flatMap(({ name }) => name.split(" at ")[1] ?? []))];
  const atRest = ({ name }: AdjustedFigure): boolean => !name.includes(" at ");
  const sections = [
    adjusterSection(matrix),
    offSection(matrix),
    changeSection("Change of rates by one step", matrix, ({ group }) => group === "rate", unit, reasons),
    changeSection("Change of damping by one step", matrix, ({ group }) => group === "damping", unit, reasons),
    changeSection(
      "Change of ride heights and of shares (in percentage points) at rest",
      matrix,
      (figure) => atRest(figure) && (figure.group === "height" || figure.group === "share"),
      unit,
      reasons,
    ),
    ...cases.map((name) =>
      changeSection(
        `Change at ${name}, shares in percentage points`,
        matrix,
        (figure) => figure.name.endsWith(` at ${name}`),
        unit,
        reasons,
      ),
    ),
    stuckSection(matrix),
  ];
  return {
    title: `${titleOf(car.model)}: one step of each adjuster`,
    sections: sections.filter(({ rows }) => rows.length > 0),
    reasons: [...reasons],
  };
}

const adjusterSection = ({ rows }: ShownAdjustments): Section => ({
  title: "Adjusters: largest change off target over the largest on target",
  columns: [left("path"), left("for"), right("now"), right("one step"), right("off over on")],
  rows: rows.map(({ path, now, step, independence, for: modes }) => [
    path,
    modes.join(" and ") || "-",
    now,
    step,
    isAbsent(independence) ? "-" : showShare(independence),
  ]),
});

const offSection = ({ offDiagonals }: ShownAdjustments): Section => ({
  title: "Largest changes of what an adjuster is not for",
  columns: [left("path"), left("changes"), right("by"), right("over its target")],
  rows: offDiagonals
    .slice(0, mostOffDiagonals)
    .map(({ path, figure, relative, overTarget }) => [
      path,
      figure,
      signed(showShare(relative)),
      overTarget === undefined ? "no effect there" : showShare(overTarget),
    ]),
});

function changeSection(
  title: string,
  { figures, rows }: ShownAdjustments,
  pick: (figure: AdjustedFigure) => boolean,
  unit: ShowUnit,
  reasons: Set<string>,
): Section {
  const columns = figures.flatMap((figure, index) => (pick(figure) ? [{ figure, index }] : []));
  const text = rows.map((row) => [
    row.path,
    ...columns.map(({ figure, index }) => changeText(figure, row.changes[index], row.relative[index], unit, reasons)),
  ]);
  const moved = text.filter(([, ...cells]) => cells.some((cell) => cell !== "." && cell !== "-"));
  const heads = columns.map(({ figure }) => right(figure.name.replace(/ at .*/, "")));
  return { title, columns: [left("path"), ...heads], rows: moved };
}

/** A dot where nothing changes: the eye finds what does. */
function changeText(
  { group }: AdjustedFigure,
  change: Figure | undefined,
  relative: Figure | undefined,
  unit: ShowUnit,
  reasons: Set<string>,
): string {
  const shown = group === "rate" || group === "damping" ? relative : change;
  if (shown === undefined) return "-";
  if (isAbsent(shown)) {
    reasons.add(shown.reason);
    return "-";
  }
  if (Math.abs(shown) < 5e-7) return ".";
  const text = group === "height" ? showFigure(shown, unit("length"), 3) : showShare(shown);
  return text.startsWith("0 ") ? "." : signed(text);
}

const signed = (text: string): string => (text.startsWith("-") || text.startsWith("0 ") ? text : `+${text}`);

const stuckSection = ({ stuck }: ShownAdjustments): Section => ({
  title: "Adjusters that could not be moved",
  columns: [left("path"), left("why")],
  rows: stuck.map(({ path, why }) => [path, why]),
});
