/**
 * A `let` value is used nowhere. Perhaps a number was typed where its name was meant, and a later
 * change of the `let` will not reach it.
 *
 * A file of parts alone is there for others to use, so nothing in it counts as unused.
 *
 * ```crank wrong
 * use "shared.crank"
 *
 * let wet-third = 48 N/mm
 *
 * setup wet from wren {
 *   front.third.rate 48 N/mm
 * }
 * ```
 *
 * ```crank right
 * use "shared.crank"
 *
 * let wet-third = 48 N/mm
 *
 * setup wet from wren {
 *   front.third.rate wet-third
 * }
 * ```
 */
import { oneEdit, removal } from "../../edits.js";
import { fromModel, problemBehind } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { statementAt } from "../../tree.js";
import { quoted } from "../../wording.js";

const meta = { id: "unused-let", title: "A let value that nothing uses", cost: "model", severity: "hint" } as const;

export const unusedLet: Rule = {
  meta,
  check: (context) =>
    fromModel(meta, context, ["unused-let"], (problem) => ({
      message: `${quoted(problem.name)} is used nowhere, so changing it changes nothing. Use it where its value is meant, or remove it.`,
      tags: ["unnecessary"],
    })),
  fix: (finding, context) => {
    const problem = problemBehind(finding, "unused-let");
    const line = statementAt(context.parsed.document, finding.span);
    if (!problem || !line || problem.uri !== context.uri) return [];
    return [
      oneEdit(`Remove ${quoted(problem.name)}`, finding.uri, removal(context.text, line), "", { preferred: true }),
    ];
  },
};
