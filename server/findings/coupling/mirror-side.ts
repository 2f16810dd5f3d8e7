/** Where an eye of the element stands on one side only: takes that side's own line out, so that it mirrors the other again. */
import type { Attachment } from "../../model/car.js";
import type { CheckedElement } from "../axle-parts.js";
import type { RuleContext } from "../context.js";
import { oneEdit, removal } from "../edits.js";
import type { Fix } from "../finding.js";

export function mirrorFixes(context: RuleContext, { model, axle }: CheckedElement): readonly Fix[] {
  if (axle === undefined || model.connection?.kind !== "between") return [];
  return model.connection.ends.flatMap((end) => {
    const own = end.kind === "eye" ? oneSided(axle.corner, end) : undefined;
    const text = own && context.textOf(own.uri);
    if (own === undefined || text === undefined || end.kind !== "eye") return [];
    const title = `Mirror the ${end.side === "left" ? "right" : "left"} side's eye ${end.eye} again`;
    return [oneEdit(title, own.uri, removal(text, own), "")];
  });
}

/** The statement that gives this side's eye alone, if there is one: its place differs from the other side's. */
function oneSided(
  corner: NonNullable<CheckedElement["axle"]>["corner"],
  { side, eye }: Extract<Attachment, { kind: "eye" }>,
): { readonly uri: string; readonly start: number; readonly end: number } | undefined {
  const statementOf = (of: "left" | "right") => {
    const model = corner[of];
    return model.kind === "hardpoints" || model.kind === "planar" ? model.rocker?.eyes.get(eye)?.statement : undefined;
  };
  const own = statementOf(side);
  const other = statementOf(side === "left" ? "right" : "left");
  const same = own !== undefined && other !== undefined && own.uri === other.uri && own.start === other.start;
  // The shared description is the left side's: only a line that stands for one side can go.
  return same || own === undefined || other === undefined || own.start < other.start ? undefined : own;
}
