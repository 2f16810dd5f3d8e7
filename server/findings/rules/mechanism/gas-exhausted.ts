/**
 * A gas spring or an accumulator is swept to nearly nothing within the travel: its force runs away, and what holds the
 * gas is not made for the pressure.
 *
 * Above 85 % of the volume at design this is a warning (common practice, no published source: at 1.3 the pressure has
 * risen twelvefold by then). Where less than a fiftieth is left it is an error; the law is then continued straight, so
 * that everything else is still computed.
 *
 * ```crank wrong
 * use "gas.crank"
 *
 * setup small-chamber from siskin {
 *   front.third.volume 11 ml
 * }
 * ```
 *
 * ```crank right
 * use "gas.crank"
 *
 * setup firmer from siskin {
 *   front.third.volume 25 ml
 * }
 * ```
 */
import { type FluidWords, fluidFinding, fluidsOf, fluidWords } from "../../fluids.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";
import { elementAt } from "../../axle-parts.js";
import { standsInBase } from "../../where.js";

const meta = {
  id: "gas-exhausted",
  title: "Gas is swept to nearly nothing",
  cost: "solved",
  severity: "warning",
} as const;

const NEARLY = 0.85;
/** Where the law ends: a fiftieth is left. */
const ENDS = 0.98;

export const gasExhausted: Rule = { meta, check };

const severityOf = (used: number | undefined): "error" | "warning" | undefined =>
  used === undefined || !(used > NEARLY) ? undefined : used < ENDS ? "warning" : "error";

function usedBy(car: CheckedCar, path: string): number | undefined {
  const used = elementAt(car, path)?.figures.fluid?.used;
  return typeof used === "number" ? used : undefined;
}

function* check(context: RuleContext): Generator<Finding> {
  for (const { car, element } of fluidsOf(context)) {
    const { path } = element.model;
    const severity = severityOf(usedBy(car, path));
    if (severity === undefined || standsInBase(car, (base) => severityOf(usedBy(base, path)) === severity)) continue;
    const words = fluidWords(element);
    yield fluidFinding(context, car, element, {
      rule: meta.id,
      severity,
      words: ["volume", "area", "area-curve"],
      message: messageFor(element.model.name, severity, words),
    });
  }
}

function messageFor(name: string, severity: "error" | "warning", { used, highest }: FluidWords): string {
  const what =
    severity === "error"
      ? `sweeps all of its gas within the travel, so that nothing of its law holds at the end`
      : `sweeps ${used} of its gas within the travel, and its pressure runs up to ${highest} there`;
  return `${name} ${what}. Give it more volume or less area, or let something else end the travel.`;
}
