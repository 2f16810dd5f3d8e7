/**
 * In a load case a `clearance-point` of the body is on the road or below it: it would drag, and the loads of the case
 * are then not those that are shown, since the road carries a part of them.
 *
 * ```crank wrong
 * use "cases.crank"
 *
 * setup low from wagtail {
 *   nose.point (420, 0, -24) mm
 * }
 * ```
 *
 * ```crank right
 * use "cases.crank"
 *
 * setup low from wagtail {
 *   nose.point (420, 0, 4) mm
 * }
 * ```
 */
import type { CaseFigures, CaseResult } from "../../../analyses/equilibrium/results.js";
import { caseFinding, lengthIn, sameInBase, solvedCases } from "../../case-findings.js";
import type { RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";
import { nameOf } from "../../where.js";

const meta = {
  id: "ground-contact",
  title: "A point of the body touches the road in a load case",
  cost: "solved",
  severity: "warning",
} as const;

export const groundContact: Rule = { meta, check };

const touching = (result: CaseResult): CaseFigures["clearances"] =>
  result.kind === "equilibrium" ? result.clearances.filter(({ height }) => height <= 0) : [];

function* check(context: RuleContext): Generator<Finding> {
  for (const found of solvedCases(context)) {
    for (const { name, height } of touching(found.result)) {
      if (sameInBase(found, (base) => touching(base).some((other) => other.name === name))) continue;
      const { car, model } = found;
      const message = `${name} of ${nameOf(car)} would be ${lengthIn(car, -height)} below the road in ${model.name}, so that it drags and carries load. Put the car higher or make it stiffer in heave or pitch.`;
      yield caseFinding(context, found, meta, message);
    }
  }
}
