/**
 * The gap of a spring or a stop is longer than all that its eyes come together within the travel: it never begins to work,
 * and the axle is as if it were not there. A slipped digit, packers left out, or a gap from before the element was moved.
 *
 * What a load case takes up is not told. Of a stop this is information, and only told where its gap goes beyond the
 * travel by more than the whole of it: a stop may be meant for a landing.
 *
 * ```crank wrong
 * use "axle.crank"
 *
 * setup loose from plover {
 *   front.third.gap 60 mm
 * }
 * ```
 *
 * ```crank right
 * use "axle.crank"
 *
 * setup late from plover {
 *   front.third.gap 4 mm
 * }
 * ```
 */
import { showQuantity } from "../../../quantities/index.js";
import type { RuleContext } from "../../context.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { faultBehind, faultFindings, type Faulty, type FaultWords } from "../../strength/faulty.js";
import { lessGap } from "../../strength/more-gap.js";

const meta = {
  id: "gap-beyond-travel",
  title: "A gap that the travel never takes up",
  cost: "solved",
  severity: "warning",
} as const;

export const gapBeyondTravel: Rule = {
  meta,
  check: (context) => faultFindings(context, "gap-beyond-travel", say, isIdle),
  fix,
};

/** A load case may go beyond the envelope (`beyond-travel`), and what works there has its use. */
function isIdle({ car, element, fault }: Faulty<"gap-beyond-travel">): boolean {
  const { travel } = element.figures;
  // A stop is meant for the end of the travel and a little beyond; by more than the whole of it is a slip.
  if (fault.isStop && !("kind" in travel) && fault.short <= travel.to - travel.from) return false;
  return car.model.cases.every(({ name }) => {
    const result = car.cases.at(name);
    if (result?.kind !== "equilibrium") return true;
    return result.elements.every(({ path, force }) => path !== element.model.path || force === 0);
  });
}

function say({ element: { figures }, fault: { short }, unit }: Faulty<"gap-beyond-travel">): FaultWords {
  const shown = showQuantity(short, figures.torsional ? "deg" : unit, 3);
  return {
    message: ` never works: the travel ends ${shown} before its gap is taken up. Close the gap, or take it out.`,
    lines: ["gap", "packer"],
  };
}

/** Half of the gap that the travel would just take up. */
function fix(finding: Finding, context: RuleContext): readonly Fix[] {
  const faulty = faultBehind(finding, context, "gap-beyond-travel");
  return faulty === undefined ? [] : lessGap(faulty, faulty.fault.short);
}
