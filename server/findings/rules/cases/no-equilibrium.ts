/**
 * In a load case the car finds no position in which all forces balance, so that nothing in it can be told: the message
 * says why, and how far the loads could grow from rest towards those of the case.
 *
 * The body would come to stand on the road; both wheels of an axle would leave it; a link or an element ends before; or
 * downforce grows faster as the car sinks than springs and tyres push back, which no spring's travel can end.
 *
 * ```crank wrong
 * use "cases.crank"
 *
 * setup low from wagtail {
 *   case straight { speed 400 km/h }
 * }
 * ```
 *
 * ```crank right
 * use "cases.crank"
 *
 * setup low from wagtail {
 *   case straight { speed 200 km/h }
 * }
 * ```
 */
import type { NoEquilibrium } from "../../../analyses/equilibrium/results.js";
import { caseFinding, failedCases, sameInBase } from "../../case-findings.js";
import type { RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";
import { nameOf } from "../../where.js";

const meta = {
  id: "no-equilibrium",
  title: "A load case has no equilibrium",
  cost: "solved",
  severity: "error",
} as const;

export const noEquilibrium: Rule = { meta, check };

function* check(context: RuleContext): Generator<Finding> {
  for (const found of failedCases(context)) {
    const { car, model, result } = found;
    const isSame = sameInBase(found, (base) => base.kind === "no-equilibrium" && base.words === result.words);
    if (isSame) continue;
    const message = `${nameOf(car)} has no equilibrium in ${model.name}: ${result.words}. Its loads can grow to ${Math.floor(result.reached * 100)} % of those of the case. ${remedy(result)}`;
    yield caseFinding(context, found, meta, message);
  }
}

function remedy({ why }: NoEquilibrium): string {
  switch (why.kind) {
    case "aero-stiffness":
    case "aground":
      return "Give it stiffer springs in heave, more ride height or less downforce there.";
    case "airborne":
    case "tips-over":
      return "Ask less of the case, or look at the height of the centre of gravity and the brake bias.";
    case "reach":
    case "stroke":
      return "Let a bump stop end the travel before, or give it stiffer springs.";
    case "unheld":
    case "not-found":
      return "Look for a wheel or an element that nothing holds there.";
  }
}
