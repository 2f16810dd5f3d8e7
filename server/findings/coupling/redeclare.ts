/** Tells the claim as the motion is: the unclaimed mode added. The tidy answer where both are meant. */
import type { CheckedElement } from "../axle-parts.js";
import type { RuleContext } from "../context.js";
import { oneEdit } from "../edits.js";
import type { Fix } from "../finding.js";
import { leakOf } from "./leak.js";

export function redeclaration(context: RuleContext, { model, figures }: CheckedElement): readonly Fix[] {
  const leak = leakOf(figures);
  const last = model.forOrigins.at(-1);
  if (leak === undefined || last === undefined || leak.mode === "other-wheel") return [];
  if (context.textOf(last.uri) === undefined) return [];
  const title = `Say that ${model.name} is for ${[...model.for, leak.mode].join(" and ")}`;
  return [oneEdit(title, last.uri, { start: last.end, end: last.end }, ` and ${leak.mode}`)];
}
