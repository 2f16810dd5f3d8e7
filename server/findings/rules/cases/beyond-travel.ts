/**
 * In a load case a wheel stands beyond the `travel` of its axle, the envelope that every other check looks at: leaks,
 * toggles, strokes and stresses are not looked at out there.
 *
 * ```crank wrong
 * use "cases.crank"
 *
 * setup soft from wagtail {
 *   front.travel -20 .. 8 mm
 * }
 * ```
 *
 * ```crank right
 * use "cases.crank"
 *
 * setup soft from wagtail {
 *   front.travel -20 .. 30 mm
 * }
 * ```
 */
import type { CaseResult, CaseWheel } from "../../../analyses/equilibrium/results.js";
import { caseFinding, lengthIn, listed, sameInBase, solvedCases, wheelWords } from "../../case-findings.js";
import type { RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";

const meta = {
  id: "beyond-travel",
  title: "A wheel goes beyond the axle's travel in a load case",
  cost: "solved",
  severity: "information",
} as const;

export const beyondTravel: Rule = { meta, check };

/** A wheel in the air hangs where its springs let it: that is told by itself. */
const beyond = (result: CaseResult): readonly CaseWheel[] =>
  result.kind === "equilibrium"
    ? result.wheels.filter(({ left, isLifted }) => !isLifted && Math.min(left.bump, left.rebound) < 0)
    : [];

const names = (result: CaseResult): string => beyond(result).map(wheelWords).join();

function* check(context: RuleContext): Generator<Finding> {
  for (const found of solvedCases(context)) {
    const { car, model, result } = found;
    const wheels = beyond(result);
    if (wheels.length === 0 || sameInBase(found, (base) => names(base) === names(result))) continue;
    const words = wheels.map((wheel) => `${wheelWords(wheel)} at ${lengthIn(car, wheel.travel)}`);
    const message = `In ${model.name} ${listed(words)} ${wheels.length === 1 ? "is" : "are"} beyond the travel that is checked. Widen \`travel\`, or let springs and stops end it before.`;
    yield caseFinding(context, found, meta, message);
  }
}
