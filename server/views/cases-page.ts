/** The load cases of one car or set-up as tables of text: one column a case. */
import type { CaseFigures, CaseResult } from "../analyses/equilibrium/results.js";
import type { DimensionName } from "../../grammar/vocabulary/word.js";
import type { Figure } from "../analyses/results.js";
import type { CheckedCar } from "../findings/context.js";
import { titleOf } from "./car-title.js";
import { axleRateRows, carRows, type CaseRow, elementRows, wheelRows } from "./case-rows.js";
import { isAbsent, showFigure, showRatio } from "./figures.js";
import type { RatesPage } from "./rates-page.js";
import { motionLine } from "./motion-lines.js";
import { cell, left, right, type Section } from "./section.js";
import { type ShowUnit, unitsOfCar } from "./units-of-car.js";

/** In the order of the text. */
export const caseResults = ({ cases }: CheckedCar): readonly CaseResult[] =>
  cases.names.flatMap((name) => cases.at(name) ?? []);

const solved = (results: readonly CaseResult[]): readonly CaseFigures[] =>
  results.flatMap((result) => (result.kind === "equilibrium" ? [result] : []));

/** Why a case has no figures; undefined where it has. */
export function whyNone(result: CaseResult): string | undefined {
  if (result.kind === "equilibrium") return undefined;
  return result.kind === "absent" ? result.reason : `the car has no equilibrium: ${result.words}`;
}

export function casesPage(car: CheckedCar): RatesPage {
  const unit = unitsOfCar(car.model);
  const results = caseResults(car);
  const found = solved(results);
  const reasons = new Set<string>();
  const sections = [
    tableOf("Load cases", found, (one) => carRows(one, unit), reasons),
    tableOf("Wheels", found, (one) => wheelRows(one, unit), reasons),
    tableOf("Elements", found, (one) => elementRows(one, unit), reasons),
    {
      title: "Beyond the height-table, where downforce is taken straight on",
      columns: [left("case"), left("axle")],
      rows: found.flatMap(({ name, air }) => (air.outside.length === 0 ? [] : [[name, air.outside.join(" and ")]])),
    },
    {
      title: "Cases without figures",
      columns: [left("case"), left("why")],
      rows: results.flatMap((result) => {
        const why = whyNone(result);
        return why === undefined ? [] : [[result.name, why]];
      }),
    },
  ];
  return { title: titleOf(car.model), sections: sections.filter(({ rows }) => rows.length > 0), reasons: [...reasons] };
}

/** Rows that all cases have in common, by what they are of and called. */
function tableOf(
  title: string,
  found: readonly CaseFigures[],
  rowsOf: (one: CaseFigures) => readonly CaseRow[],
  reasons: Set<string>,
): Section {
  const columns = [left("of"), left("figure"), ...found.map(({ name }) => right(name))];
  const [first = [], ...others] = found.map(rowsOf);
  const rows = first.map((row, i) => [
    row.subject,
    row.name,
    ...[row, ...others.flatMap((other) => other[i] ?? [])].map(({ figure, unit }) => cell(figure, unit, reasons)),
  ]);
  return { title, columns, rows };
}

/** As a hover of the case: attitude, shares and wheels of this car in it. */
export function caseCard(car: CheckedCar, name: string): string | undefined {
  const result = car.cases.at(name);
  if (result === undefined) return undefined;
  const title = `**${name}** of ${car.model.setup ?? car.model.name}`;
  if (result.kind !== "equilibrium") return `${title}: no figures, since ${whyNone(result) ?? ""}`;
  const unit = unitsOfCar(car.model);
  return [
    `${title}, in equilibrium`,
    endsTable(result, unit),
    wheelTable(result, unit),
    attitude(result, unit),
    motionLine(car, name),
  ].join("\n\n");
}

/** The two ends of the car beside each other; a share of the front is the rest of the rear's. */
function endsTable({ front, rear, air, ...found }: CaseFigures, unit: ShowUnit): string {
  const shared = (share: Figure): readonly [Figure, Figure] => [share, isAbsent(share) ? share : 1 - share];
  const rows: readonly (readonly [string, readonly [Figure, Figure], DimensionName])[] = [
    ["ride height", [front.rideHeight, rear.rideHeight], "length"],
    ["load transfer", shared(found.loadTransferFront), "share"],
    ["roll stiffness", shared(found.rollStiffnessFront), "share"],
    ["downforce", [air.front, air.rear], "force"],
    ["share of the downforce", shared(found.downforceFront), "share"],
  ];
  const told = rows.filter(([, [one]]) => !isAbsent(one));
  return [
    "| | front | rear |",
    "| --- | ---: | ---: |",
    ...told.map(
      ([name, [one, other], what]) =>
        `| ${name} | ${showFigure(one, unit(what), 4)} | ${showFigure(other, unit(what), 4)} |`,
    ),
  ].join("\n");
}

