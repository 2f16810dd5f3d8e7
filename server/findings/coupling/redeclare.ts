/** Tells the claim as the motion is: the unclaimed mode added. The tidy answer where both are meant. */
import type { CheckedElement } from "../axle-parts.js";
import type { CheckedCar } from "../context.js";
import { oneEdit } from "../edits.js";
import type { Fix } from "../finding.js";
import { isInside } from "../setup-lines.js";
import { leakOf } from "./leak.js";

/** None where a set-up inherits the claim: what it derives from is moved as it says. */
export function redeclaration({ model: car }: CheckedCar, { model, figures }: CheckedElement): readonly Fix[] {
  const leak = leakOf(figures);
  const last = model.forOrigins.at(-1);
  if (leak === undefined || last === undefined || leak.mode === "other-wheel" || !isInside(last, car.origin)) return [];
  const title = `Say that ${model.name} is for ${[...model.for, leak.mode].join(" and ")}`;
  return [oneEdit(title, last.uri, { start: last.end, end: last.end }, ` and ${leak.mode}`)];
}
