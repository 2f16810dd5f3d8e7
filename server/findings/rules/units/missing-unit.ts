/**
 * A number stands where a value with a unit is due. A bare number is never guessed at: 120 may be
 * N/mm or lbf/in, and these are a factor of 5.7 apart.
 *
 * A unit after a point, a range or the last of a pair covers all of its numbers.
 *
 * ```crank wrong
 * use "shared.crank"
 *
 * setup wet from wren {
 *   front.third.rate 95
 * }
 * ```
 *
 * ```crank right
 * use "shared.crank"
 *
 * setup wet from wren {
 *   front.third.rate 95 N/mm
 * }
 * ```
 */
import { oneEdit } from "../../edits.js";
import { fromModel, problemBehind } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { likelyUnits } from "../../likely-units.js";
import { isHalfRead } from "../../unread.js";
import { dimensionWords, either, quoted } from "../../wording.js";

const meta = { id: "missing-unit", title: "A number without its unit", cost: "model", severity: "error" } as const;

export const missingUnit: Rule = {
  meta,
  check: (context) =>
    fromModel(meta, context, ["missing-unit"], (problem) => {
      if (isHalfRead(context.parsed, problem)) return undefined;
      const units = likelyUnits(problem.candidates, context);
      const such = units.length > 0 ? `, such as ${either(units)}` : "";
      return {
        message: `${quoted(problem.digits)} has no unit, so it cannot be used: ${dimensionWords(problem.dimension)} is due here. Write the unit behind it${such}.`,
      };
    }),
  fix: (finding, context) => {
    const problem = problemBehind(finding, "missing-unit");
    if (!problem) return [];
    const end = { start: finding.span.end, end: finding.span.end };
    return likelyUnits(problem.candidates, context).map((unit, index) =>
      oneEdit(`Add ${unit}`, finding.uri, end, ` ${unit}`, { preferred: index === 0 }),
    );
  },
};
