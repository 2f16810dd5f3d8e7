/** Edits of an element's own lines, for this car or set-up alone. */
import type { Origin } from "../../model/origin.js";
import { fromSI, unitSystem } from "../../quantities/index.js";
import type { TextEdit } from "../finding.js";
import { isInside, valueEdit } from "../setup-lines.js";
import { lineIn } from "./faulty.js";
import type { Mending } from "./proof.js";

/** How a set-up speaks of a line of the element, on both sides where both are meant: `front.coil.coil.wire`. */
export function pathTo({ element: { model }, both }: Mending, line: string): string {
  const side = model.side === undefined || both ? [] : [model.side];
  return [...(model.axle === undefined ? [] : [model.axle]), ...side, model.name, line].join(".");
}

/** A name or a sum is not replaced by its value of today. */
const isPlain = (written: string): boolean => /^[-+]?[\d.]/.test(written) && !/[-+*/(] /.test(written);

/** All values of the line replaced by `text`; undefined where it is not written or cannot be changed here. */
export function lineEdit(mending: Mending, line: string, text: string): TextEdit | undefined {
  const values = lineIn(mending.element.model.block, line)?.values ?? [];
  const [first, last] = [values[0], values.at(-1)];
  if (first === undefined || last === undefined || first.origin.uri !== last.origin.uri) return undefined;
  const origin: Origin = { ...first.origin, end: last.origin.end };
  const { context, car } = mending;
  if (isInside(origin, car.model.origin) && !isPlain(context.text.slice(origin.start, origin.end))) return undefined;
  return valueEdit(context, car.model, { given: { origin }, path: pathTo(mending, line), text });
}

export interface Written {
  readonly si: number;
  readonly unit: string;
}

/** The first number of a line. */
export function numberIn({ element: { model } }: Mending, line: string): Written | undefined {
  const value = lineIn(model.block, line)?.values.find((one) => one.kind === "number");
  return value?.kind === "number" ? { si: value.value, unit: value.unit } : undefined;
}

/** 1, 2 or 5 of a power of ten, at most this: 0.01 in for half a millimetre. */
function roundStep(size: number): number {
  const power = 10 ** Math.floor(Math.log10(size) + 1e-9);
  const [step = 1] = [5, 2, 1].filter((one) => one * power <= size * (1 + 1e-9));
  return step * power;
}

/** The value in its author's unit on a grid that a maker works to, such as 0.1 mm: `12.3 mm`; for inches a round one near it. */
export function onGrid(si: number, unit: string, grid: number, round: "up" | "down" | "near"): string | undefined {
  const [value, exact] = [fromSI(si, unit), fromSI(grid, unit)];
  if (value === undefined || exact === undefined || !(exact > 0)) return undefined;
  const size = unitSystem(unit) === "inch" ? roundStep(exact) : exact;
  const steps = value / size;
  // A step that is whole but for rounding is not passed over.
  const whole =
    round === "near" ? Math.round(steps) : round === "up" ? Math.ceil(steps - 1e-6) : Math.floor(steps + 1e-6);
  return `${Number((whole * size).toPrecision(6))} ${unit}`;
}
