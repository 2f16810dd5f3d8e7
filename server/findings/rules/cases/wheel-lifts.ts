/**
 * In a load case a wheel is off the road. It is a legitimate state, and everything is computed with it; yet the axle
 * then passes all of its load transfer through one tyre, and more roll stiffness on it does nothing any more.
 *
 * ```crank wrong
 * use "cases.crank"
 *
 * setup tall from wagtail {
 *   case corner { speed 90 km/h, lateral 2.9 g }
 * }
 * ```
 *
 * ```crank right
 * use "cases.crank"
 *
 * setup tall from wagtail {
 *   case corner { speed 90 km/h, lateral 1.4 g }
 * }
 * ```
 */
import type { CaseResult, CaseWheel } from "../../../analyses/equilibrium/results.js";
import { caseFinding, listed, sameInBase, solvedCases, wheelWords } from "../../case-findings.js";
import type { RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";
import { nameOf } from "../../where.js";

const meta = {
  id: "wheel-lifts",
  title: "A wheel leaves the road in a load case",
  cost: "solved",
  severity: "information",
} as const;

export const wheelLifts: Rule = { meta, check };

const lifted = (result: CaseResult): readonly CaseWheel[] =>
  result.kind === "equilibrium" ? result.wheels.filter(({ isLifted }) => isLifted) : [];

const names = (result: CaseResult): string => lifted(result).map(wheelWords).join();

function* check(context: RuleContext): Generator<Finding> {
  for (const found of solvedCases(context)) {
    const { car, model, result } = found;
    const wheels = lifted(result);
    if (wheels.length === 0 || sameInBase(found, (base) => names(base) === names(result))) continue;
    const message = `${listed(wheels.map(wheelWords))} of ${nameOf(car)} ${wheels.length === 1 ? "is" : "are"} off the road in ${model.name}. More roll stiffness on that axle moves no more load; take roll stiffness from it, or ask less of the case.`;
    yield caseFinding(
      context,
      found,
      meta,
      message.replace(/^./, (first) => first.toUpperCase()),
    );
  }
}
