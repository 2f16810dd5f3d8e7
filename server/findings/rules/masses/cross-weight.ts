/**
 * The scales show a cross weight (front right and rear left wheel over all four) that is further from the wanted one than
 * `cross-weight` allows: 50 % within 0.5 % where nothing is written. Such a car turns better one way than the other.
 *
 * Hover of `scales` and `bellcrank weights` tell the turns at each corner that bring it there with the ride heights kept.
 *
 * ```crank wrong
 * use "shared.crank"
 *
 * setup wet from wren {
 *   scales { front-left 112 kg, front-right 126 kg, rear-left 156 kg, rear-right 146 kg }
 * }
 * ```
 *
 * ```crank right
 * use "shared.crank"
 *
 * setup wet from wren {
 *   scales { front-left 119 kg, front-right 120 kg, rear-left 151 kg, rear-right 150 kg }
 * }
 * ```
 */
import { statementOf } from "../../../assemble/reading.js";
import { weighingOf } from "../../../assemble/weighing.js";
import { showQuantity } from "../../../quantities/index.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";
import { nameOf, placeFor, standsInBase } from "../../where.js";

const meta = {
  id: "cross-weight",
  title: "The cross weight is off",
  cost: "model",
  severity: "warning",
} as const;

export const crossWeight: Rule = { meta, check };

interface Off {
  readonly cross: number;
  readonly target: number;
  readonly within: number;
}

/** A share on its limit is within it, whatever rounding did. */
const ROUNDING = 1e-9;

function offIn({ model }: CheckedCar): Off | undefined {
  const { readings, target, within } = weighingOf(model);
  if (readings === undefined) return undefined;
  const [fl, fr, rl, rr] = readings;
  const total = fl + fr + rl + rr;
  if (!(total > 0 && Number.isFinite(total))) return undefined;
  const cross = (fr + rl) / total;
  return Math.abs(cross - target) > within + ROUNDING ? { cross, target, within } : undefined;
}

const isSame = (one: Off, other: Off | undefined): boolean =>
  other !== undefined && one.cross === other.cross && one.target === other.target && one.within === other.within;

function* check(context: RuleContext): Generator<Finding> {
  for (const car of context.cars) {
    const off = offIn(car);
    if (off === undefined || standsInBase(car, (base) => isSame(off, offIn(base)))) continue;
    const places = ["scales", "cross-weight"].flatMap((word) => statementOf(car.model.block, word)?.wordOrigin ?? []);
    const place = placeFor(context, car, { places });
    yield {
      rule: meta.id,
      severity: meta.severity,
      uri: context.uri,
      span: { start: place.start, end: place.end },
      message: messageFor(car, off),
      related: [],
      tags: [],
      data: undefined,
    };
  }
}

function messageFor(car: CheckedCar, { cross, target, within }: Off): string {
  const shown = (share: number): string => showQuantity(share, "%", 4);
  const heavy = cross > target ? "front right and rear left" : "front left and rear right";
  return `The scales of ${nameOf(car)} show ${shown(cross)} cross weight where ${shown(target)} within ${shown(within)} is wanted: ${heavy} carry too much. Turn the corners as hover of "scales" says, or say in "cross-weight" what is wanted.`;
}
