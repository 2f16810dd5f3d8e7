/** Swaps the paired eyes: `left.rocker.high and right.rocker.low` becomes `left.rocker.low and right.rocker.high`. */
import type { Attachment } from "../../model/car.js";
import type { CheckedElement } from "../axle-parts.js";
import type { RuleContext } from "../context.js";
import type { Fix, TextEdit } from "../finding.js";
import { eyeNameIn } from "./eye-name.js";

export function swappedEyes(context: RuleContext, { model }: CheckedElement): readonly Fix[] {
  if (model.connection?.kind !== "between") return [];
  const [first, second] = model.connection.ends;
  if (first.kind !== "eye" || second.kind !== "eye" || first.eye === second.eye) return [];
  const edits = [renamed(context, first, second.eye), renamed(context, second, first.eye)];
  if (edits.some((edit) => edit === undefined)) return [];
  const title = `Swap the eyes: ${first.side} ${second.eye}, ${second.side} ${first.eye}`;
  return [{ title, edits: edits.filter((edit) => edit !== undefined), preferred: false, safe: false }];
}

function renamed(context: RuleContext, end: Extract<Attachment, { kind: "eye" }>, eye: string): TextEdit | undefined {
  const span = eyeNameIn(context, end);
  return span && { uri: end.origin.uri, span, newText: eye };
}
