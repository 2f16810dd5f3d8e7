/**
 * The left and the right side of an axle are not mirror images: a point, a wheel or a corner element
 * differs. A car may be meant so; then this line is a reminder. More often one side was changed and the
 * other forgotten.
 *
 * The fixes take the one-sided line out, so that its side mirrors the other again, or give both sides
 * what it says.
 *
 * ```crank wrong
 * use "axle.crank"
 *
 * setup lopsided from plover {
 *   front.left.side.damping 2.9 N*s/mm
 * }
 * ```
 *
 * ```crank right
 * use "axle.crank"
 *
 * setup even from plover {
 *   front.side.damping 2.9 N*s/mm
 * }
 * ```
 */
import type { Origin } from "../../../model/origin.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { Difference } from "../../difference.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { mirrorAgain, sameOnBoth, seenFromOwnLine } from "../../one-sided.js";
import { changedBy } from "../../proven.js";
import { removalOf } from "../../setup-lines.js";
import { differencesOf } from "../../side-differences.js";
import { nameOf, placeFor, standsInBase } from "../../where.js";

const meta = {
  id: "asymmetry",
  title: "Left and right differ",
  cost: "model",
  severity: "information",
} as const;

interface Data {
  readonly car: string;
  readonly difference: Difference;
}

export const asymmetry: Rule = { meta, check, fix };

function* check(context: RuleContext): Generator<Finding> {
  for (const car of context.cars) {
    for (const difference of differencesOf(car.model)) {
      if (standsInBase(car, (base) => has(base, difference))) continue;
      yield findingOf(context, car, seenFromOwnLine(context, difference));
    }
  }
}

/** The same difference by the same lines. */
const has = ({ model }: CheckedCar, { what, origin, other }: Difference): boolean =>
  differencesOf(model).some(
    (one) => one.what === what && isSamePlace(one.origin, origin) && isSamePlace(one.other, other),
  );

const isSamePlace = (a: Origin | undefined, b: Origin | undefined): boolean =>
  a?.uri === b?.uri && a?.start === b?.start;

function findingOf(context: RuleContext, car: CheckedCar, difference: Difference): Finding {
  const { origin, axle, what, shown, other } = difference;
  const [, element = "", more] = what.split(" ");
  const removed = more === undefined ? removalOf(context, car.model, axle, element) : undefined;
  const place = placeFor(context, car, { places: removed === undefined ? [origin] : [removed, origin], axle });
  const data: Data = { car: nameOf(car), difference };
  const differs =
    shown === undefined
      ? "differs between the left and the right"
      : `is ${shown.left} on the left and ${shown.right} on the right`;
  return {
    rule: meta.id,
    severity: meta.severity,
    uri: context.uri,
    span: { start: place.start, end: place.end },
    message: `${what} ${differs}. If that is not meant, give both sides the same.`,
    related: other === undefined ? [] : [{ origin: other, message: "The other side comes from here" }],
    tags: [],
    data,
  };
}

function fix(finding: Finding, context: RuleContext): readonly Fix[] {
  const { car: name, difference } = finding.data as Data;
  const car = context.cars.find((one) => nameOf(one) === name);
  if (car === undefined) return [];
  const other = difference.side === "left" ? "right" : "left";
  const offered = [
    {
      title: `Mirror the ${other} side: take the ${difference.side} side's own line out`,
      edits: mirrorAgain(context, difference),
    },
    { title: `Give the ${other} side the same`, edits: sameOnBoth(context, car.model, difference) },
  ];
  return offered
    .flatMap(({ title, edits }): Fix[] =>
      edits === undefined ? [] : [{ title, edits, preferred: false, safe: false }],
    )
    .filter((one) => isMended(context, name, difference, one))
    .map((one, index) => ({ ...one, preferred: index === 0 }));
}

/** Both sides are alike with it, and nothing else is wrong that was not. */
function isMended(context: RuleContext, name: string, { what }: Difference, offered: Fix): boolean {
  const car = changedBy(context, offered)?.cars.find((one) => nameOf(one) === name);
  return car !== undefined && !differencesOf(car.model).some((difference) => difference.what === what);
}
