/**
 * A figure that the car or set-up is expected to have is not there: `expect` is missed. The message
 * tells the figure and by how much it misses.
 *
 * ```crank wrong
 * use "axle.crank"
 *
 * setup soft from plover {
 *   expect front.heave-rate above 900 N/mm
 * }
 * ```
 *
 * ```crank right
 * use "axle.crank"
 *
 * setup firm from plover {
 *   expect front.heave-rate above 9 N/mm
 * }
 * ```
 */
import { digitsFor, wantedWords } from "../../../analyses/wanted-words.js";
import type { ExpectationModel } from "../../../model/car.js";
import { showQuantity } from "../../../quantities/index.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { PropertyAt } from "../../../model/property-at.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { changedBy } from "../../proven.js";
import { valueEdit } from "../../setup-lines.js";
import type { Setting } from "../../solving/setting.js";
import { singleChanges } from "../../solving/single-changes.js";
import { nameOf, placeFor, standsInBase } from "../../where.js";

const meta = {
  id: "missed-expectation",
  title: "An expectation is missed",
  cost: "solved",
  severity: "warning",
} as const;

interface Missed {
  readonly wanted: ExpectationModel;
  readonly value: number;
  readonly unit: string;
  /** How far from what is wanted, as a size. */
  readonly by: number;
}

export const missedExpectation: Rule = { meta, check, fix };

function* check(context: RuleContext): Generator<Finding> {
  for (const car of context.cars) {
    for (const missed of missedIn(car)) {
      if (!standsInBase(car, (base) => misses(base, missed))) yield findingOf(context, car, missed);
    }
  }
}

function missedIn({ model, analysis }: CheckedCar): readonly Missed[] {
  return analysis.expectations.flatMap(({ index, met, value, unit, margin }) => {
    const wanted = model.expectations[index];
    if (met !== false || wanted === undefined || typeof value !== "number" || typeof margin !== "number") return [];
    return [{ wanted, value, unit, by: Math.abs(margin) }];
  });
}

function misses(car: CheckedCar, { wanted: { origin } }: Missed): boolean {
  return missedIn(car).some(({ wanted }) => wanted.origin.start === origin.start && wanted.origin.uri === origin.uri);
}

function findingOf(context: RuleContext, car: CheckedCar, missed: Missed): Finding {
  const { wanted, value, unit, by } = missed;
  const { figure, origin } = wanted;
  const axle = figure.startsWith("front.") ? "front" : figure.startsWith("rear.") ? "rear" : undefined;
  const place = placeFor(context, car, { places: [origin], axle });
  const isElsewhere = place.uri !== origin.uri || place.start !== origin.start;
  const digits = digitsFor(value, by);
  return {
    rule: meta.id,
    severity: meta.severity,
    uri: context.uri,
    span: { start: place.start, end: place.end },
    message: `${figure} of ${nameOf(car)} is ${showQuantity(value, unit, digits)}, which misses what is expected, ${wantedWords(wanted.wants)}, by ${showQuantity(by, unit, 3)}. Change what it rests on, or the expectation.`,
    related: isElsewhere ? [{ origin, message: "The expectation" }] : [],
    tags: [],
    data: { setup: nameOf(car), wanted: origin } satisfies Data,
  };
}

/** Which expectation of which car, for the fix. */
interface Data {
  readonly setup: string;
  readonly wanted: ExpectationModel["origin"];
}

/** Single changes that meet it, each offered once the whole check has passed on the changed text. */
function fix({ data }: Finding, context: RuleContext): readonly Fix[] {
  const { setup, wanted } = data as Data;
  const car = context.cars.find((one) => nameOf(one) === setup);
  const text = context
    .textOf(wanted.uri)
    ?.slice(wanted.start, wanted.end)
    .replace(/^expect\s+/, "");
  if (car === undefined || text === undefined) return [];
  const before = missesIn(context);
  return singleChanges(context, car, text)
    .flatMap(({ property, setting }) => changeOf(context, car, property, setting) ?? [])
    .filter((made) => {
      const changed = changedBy(context, made);
      return changed !== undefined && missesIn(changed) < before;
    })
    .map((made, index) => ({ ...made, preferred: index === 0 }));
}

const missesIn = ({ cars }: RuleContext): number => cars.reduce((count, car) => count + missedIn(car).length, 0);

function changeOf(
  context: RuleContext,
  { model }: CheckedCar,
  property: PropertyAt,
  { path, text }: Setting,
): Fix | undefined {
  const given = property.kind === "part" ? property : property.given;
  // What is as long as drawn is written nowhere: a set-up can say it, the car's own text has no place for it.
  if (model.setup === undefined && given.origin.end === given.origin.start) return undefined;
  const edit = valueEdit(context, model, { given, path, text });
  return edit && { title: `Set ${path} to ${text}`, edits: [edit], preferred: false, safe: false };
}
