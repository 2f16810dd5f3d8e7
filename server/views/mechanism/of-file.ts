/** What the panel shows of a file: its cars by name, the one that is asked for, and whether the text can be read to its end. */
import type { CheckedCar } from "../../findings/context.js";
import type { Span } from "../../../grammar/index.js";
import type { Origin } from "../../model/origin.js";
import type { FileView } from "../../snapshot/workspace.js";
import type { PlaceOf } from "./corner-points.js";
import type { PanelCar, PanelRange } from "./data.js";
import { panelCar } from "./mechanism.js";

export interface FileMechanism {
  readonly cars: readonly { readonly name: string; readonly range: PanelRange }[];
  readonly broken: string | undefined;
  readonly car: PanelCar | undefined;
}

export const carName = ({ model }: CheckedCar): string => model.setup ?? model.name;

export const carNamed = (file: FileView, name: string | undefined): CheckedCar | undefined =>
  file.cars.find((car) => carName(car) === name) ?? file.cars[0];

/** @param name the first car of the file where absent or not there */
export function mechanismOfFile(file: FileView, name: string | undefined): FileMechanism {
  const car = carNamed(file, name);
  return {
    cars: file.cars.map((one) => ({ name: carName(one), range: rangeIn(file, one.model.origin) })),
    broken: brokenAt(file),
    car: car && panelCar(car, placesOf(file)),
  };
}

export function placesOf(file: FileView): PlaceOf {
  return ({ uri, start, end }: Origin) => {
    const lines = file.parsedOf(uri)?.lines;
    return lines && { uri, range: { start: lines.position(start), end: lines.position(end) } };
  };
}

function rangeIn({ parsed: { lines } }: FileView, { start, end }: Span): PanelRange {
  return { start: lines.position(start), end: lines.position(end) };
}

/** Where the text cannot be read first, in words. */
function brokenAt({ parsed }: FileView): string | undefined {
  const [first] = parsed.problems;
  return first === undefined ? undefined : `Line ${parsed.lines.position(first.start).line + 1} is not complete.`;
}
