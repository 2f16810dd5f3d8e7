/** What the car weighs, on which corner, and what brings it to the wanted cross weight, as tables of text. */
import { cornerWeights, type CornerWeights } from "../analyses/corner-weights.js";
import { GRAVITY } from "../analyses/loads.js";
import type { Figure } from "../analyses/results.js";
import type { CornerTurn, ScalesFigures, Weighed } from "../analyses/scales.js";
import { massesOfCar, massStatements } from "../assemble/masses.js";
import { numberOf } from "../assemble/reading.js";
import { weighingOf } from "../assemble/weighing.js";
import type { CarMasses } from "../elements/masses.js";
import type { CheckedCar } from "../findings/context.js";
import type { CarModel } from "../model/car.js";
import { titleOf } from "./car-title.js";
import { isAbsent, showFigure, showShare } from "./figures.js";
import type { RatesPage } from "./rates-page.js";
import { restName } from "./rest-words.js";
import { cell, left, right, type Section } from "./section.js";
import { type ShowUnit, unitsOfCar } from "./units-of-car.js";

export const weightsOf = ({ model, analysis }: CheckedCar): CornerWeights => cornerWeights(weighingOf(model), analysis);

export const massesOf = ({ model }: CheckedCar): CarMasses => massesOfCar(model);

export type { ScalesFigures, Weighed } from "../analyses/scales.js";

/** A mass or a place, or why it is not known, as a figure. */
export const known = (value: number | string): Figure =>
  typeof value === "number" ? value : { kind: "absent", reason: value };

export function weightsPage(car: CheckedCar): RatesPage {
  const reasons = new Set<string>();
  const unit = unitsOfCar(car.model);
  const weights = weightsOf(car);
  const sections = [
    massSection(massesOf(car), weights.weighed, unit, reasons),
    lineSection(car.model, unit),
    ...(weights.scales === undefined
      ? [trimSection(weights, restName(car.model), unit, reasons)]
      : scalesSections(weights.scales, unit, reasons)),
  ];
  return { title: titleOf(car.model), sections: sections.filter(({ rows }) => rows.length > 0), reasons: [...reasons] };
}

export function massSection(
  { total, frontShare, centre, sprung }: CarMasses,
  weighed: CornerWeights["weighed"],
  unit: ShowUnit,
  reasons: Set<string>,
): Section {
  const [mass, length, inertia] = [unit("mass"), unit("length"), unit("inertia")];
  const share = known(frontShare);
  const both = (name: string, whole: Figure, body: Figure, in_: string): readonly string[] => [
    name,
    cell(whole, in_, reasons),
    cell(body, in_, reasons),
  ];
  return {
    title: "Masses, with driver, fuel and ballast",
    columns: [left(""), right("car"), right("sprung")],
    rows: [
      both("mass", known(total), known(sprung.mass), mass),
      ["share on the front wheels", shareCell(share, reasons), ""],
      ["share on the left wheels, at rest", shareCell(isAbsent(weighed) ? weighed : weighed.left, reasons), ""],
      both("centre of gravity behind the front axle", known(centre.behind), known(sprung.centre.behind), length),
      both("left of the centre plane", known(centre.left), known(sprung.centre.left), length),
      both("above the ground", known(centre.height), known(sprung.centre.height), length),
      ["roll inertia", "", cell(known(sprung.rollInertia), inertia, reasons)],
      ["pitch inertia", "", cell(known(sprung.pitchInertia), inertia, reasons)],
    ],
  };
}

function shareCell(share: Figure, reasons: Set<string>): string {
  if (!isAbsent(share)) return showShare(share);
  reasons.add(share.reason);
  return "-";
}

function lineSection(model: CarModel, unit: ShowUnit): Section {
  const lines = massStatements(model).map(({ word, name, block }): readonly string[] => [
    name === undefined ? word : `${word} ${name.text}`,
    showFigure(numberOf(block, "mass") ?? { kind: "absent", reason: "no mass is given" }, unit("mass")),
  ]);
  const stated =
    model.mass === undefined ? [] : [["car without these lines", showFigure(model.mass.value, unit("mass"))]];
  return {
    title: "What is put together",
    columns: [left(""), right("mass")],
    rows: lines.length === 0 ? [] : [...stated, ...lines],
  };
}

