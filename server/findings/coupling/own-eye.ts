/** A new eye for an element alone, beside the one that it shares (or that is worked out from names), and its end put on it. */
import type { Entry, Statement } from "../../../grammar/index.js";
import type { CheckedElement } from "../axle-parts.js";
import type { CheckedCar, RuleContext } from "../context.js";
import type { Fix, TextEdit } from "../finding.js";
import { insertionInto } from "../insertion.js";
import { isInside, lineAdded } from "../setup-lines.js";
import { blockAt, statementAt } from "../tree.js";
import type { EyeMove } from "./eye-search.js";
import { joinedTo } from "./joined-to.js";
import { placedRocker } from "./placed-rocker.js";

export function ownEye(
  context: RuleContext,
  car: CheckedCar,
  { model, axle }: CheckedElement,
  move: EyeMove,
  coordinates: string,
): readonly Fix[] {
  if (axle === undefined || model.connection === undefined) return [];
  const taken = placedRocker(axle, move.end.side)?.eyes;
  const name = freeName(`${move.end.eye}-${model.name}`, (candidate) => taken?.has(candidate) === true);
  const added = eyeAdded(context, car, move, `${name} ${coordinates}`);
  const joined = joinedTo(context, car, model, (end) => (end.eye === move.end.eye ? name : end.eye));
  if (added === undefined || joined === undefined) return [];
  const title = `Give ${model.name} an eye of its own at ${coordinates}`;
  return [{ title, edits: [added, ...joined], preferred: false, safe: false }];
}

function eyeAdded(
  context: RuleContext,
  { model }: CheckedCar,
  { end, sides, eye: { given } }: EyeMove,
  text: string,
): TextEdit | undefined {
  const statement = statementAt(context.parsed.document, given.statement);
  const block = blockAt(context.parsed.document, given.statement);
  if (!isInside(given.statement, model.origin) || statement === undefined || block === undefined) {
    const side = sides.length === 2 ? "" : `${end.side}.`;
    return lineAdded(context, model, end.axle, `${end.axle}.${side}rocker.eye ${text}`);
  }
  // Behind the last line of the block that begins alike, so that eyes stand together.
  const alike = block.entries.filter((entry) => headOf(entry) === headOf(statement));
  const last = alike.at(-1) ?? statement;
  const line = `${eyeHead(statement)} ${text}`;
  return { uri: context.uri, ...insertionInto(context.text, block, line, new Set([headOf(last)])) };
}

const headOf = (entry: Entry): string => (entry.kind === "statement" ? (entry.head.segments.at(-1)?.text ?? "") : "");

/** `eye`, or in a dotted line the path to it: `front.rocker.third` gives `front.rocker.eye`. */
function eyeHead({ head }: Statement): string {
  const path = head.segments.map(({ text }) => text);
  return [...path.slice(0, -1), "eye"].join(".");
}

function freeName(wanted: string, isTaken: (name: string) => boolean): string {
  let name = wanted;
  for (let number = 2; isTaken(name); number += 1) name = `${wanted}-${number}`;
  return name;
}
