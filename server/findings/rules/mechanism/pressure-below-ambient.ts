/**
 * The pressure of a gas spring or a hydraulic link falls below that of the air around it somewhere in the travel: a
 * gas spring then pulls instead of pushing, oil draws air past its seals, and what was computed for it does not hold.
 *
 * ```crank wrong
 * use "gas.crank"
 *
 * setup soft-charge from siskin {
 *   front.third.pressure 1.2 bar
 *   front.third.volume 12 ml
 * }
 * ```
 *
 * ```crank right
 * use "gas.crank"
 *
 * setup lighter-charge from siskin {
 *   front.third.pressure 4 bar
 * }
 * ```
 */
import { fluidFinding, fluidsOf, fluidWords } from "../../fluids.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";
import { elementAt } from "../../axle-parts.js";
import { standsInBase } from "../../where.js";

const meta = {
  id: "pressure-below-ambient",
  title: "A pressure falls below that of the air",
  cost: "solved",
  severity: "warning",
} as const;

export const pressureBelowAmbient: Rule = { meta, check };

function falls(car: CheckedCar, path: string): boolean {
  const over = elementAt(car, path)?.figures.fluid?.over;
  return over !== undefined && !("kind" in over) && over.lowest < 0;
}

function* check(context: RuleContext): Generator<Finding> {
  for (const { car, element } of fluidsOf(context)) {
    const { path, name } = element.model;
    if (!falls(car, path) || standsInBase(car, (base) => falls(base, path))) continue;
    const { lowest } = fluidWords(element);
    const isOil = element.figures.measure === "volume";
    const why = isOil ? "its oil draws air past the seals" : "it pulls instead of pushing";
    const how = isOil ? "Charge it higher, or give it an accumulator." : "Charge it higher, or give it more volume.";
    yield fluidFinding(context, car, element, {
      rule: meta.id,
      severity: meta.severity,
      words: ["pressure", "accumulator", "volume"],
      message: `${name} falls to ${lowest} within the travel, less than the air around it, so that ${why}. ${how}`,
    });
  }
}
