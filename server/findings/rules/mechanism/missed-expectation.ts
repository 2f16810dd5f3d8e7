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
import { showQuantity } from "../../../quantities/index.js";
import type { ExpectationModel } from "../../../model/car.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";
import { placeFor, standsInBase } from "../../where.js";

const meta = {
  id: "missed-expectation",
  title: "An expectation is missed",
  cost: "solved",
  severity: "warning",
} as const;

export const missedExpectation: Rule = { meta, check };

function* check(context: RuleContext): Generator<Finding> {
  for (const car of context.cars) {
    for (const missed of missedIn(car)) {
      if (
        standsInBase(car, (base) =>
          missedIn(base).some(({ origin }) => origin.start === missed.origin.start && origin.uri === missed.origin.uri),
        )
      )
        continue;
      const place = placeFor(context, car, missed.origin);
      if (place !== undefined) yield findingOf(context, car, missed, place);
    }
  }
}

interface Missed {
  readonly figure: string;
  readonly origin: CheckedCar["model"]["expectations"][number]["origin"];
  readonly value: number;
  readonly unit: string;
  readonly margin: number | undefined;
  readonly wanted: ExpectationModel["wants"];
}

function missedIn({ model, analysis }: CheckedCar): readonly Missed[] {
  return analysis.expectations.flatMap(({ index, met, value, unit, margin }) => {
    const wanted = model.expectations[index];
    if (met !== false || wanted === undefined || typeof value !== "number") return [];
    const miss = typeof margin === "number" ? margin : undefined;
    return [{ figure: wanted.figure, origin: wanted.origin, value, unit, margin: miss, wanted: wanted.wants }];
  });
}

function findingOf(
  context: RuleContext,
  car: CheckedCar,
  missed: Missed,
  place: { readonly uri: string; readonly start: number; readonly end: number },
): Finding {
  const { figure, value, unit, margin, origin } = missed;
  const by = margin === undefined ? "" : `, ${showQuantity(Math.abs(margin), unit)} away from it`;
  const elsewhere = place.uri !== origin.uri || place.start !== origin.start;
  return {
    rule: meta.id,
    severity: meta.severity,
    uri: context.uri,
    span: { start: place.start, end: place.end },
    message: `${figure} is ${showQuantity(value, unit)}, but ${car.model.setup ?? car.model.name} is expected to have it ${wantedWords(missed.wanted)}${by}. Change what it rests on, or the expectation.`,
    related: elsewhere ? [{ origin, message: "The expectation" }] : [],
    tags: [],
    data: undefined,
  };
}

/** "between 150 and 190 N/mm", in the author's units. */
function wantedWords(wants: ExpectationModel["wants"]): string {
  const shown = ({ value, unit }: { readonly value: number; readonly unit: string }): string =>
    showQuantity(value, unit);
  switch (wants.kind) {
    case "between":
      return `between ${shown(wants.from)} and ${shown(wants.to)}`;
    case "above":
    case "below":
      return `${wants.kind} ${shown(wants.limit)}`;
    case "within":
      return `${shown(wants.target)} within ${shown(wants.tolerance)}`;
  }
}
