/**
 * Which values of a few properties of a car, or which catalogue parts and adjuster steps, meet what is expected of it.
 *
 * In: paths as a set-up writes them, expectations as `expect` takes them. Out: the values that meet all of them or come
 * nearest, and what the nearest steps and parts give.
 *
 * Every answer was tried as the lines of a set-up, so that what is told is what these lines do. Parts and positions are
 * tried one by one, everything between them is solved for (`analyses/solve.ts`).
 */
import { type Band, missOf, offOf, solve } from "../../analyses/solve.js";
import { type NumberAt, type PartAt, propertyAt } from "../../model/property-at.js";
import { matchesDimension, parseUnit, unitsOf, valueToSI } from "../../quantities/index.js";
import { nameOf } from "../where.js";
import { partsLike } from "./parts.js";
import { boundsOf, isCounted, numberSetting, partSetting, type Setting, stepOf } from "./setting.js";
import { type Outcome, type SolvableFile, trial } from "./wanted.js";

export interface Vary {
  readonly path: string;
  /** Where it may not go everywhere; numbers in the unit. */
  readonly within?: Within | undefined;
}

export interface Within {
  readonly low: number;
  readonly high: number;
  readonly unit: string;
}

export interface Answer {
  readonly isMet: boolean;
  readonly settings: readonly Setting[];
  readonly outcomes: readonly Outcome[];
}

export interface Solved {
  readonly before: { readonly settings: readonly Setting[]; readonly outcomes: readonly Outcome[] };
  /** Between all adjusters. */
  readonly answer: Answer;
  /** With every number on a step of its adjuster; undefined where none has one, or the answer is on them. */
  readonly onSteps: Answer | undefined;
  /** With a part from the shelf in place of the value; undefined where none fits. */
  readonly withPart: Answer | undefined;
  /** Bounds that hold the answer back, by their path. */
  readonly atBounds: readonly string[];
}

export type SolveAnswer = Solved | { readonly why: string };

/** More of them would take minutes. */
const mostTrials = 1500;
const mostSolved = 60;

type Trial = ReturnType<typeof trial>;

export function solveFor(
  file: SolvableFile,
  of: string,
  vary: readonly Vary[],
  wanted: readonly string[],
): SolveAnswer {
  const car = file.cars.find((one) => nameOf(one) === of);
  if (car === undefined) return { why: `there is no car or set-up ${of} here` };
  const asked = trial(file, of, wanted);
  const bands = asked.bands();
  if ("why" in bands) return bands;
  const now = asked.at([]);
  const unknowns = vary.map(({ path, within }) => unknownOf(file, propertyAt(car.model, path), path, within));
  const unclear = unknowns.find((one) => typeof one === "string");
  if (unclear !== undefined) return { why: unclear };
  const known = unknowns.filter((one) => typeof one !== "string");
  const discrete = combinations(known.map((one) => ("choices" in one ? one.choices : [undefined])));
  const hasContinuous = known.some((one) => !("choices" in one));
  if (discrete === undefined || (hasContinuous && discrete.length > mostSolved))
    return { why: "the parts and positions to try are too many: vary fewer of them at once" };
  const answers = discrete.flatMap((chosen) => answerWith(asked, bands, known, chosen) ?? []);
  const answer = bestOf(answers, bands);
  if (answer === undefined) return { why: "why" in now ? now.why : "no figure can be had with any of the values" };
  return {
    before: { settings: known.map(presentOf), outcomes: "why" in now ? [] : now.outcomes },
    answer,
    onSteps: onSteps(asked, bands, known, answer),
    withPart:
      known.length === 1 && hasContinuous ? withPart(file, car.model, asked, bands, vary[0]?.path ?? "") : undefined,
    atBounds: answer.isMet ? [] : boundsHit(known, answer),
  };
}

interface Continuous {
  readonly property: NumberAt;
  readonly low: number;
  readonly high: number;
}
interface Discrete {
  readonly property: NumberAt | PartAt;
  readonly choices: readonly Setting[];
}
type Sought = Continuous | Discrete;

function unknownOf(
  file: SolvableFile,
  property: NumberAt | PartAt | undefined,
  path: string,
  within: Vary["within"],
): Sought | string {
  if (property === undefined)
    return `"${path}" has no value of its own that could be changed: name one number or a fitted part, such as front.third.rate or front.bar.fit`;
  if (property.kind === "part") {
    const names = partsLike(file, property.concept, property.name);
    return { property, choices: names.map((name) => partSetting(path, name)) };
  }
  const bounds = within === undefined ? boundsOf(property) : boundsIn(within, property);
  if (typeof bounds === "string") return bounds;
  const { low, high } = bounds;
  if (!isCounted(property)) return { property, low, high };
  const [from, to] = [Math.ceil(Math.max(low, 0)), Math.floor(Math.min(high, property.given.value + 100))];
  const all = Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => numberSetting(property, from + i));
  return { property, choices: all.filter((one) => one !== undefined) };
}

