/**
 * What was measured is further from what is predicted than its tolerance: the car is not the one in the text, or the reading is
 * not the one that was meant (another driver, another fuel load, on its stands, hot).
 *
 * Hover of `measured` and `bellcrank measured` show every value beside its prediction. `within` says how far off one may be.
 *
 * ```crank wrong
 * use "shared.crank"
 *
 * setup wet from wren {
 *   measured { figure front.ride-height 36 mm }
 * }
 * ```
 *
 * ```crank right
 * use "shared.crank"
 *
 * setup wet from wren {
 *   measured { figure front.ride-height 36 mm within 10 mm }
 * }
 * ```
 */
import { cornerWeights } from "../../../analyses/corner-weights.js";
import { figureAsked } from "../../../analyses/expectations.js";
import { residualOf } from "../../../analyses/residuals.js";
import { digitsFor } from "../../../analyses/wanted-words.js";
import { measuredOf, type MeasuredValue } from "../../../assemble/measured.js";
import { weighingOf } from "../../../assemble/weighing.js";
import { showQuantity } from "../../../quantities/index.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";
import { nameOf } from "../../where.js";

const meta = {
  id: "measured-residual",
  title: "Measured and predicted differ",
  cost: "solved",
  severity: "warning",
} as const;

export const measuredResidual: Rule = { meta, check };

function* check(context: RuleContext): Generator<Finding> {
  for (const car of context.cars) {
    const measured = measuredOf(car.model);
    if (measured === undefined) continue;
    const { model, analysis, cases, ride } = car;
    const predictions = {
      figure: (asked: Pick<MeasuredValue, "figure" | "at">) => figureAsked(asked, analysis, cases, ride),
      loads: cornerWeights(weighingOf(model), analysis).loads,
    };
    for (const value of measured.values) {
      const { predicted, off, allowed, isBeyond } = residualOf(value, predictions);
      if (!isBeyond || typeof predicted !== "number" || typeof off !== "number" || typeof allowed !== "number")
        continue;
      yield {
        rule: meta.id,
        severity: meta.severity,
        uri: value.origin.uri,
        span: { start: value.origin.start, end: value.origin.end },
        message: messageFor(car, value, { predicted, off, allowed }),
        related: [],
        tags: [],
        data: undefined,
      };
    }
  }
}

function messageFor(
  car: CheckedCar,
  { figure, at, value, unit }: MeasuredValue,
  { predicted, off, allowed }: { readonly predicted: number; readonly off: number; readonly allowed: number },
): string {
  const name = at === undefined ? figure : `${figure} at ${at}`;
  const shown = (quantity: number): string => showQuantity(quantity, unit, digitsFor(predicted, Math.abs(off)));
  return `${name} of ${nameOf(car)} was measured as ${shown(value)} and is predicted as ${shown(predicted)}: ${showQuantity(Math.abs(off), unit, 3)} off, where ${showQuantity(allowed, unit, 3)} is allowed. Measure again in the state that is predicted, or find what differs: a part, a position, a load.`;
}
