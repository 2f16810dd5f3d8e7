/** The text with a fix applied, for rules whose fixes have to prove themselves before they are offered. */
import type { RuleContext } from "./context.js";
import type { Fix } from "./finding.js";

/** What a fix may leave behind: a part or a name that nobody uses any more is not wrong. */
const harmless: ReadonlySet<string> = new Set(["unused-part", "unused-let"]);

/** The checks on the changed text; undefined where reading it tells of more problems than before. */
export function changedBy(context: RuleContext, { edits }: Pick<Fix, "edits">): RuleContext | undefined {
  const changed = context.retry(edits.map(({ uri, span, newText }) => ({ uri, ...span, newText })));
  return problemsIn(changed) > problemsIn(context) ? undefined : changed;
}

const problemsIn = ({ problems }: RuleContext): number => problems.filter(({ kind }) => !harmless.has(kind)).length;
