/**
 * A minus between two values has a blank on each side. Names may hold hyphens, so without blanks
 * `track-offset` is one name and not a difference.
 *
 * ```crank wrong
 * let free-length = 240 mm
 * let stack = free-length - 12 mm -3 mm
 * catalogue {
 *   torsion-bar TB-185 { diameter 18.5 mm, length stack }
 * }
 * ```
 *
 * ```crank right
 * let free-length = 240 mm
 * let stack = free-length - 12 mm - 3 mm
 * catalogue {
 *   torsion-bar TB-185 { diameter 18.5 mm, length stack }
 * }
 * ```
 */
import { oneEdit } from "../../edits.js";
import { fromSyntax, problemBehind } from "../../from-problems.js";
import type { Rule } from "../../finding.js";

const meta = { id: "tight-minus", title: "A minus without blanks", cost: "syntax", severity: "error" } as const;

export const tightMinus: Rule = {
  meta,
  check: (context) =>
    fromSyntax(meta, context, ["spaceless-minus"], (problem) => {
      const sign = problem.suggestion.trim();
      return {
        message: `Between two values "${sign}" has a blank on each side. Without them it is read as a hyphen or as the sign of a number; add the blanks.`,
      };
    }),
  fix: (finding) => {
    const problem = problemBehind(finding, "spaceless-minus");
    if (!problem) return [];
    return [oneEdit("Add the blanks", finding.uri, finding.span, problem.suggestion, { preferred: true, safe: true })];
  },
};
