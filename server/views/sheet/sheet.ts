/**
 * The setup sheet of one car or set-up as plain data: what the mechanics fit, set and measure.
 *
 * In: a checked car. Out: texts in the author's units, in the order in which the work is done; Markdown, HTML and JSON
 * show the same.
 */
import { massStatements } from "../../assemble/masses.js";
import { numberOf } from "../../assemble/reading.js";
import type { CheckedCar } from "../../findings/context.js";
import type { Finding } from "../../findings/finding.js";
import { adjustablesOf } from "../../model/adjustables.js";
import type { CarModel, ResolvedBlock } from "../../model/car.js";
import type { AxleName, Origin } from "../../model/origin.js";
import { showQuantity } from "../../quantities/index.js";
import { expectationsOf } from "../expectations.js";
import { isAbsent, showFigure, showShare } from "../figures.js";
import { measuredCar, measuredSection } from "../measured.js";
import { type TrimRow, trimRows } from "../trim-card.js";
import { unitsOfCar } from "../units-of-car.js";
import { weightsOf } from "../weights-page.js";
import { sheetElements, valueOf } from "./elements.js";
import { itemsOf, type LastSheet, marked, type SetupSheet, type SheetAxle, type SheetItem } from "./item.js";
import { patchOf } from "./patch.js";

/** @param findings of the file that declares it @param last undefined: held against what the set-up derives from */
export function setupSheet(car: CheckedCar, findings: readonly Finding[], last?: LastSheet): SetupSheet {
  const sheet = plainSheet(car, findings);
  if (last !== undefined) return marked(sheet, last);
  if (car.base === undefined) return sheet;
  return marked(sheet, lastSheetOf(car.base));
}

/** A car that is at hand as the sheet that would have been made of it. */
export function lastSheetOf(car: CheckedCar, name = car.model.setup ?? car.model.name): LastSheet {
  return { name, items: itemsOf(plainSheet(car, [])) };
}

function plainSheet(car: CheckedCar, findings: readonly Finding[]): SetupSheet {
  const { model } = car;
  const count = (severity: Finding["severity"]): number => findings.filter((one) => one.severity === severity).length;
  return {
    car: model.name,
    title: model.title ?? model.name,
    setup: model.setup,
    from: model.bases,
    notes: notesOf(model),
    patch: patchOf(car),
    missing: missingIn(car),
    axles: (["front", "rear"] as const).flatMap((axle) => axleOf(car, axle)),
    settings: carSettings(car),
    elements: sheetElements(car, model.elements),
    expectations: expectationsOf(car).map(({ text, verdict, message }) => ({ text, verdict, message })),
    measured: measuredFor(car),
    errors: count("error"),
    warnings: count("warning"),
    last: undefined,
  };
}

function missingIn(car: CheckedCar): readonly string[] {
  const { loads } = weightsOf(car);
  const ofAxles = (["front", "rear"] as const).flatMap((name): readonly string[] => {
    const analysis = car.analysis.axles[name];
    if (analysis === undefined) return [];
    const { rideHeight } = analysis.atRest;
    const { trim } = analysis.rates;
    return [
      ...(isAbsent(rideHeight) ? [`No ride height at the ${name}: ${rideHeight.reason}.`] : []),
      ...(isAbsent(trim) ? [`No seats at the ${name}: ${trim.reason}.`] : []),
    ];
  });
  return [...(isAbsent(loads) ? [`No corner weights: ${loads.reason}.`] : []), ...ofAxles];
}

function measuredFor(car: CheckedCar): SetupSheet["measured"] {
  const measured = measuredCar(car);
  return measured && measuredSection(measured, new Set());
}

/** Those of the set-up itself: above it, and above its own lines. */
function notesOf({ notes, origin, block, setup }: CarModel): readonly string[] {
  if (setup === undefined) return notes;
  const isOwn = ({ uri, start, end }: Origin): boolean =>
    uri === origin.uri && start >= origin.start && end <= origin.end;
  const inside = ({ statements }: ResolvedBlock): readonly string[] =>
    statements.flatMap((line) => [
      ...(isOwn(line.origin) ? line.notes : []),
      ...(line.block === undefined ? [] : inside(line.block)),
    ]);
  return [...new Set([...notes, ...inside(block)])];
}

function axleOf(car: CheckedCar, name: AxleName): readonly SheetAxle[] {
  const axle = car.model.axles[name];
  if (axle === undefined) return [];
  return [{ name, settings: [...rods(car, name), ...seats(car, name)], elements: sheetElements(car, axle.elements) }];
}

/** Push, pull and track rods with an adjuster: how long they are set. */
function rods({ model }: CheckedCar, axle: AxleName): readonly SheetItem[] {
  return adjustablesOf(model).flatMap(({ property, axle: own }): SheetItem[] => {
    const rod = /\.((?:(?:left|right)\.)?(?:push|pull|track)-rod)\.longer$/.exec(property.path)?.[1];
    if (own !== axle || rod === undefined || property.kind !== "number") return [];
    return [{ key: property.path, name: rod.replace(".", " "), value: valueOf(property) }];
  });
}

/** What trim moves: seats of springs, or rods, with their turns against the base. */
function seats(car: CheckedCar, axle: AxleName): readonly SheetItem[] {
  return onceForBoth(trimRows(car, axle)).map(({ path, moved, carries, change, turns }) => {
    const how = [change, turns].filter((part) => part !== "" && part !== "-").join(", ");
    return {
      key: `seat.${path}`,
      name: `${path.replace(`${axle}.`, "").replaceAll(".", " ")} ${carries === "" ? "by trim" : "seat"}`,
      value: carries === "" ? moved : `${moved}, carries ${carries}`,
      ...(how === "" ? {} : { how: `against ${car.base?.model.setup ?? car.base?.model.name ?? "drawn"}: ${how}` }),
    };
  });
}

/** Left and right in one line where they are set alike. */
function onceForBoth(rows: readonly TrimRow[]): readonly TrimRow[] {
  const said = ({ path, ...rest }: TrimRow): string => JSON.stringify([path.replace(/\.(left|right)\./, "."), rest]);
  return rows
    .filter((row, i) => rows.findIndex((other) => said(other) === said(row)) === i)
    .map((row) => {
      const isBoth = rows.filter((other) => said(other) === said(row)).length > 1;
      return isBoth ? { ...row, path: row.path.replace(/\.(left|right)\./, ".") } : row;
    });
}

/** Cross weight, brake balance, and what is carried. */
function carSettings(car: CheckedCar): readonly SheetItem[] {
  const { model } = car;
  const unit = unitsOfCar(model);
  const { weighed, target } = weightsOf(car);
  const brakes = model.brakes?.front;
  const carried = massStatements(model).map(({ word, name, block }): SheetItem => {
    const what = name === undefined ? word : `${word} ${name.text}`;
    const mass = numberOf(block, "mass");
    return { key: what, name: what, value: mass === undefined ? "-" : showFigure(mass, unit("mass")) };
  });
  return [
    ...(isAbsent(weighed)
      ? []
      : [
          {
            key: "cross-weight",
            name: "cross weight, front right with rear left",
            value: `${showShare(weighed.cross)}, wanted ${showShare(target)}`,
          },
        ]),
    ...(brakes === undefined
      ? []
      : [{ key: "brakes.front", name: "brake force at the front", value: showQuantity(brakes.value, brakes.unit, 4) }]),
    ...(model.mass === undefined
      ? []
      : [{ key: "mass", name: "mass as stated", value: showQuantity(model.mass.value, model.mass.unit, 5) }]),
    ...carried,
  ];
}
