/**
 * The edits that join an element to other eyes of its rockers: the names in its own text, or, where a
 * set-up inherits that text, a line of the set-up that says the connection anew.
 */
import type { ElementModel } from "../../model/car.js";
import type { Origin } from "../../model/origin.js";
import type { CheckedCar, RuleContext } from "../context.js";
import { elementAt } from "../axle-parts.js";
import { applyEdits, removal } from "../edits.js";
import type { TextEdit } from "../finding.js";
import { isInside, lineAdded } from "../setup-lines.js";
import { statementAt } from "../tree.js";
import { type EyeEnd, eyeEndsOf, eyeNameIn } from "./eye-ends.js";

/** @param eyeOf the eye that each end shall have */
export function joinedTo(
  context: RuleContext,
  checked: CheckedCar,
  element: ElementModel,
  eyeOf: (end: EyeEnd) => string,
): readonly TextEdit[] | undefined {
  const car = checked.model;
  const { connection, axle, name } = element;
  // Both drop links of a bar, and both sides of a corner element, are written once.
  const renames = new Map<number, TextEdit>();
  for (const end of eyeEndsOf(connection)) {
    const span = eyeNameIn(context, end);
    if (span === undefined) return undefined;
    if (eyeOf(end) !== end.eye) renames.set(span.start, { uri: end.origin.uri, span, newText: eyeOf(end) });
  }
  const edits = [...renames.values()];
  const [first] = edits;
  const isBar = connection?.kind === "bar" || connection?.kind === "tee";
  const line = isBar ? eyeEndsOf(connection)[0]?.origin : connection?.origin;
  if (first === undefined || line === undefined) return undefined;
  if (isInside({ ...first.span, uri: first.uri }, car.origin))
    return isInherited(checked, element, eyeOf) ? [lineOut(context, line)] : edits;
  const text = context.textOf(line.uri);
  if (text === undefined || axle === undefined) return undefined;
  const written = applyEdits(
    text.slice(line.start, line.end),
    edits.map((edit) => ({ ...edit, span: moved(edit, -line.start) })),
  );
  // A dotted line of another set-up brings its path along.
  const said = isBar ? `drop-link ${written}` : written.replace(/^\S*(?=between\b)/, "");
  const added = lineAdded(context, car, axle, `${axle}.${name}.${said}`);
  return added && [added];
}

/** Whether that is how it is joined in what the set-up derives from: then its own line is in the way. */
function isInherited(
  { base }: CheckedCar,
  { path, connection }: ElementModel,
  eyeOf: (end: EyeEnd) => string,
): boolean {
  const there = base && elementAt(base, path)?.model.connection;
  const ends = eyeEndsOf(connection);
  return (
    there?.kind === connection?.kind &&
    eyeEndsOf(there).length === ends.length &&
    eyeEndsOf(there).every((end, index) => {
      const own = ends[index];
      return own !== undefined && end.side === own.side && end.eye === eyeOf(own);
    })
  );
}

function lineOut({ text, parsed, uri }: RuleContext, line: Origin): TextEdit {
  const statement = statementAt(parsed.document, line);
  const start = statement?.notes[0]?.start ?? statement?.start ?? line.start;
  return { uri, span: removal(text, { start, end: statement?.end ?? line.end }), newText: "" };
}

const moved = ({ span }: TextEdit, by: number) => ({ start: span.start + by, end: span.end + by });
