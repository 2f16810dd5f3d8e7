/** Where an eye of the element stands on one side only: takes that side's own line out, so that it mirrors the other again. */
import type { Attachment, AxleModel } from "../../model/car.js";
import type { Origin } from "../../model/origin.js";
import type { CheckedElement } from "../axle-parts.js";
import type { RuleContext } from "../context.js";
import { oneEdit, removal } from "../edits.js";
import type { Fix } from "../finding.js";
import { placedRocker, sameText } from "./placed-rocker.js";

export function mirrorFixes(context: RuleContext, { model, axle }: CheckedElement): readonly Fix[] {
  if (axle === undefined || model.connection?.kind !== "between") return [];
  return model.connection.ends.flatMap((end) => {
    const own = end.kind === "eye" ? oneSided(axle, end) : undefined;
    const text = own && context.textOf(own.uri);
    if (own === undefined || text === undefined || end.kind !== "eye") return [];
    const title = `Mirror the ${end.side === "left" ? "right" : "left"} side's eye ${end.eye} again`;
    return [oneEdit(title, own.uri, removal(text, own), "")];
  });
}

/** The line that gives this side's eye alone: one that was put over what the other side still has. */
function oneSided(axle: AxleModel, { side, eye }: Extract<Attachment, { kind: "eye" }>): Origin | undefined {
  const own = placedRocker(axle, side)?.eyes.get(eye);
  const other = placedRocker(axle, side === "left" ? "right" : "left")?.eyes.get(eye);
  if (own === undefined || other === undefined || sameText(own, other)) return undefined;
  return own.given.chain.length > other.given.chain.length ? own.given.statement : undefined;
}
