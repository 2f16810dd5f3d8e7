/**
 * Hovers of what sets a car on the flat patch: how far trim moves seats or rods, in turns where a thread is known and
 * against what the set-up derives from; and, of `keep-seats`, what follows when nobody sets it.
 */
import { isAbsent } from "../analyses/absent.js";
import type { AtRest, AxleAnalysis, AxleRates, Figure } from "../analyses/results.js";
import { weighingOf } from "../assemble/weighing.js";
import type { CornerAdjusterData } from "../elements/weighing.js";
import type { CheckedCar } from "../findings/context.js";
import type { AxleName, Side } from "../model/origin.js";
import { showFigure, showShare } from "./figures.js";
import { asTable, cell, left, right, type Section } from "./section.js";
import { type ShowUnit, unitsOfCar } from "./units-of-car.js";
import { weightsOf } from "./weights-page.js";

const AXLES = ["front", "rear"] as const;
const SIDES = ["left", "right"] as const;

/** Seats or rods that trim moves on one axle, with their change against the base; nothing where it moves none. */
export function trimCard(car: CheckedCar, axle: AxleName): string | undefined {
  const analysis = car.analysis.axles[axle];
  if (analysis === undefined) return undefined;
  const reasons = new Set<string>();
  const { trim } = analysis.rates;
  if (isAbsent(trim)) return `**trim of the ${axle} axle** · none: ${trim.reason}`;
  const rows = [...seatRows(car, axle, analysis, reasons), ...rodRows(car, axle, analysis.rates, reasons)];
  if (rows.length === 0) return undefined;
  const columns = [left(""), right("moved by"), right("carries"), right("against its base"), right("turns")];
  const title = `**trim of the ${axle} axle**${analysis.atRest.left.travel === 0 ? "" : ", wheels away from where they are drawn"}`;
  return asTable({ title, columns, rows });
}

export interface TrimRow {
  readonly path: string;
  readonly moved: string;
  /** Empty for a rod. */
  readonly carries: string;
  /** Against the base, and in turns; empty or a dash where it is not known. */
  readonly change: string;
  readonly turns: string;
}

/** The rows of the card by name; none where trim moves nothing. */
export function trimRows(car: CheckedCar, axle: AxleName): readonly TrimRow[] {
  const analysis = car.analysis.axles[axle];
  if (analysis === undefined) return [];
  const reasons = new Set<string>();
  return [...seatRows(car, axle, analysis, reasons), ...rodRows(car, axle, analysis.rates, reasons)].map(
    ([path = "", moved = "", carries = "", change = "", turns = ""]) => ({ path, moved, carries, change, turns }),
  );
}

/** What the corner's adjuster is, FL FR RL RR. */
const adjusterAt = (car: CheckedCar, axle: AxleName, side: Side): CornerAdjusterData | string | undefined =>
  weighingOf(car.model).corners[(axle === "front" ? 0 : 2) + (side === "left" ? 0 : 1)];

/** A seat's turns: what it raises the corner by over the thread of the ride height. */
function seatRows(car: CheckedCar, axle: AxleName, analysis: AxleAnalysis, reasons: Set<string>): readonly string[][] {
  const { trim } = analysis.rates;
  if (isAbsent(trim)) return [];
  const unit = unitsOfCar(car.model);
  const before = car.base?.analysis.axles[axle]?.rates.trim;
  return trim.map(({ path, seat, load }) => {
    const figures = analysis.elements.find((element) => element.path === path);
    const torsional = figures?.torsional === true;
    const [length, force] = torsional ? [unit("angle"), unit("moment")] : [unit("length"), unit("force")];
    const was = before === undefined || isAbsent(before) ? undefined : before.find((one) => one.path === path);
    const change = was === undefined ? undefined : seat - was.seat;
    const corner = SIDES.map((side) => adjusterAt(car, axle, side)).find(
      (one) => typeof one === "object" && one.path === path,
    );
    const thread = typeof corner === "object" ? corner.thread : undefined;
    const ratio = figures?.motionRatio;
    const perTurn = thread === undefined || typeof ratio !== "number" ? undefined : thread * ratio;
    return [
      path,
      showFigure(seat, length, 3),
      showFigure(load, force),
      ...changeCells(change, perTurn, length, reasons, `${path} has no thread (write one behind \`ride-height\`)`),
    ];
  });
}

