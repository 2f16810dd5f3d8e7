/**
 * A damper (or a spring, a stop, an inerter with a stated length) has to go further than it can, in bump or in rebound,
 * within the travel. In bump its rod or its piston hits the end; in rebound the damper is what holds the wheel up, and it
 * is not made for that.
 *
 * Judged where `stroke` (from design position) or `length` (shortest and longest between the eyes) is written.
 *
 * ```crank wrong
 * use "coils.crank"
 *
 * setup low-damper from dunnock {
 *   front.side.length 130 .. 175 mm
 * }
 * ```
 *
 * ```crank right
 * use "coils.crank"
 *
 * setup long-damper from dunnock {
 *   front.side.length 135 .. 195 mm
 * }
 * ```
 */
import { showQuantity } from "../../../quantities/index.js";
import type { RuleContext } from "../../context.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { faultBehind, faultFindings, type Faulty, type FaultWords } from "../../strength/faulty.js";
import { lessTravel } from "../../strength/less-travel.js";
import { movedMount } from "../../strength/moved-mount.js";
import { strongerParts } from "../../strength/other-parts.js";
import { whereWords } from "../../strength/where-words.js";

const meta = {
  id: "over-travel",
  title: "An element runs out of stroke within the travel",
  cost: "solved",
  severity: "warning",
} as const;

export const overTravel: Rule = { meta, check: (context) => faultFindings(context, "over-travel", say), fix };

function say({ element: { model, figures }, fault: { way, room, where }, unit }: Faulty<"over-travel">): FaultWords {
  const own = figures.torsional ? "deg" : unit;
  const shown = (value: number): string => showQuantity(value, own, 3);
  const lines = ["stroke", "length"];
  if (where.mode === "rest") {
    return {
      message: ` does not fit in ${way}: where it is joined at rest it is ${shown(-room.atRest)} beyond its stroke. Fit a ${way === "bump" ? "shorter" : "longer"} one, or move its mount.`,
      lines,
    };
  }
  return {
    message: ` runs out of stroke in ${way} ${whereWords(where, model, unit)}: it has ${shown(room.atRest)} from rest, and the travel asks for ${shown(-room.least)} more. Fit one with more stroke, move its mount, or let a stop end the travel sooner.`,
    lines,
  };
}

function fix(finding: Finding, context: RuleContext): readonly Fix[] {
  const faulty = faultBehind(finding, context, "over-travel");
  if (faulty === undefined) return [];
  const offered = [...strongerParts(faulty, "valving"), ...movedMount(faulty), ...lessTravel(faulty)];
  return offered.map((one, index) => ({ ...one, preferred: index === 0 }));
}