function boundsIn({ low, high, unit }: Within, { path, dimension }: NumberAt): Band | string {
  const info = parseUnit(unit);
  if (info === undefined || !matchesDimension(info, dimension))
    return `${path} is a ${dimension}: "${unit}" is no unit of it; use ${unitsOf(dimension).join(", ") || "a plain number"}`;
  if (!(low < high)) return `the range of ${path} is empty: it goes from the smaller value to the larger`;
  return { low: valueToSI(low, info), high: valueToSI(high, info) };
}

const presentOf = ({ property }: Sought): Setting =>
  property.kind === "part"
    ? partSetting(property.path, property.name)
    : (numberSetting(property, property.given.value) ?? { path: property.path, text: "", value: property.given.value });

/** Every choice of one with every choice of the others; undefined where they are too many. */
function combinations<T>(choices: readonly (readonly T[])[]): readonly (readonly T[])[] | undefined {
  let all: readonly (readonly T[])[] = [[]];
  for (const own of choices) {
    if (all.length * own.length > mostTrials) return undefined;
    all = all.flatMap((one) => own.map((choice) => [...one, choice]));
  }
  return all;
}

/** @param chosen a setting for every discrete unknown, undefined in the place of the others */
function answerWith(
  asked: Trial,
  bands: readonly Band[],
  known: readonly Sought[],
  chosen: readonly (Setting | undefined)[],
): Answer | undefined {
  const free = known.filter((one): one is Continuous => !("choices" in one));
  const settingsAt = (x: readonly number[]): readonly Setting[] | undefined => {
    let next = 0;
    const all = known.map((one, i) => ("choices" in one ? chosen[i] : numberSetting(one.property, x[next++] ?? 0)));
    return all.every((one) => one !== undefined) ? all : undefined;
  };
  if (free.length === 0) return tried(asked, settingsAt([]));
  const found = solve({
    unknowns: free.map(({ property, low, high }) => ({
      start: Math.min(high, Math.max(low, property.given.value)),
      low,
      high,
      size: Math.min(stepOf({ ...property, step: undefined }), (high - low) / 4),
    })),
    bands,
    evaluate: (x) => tried(asked, settingsAt(x))?.outcomes.map(({ value }) => value),
  });
  return found && tried(asked, settingsAt(found.x));
}

function tried(asked: Trial, settings: readonly Setting[] | undefined): Answer | undefined {
  const found = settings && asked.at(settings);
  if (settings === undefined || found === undefined || "why" in found) return undefined;
  return { settings, outcomes: found.outcomes, isMet: found.outcomes.every(({ isMet }) => isMet) };
}

/** Met before missed, then by how much is missed, then the one that is nearest to what is aimed at. */
function bestOf(answers: readonly Answer[], bands: readonly Band[]): Answer | undefined {
  const worst = ({ outcomes }: Answer, of: (value: number, band: Band) => number): number =>
    Math.max(...outcomes.map(({ value }, i) => of(value, bands[i] ?? { low: -Infinity, high: Infinity })));
  const missed = (answer: Answer): number => (answer.isMet ? 0 : worst(answer, missOf));
  return [...answers].sort((a, b) => missed(a) - missed(b) || worst(a, offOf) - worst(b, offOf))[0];
}

/** Every number on the step below and the one above, counted from where it stands. */
function onSteps(asked: Trial, bands: readonly Band[], known: readonly Sought[], answer: Answer): Answer | undefined {
  const isStepped = (one: Sought): one is Continuous => !("choices" in one) && one.property.step !== undefined;
  if (!known.some(isStepped)) return undefined;
  const choices = known.map((one, i) => {
    const exact = answer.settings[i];
    if (!isStepped(one) || exact?.value === undefined) return exact === undefined ? [] : [exact];
    const { property } = one;
    const step = property.step?.value ?? 1;
    const steps = (exact.value - property.given.value) / step;
    return [...new Set([Math.floor(steps + 1e-9), Math.ceil(steps - 1e-9)])].flatMap(
      (count) => numberSetting(property, property.given.value + count * step, count) ?? [],
    );
  });
  return bestOf(
    (combinations(choices) ?? []).flatMap((settings) => tried(asked, settings) ?? []),
    bands,
  );
}

/** The element that the value belongs to, with each part that fits into it. */
function withPart(
  file: SolvableFile,
  car: Parameters<typeof propertyAt>[0],
  asked: Trial,
  bands: readonly Band[],
  path: string,
): Answer | undefined {
  const segments = path.split(".");
  const paths = segments.map((_, i) => [...segments.slice(0, i + 1), "fit"].join("."));
  const fitted = paths.map((one) => propertyAt(car, one)).find((found) => found?.kind === "part");
  if (fitted?.kind !== "part") return undefined;
  const names = partsLike(file, fitted.concept, fitted.name).slice(0, mostTrials);
  return bestOf(
    names.flatMap((name) => tried(asked, [partSetting(fitted.path, name)]) ?? []),
    bands,
  );
}

function boundsHit(known: readonly Sought[], { settings }: Answer): readonly string[] {
  return known.flatMap((one, i) => {
    const value = settings[i]?.value;
    if ("choices" in one || value === undefined) return [];
    const near = 1e-6 * (one.high - one.low);
    return value - one.low <= near || one.high - value <= near ? [one.property.path] : [];
  });
}
