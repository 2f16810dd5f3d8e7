/**
 * What each car and set-up of a chain says about one property: the difference of what it is before and after, found in the
 * resolved trees, so that a path means what it means to an override.
 *
 * Invariant: a set-up that leaves the property as it is gives no step.
 */
import type { CheckedCar } from "../../findings/context.js";
import type { CarModel } from "../../model/car.js";
import type { Origin } from "../../model/origin.js";
import { treeOf } from "../../model/property-at.js";
import { isWritten } from "../../model/provenance.js";
import { isSameValue } from "../../model/same.js";
import { mirrorStatement } from "../../model/sides.js";
import { type Found, statementAt } from "../../model/steps.js";
import { statementText } from "../comparison/value-text.js";
import { type FileOf, takenOutBy, type Written, writtenAt } from "./written.js";

export type StepKind =
  /** Said in the car, or in a part that is fitted there. */
  | "written"
  /** A set-up, a side's block, or a figure over that of a part says it anew. */
  | "replaced"
  /** `by` adds to what was there. */
  | "adjusted"
  /** `fit`: a part brings the figure. */
  | "fitted"
  /** Figures of the catalogue. */
  | "part"
  | "removed"
  /** The line is the old one; what it reads has changed. */
  | "follows"
  /** The value of a `let` that a line names, or of a property that it reads. */
  | "let"
  | "reads"
  /** What the language takes where nothing is written. */
  | "default";

export interface Step {
  readonly kind: StepKind;
  readonly by: string;
  readonly text: string;
  /** Undefined for what no file says. */
  readonly origin: Origin | undefined;
  /** What it comes to from here on; undefined where that is not known, or nothing but a block. */
  readonly value: string | undefined;
}

/** A car or set-up before and after the cars that it is made of: the car first. */
export function layersOf(car: CheckedCar): readonly CarModel[] {
  const layers: CarModel[] = [];
  for (let here: CheckedCar | undefined = car; here !== undefined; here = here.base) layers.unshift(here.model);
  return layers;
}

export const foundAt = (model: CarModel | undefined, path: readonly string[]): Found | undefined =>
  model && statementAt(treeOf(model), path);

/** As the language writes it, in the frame of the car; undefined for a block of lines. */
export function valueOf(found: Found | undefined, path: readonly string[]): string | undefined {
  if (found === undefined) return undefined;
  const { statement, parent } = found;
  const text = statementText(path[1] === "right" ? mirrorStatement(statement) : statement, parent.concept);
  return text === "" ? undefined : text;
}

/** What `model` says of the property over what it derives from, oldest first. */
export function ownSteps(
  base: CarModel | undefined,
  model: CarModel,
  path: readonly string[],
  fileOf: FileOf,
): readonly Step[] {
  const before = foundAt(base, path);
  const now = foundAt(model, path);
  if (now === undefined) return before === undefined ? [] : removal(model, path, fileOf);
  const known = new Set(before === undefined ? [] : places(before).map(keyOf));
  const fresh = places(now).filter((place) => isWritten(place) && !known.has(keyOf(place)));
  if (fresh.length === 0) return before !== undefined && !isSame(before, now) ? following(now, path, fileOf) : [];
  const written = fresh.flatMap((place) => writtenAt(place, fileOf) ?? []);
  const fit = fitOf(model, path, fileOf);
  return written.flatMap((one, i): readonly Step[] => {
    const value = i === written.length - 1 ? valueOf(now, path) : undefined;
    if (!isOfPart(one)) return [{ ...one, kind: kindOf(one, before !== undefined || i > 0), value }];
    const line: Step = { ...one, kind: "part", value };
    return fit === undefined ? [line] : [{ ...fit, kind: "fitted", value: undefined }, line];
  });
}

const places = ({ statement: { chain, origin } }: Found): readonly Origin[] => [...chain, origin];

const keyOf = ({ uri, start, end }: Origin): string => `${uri} ${start} ${end}`;

export const isOfPart = ({ by }: Pick<Written, "by">): boolean => by.startsWith("part ");

const kindOf = ({ text }: Written, isOver: boolean): StepKind =>
  !isOver ? "written" : /^\S+\s+by\s/.test(text) ? "adjusted" : "replaced";

const isSame = ({ statement: { values: a } }: Found, { statement: { values: b } }: Found): boolean =>
  a === b || (a.length === b.length && a.every((value, i) => isSameValue(value, b[i] ?? value)));

function following(now: Found, path: readonly string[], fileOf: FileOf): readonly Step[] {
  const written = writtenAt(now.statement.origin, fileOf);
  return written === undefined ? [] : [{ ...written, kind: "follows", value: valueOf(now, path) }];
}

/** The `fit` line of the element that a path leads into. */
function fitOf(model: CarModel, path: readonly string[], fileOf: FileOf): Written | undefined {
  for (let length = path.length - 1; length > 0; length--) {
    const fit = foundAt(model, [...path.slice(0, length), "fit"]);
    if (fit !== undefined) return writtenAt(fit.statement.origin, fileOf);
  }
  return undefined;
}

/** Taken out with its element, or put out of work by a part. */
function removal({ origin }: CarModel, path: readonly string[], fileOf: FileOf): readonly Step[] {
  const line = takenOutBy(fileOf(origin.uri).parsed.document, origin, path);
  const written = writtenAt({ uri: origin.uri, start: (line ?? origin).start, end: (line ?? origin).end }, fileOf);
  return written === undefined ? [] : [{ ...written, kind: "removed", value: undefined }];
}
