/**
 * Heave or pitch swings up by itself: downforce that follows the ride height late, or falls as the car sinks, feeds the
 * movement more than the dampers take out of it. It is looked for in the fastest load case, where the air is strongest
 * (`bellcrank modes` shows all of them), and told with the speed at which it begins on a straight. Without `lag` in the `aero` block this is not assessed: air that follows at once can only diverge (`aero-divergence`).
 *
 * ```crank wrong
 * use "porpoising-car.crank"
 *
 * setup bouncing from dipper {
 *   aero.height-slopes.front-by-front 0.04 m^2/mm
 *   aero.height-slopes.rear-by-rear 0.04 m^2/mm
 *   aero.lag 120 ms
 *   front.side-damper.damping 1 N*s/mm
 *   rear.side-damper.damping 1 N*s/mm
 *   case straight { speed 300 km/h }
 * }
 * ```
 *
 * ```crank right
 * use "porpoising-car.crank"
 *
 * setup calm from dipper {
 *   aero.height-slopes.front-by-front -0.002 m^2/mm
 * }
 * ```
 */
import { isAbsent } from "../../../analyses/absent.js";
import { showQuantity, unitSystem, usualUnit } from "../../../quantities/index.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";
import { nameOf, placeFor, standsInBase } from "../../where.js";

const meta = {
  id: "porpoising",
  title: "Heave or pitch swings up by itself",
  cost: "solved",
  severity: "warning",
} as const;

export const porpoising: Rule = { meta, check };

type CaseOfCar = CheckedCar["model"]["cases"][number];

function* check(context: RuleContext): Generator<Finding> {
  for (const car of context.cars) {
    if (!hasLag(car)) continue;
    const one = fastestOf(car);
    const mode = one && swinging(car, one.name);
    if (one === undefined || mode === undefined) continue;
    if (!standsInBase(car, (base) => swinging(base, one.name) === mode)) yield findingOf(context, car, one, mode);
  }
}

const fastestOf = ({ model }: CheckedCar): CaseOfCar | undefined =>
  [...model.cases].sort((a, b) => (b.speed?.value ?? 0) - (a.speed?.value ?? 0))[0];

const hasLag = ({ model }: CheckedCar): boolean =>
  model.block.statements.some(
    ({ word, block }) => word === "aero" && block?.statements.some((inner) => inner.word === "lag"),
  );

/** The mode of the body that swings up in a case. */
function swinging({ ride }: CheckedCar, name: string): string | undefined {
  const found = ride.stability(name);
  if (isAbsent(found) || found.kind !== "growing-oscillation") return undefined;
  const { name: mode } = found.mode;
  return mode === "heave" || mode === "pitch" ? mode : undefined;
}

function findingOf(context: RuleContext, car: CheckedCar, one: CaseOfCar, mode: string): Finding {
  const { start, end } = placeFor(context, car, { places: [one.nameOrigin, one.origin] });
  const unit = usualUnit("speed", one.speed === undefined ? "si" : unitSystem(one.speed.unit));
  const onset = car.ride.onset(one.speed?.value ?? 0);
  const begins =
    onset.kind === "growing-oscillation" ? `, on a straight from ${showQuantity(onset.speed, unit, 4)} on` : "";
  return {
    rule: meta.id,
    severity: meta.severity,
    uri: context.uri,
    span: { start, end },
    message: `${nameOf(car)} swings up in ${mode} in ${one.name}${begins}: its downforce feeds the movement more than the dampers take out of it. Give it more damping in ${mode}, more ride height, or downforce that depends less on ride height.`,
    related: [],
    tags: [],
    data: undefined,
  };
}
