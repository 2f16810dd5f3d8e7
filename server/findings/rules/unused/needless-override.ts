/**
 * A line repeats what holds without it: a set-up gives a property the value that it inherits, or
 * one side of the car is given as the mirror image of the other.
 *
 * It does no harm today. But it hides what the set-up really changes, and when the car changes
 * later, this line holds the old value against it.
 *
 * ```crank wrong
 * use "shared.crank"
 *
 * setup wet from wren {
 *   front.track 1480 mm
 * }
 * ```
 *
 * ```crank right
 * use "shared.crank"
 *
 * setup wet from wren {
 *   front.track 1490 mm
 * }
 * ```
 */
import { oneEdit, removal } from "../../edits.js";
import { fromModel, problemBehind } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { statementAt } from "../../tree.js";
import { quoted } from "../../wording.js";

const meta = {
  id: "needless-override",
  title: "A change that changes nothing",
  cost: "model",
  severity: "information",
} as const;

export const needlessOverride: Rule = {
  meta,
  check: (context) =>
    fromModel(meta, context, ["needless-override"], (problem) => ({
      message:
        problem.why === "same-value"
          ? `${quoted(problem.path)} has this value already, so the line changes nothing now and would hold on to the old value when the car changes. Remove it.`
          : `${quoted(problem.path)} is the mirror image of the other side, which holds without being said. Remove it, so that both sides stay alike.`,
      related: [{ origin: problem.inherited, message: "It is inherited from here" }],
      tags: ["unnecessary"],
    })),
  fix: (finding, context) => {
    const problem = problemBehind(finding, "needless-override");
    const line = statementAt(context.parsed.document, finding.span);
    if (!problem || !line || problem.uri !== context.uri) return [];
    return [oneEdit("Remove the line", finding.uri, removal(context.text, line), "", { preferred: true, safe: true })];
  },
};