const CORNERS = ["front left", "front right", "rear left", "rear right"] as const;

function trimSection({ loads, weighed }: CornerWeights, rest: string, unit: ShowUnit, reasons: Set<string>): Section {
  const at = (wheel: number): string =>
    cell(isAbsent(loads) ? loads : (loads[wheel] ?? 0) / GRAVITY, unit("mass"), reasons);
  return {
    title: `Corner weights ${rest}`,
    columns: [left(""), right("left"), right("right")],
    rows: [["front", at(0), at(1)], ["rear", at(2), at(3)], ...(isAbsent(weighed) ? [] : shareRows(weighed))],
  };
}

const shareRows = ({ front, left: onLeft, cross }: Weighed): readonly (readonly string[])[] => [
  ["front wheels", showShare(front), ""],
  ["left wheels", showShare(onLeft), ""],
  ["cross weight, front right with rear left", showShare(cross), ""],
];

export function scalesSections(scales: ScalesFigures, unit: ShowUnit, reasons: Set<string>): readonly Section[] {
  const { readings, weighed, target, turns, roll } = scales;
  const [mass, length, angle] = [unit("mass"), unit("length"), unit("angle")];
  if (isAbsent(weighed)) reasons.add(weighed.reason);
  if (isAbsent(turns)) reasons.add(turns.reason);
  const read: Section = {
    title: "On the scales",
    columns: [left(""), right("left"), right("right")],
    rows: [
      ["front", showFigure(readings[0], mass), showFigure(readings[1], mass)],
      ["rear", showFigure(readings[2], mass), showFigure(readings[3], mass)],
      ...(isAbsent(weighed)
        ? []
        : [
            ["together", showFigure(weighed.total, mass), ""],
            ...shareRows(weighed),
            ["centre of gravity left of the centre plane", showFigure(weighed.centre[1], length), ""],
          ]),
    ],
  };
  const asked: Section = {
    title: `To a cross weight of ${showShare(target)}, ride heights of both axles kept`,
    columns: [
      left("corner"),
      left("turned"),
      right("raised by"),
      right("which is"),
      right("turns"),
      right("pad after"),
    ],
    rows: isAbsent(turns)
      ? []
      : turns.map((turn, i) => turnRow(turn, CORNERS[i] ?? "", { mass, length, angle }, reasons)),
  };
  const note = isAbsent(roll) || isAbsent(turns) ? [] : [rollSection(roll, angle)];
  return [read, asked, ...note];
}

/** A hundredth of a degree. */
const LEAST_ROLL = Math.PI / 18_000;

/** What the turns do to the body besides; too little is seen by nobody. */
function rollSection(roll: number, angle: string): Section {
  const isSeen = Math.abs(roll) > LEAST_ROLL;
  return {
    title: "With it the body rolls",
    columns: [left(""), right("left side up")],
    rows: isSeen ? [["by", showFigure(roll, angle, 2)]] : [],
  };
}

function turnRow(
  { path, raise, movement, torsional, turns, after }: CornerTurn,
  corner: string,
  units: { readonly mass: string; readonly length: string; readonly angle: string },
  reasons: Set<string>,
): readonly string[] {
  const counted = isAbsent(turns) ? cell(turns, "", reasons) : signed(turns, "turn");
  const moved = isAbsent(movement)
    ? cell(movement, "", reasons)
    : signed(movement, torsional ? units.angle : units.length);
  return [corner, path, signed(raise, units.length), moved, counted, showFigure(after, units.mass)];
}

/** "+0.85 mm": which way it goes has to be seen. */
function signed(value: number, unit: string): string {
  const text = showFigure(value, unit, 3);
  return value > 0 && !text.startsWith("0 ") ? `+${text}` : text;
}
