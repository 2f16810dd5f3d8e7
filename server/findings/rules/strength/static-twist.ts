/**
 * An anti-roll bar is twisted while the car stands: its drop links are not of a length, or the two sides differ. It then
 * pushes one wheel down and lifts the other, which the springs have to make up for, and it answers differently to the left
 * and to the right.
 *
 * Told from half a per cent of a wheel's load on; that is what a good set of scales shows (common practice, no published
 * source).
 *
 * ```crank wrong
 * use "coils.crank"
 *
 * setup long-left from dunnock {
 *   front.left.bar.drop-link.longer 2 mm
 * }
 * ```
 *
 * ```crank right
 * use "coils.crank"
 *
 * setup alike from dunnock {
 *   front.bar.drop-link.longer 2 mm
 * }
 * ```
 */
import { showQuantity } from "../../../quantities/index.js";
import { axlesOf, type CheckedElement } from "../../axle-parts.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { nameOf, placeFor, standsInBase } from "../../where.js";
import { linkPlacesOf, untwisting } from "../../strength/drop-links.js";
import { type StaticTwist, twistOf } from "../../strength/static-twist.js";

const meta = {
  id: "static-twist",
  title: "A bar is twisted at rest",
  cost: "solved",
  severity: "warning",
} as const;

export const staticTwist: Rule = { meta, check, fix };

interface Data {
  readonly car: string;
  readonly path: string;
}

function* check(context: RuleContext): Generator<Finding> {
  for (const car of context.cars) {
    for (const element of barsOf(car)) {
      const twist = twistOf(car, element);
      const { path } = element.model;
      if (twist === undefined || standsInBase(car, (base) => isTwisted(base, path))) continue;
      yield findingOf(context, car, element, twist);
    }
  }
}

function barsOf(car: CheckedCar): readonly CheckedElement[] {
  return axlesOf(car).flatMap(({ axle, analysis }) =>
    axle.elements.flatMap((model) => {
      if (model.kind !== "anti-roll-bar") return [];
      const figures = analysis.elements.find(({ path }) => path === model.path);
      return figures === undefined ? [] : [{ model, figures, axle }];
    }),
  );
}

const barAt = (car: CheckedCar, path: string): CheckedElement | undefined =>
  barsOf(car).find(({ model }) => model.path === path);

function isTwisted(car: CheckedCar, path: string): boolean {
  const element = barAt(car, path);
  return element !== undefined && twistOf(car, element) !== undefined;
}

function findingOf(context: RuleContext, car: CheckedCar, element: CheckedElement, twist: StaticTwist): Finding {
  const { model } = element;
  const places = [...linkPlacesOf(element), model.nameOrigin];
  const { start, end } = placeFor(context, car, { places, element: model });
  const data: Data = { car: nameOf(car), path: model.path };
  return {
    rule: meta.id,
    severity: meta.severity,
    uri: context.uri,
    span: { start, end },
    message: messageFor(model.name, twist),
    related: [],
    tags: [],
    data,
  };
}

function messageFor(name: string, { angle, moment, atWheel, loads }: StaticTwist): string {
  const size = `${showQuantity(Math.abs(angle), "deg", 2)}, ${showQuantity(Math.abs(moment), "N*m", 3)}`;
  const [down, up] = loads === "left" ? ["left", "right"] : ["right", "left"];
  return `${name} is twisted at rest by ${size}: it presses the ${down} wheel down with ${showQuantity(atWheel, "N", 3)} and lifts the ${up} one as much, and the springs have to make up for that. Set its drop links so that it hangs free.`;
}

/** One drop link set to the length at which the bar carries nothing. */
function fix(finding: Finding, context: RuleContext): readonly Fix[] {
  const { car: name, path } = finding.data as Data;
  const car = context.cars.find((one) => nameOf(one) === name);
  const element = car && barAt(car, path);
  if (car === undefined || element === undefined) return [];
  const offered = untwisting(context, car, element, (after) => {
    const bar = barAt(after, path);
    return bar === undefined ? undefined : { twist: bar.figures.deflection, isFound: isTwisted(after, path) };
  });
  return offered.map((one, index) => ({ ...one, preferred: index === 0 }));
}
