/**
 * Several cars and set-ups of two versions held against each other: what a pull request is told. A new set-up is compared
 * with what it derives from; one that only follows its base is told in a line.
 *
 * In: pairs of files of two versions. Out: plain data, the cars that differ most worth reading first.
 */
import type { CheckedCar } from "../../findings/context.js";
import type { FileView } from "../../snapshot/workspace.js";
import { compare } from "./compare.js";
import type { Comparison } from "./comparison.js";
import { type CarPair, nameOf, pairCars } from "./pairs.js";

export interface FilePair {
  readonly old: FileView | undefined;
  readonly now: FileView | undefined;
  /** As the reader knows it; of the newer side where both are there. */
  readonly path: string;
}

export interface Versions {
  /** What the two sides are called: "main (1a2b3c4d)", "work tree". */
  readonly old: string;
  readonly now: string;
  /** A file of the newer side, for what a new set-up derives from. */
  readonly file: (uri: string) => FileView;
}

export interface ReviewedCar {
  readonly status: "changed" | "same" | "renamed" | "added" | "deleted";
  readonly name: string;
  /** Under which it was known, where it is renamed. */
  readonly oldName: string | undefined;
  readonly path: string;
  /** With the older version; of an added set-up with what it derives from. */
  readonly comparison: Comparison | undefined;
  /** The base whose changes are all that differs. */
  readonly follows: string | undefined;
}

export interface Review {
  readonly old: string;
  readonly now: string;
  readonly headline: string;
  readonly differs: boolean;
  readonly cars: readonly ReviewedCar[];
}

export function review(pairs: readonly FilePair[], versions: Versions, threshold?: number): Review {
  const all = pairs.flatMap((pair) =>
    pairCars(pair.old?.cars ?? [], pair.now?.cars ?? []).map((cars) => reviewed(cars, pair, versions, threshold)),
  );
  const cars = inOrder(withBases(acrossFiles(all)));
  const { old, now } = versions;
  return { old, now, headline: reviewHeadline(cars), differs: cars.some(({ status }) => status !== "same"), cars };
}

/** One pair that was chosen by hand. */
export function reviewOfTwo(comparison: Comparison, path: string): Review {
  const { old, now, differs, headline } = comparison;
  const status = differs ? "changed" : "same";
  const car: ReviewedCar = { status, name: now.name, oldName: old.name, path, comparison, follows: undefined };
  return { old: old.label, now: now.label, headline, differs, cars: [car] };
}

function reviewed(cars: CarPair, { old, now, path }: FilePair, versions: Versions, threshold?: number): ReviewedCar {
  switch (cars.status) {
    case "deleted":
      return {
        status: "deleted",
        name: nameOf(cars.old.model),
        oldName: undefined,
        path,
        comparison: undefined,
        follows: undefined,
      };
    case "added": {
      const comparison = withBase(cars.now, now, versions, threshold);
      return {
        status: "added",
        name: nameOf(cars.now.model),
        oldName: undefined,
        path,
        comparison,
        follows: undefined,
      };
    }
    case "both":
    case "renamed": {
      const before = { car: cars.old, file: old ?? versions.file(cars.old.model.origin.uri), label: versions.old };
      const after = { car: cars.now, file: now ?? versions.file(cars.now.model.origin.uri), label: versions.now };
      const comparison = compare(before, after, threshold);
      const isRenamed = cars.status === "renamed";
      return {
        status: isRenamed ? "renamed" : comparison.differs ? "changed" : "same",
        name: nameOf(cars.now.model),
        oldName: isRenamed ? nameOf(cars.old.model) : undefined,
        path,
        comparison,
        follows: undefined,
      };
    }
  }
}

/** What a set-up changes of its base; undefined for a car, which rests on nothing. */
export function withBase(
  car: CheckedCar,
  file: FileView | undefined,
  { now, file: fileOf }: Pick<Versions, "now" | "file">,
  threshold?: number,
): Comparison | undefined {
  if (car.base === undefined || file === undefined) return undefined;
  const base = { car: car.base, file: fileOf(car.base.model.origin.uri), label: `its base ${nameOf(car.base.model)}` };
  return compare(base, { car, file, label: now }, threshold);
}

/** A car or set-up that went from one file to another is neither deleted nor added. */
function acrossFiles(all: readonly ReviewedCar[]): readonly ReviewedCar[] {
  const moved = new Set(
    all.flatMap(({ status, name }) =>
      status === "added" && all.some((other) => other.status === "deleted" && other.name === name) ? [name] : [],
    ),
  );
  return all
    .filter(({ status, name }) => !(status === "deleted" && moved.has(name)))
    .map((car) =>
      car.status === "added" && moved.has(car.name) ? { ...car, status: "renamed", oldName: car.name } : car,
    );
}

