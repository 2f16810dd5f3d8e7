/** A sweep over speed or lateral acceleration as a table: one row a point, with what begins on the way and where it ends. */
import type { DimensionName } from "../../grammar/vocabulary/word.js";
import type { CaseFigures, Sweep } from "../analyses/equilibrium/results.js";
import type { Figure } from "../analyses/results.js";
import type { CheckedCar } from "../findings/context.js";
import { titleOf } from "./car-title.js";
import { showFigure } from "./figures.js";
import type { RatesPage } from "./rates-page.js";
import { cell, left, right } from "./section.js";
import { type ShowUnit, unitsOfCar } from "./units-of-car.js";

export interface SweepColumn {
  readonly head: string;
  /** As a machine calls it. */
  readonly key: string;
  readonly unit: string;
  readonly of: (figures: CaseFigures) => Figure;
}

type Column = readonly [head: string, key: string, dimension: DimensionName, of: (figures: CaseFigures) => Figure];

const COLUMNS: readonly Column[] = [
  ["ride height front", "rideHeightFront", "length", ({ front }) => front.rideHeight],
  ["rear", "rideHeightRear", "length", ({ rear }) => rear.rideHeight],
  ["roll", "roll", "angle", ({ roll }) => roll],
  ["roll gradient", "rollGradient", "angle-per-acceleration", ({ rollGradient }) => rollGradient],
  ["pitch", "pitch", "angle", ({ pitch }) => pitch],
  ["load transfer front", "loadTransferFront", "share", ({ loadTransferFront }) => loadTransferFront],
  ["roll stiffness front", "rollStiffnessFront", "share", ({ rollStiffnessFront }) => rollStiffnessFront],
  ["downforce front", "downforceFront", "share", ({ downforceFront }) => downforceFront],
  ["load FL", "loadFrontLeft", "force", ({ wheels }) => loadOf(wheels, 0)],
  ["FR", "loadFrontRight", "force", ({ wheels }) => loadOf(wheels, 1)],
  ["RL", "loadRearLeft", "force", ({ wheels }) => loadOf(wheels, 2)],
  ["RR", "loadRearRight", "force", ({ wheels }) => loadOf(wheels, 3)],
];

/** What an equilibrium leaves unbalanced, N: a load below it is none. */
const RESIDUAL = 1e-6;

function loadOf(wheels: CaseFigures["wheels"], at: 0 | 1 | 2 | 3): number {
  const load = wheels[at]?.load ?? 0;
  return Math.abs(load) < RESIDUAL ? 0 : load;
}

/** Both unloaded and in a turn: a column that has no figure at any point is left out. */
export function sweepColumns({ points }: Sweep, unit: ShowUnit): readonly SweepColumn[] {
  return COLUMNS.filter(([, , , of]) => points.some(({ figures }) => typeof of(figures) === "number")).map(
    ([head, key, dimension, of]) => ({ head, key, unit: unit(dimension), of }),
  );
}

export const sweepUnit = ({ over }: Sweep, unit: ShowUnit): string => (over === "speed" ? unit("speed") : "g");

/** What happens on the way, in words. */
export function sweepNotes(car: CheckedCar, sweep: Sweep): readonly string[] {
  const unit = sweepUnit(sweep, unitsOfCar(car.model));
  const events = sweep.events.map(({ what, name, value }) =>
    what === "wheel-lifts"
      ? `the ${name} wheel lifts at ${showFigure(value, unit)}`
      : `${name} begins to carry at ${showFigure(value, unit)}`,
  );
  const end = sweep.end === undefined ? [] : [`ends at ${showFigure(sweep.end.value, unit)}: ${sweep.end.why}`];
  return [...events, ...end];
}

export function sweepPage(car: CheckedCar, sweep: Sweep): RatesPage {
  const unit = unitsOfCar(car.model);
  const columns = sweepColumns(sweep, unit);
  const hasBranches = sweep.points.some(({ branch }) => branch === "unstable");
  const reasons = new Set<string>();
  const table = {
    title: sweep.over === "speed" ? "Speed sweep" : "Lateral sweep",
    columns: [right(sweep.over), ...(hasBranches ? [left("branch")] : []), ...columns.map(({ head }) => right(head))],
    rows: sweep.points.map(({ value, branch, figures }) => [
      showFigure(value, sweepUnit(sweep, unit)),
      ...(hasBranches ? [branch] : []),
      ...columns.map((column) => cell(column.of(figures), column.unit, reasons)),
    ]),
  };
  const notes = { title: "On the way", columns: [left("")], rows: sweepNotes(car, sweep).map((note) => [note]) };
  return {
    title: titleOf(car.model),
    sections: [table, notes].filter(({ rows }) => rows.length > 0),
    reasons: [...reasons],
  };
}