function rodRows(car: CheckedCar, axle: AxleName, rates: AxleRates, reasons: Set<string>): readonly string[][] {
  const { rods } = rates;
  if (rods === undefined) return [];
  const length = unitsOfCar(car.model)("length");
  return SIDES.map((side) => {
    const corner = adjusterAt(car, axle, side);
    const thread = typeof corner === "object" && corner.kind === "rod" ? corner.thread : undefined;
    const was = car.base?.analysis.axles[axle]?.rates.rods?.[side];
    const total =
      was === undefined ? undefined : rods[side] + written(car, axle, side) - was - writtenIn(car.base, axle, side);
    return [
      `${axle}.${side}.${rods.kind}`,
      showFigure(rods[side], length, 3),
      "",
      ...changeCells(total ?? rods[side], thread, length, reasons, `the ${axle} ${rods.kind} has no thread`),
    ];
  });
}

/** How much longer than drawn the rod is written, m. */
function written({ model }: CheckedCar, axle: AxleName, side: Side): number {
  const corner = model.axles[axle]?.corner[side];
  return corner !== undefined && "rod" in corner ? (corner.rod?.longer?.value ?? 0) : 0;
}

const writtenIn = (car: CheckedCar | undefined, axle: AxleName, side: Side): number =>
  car === undefined ? 0 : written(car, axle, side);

/** Changes below this are rounding, m and rad. */
const SAME = 1e-9;

function changeCells(
  change: number | undefined,
  perTurn: number | undefined,
  unit: string,
  reasons: Set<string>,
  why: string,
): readonly [string, string] {
  if (change === undefined) return ["", ""];
  if (Math.abs(change) < SAME) return ["as before", ""];
  const turns: Figure = perTurn === undefined ? { kind: "absent", reason: why } : change / perTurn;
  return [signed(change, unit), isAbsent(turns) ? cell(turns, "", reasons) : signed(turns, "turn")];
}

const signed = (value: number, unit: string): string => `${value > 0 ? "+" : ""}${showFigure(value, unit, 3)}`;

/** What happened to a set-up that keeps the seats of what it derives from. */
export function keptCard(car: CheckedCar): string | undefined {
  const { base } = car;
  if (base === undefined) return undefined;
  const reasons = new Set<string>();
  const unit = unitsOfCar(car.model);
  const section: Section = {
    title: "**on kept seats**, nobody having set the car anew",
    columns: [left(""), right("before"), right("now")],
    rows: [...AXLES.flatMap((axle) => axleRows(base, car, axle, unit, reasons)), crossRow(base, car, reasons)],
  };
  const why = [...reasons].map((reason) => `- no figure where ${reason}`);
  return [asTable(section), ...(why.length === 0 ? [] : [why.join("\n")])].join("\n\n");
}

function axleRows(base: CheckedCar, car: CheckedCar, axle: AxleName, unit: ShowUnit, reasons: Set<string>): string[][] {
  const [was, is] = [base.analysis.axles[axle]?.atRest, car.analysis.axles[axle]?.atRest];
  if (was === undefined || is === undefined) return [];
  const row = (name: string, of: (one: AtRest) => Figure, in_: string): string[] => [
    `${axle} ${name}`,
    cell(of(was), in_, reasons),
    cell(of(is), in_, reasons),
  ];
  const bySide = SIDES.flatMap((side) => [
    row(`${side} load`, (one) => one[side].load, unit("force")),
    row(`${side} camber`, (one) => one[side].camber, unit("angle")),
    row(`${side} toe`, (one) => one[side].toe, unit("angle")),
  ]);
  return [row("ride height", ({ rideHeight }) => rideHeight, unit("length")), ...bySide];
}

function crossRow(base: CheckedCar, car: CheckedCar, reasons: Set<string>): string[] {
  const cross = (one: CheckedCar): string => {
    const { weighed } = weightsOf(one);
    if (!isAbsent(weighed)) return showShare(weighed.cross);
    return cell(weighed, "", reasons);
  };
  return ["cross weight, front right with rear left", cross(base), cross(car)];
}
