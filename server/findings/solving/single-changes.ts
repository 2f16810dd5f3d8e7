/**
 * Single changes of a car that meet one expectation: the nearest part from the shelf, then the values of those adjusters
 * that have to move least.
 *
 * Each adjuster is moved by one step to see what it does to the figure; only those that would have to move least are solved for.
 */
import { type Adjustable, adjustablesOf } from "../../model/adjustables.js";
import type { NumberAt, PartAt } from "../../model/property-at.js";
import { fromSI, showQuantity, toSI } from "../../quantities/index.js";
import type { CheckedCar } from "../context.js";
import { nameOf } from "../where.js";
import { partsLike } from "./parts.js";
import { numberSetting, partSetting, type Setting, stepOf } from "./setting.js";
import { solveFor } from "./solve-for.js";
import { type Outcome, type SolvableFile, trial } from "./wanted.js";

export interface SingleChange {
  readonly property: NumberAt | PartAt;
  readonly setting: Setting;
}

/** As many values are offered: more would be a list to choose from. */
const mostValues = 2;
const mostParts = 60;

type Trial = ReturnType<typeof trial>;

/** @param wanted as it stands behind `expect` */
export function singleChanges(file: SolvableFile, car: CheckedCar, wanted: string): readonly SingleChange[] {
  const asked = trial(file, nameOf(car), [wanted]);
  const now = outcomeOf(asked, []);
  if (now === undefined || now.isMet) return [];
  const all = adjustablesOf(car.model);
  const part = nearestPart(file, asked, all, now);
  const values: SingleChange[] = [];
  for (const property of byLeastMove(asked, all, now)) {
    const value = valueFor(file, car, asked, property, wanted);
    if (value !== undefined) values.push(value);
    if (values.length === mostValues) break;
  }
  return part === undefined ? values : [part, ...values];
}

function outcomeOf(asked: Trial, settings: readonly Setting[]): Outcome | undefined {
  const found = asked.at(settings);
  return "why" in found ? undefined : found.outcomes[0];
}

/** Of all parts that meet it, the one that changes the figure least. */
function nearestPart(
  file: SolvableFile,
  asked: Trial,
  all: readonly Adjustable[],
  now: Outcome,
): SingleChange | undefined {
  const meeting = all.flatMap(({ property }) => {
    if (property.kind !== "part") return [];
    const names = partsLike(file, property.concept, property.name).filter((name) => name !== property.name);
    return triedParts(asked, property, names, now);
  });
  return meeting.sort((a, b) => a.by - b.by)[0]?.change;
}

/** Those that meet it, with how far they move the figure; if the first does not move it, the element has no hold on it. */
function triedParts(asked: Trial, property: PartAt, names: readonly string[], now: Outcome) {
  const meeting: { readonly change: SingleChange; readonly by: number }[] = [];
  for (const name of names.slice(0, mostParts)) {
    const setting = partSetting(property.path, name);
    const outcome = outcomeOf(asked, [setting]);
    if (outcome?.value === now.value) break;
    if (outcome?.isMet === true)
      meeting.push({ change: { property, setting }, by: Math.abs(outcome.value - now.value) });
  }
  return meeting;
}

/** Numbers that do something to the figure, those first that would have to move least. */
function byLeastMove(asked: Trial, all: readonly Adjustable[], now: Outcome): readonly NumberAt[] {
  const felt = all.flatMap(({ property }) => {
    if (property.kind !== "number") return [];
    const step = stepOf(property);
    const moved = [step, -step].flatMap((by) => {
      const setting = numberSetting(property, property.given.value + by);
      return (setting && outcomeOf(asked, [setting])) ?? [];
    });
    const effect = Math.abs((moved[0]?.value ?? now.value) - now.value);
    const size = Math.abs(property.given.value) || 20 * step;
    return effect > 0 ? [{ property, move: (Math.abs(now.margin) / effect) * (step / size) }] : [];
  });
  return felt
    .sort((a, b) => a.move - b.move)
    .slice(0, 2 * mostValues)
    .map(({ property }) => property);
}

function valueFor(
  file: SolvableFile,
  car: CheckedCar,
  asked: Trial,
  property: NumberAt,
  wanted: string,
): SingleChange | undefined {
  const found = solveFor(file, nameOf(car), [{ path: property.path }], [wanted]);
  if ("why" in found || !found.answer.isMet) return undefined;
  const onStep = found.onSteps?.isMet === true ? found.onSteps.settings[0] : undefined;
  const exact = onStep ?? found.answer.settings[0];
  if (exact?.value === undefined) return undefined;
  return { property, setting: onStep ?? shortest(asked, property, exact, exact.value) };
}

/** The fewest digits that still meet it: nobody writes twelve. */
function shortest(asked: Trial, property: NumberAt, exact: Setting, value: number): Setting {
  const { path, given } = property;
  const shown = fromSI(value, given.unit) ?? value;
  for (let digits = 2; digits <= 6; digits++) {
    const power = 10 ** (digits - 1 - Math.floor(Math.log10(Math.abs(shown) || 1)));
    const rounded = [Math.round, Math.ceil, Math.floor].map((round) => round(shown * power) / power);
    for (const number of new Set(rounded)) {
      const si = toSI(number, given.unit);
      if (si === undefined) continue;
      const setting = { path, text: showQuantity(si, given.unit, digits + 1), value: si };
      if (outcomeOf(asked, [setting])?.isMet === true) return setting;
    }
  }
  return exact;
}
