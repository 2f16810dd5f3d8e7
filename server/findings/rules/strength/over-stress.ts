/**
 * A coil, a torsion bar, the tube of an anti-roll bar or its blade is stressed above what is allowed for it, somewhere in
 * the travel: it takes a set, or it cracks after some runs.
 *
 * The stress follows from the load and the part's dimensions (a coil's with the correction for its curvature). What is
 * allowed is `allowable-stress` where it is written; else what is usual for such parts, which the message names with its
 * source and which is guidance only: where the maker says otherwise, write what the maker says.
 *
 * ```crank wrong
 * use "axle.crank"
 *
 * setup short-bar from plover {
 *   front.corner-bar.torsion-bar.length 200 mm
 * }
 * ```
 *
 * ```crank right
 * use "axle.crank"
 *
 * setup thinner-bar from plover {
 *   front.corner-bar.torsion-bar.diameter 10.8 mm
 * }
 * ```
 */
import type { StressFigures } from "../../../analyses/results.js";
import { showQuantity } from "../../../quantities/index.js";
import type { RuleContext } from "../../context.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { faultBehind, faultFindings, type Faulty, type FaultWords, lineIn } from "../../strength/faulty.js";
import { strongerParts } from "../../strength/other-parts.js";
import { strongerDimensions } from "../../strength/dimensions.js";
import { whereWords } from "../../strength/where-words.js";

const meta = {
  id: "over-stress",
  title: "A part is stressed above what is allowed",
  cost: "solved",
  severity: "warning",
} as const;

export const overStress: Rule = {
  meta,
  check: (context) => faultFindings(context, "over-stress", say),
  fix,
};

/** Block and lines of each part that is worked out. */
const LINES: Readonly<Record<StressFigures["part"], readonly string[]>> = {
  coil: ["coil.wire", "coil.mean-diameter"],
  "torsion bar": ["torsion-bar.diameter", "torsion-bar.bore", "torsion-bar.length"],
  blade: ["blade.section", "blade.length", "blade.position"],
};

const blockOf = (part: StressFigures["part"]): string => (part === "torsion bar" ? "torsion-bar" : part);

function say({ element: { model }, fault: { stress, where }, unit }: Faulty<"over-stress">): FaultWords {
  const { part, kind, most, allowable, stated, source } = stress;
  const allowed = `${blockOf(part)}.allowable-stress`;
  const own = lineIn(model.block, allowed)?.values[0];
  const stressUnit = own?.kind === "number" ? own.unit : unit === "in" ? "psi" : "MPa";
  const shown = (value: number): string => showQuantity(value, stressUnit, 3);
  const limit = stated
    ? `${shown(allowable)} is what its maker allows`
    : `${shown(allowable)} is usual for it (${source})`;
  const place = where.mode === "rest" ? "already at rest" : whereWords(where, model, unit);
  const advice = stated ? "Fit a stronger part" : "Fit a stronger part, or write what its maker allows";
  return {
    message: `'s ${part} is stressed to ${shown(most)} in ${kind === "shear" ? "shear" : "bending"} within the travel, and ${limit}; it passes that ${place}. ${advice}.`,
    lines: stated ? [allowed, ...LINES[part]] : LINES[part],
  };
}

/** Parts from the shelf come first, nearest in rate; else dimensions that bear it. */
function fix(finding: Finding, context: RuleContext): readonly Fix[] {
  const faulty = faultBehind(finding, context, "over-stress");
  if (faulty === undefined) return [];
  const block = blockOf(faulty.fault.stress.part);
  const offered = [...strongerParts(faulty, block), ...strongerDimensions(faulty)];
  return offered.map((one, index) => ({ ...one, preferred: index === 0 }));
}
