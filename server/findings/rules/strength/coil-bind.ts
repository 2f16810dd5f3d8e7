/**
 * The turns of a coil spring touch before the end of the travel. From there on it is a solid tube: whatever hits next
 * goes straight into the rocker and the chassis. Figures beyond are computed as if it still gave way.
 *
 * Judged only where the spring's `free-length` is known, with `bind-length` or its turns and wire.
 *
 * ```crank wrong
 * use "coils.crank"
 *
 * setup short from dunnock {
 *   front.corner-coil.fit C-90S
 * }
 * ```
 *
 * ```crank right
 * use "coils.crank"
 *
 * setup stiffer from dunnock {
 *   front.corner-coil.fit C-104
 * }
 * ```
 */
import { showQuantity } from "../../../quantities/index.js";
import type { RuleContext } from "../../context.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { faultBehind, faultFindings, type Faulty, type FaultWords } from "../../strength/faulty.js";
import { moreGap } from "../../strength/more-gap.js";
import { strongerParts } from "../../strength/other-parts.js";
import { lessTravel } from "../../strength/less-travel.js";
import { whereWords } from "../../strength/where-words.js";

const meta = {
  id: "coil-bind",
  title: "A coil spring closes up within the travel",
  cost: "solved",
  severity: "warning",
} as const;

export const coilBind: Rule = { meta, check: (context) => faultFindings(context, "coil-bind", say), fix };

function say({ element: { model }, fault: { coil, where }, unit }: Faulty<"coil-bind">): FaultWords {
  const shown = (metres: number): string => showQuantity(metres, unit, 3);
  const place = where.mode === "rest" ? "at rest already" : whereWords(where, model, unit);
  return {
    message: `'s turns touch ${place}: it is ${shown(coil.solid)} long when closed up, and the travel would take it ${shown(-coil.margin)} beyond. Fit a longer spring or one with less wire, or let a stop end the travel sooner.`,
    lines: ["coil.free-length", "coil.bind-length", "coil.total-turns", "gap", "preload"],
  };
}

function fix(finding: Finding, context: RuleContext): readonly Fix[] {
  const faulty = faultBehind(finding, context, "coil-bind");
  if (faulty === undefined) return [];
  const offered = [
    ...strongerParts(faulty, "coil"),
    ...moreGap(faulty, -faulty.fault.coil.margin),
    ...lessTravel(faulty),
  ];
  return offered.map((one, index) => ({ ...one, preferred: index === 0 }));
}
