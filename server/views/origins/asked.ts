/**
 * What the cursor asks about: one property of a car or set-up by its path, a block of them, a part's figure or a `let`, or why
 * there is nothing to tell.
 *
 * Invariant: works on the text as it is: a line that could not be read still has its path.
 */
import type { Statement } from "../../../grammar/index.js";
import { findWord } from "../../../grammar/vocabulary/index.js";
import type { Concept } from "../../../grammar/vocabulary/word.js";
import type { CheckedCar } from "../../findings/context.js";
import { targetOf } from "../../model/names.js";
import type { Origin } from "../../model/origin.js";
import { propertyAt } from "../../model/property-at.js";
import type { FileView } from "../../snapshot/workspace.js";
import { conceptInside, type Place, placeAt } from "../place.js";
import { carAt } from "../subject.js";
import { wordAt } from "./defaults.js";
import { foundAt } from "./steps.js";
import { nameIn, withoutSide } from "./written.js";

export type Asked =
  | { readonly kind: "property"; readonly car: CheckedCar; readonly path: readonly string[] }
  /** All that lies below: an element, an axle, everything. */
  | { readonly kind: "block"; readonly car: CheckedCar; readonly path: readonly string[] }
  /** A line that belongs to no car: of a part, or a `let`. */
  | { readonly kind: "line"; readonly of: "part" | "let"; readonly origin: Origin }
  /** One of several lines of a car that stand side by side, as expectations do. */
  | { readonly kind: "among"; readonly car: CheckedCar; readonly origin: Origin }
  | { readonly kind: "none"; readonly why: string };

export function askedAt(file: FileView, offset: number): Asked {
  const place = placeAt(file.parsed.document, offset);
  const { statement, around } = place;
  const chain = statement === undefined ? around : [...around.filter((one) => one !== statement), statement];
  const [outer] = chain;
  if (outer === undefined) return none("Put the cursor on a value of a car, a set-up or a part.");
  if (statement !== undefined && wordOf(statement) === "let")
    return { kind: "line", of: "let", origin: originOf(file, statement) };
  if (wordOf(outer) === "catalogue") return inCatalogue(file, chain);
  if (wordOf(outer) !== "car" && wordOf(outer) !== "setup")
    return none("Put the cursor on a value of a car, a set-up or a part.");
  const car = carAt(file, outer.start);
  if (car === undefined)
    return none(`${nameIn(outer)} cannot be worked out, so nothing is known of its values: its findings say why.`);
  return inCar(file, car, place, chain);
}

const none = (why: string): Asked => ({ kind: "none", why });

const wordOf = ({ head: { segments } }: Statement): string => (segments.length === 1 ? (segments[0]?.text ?? "") : "");

const originOf = ({ uri }: FileView, { start, end }: Statement): Origin => ({ uri, start, end });

function inCatalogue(file: FileView, chain: readonly Statement[]): Asked {
  const [, part] = chain;
  const last = chain.at(-1);
  return part === undefined || last === undefined
    ? none("Put the cursor on a part of the catalogue or one of its figures.")
    : { kind: "line", of: "part", origin: originOf(file, last) };
}

function inCar(file: FileView, car: CheckedCar, { statement }: Place, [outer, ...inner]: readonly Statement[]): Asked {
  const last = inner.at(-1);
  if (outer === undefined || last === undefined) return { kind: "block", car, path: [] };
  const path = wordOf(last) === "remove" ? nameIn(last).split(".") : pathOf(wordOf(outer), inner);
  if (wordOf(last) !== "remove" && wordAt(car.model, path)?.times === "many")
    return { kind: "among", car, origin: originOf(file, last) };
  const own = adjusterIn(car, path, last) ?? path;
  return statement === undefined || isBlock(car, own)
    ? { kind: "block", car, path: own }
    : { kind: "property", car, path: own };
}

/** `push-rod by -1 turn` speaks of the rod's length. */
function adjusterIn(
  { model }: CheckedCar,
  path: readonly string[],
  { items }: Statement,
): readonly string[] | undefined {
  const [by] = items;
  if (by?.kind !== "path" || by.segments[0]?.text !== "by") return undefined;
  const found = propertyAt(model, path.join("."));
  return found?.kind === "number" ? found.path.split(".") : undefined;
}

/** The same of a path that is given, as a set-up writes it; the empty one is everything. */
export const askedFor = (car: CheckedCar, path: readonly string[]): Asked =>
  path.length === 0 || isBlock(car, path) ? { kind: "block", car, path } : { kind: "property", car, path };

/** Lines in braces without a value of their own; tables are one value. */
function isBlock({ model }: CheckedCar, path: readonly string[]): boolean {
  const statement = foundAt(model, path)?.statement;
  if (statement === undefined) return path.length <= 2 && withoutSide(path).length === 1;
  return (statement.block?.statements.length ?? 0) > 0 && statement.values.every(isName(statement.name?.text));
}

const isName =
  (name: string | undefined) =>
  (value: { readonly kind: string; readonly text?: string }): boolean =>
    value.kind === "modes" || value.kind === "text" || (value.kind === "word" && value.text === name);

/** Blocks that paths leave out. */
const passedOver: ReadonlySet<string> = new Set(["linkage", "wheel", "axle"]);

/** The dotted path of nested statements, as an override says it. */
function pathOf(outer: string, statements: readonly Statement[]): readonly string[] {
  let concept: Concept | undefined = outer === "setup" ? "car" : outer;
  const path: string[] = [];
  for (const statement of statements) {
    path.push(...stepsOf(concept, statement));
    concept = insideOf(concept, statement);
  }
  return path;
}

/** `left {` is the axle again. */
const insideOf = (concept: Concept | undefined, statement: Statement): Concept | undefined =>
  ["left", "right", "front", "rear"].includes(wordOf(statement)) ? "axle" : conceptInside(concept, statement);

function stepsOf(concept: Concept | undefined, statement: Statement): readonly string[] {
  const head = statement.head.segments.map(({ text }) => text);
  const [word = "", more] = head;
  const known = concept === undefined || more !== undefined ? undefined : findWord(concept, word);
  const isNamed = known !== undefined && (known.word === "axle" || targetOf(known) !== undefined);
  if (isNamed && nameIn(statement) !== "") return [nameIn(statement)];
  return more === undefined && passedOver.has(word) ? [] : head;
}
