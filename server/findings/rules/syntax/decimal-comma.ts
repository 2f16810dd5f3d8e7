/**
 * A decimal is written with a comma. The language writes it with a point, whatever the country,
 * since a comma parts two statements, or two members of a point.
 *
 * `18,5 mm` would otherwise be an 18 and a 5 mm, and a torsion bar half a millimetre thinner is a
 * tenth softer.
 *
 * ```crank wrong
 * catalogue {
 *   torsion-bar TB-185 {
 *     diameter 18,5 mm
 *     length 290 mm
 *   }
 * }
 * ```
 *
 * ```crank right
 * catalogue {
 *   torsion-bar TB-185 { diameter 18.5 mm, length 290 mm }
 * }
 * ```
 */
import { oneEdit } from "../../edits.js";
import { fromSyntax, problemBehind } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { quoted } from "../../wording.js";

const meta = { id: "decimal-comma", title: "A decimal with a comma", cost: "syntax", severity: "error" } as const;

export const decimalComma: Rule = {
  meta,
  check: (context) =>
    fromSyntax(meta, context, ["decimal-comma"], (problem) => ({
      message: `A decimal has a point: ${quoted(problem.suggestion)}. A comma parts two statements, so this would be read as two numbers.`,
    })),
  fix: (finding) => {
    const problem = problemBehind(finding, "decimal-comma");
    if (!problem) return [];
    // Three digits after the comma may be thousands: a person has to say which.
    const safe = !/\.\d{3}(?!\d)/.test(problem.suggestion);
    return [
      oneEdit(`Write ${problem.suggestion}`, finding.uri, finding.span, problem.suggestion, { preferred: true, safe }),
    ];
  },
};
