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
import { fromModel, type ModelProblemOf, problemBehind } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { likelyUnits, unitRanking } from "../../likely-units.js";
import { dimensionWords, either, quoted } from "../../wording.js";

const meta = { id: "missing-unit", title: "A number without its unit", cost: "model", severity: "error" } as const;

export const missingUnit: Rule = {
  meta,
  check: (context) => {
    const likely = unitRanking(context);
    return fromModel(meta, context, ["missing-unit"], (problem) => ({
      message: messageFor(problem, likely(problem.candidates)),
    }));
  },
  fix: (finding, context) => {
    const problem = problemBehind(finding, "missing-unit");
    if (!problem) return [];
    const at = behindPair(context.text, finding.span.end);
    const share = asShare(problem);
    const whole =
      share === undefined ? [] : [oneEdit(`Write ${share}`, finding.uri, finding.span, share, { preferred: true })];
    const added = likelyUnits(problem.candidates, context).map((unit, index) =>
      oneEdit(`Add ${unit}`, finding.uri, { start: at, end: at }, ` ${unit}`, {
        preferred: index === 0 && share === undefined,
      }),
    );
    return [...whole, ...added];
  },
};

function messageFor({ digits, dimension }: ModelProblemOf<"missing-unit">, units: readonly string[]): string {
  const such = units.length > 0 ? `, such as ${either(units)}` : "";
  const what = /\d/.test(digits) ? quoted(digits) : digits;
  return `${what} has no unit, so it cannot be used: ${dimensionWords(dimension)} is due here. Write the unit behind it${such}.`;
}

/** `0.47` where a share is due is hardly meant as half a percent. */
function asShare({ digits, dimension }: ModelProblemOf<"missing-unit">): string | undefined {
  const value = Number(digits);
  if (dimension !== "share" || !(value > 0 && value < 1)) return undefined;
  return `${Number((100 * value).toPrecision(12))} %`;
}

/** `between 170 and 200`: one unit stands behind both. */
function behindPair(text: string, end: number): number {
  const second = /^\s+and\s+[-+]?\d[\d.]*(?=[ \t]*(?:[,}#\r\n]|$))/.exec(text.slice(end, end + 60));
  return end + (second?.[0].length ?? 0);
}
