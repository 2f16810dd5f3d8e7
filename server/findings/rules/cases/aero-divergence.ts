/**
 * Downforce outgrows the springs: as the car sinks its downforce grows faster than springs and tyres push back, and from
 * some speed on nothing holds it up. It is told with that speed where the fastest load case comes within 15 % of it, since
 * dips, gusts and wear are not in a load case. This is a static loss of balance, unlike `porpoising`.
 *
 * ```crank wrong
 * use "cases.crank"
 *
 * setup sucked-down from wagtail {
 *   aero.downforce-front 0.001 m^2
 *   aero.downforce-rear 0.001 m^2
 *   aero.drag.area 0.2 m^2
 *   aero.height-slopes.front-by-front -0.04 m^2/mm
 *   case straight { speed 225 km/h }
 * }
 * ```
 *
 * ```crank right
 * use "cases.crank"
 *
 * setup held-up from wagtail {
 *   aero.height-slopes.front-by-front -0.005 m^2/mm
 * }
 * ```
 */
import { showQuantity, unitSystem, usualUnit } from "../../../quantities/index.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";
import { nameOf, placeFor, standsInBase } from "../../where.js";

const meta = {
  id: "aero-divergence",
  title: "Downforce outgrows the springs near the fastest load case",
  cost: "solved",
  severity: "warning",
} as const;

/** How far above the fastest case it is looked for. Common practice, no published source. */
const MARGIN = 1.15;

export const aeroDivergence: Rule = { meta, check };

interface Diverging {
  readonly fastest: CheckedCar["model"]["cases"][number];
  readonly from: number;
  readonly speed: number;
}

function* check(context: RuleContext): Generator<Finding> {
  for (const car of context.cars) {
    const found = divergingIn(car);
    if (found !== undefined && !standsInBase(car, (base) => divergingIn(base)?.speed === found.speed))
      yield findingOf(context, car, found);
  }
}

function divergingIn({ model, ride }: CheckedCar): Diverging | undefined {
  if (!model.block.statements.some(({ word }) => word === "aero")) return undefined;
  const [fastest] = [...model.cases].sort((a, b) => (b.speed?.value ?? 0) - (a.speed?.value ?? 0));
  const from = fastest?.speed?.value ?? 0;
  const speed = from > 0 ? ride.divergence(MARGIN * from) : undefined;
  return fastest === undefined || speed === undefined ? undefined : { fastest, from, speed };
}

function findingOf(context: RuleContext, car: CheckedCar, { fastest, from, speed }: Diverging): Finding {
  const { start, end } = placeFor(context, car, { places: [fastest.nameOrigin, fastest.origin] });
  const unit = usualUnit("speed", fastest.speed === undefined ? "si" : unitSystem(fastest.speed.unit));
  const shown = (value: number): string => showQuantity(value, unit, 4);
  return {
    rule: meta.id,
    severity: meta.severity,
    uri: context.uri,
    span: { start, end },
    message: `On a straight ${nameOf(car)} diverges at ${shown(speed)}: its downforce grows faster with sinking than springs and tyres push back, and ${fastest.name} is driven at ${shown(from)}. Give it stiffer springs in heave or at the axle that sinks, or downforce that depends less on ride height.`,
    related: [],
    tags: [],
    data: undefined,
  };
}
