/** A row of evenly spaced values on the command line: `-30..30mm:7`, or one value, `5mm`. */
import { matchesDimension, parseUnit, unitsOf, valueToSI } from "../quantities/index.js";
import { UsageError } from "./usage-error.js";

type DimensionName = Parameters<typeof matchesDimension>[1];

const number = String.raw`[-+]?(?:\d+\.?\d*|\.\d+)`;
const shape = new RegExp(`^(${number})(?:\\.\\.(${number}))?\\s*([^\\s:\\d]+)(?::(\\d+))?$`);
const mostValues = 10_001;

/** Values in SI, in order; a `UsageError` says how to write it. */
export function gridOf(option: string, text: string, dimension: DimensionName): readonly number[] {
  const found = shape.exec(text.trim());
  if (found === null) throw new UsageError(`${option} "${text}": write ${expectedFor(dimension)}`);
  const [, from = "0", to, unit = "", count] = found;
  const info = parseUnit(unit);
  if (info === undefined || !matchesDimension(info, dimension)) {
    throw new UsageError(
      `${option} "${text}": "${unit}" is not a unit of ${dimension}; use ${unitsOf(dimension).join(", ")}`,
    );
  }
  const steps = to === undefined ? 1 : Number(count ?? 11);
  if (steps < 1 || steps > mostValues)
    throw new UsageError(`${option} "${text}": the count goes from 1 to ${mostValues}`);
  // Spaced in the user's unit, so that the nought in the middle is one.
  return spaced(Number(from), Number(to ?? from), steps).map((value) => valueToSI(value, info));
}

function spaced(from: number, to: number, count: number): readonly number[] {
  if (count === 1) return [from];
  return Array.from({ length: count }, (_, index) => from + ((to - from) * index) / (count - 1));
}

/** Travel and roll are asked for in rows; speed and acceleration one at a time. */
function expectedFor(dimension: DimensionName): string {
  if (dimension === "speed") return "a value with its unit, such as 120km/h";
  if (dimension === "acceleration") return "a value with its unit, such as 1.5g";
  if (dimension === "frequency") return "a range with its unit and a count, such as 0.5..30Hz:61";
  return `a range with its unit and a count, such as ${dimension === "angle" ? "-2..2deg:5" : "-30..30mm:7"}`;
}