/** Whether all that differs is what differs in the base already. */
function withBases(all: readonly ReviewedCar[]): readonly ReviewedCar[] {
  return all.map((car) => {
    if (car.status !== "changed" || car.comparison === undefined) return car;
    const { changes } = car.comparison;
    const base = all.find(
      (other) =>
        other !== car &&
        car.comparison?.bases.includes(other.name) === true &&
        other.status === "changed" &&
        changes.every((change) => other.comparison?.changes.some((one) => isSaidAlike(one, change))),
    );
    return base === undefined ? car : { ...car, follows: base.name };
  });
}

type Said = Comparison["changes"][number];

const isSaidAlike = (a: Said, b: Said): boolean =>
  a.path === b.path && a.of === b.of && a.old?.text === b.old?.text && a.now?.text === b.now?.text;

/** What differs in its own right, then what came, was renamed or went, then what follows its base. */
function inOrder(all: readonly ReviewedCar[]): readonly ReviewedCar[] {
  const order = ["changed", "added", "renamed", "deleted", "same"];
  const rank = ({ status, follows }: ReviewedCar): number => (follows === undefined ? order.indexOf(status) : 1.5);
  return [...all].sort((a, b) => rank(a) - rank(b));
}

/** One car speaks for itself; of several, how many of what, and what became of what is expected of them. */
function reviewHeadline(cars: readonly ReviewedCar[]): string {
  const differing = cars.filter(({ status }) => status !== "same");
  const [only, more] = differing.filter(({ follows }) => follows === undefined);
  if (only === undefined) return "Nothing differs.";
  if (more === undefined) return `${carWords(only)}${followers(differing)}`;
  const own = differing.filter(({ follows }) => follows === undefined);
  const parts = [
    counted(own, "changed", "differ"),
    counted(own, "added", "new"),
    counted(own, "renamed", "renamed"),
    counted(own, "deleted", "deleted"),
  ].filter((part) => part !== "");
  return `${parts.join("; ")}.${followers(differing) || missedWords(differing)}`;
}

/** Of a set-up that only follows its base: that, and what it is no longer as expected. */
export function followerWords({ follows, comparison }: ReviewedCar): string | undefined {
  if (follows === undefined) return undefined;
  const missed = (comparison?.verdicts ?? []).filter(({ status }) => status === "newly-missed");
  return [`Only what ${follows} changes.`, ...missed.map(({ message }) => `Newly missed: ${message}`)].join(" ");
}

export function carWords({ status, name, oldName, comparison }: ReviewedCar): string {
  const headline = comparison?.headline ?? "";
  switch (status) {
    case "changed":
    case "same":
      return headline;
    case "added":
      return comparison === undefined ? `New: ${name}.` : `New: ${name}. Against ${comparison.old.name}: ${headline}`;
    case "deleted":
      return `Deleted: ${name}.`;
    case "renamed":
      return oldName === name
        ? `${name} moved to another file.`
        : `${oldName ?? ""} is called ${name} now. ${headline}`.trim();
  }
}

function followers(cars: readonly ReviewedCar[]): string {
  const names = cars.flatMap(({ follows, name }) => (follows === undefined ? [] : [name]));
  return names.length === 0 ? "" : ` So ${names.length === 1 ? "does" : "do"} ${listed(names)}.${missedWords(cars)}`;
}

function counted(cars: readonly ReviewedCar[], status: ReviewedCar["status"], words: string): string {
  const names = cars.flatMap((car) => (car.status === status ? [car.name] : []));
  if (names.length === 0) return "";
  const verb = words === "differ" && names.length === 1 ? "differs" : words;
  return words === "differ" ? `${listed(names)} ${verb}` : `${verb}: ${listed(names)}`;
}

function missedWords(cars: readonly ReviewedCar[]): string {
  const missing = cars.filter((car) => car.comparison?.verdicts.some(({ status }) => status === "newly-missed"));
  return missing.length === 0 ? "" : ` Expectations newly missed in ${listed(missing.map(({ name }) => name))}.`;
}

const MOST_NAMES = 5;

export function listed(names: readonly string[]): string {
  if (names.length > MOST_NAMES)
    return `${names.slice(0, MOST_NAMES).join(", ")} and ${names.length - MOST_NAMES} more`;
  return names.length < 2 ? (names[0] ?? "") : `${names.slice(0, -1).join(", ")} and ${names.at(-1) ?? ""}`;
}
