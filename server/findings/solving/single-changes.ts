/**
 * Single changes of a car that meet one expectation: the nearest part from the shelf, then the values of those adjusters
 * that have to move least.
 *
 * Each adjuster is moved by one step to see what it does to the figure; only those that would have to move least are solved for.
 */
import { type Band, solve } from "../../analyses/solve.js";
import { type Adjustable, adjustablesOf } from "../../model/adjustables.js";
import type { NumberAt, PartAt } from "../../model/property-at.js";
import { fromSI, showQuantity, toSI } from "../../quantities/index.js";
import type { CheckedCar } from "../context.js";
import { nameOf } from "../where.js";
import { partsLike } from "./parts.js";
import { boundsOf, isCounted, numberSetting, partSetting, type Setting, stepOf } from "./setting.js";
import { type Outcome, type SolvableFile, trial } from "./wanted.js";

export interface SingleChange {
  readonly property: NumberAt | PartAt;
  readonly setting: Setting;
}

/** As many values are offered: more would be a list to choose from. */
const mostValues = 2;
const mostParts = 60;
/** Times what it is: an adjuster that would have to move further is not the one to move. */
const furthest = 3;

type Trial = ReturnType<typeof trial>;

/** @param wanted as it stands behind `expect` */
export function singleChanges(file: SolvableFile, car: CheckedCar, wanted: string): readonly SingleChange[] {
  const asked = trial(file, nameOf(car), [wanted]);
  const now = outcomeOf(asked, []);
  const bands = asked.bands();
  const [band] = "why" in bands ? [] : bands;
  if (now === undefined || now.isMet || band === undefined) return [];
  const all = adjustablesOf(car.model);
  const part = nearestPart(file, asked, all, now);
  const values: SingleChange[] = [];
  for (const property of byLeastMove(asked, all, now)) {
    const value = valueFor(asked, band, property);
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
    return effect > 0 && Math.abs(now.margin) < furthest * effect * (size / step)
      ? [{ property, move: (Math.abs(now.margin) / effect) * (step / size) }]
      : [];
  });
  return felt
    .sort((a, b) => a.move - b.move)
    .slice(0, 2 * mostValues)
    .map(({ property }) => property);
}

/** Evaluations that one value may take: what needs more does not answer to it well. */
const mostTrials = 24;

function valueFor(asked: Trial, band: Band, property: NumberAt): SingleChange | undefined {
  const { value: start } = property.given;
  if (isCounted(property)) return countFor(asked, property);
  const { low, high } = boundsOf(property);
  let left = mostTrials;
  const found = solve({
    unknowns: [
      { start: Math.min(high, Math.max(low, start)), low, high, size: stepOf({ ...property, step: undefined }) },
    ],
    bands: [band],
    evaluate([x = start]) {
      const setting = left-- > 0 ? numberSetting(property, x) : undefined;
      const outcome = setting && outcomeOf(asked, [setting]);
      return outcome && [outcome.value];
    },
  });
  const [value] = found?.x ?? [];
  if (value === undefined || found?.isMet !== true) return undefined;
  return stepFor(asked, property, value) ?? shortest(asked, property, value);
}

/** The nearest position that meets it. */
function countFor(asked: Trial, property: NumberAt): SingleChange | undefined {
  const { value: now } = property.given;
  const { low, high } = boundsOf(property);
  for (let by = 1; by <= mostTrials / 2; by++) {
    for (const value of [now + by, now - by]) {
      const setting = value < low || value > high ? undefined : numberSetting(property, value);
      if (setting !== undefined && outcomeOf(asked, [setting])?.isMet === true) return { property, setting };
    }
  }
  return undefined;
}

/** On a step of its adjuster, if it has one and one meets it. */
function stepFor(asked: Trial, property: NumberAt, value: number): SingleChange | undefined {
  const { step, given } = property;
  if (step === undefined) return undefined;
  const steps = (value - given.value) / step.value;
  for (const count of new Set([Math.round(steps), Math.floor(steps), Math.ceil(steps)])) {
    const setting = numberSetting(property, given.value + count * step.value);
    if (setting !== undefined && outcomeOf(asked, [setting])?.isMet === true) return { property, setting };
  }
  return undefined;
}

/** The fewest digits that still meet it: nobody writes twelve. */
function shortest(asked: Trial, property: NumberAt, value: number): SingleChange | undefined {
  const { path, given } = property;
  const shown = fromSI(value, given.unit) ?? value;
  for (let digits = 2; digits <= 6; digits++) {
    const power = 10 ** (digits - 1 - Math.floor(Math.log10(Math.abs(shown) || 1)));
    for (const number of new Set([Math.round, Math.ceil, Math.floor].map((round) => round(shown * power) / power))) {
      const si = toSI(number, given.unit);
      if (si === undefined) continue;
      const setting = { path, text: showQuantity(si, given.unit, digits + 1), value: si };
      if (outcomeOf(asked, [setting])?.isMet === true) return { property, setting };
    }
  }
  const setting = numberSetting(property, value);
  return setting && { property, setting };
}
