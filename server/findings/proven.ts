/** The text with a fix applied, for rules whose fixes have to prove themselves before they are offered. */
import type { RuleContext } from "./context.js";
import type { Fix, TextEdit } from "./finding.js";

/** What a fix may leave behind: a part or a name that nobody uses any more is not wrong. */
const harmless: ReadonlySet<string> = new Set(["unused-part", "unused-let"]);

/** The checks on the changed text; undefined where it cannot be changed so, or reading it tells of more problems than before. */
export function changedBy(context: RuleContext, { edits }: Pick<Fix, "edits">): RuleContext | undefined {
  if (edits.some((edit, index) => edits.slice(index + 1).some((other) => overlap(edit, other)))) return undefined;
  const changed = context.retry(edits.map(({ uri, span, newText }) => ({ uri, ...span, newText })));
  return problemsIn(changed) > problemsIn(context) ? undefined : changed;
}

const problemsIn = ({ problems }: RuleContext): number => problems.filter(({ kind }) => !harmless.has(kind)).length;

const overlap = (a: TextEdit, b: TextEdit): boolean =>
  a.uri === b.uri && a.span.start < b.span.end && b.span.start < a.span.end;
