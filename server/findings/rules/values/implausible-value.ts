/**
 * The value is far outside what is seen in practice. It is computed with all the same; the message
 * tells the usual range and where that range comes from.
 *
 * Most often a digit or the unit slipped: 540 mm of wheelbase for 2540, a mass in lb called kg.
 *
 * ```crank wrong
 * use "shared.crank"
 *
 * setup wet from wren {
 *   front.tyre-rate 1650 N/mm
 * }
 * ```
 *
 * ```crank right
 * use "shared.crank"
 *
 * setup wet from wren {
 *   front.tyre-rate 170 N/mm
 * }
 * ```
 */
import { showQuantity, toSI, unitsOf } from "../../../quantities/index.js";
import type { RuleContext } from "../../context.js";
import { oneEdit } from "../../edits.js";
import { fromModel, type ModelProblemOf, problemBehind } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { quantityIn } from "../../tree.js";
import { quoted } from "../../wording.js";

const meta = {
  id: "implausible-value",
  title: "A value far outside practice",
  cost: "model",
  severity: "information",
} as const;

export const implausibleValue: Rule = {
  meta,
  check: (context) => fromModel(meta, context, ["implausible-value"], (problem) => ({ message: messageFor(problem) })),
  fix: (finding, context) => {
    const problem = problemBehind(finding, "implausible-value");
    return problem ? otherUnits(problem, context) : [];
  },
};

function messageFor(problem: ModelProblemOf<"implausible-value">): string {
  const shown = (value: number) => showQuantity(value, problem.unit, 4);
  const range = `${shown(problem.from)} to ${shown(problem.to)}`;
  return `${quoted(problem.word)} is ${showQuantity(problem.value, problem.unit)}; in practice it is ${range} (${problem.source}). It is computed as written; check its digits and its unit.`;
}

/** Units with which the same digits would be a usual value. */
function otherUnits(problem: ModelProblemOf<"implausible-value">, context: RuleContext) {
  const number = quantityIn(context.parsed.document, problem);
  const unit = number?.unit;
  if (!number || !unit) return [];
  const fitting = unitsOf(problem.dimension).filter((text) => {
    const value = toSI(number.value, text);
    return text !== unit.text && value !== undefined && problem.from <= value && value <= problem.to;
  });
  return fitting
    .slice(0, 2)
    .map((text) => oneEdit(`Read it in ${text}: ${number.digits} ${text}`, problem.uri, unit, text));
}
