/** What a kerb does, for a person: a table of the wheels, one of the heights and one of the elements, a line each. */
import type { ElementStrike, StrikeFigures } from "../analyses/kerb/figures.js";
import { fromSI, showQuantity } from "../quantities/index.js";
import { showFigure } from "./figures.js";
import { wheelName } from "./modes-page.js";
import { left, right, type Section } from "./section.js";
import type { ShowUnit } from "./units-of-car.js";

interface Range {
  readonly least: number;
  readonly most: number;
}

const DIGITS = 4;

/** "0 to 8666 N": the unit once. */
function span({ least, most }: Range, unit: string): string {
  const [bare = ""] = showFigure(plain(least, unit), unit, DIGITS).split(" ");
  return `${bare} to ${showFigure(plain(most, unit), unit, DIGITS)}`;
}

/** Less than anybody could measure, as where a crossed element hardly moves, is nought. */
const plain = (value: number, unit: string): number => (Math.abs(fromSI(value, unit) ?? value) < 5e-4 ? 0 : value);

/** In ms, or a dash where it is none at all. */
const lasting = (seconds: number): string => (seconds > 0 ? showQuantity(seconds, "ms", 3) : "-");

export function kerbTables(figures: StrikeFigures, unit: ShowUnit): readonly Section[] {
  return [wheelTable(figures, unit), heightTable(figures, unit), elementTable(figures, unit)];
}

function wheelTable({ wheels }: StrikeFigures, unit: ShowUnit): Section {
  const [force, length] = [unit("force"), unit("length")];
  return {
    title: "Wheels",
    columns: [left("wheel"), right("load before"), right("load"), right("travel"), right("off the ground")],
    rows: wheels.map(({ before, load, travel, offGround }, i) => [
      wheelName(i),
      showFigure(before, force),
      span(load, force),
      span(travel, length),
      lasting(offGround),
    ]),
  };
}

function heightTable({ rideHeight, clearance }: StrikeFigures, unit: ShowUnit): Section {
  const length = unit("length");
  return {
    title: "Lowest above the level road",
    columns: [left("of"), right("height")],
    rows: [
      ["front", showFigure(rideHeight[0], length)],
      ["rear", showFigure(rideHeight[1], length)],
      ...clearance.map(({ name, least }) => [name, showFigure(least, length)]),
    ],
  };
}

function elementTable({ elements }: StrikeFigures, unit: ShowUnit): Section {
  return {
    title: "Elements",
    columns: [
      left("element"),
      right("force before"),
      right("force"),
      right("deflection"),
      right("speed"),
      right("on the stop"),
    ],
    rows: elements.map((element) => elementRow(element, unit)),
  };
}

function elementRow(element: ElementStrike, unit: ShowUnit): readonly string[] {
  const { path, measure, before, force, deflection, speed, onStop } = element;
  const load = loadUnit(measure, unit);
  return [
    path,
    showFigure(before, load),
    span(force, load),
    deflection === undefined ? "-" : span(deflection, unit(measure)),
    speed === undefined || measure === "volume" ? "-" : span(speed, speedUnit(measure, unit)),
    onStop === undefined ? "-" : lasting(onStop),
  ];
}

type Measure = ElementStrike["measure"];

export const loadUnit = (measure: Measure, unit: ShowUnit): string =>
  unit(measure === "volume" ? "pressure" : measure === "angle" ? "moment" : "force");

export const speedUnit = (measure: Measure, unit: ShowUnit): string =>
  measure === "angle" ? "deg/s" : unit("damper-speed");
