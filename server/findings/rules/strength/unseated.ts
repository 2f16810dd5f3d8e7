/**
 * A spring between two eyes would have to pull to stay in its seats, somewhere in the travel, and nothing says that it
 * can. A coil or a foam lifts off instead, and comes back with a knock; figures in that part of the travel are those of a
 * spring that is held at both ends.
 *
 * Say what it does: `acts in-compression` where it lets go, `acts both-ways` where it is held at both ends; or give it
 * preload, or a tender that follows it.
 *
 * ```crank wrong
 * use "coils.crank"
 *
 * setup loose from dunnock {
 *   front.third.preload 400 N
 * }
 * ```
 *
 * ```crank right
 * use "coils.crank"
 *
 * setup let-go from dunnock {
 *   front.third.preload 400 N
 *   front.third.acts in-compression
 * }
 * ```
 */
import type { RuleContext } from "../../context.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { pullOf, sayHow } from "../../strength/acts.js";
import { faultBehind, faultFindings, type Faulty, type FaultWords } from "../../strength/faulty.js";
import { morePreload } from "../../strength/more-gap.js";
import { whereWords } from "../../strength/where-words.js";

const meta = {
  id: "unseated",
  title: "A spring leaves its seat within the travel",
  cost: "solved",
  severity: "warning",
} as const;

export const unseated: Rule = { meta, check: (context) => faultFindings(context, "unseated", say), fix };

function say({ element: { model }, fault: { where }, unit }: Faulty<"unseated">): FaultWords {
  return {
    message: ` leaves its seats ${whereWords(where, model, unit)} and would have to pull from there on. Say what it does there: "acts in-compression" where it lets go, "acts both-ways" where both its ends are held; or preload it.`,
    lines: ["preload", "rate", "coil", "curve"],
  };
}

/** What it is most likely to be comes first: held by nothing. */
function fix(finding: Finding, context: RuleContext): readonly Fix[] {
  const faulty = faultBehind(finding, context, "unseated");
  if (faulty === undefined) return [];
  const offered = [
    ...sayHow(faulty, "in-compression", "Let it go where it carries nothing"),
    ...morePreload(faulty, pullOf(faulty)),
    ...sayHow(faulty, "both-ways", "Say that it is held at both ends"),
  ];
  return offered.map((one, index) => ({ ...one, preferred: index === 0 }));
}
