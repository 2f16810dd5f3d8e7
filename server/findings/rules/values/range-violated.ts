/**
 * The value cannot be: a negative rate, a track of nothing, a mass share above 100 %, two points
 * of a link in one place. The mechanism cannot be computed with it.
 *
 * (A regressive gas law is legal; a negative spring rate is not.)
 *
 * ```crank wrong
 * use "shared.crank"
 *
 * setup wet from wren {
 *   front.third.rate -95 N/mm
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
import { showQuantity } from "../../../quantities/index.js";
import type { RuleContext } from "../../context.js";
import { oneEdit } from "../../edits.js";
import { fromModel, type ModelProblemOf, problemBehind } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { quantityIn } from "../../tree.js";
import { quoted } from "../../wording.js";

const meta = { id: "range-violated", title: "A value that cannot be", cost: "model", severity: "error" } as const;

export const rangeViolated: Rule = {
  meta,
  check: (context) => fromModel(meta, context, ["range-violated"], (problem) => ({ message: messageFor(problem) })),
  fix: (finding, context) => {
    const problem = problemBehind(finding, "range-violated");
    return problem ? withoutSign(problem, context) : [];
  },
};

function messageFor(problem: ModelProblemOf<"range-violated">): string {
  const value = showQuantity(problem.value, problem.unit);
  return `${quoted(problem.word)} is ${value}, but it has to be ${problem.limit}; nothing can be computed with it. Correct the value.`;
}

/** A slipped sign is the one slip whose correction can be told from the value itself. */
function withoutSign(problem: ModelProblemOf<"range-violated">, context: RuleContext) {
  const number = quantityIn(context.parsed.document, problem);
  if (!number || !number.digits.startsWith("-") || !(number.value < 0)) return [];
  const sign = { start: number.start, end: number.start + 1 };
  const text = context.text.slice(number.start + 1, number.end);
  return [oneEdit(`Write ${text}`, problem.uri, sign, "", { preferred: true })];
}