/** "Roll 1.002 deg (0.6682 deg/g), pitch -0.021 deg, drag 220 N." */
function attitude({ roll, rollGradient, pitch, air, clearances }: CaseFigures, unit: ShowUnit): string {
  const gradient = isAbsent(rollGradient) ? "" : ` (${showFigure(rollGradient, unit("angle-per-acceleration"), 4)})`;
  const told = [
    `roll ${showFigure(roll, unit("angle"), 4)}${gradient}`,
    `pitch ${showFigure(pitch, unit("angle"), 4)}`,
    `drag ${showFigure(air.drag, unit("force"), 4)}`,
    ...clearances.map(({ name, height }) => `${name} clears the ground by ${showFigure(height, unit("length"), 4)}`),
  ];
  return `In all: ${told.join(", ")}.`;
}

/** One row a wheel. */
function wheelTable(result: CaseFigures, unit: ShowUnit): string {
  const { wheels } = result;
  const rows = wheels.map((wheel) => {
    const { axle, side, load, travel, isLifted } = wheel;
    const figures = [
      isLifted ? "lifted" : showFigure(load, unit("force")),
      showFigure(travel, unit("length")),
      showFigure(wheel.left.bump, unit("length"), 3),
      typeof wheel.camberToRoad === "number" ? showFigure(wheel.camberToRoad, unit("angle"), 3) : "-",
    ];
    return `| ${axle} ${side} | ${figures.join(" | ")} |`;
  });
  return [
    "| wheel | load | travel | left in bump | camber to the road |",
    "| --- | ---: | ---: | ---: | ---: |",
    ...rows,
  ].join("\n");
}

/** Rates and motions at the positions of a case; undefined where the car has no such case. */
export function ratesAtPage(car: CheckedCar, name: string): RatesPage | undefined {
  const result = car.cases.at(name);
  if (result === undefined) return undefined;
  const title = `${titleOf(car.model)}, at ${name}`;
  if (result.kind !== "equilibrium") return { title, sections: [], reasons: [whyNone(result) ?? ""] };
  const unit = unitsOfCar(car.model);
  const reasons = new Set<string>();
  const [front, rear] = [axleRateRows("front", result.front, unit), axleRateRows("rear", result.rear, unit)];
  const rates: Section = {
    title: `Rates at the positions of ${name}`,
    columns: [left(""), right("front"), right("rear")],
    rows: front.map((row, i) => [
      row.name,
      cell(row.figure, row.unit, reasons),
      cell(rear[i]?.figure ?? { kind: "absent", reason: "not computed" }, row.unit, reasons),
    ]),
  };
  return { title, sections: [rates, motionSection(result, unit)], reasons: [...reasons] };
}

function motionSection({ elements, name }: CaseFigures, unit: ShowUnit): Section {
  const modes = ["heave", "roll", "pitch", "warp"] as const;
  return {
    title: `Motion per wheel travel at the positions of ${name}`,
    columns: [left("element"), ...modes.map(right)],
    rows: elements.map(({ path, sensitivity, torsional, measure }) => {
      const shown = (value: number): string => {
        if (measure === "volume") return showFigure(value, unit("piston-area"));
        return torsional ? showFigure(value, unit("angle-per-length")) : showRatio(value);
      };
      return [path, ...modes.map((mode) => shown(sensitivity[mode]))];
    }),
  };
}

/** "front at hairpin: load transfer 46.8 %, roll stiffness 50.1 %, downforce 41 %": of one case, for the line above a car. */
export function sharesLine(car: CheckedCar): string {
  const asked = car.model.expectations.flatMap(({ at }) => at ?? []);
  const results = [...new Set(asked)].map((name) => car.cases.at(name));
  const turning = results.find((one) => one?.kind === "equilibrium" && typeof one.loadTransferFront === "number");
  if (turning?.kind !== "equilibrium") return "";
  const shares = [
    ["load transfer", turning.loadTransferFront],
    ["roll stiffness", turning.rollStiffnessFront],
    ["downforce", turning.downforceFront],
  ] as const;
  const known = shares.flatMap(([what, figure]) =>
    typeof figure === "number" ? [`${what} ${showFigure(figure, "%", 3)}`] : [],
  );
  return `front at ${turning.name}: ${known.join(", ")}`;
}
