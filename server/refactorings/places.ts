/**
 * Values that could be a name instead, each with where it stands: what a `let` can be made of.
 *
 * Left out: a number whose unit covers another one too (`8 x 30 mm`, `-30 .. 25 mm`), since the other would lose it; what is
 * added (`by +2 mm`); the whole value of a `let`, which has a name already.
 */
import type { Item, Quantity, Span, Statement } from "../../grammar/index.js";
import { findWord } from "../../grammar/vocabulary/index.js";
import type { Concept } from "../../grammar/vocabulary/word.js";
import { coveredIn, itemsOf } from "../views/covered-numbers.js";
import { conceptInside, wordOf } from "../views/place.js";

export interface ValuePlace extends Span {
  readonly digits: string;
  readonly unit: string;
  /** What is said here: `rate`, or `outer-y` for a coordinate. */
  readonly word: string;
  /** Who it is said of: an element, an axle, an eye, a block; undefined at the top. */
  readonly owner: string | undefined;
}

/** A declaration at the top of a file whose block may hold `let`s. */
export function isScope(statement: Statement): boolean {
  const concept = conceptInside("file", statement);
  return concept !== undefined && statement.block?.closed === true && findWord(concept, "let") !== undefined;
}

export function valuePlaces(declaration: Statement): readonly ValuePlace[] {
  const concept = conceptInside("file", declaration);
  return [...placesInside(declaration, { owner: undefined, row: undefined, word: "", concept })];
}

interface Around {
  /** Who lines inside are said of, and who rows are. */
  readonly owner: string | undefined;
  readonly row: string | undefined;
  readonly word: string;
  readonly concept: Concept | undefined;
}

function* placesInside({ block }: Statement, around: Around): Generator<ValuePlace> {
  for (const entry of block?.entries ?? []) {
    if (entry.kind === "row") {
      yield* placesIn(itemsOf(entry), around.word, around.row);
      continue;
    }
    const { owner, word } = spokenOf(entry, around.owner);
    if (!isNamedAlready(entry) && !isAdded(entry)) yield* placesIn(entry.items, word, owner);
    const concept = conceptInside(around.concept, entry);
    const inside = ownName(around.concept, entry) ?? (concept === "wheel" ? owner : word);
    yield* placesInside(entry, { owner: inside, row: owner, word, concept });
  }
}

/** `front.third.rate` says the rate of the third; `eye third` speaks of an eye. */
function spokenOf({ head, items, block }: Statement, around: string | undefined) {
  const segments = head.segments.map(({ text }) => text);
  const word = segments.at(-1) ?? "";
  const named = block === undefined && word === "eye" ? plainName(items[0]) : undefined;
  if (named !== undefined) return { owner: word, word: named };
  return { owner: segments.at(-2) ?? around, word };
}

/** `spring third`, `axle front`: what opens its block by name. */
function ownName(concept: Concept | undefined, statement: Statement): string | undefined {
  const isNamed = wordOf(concept, statement)?.takes.some(
    ([first]) => first?.kind === "name" || first?.kind === "choice",
  );
  return isNamed === true ? plainName(statement.items[0]) : undefined;
}

function plainName(item: Item | undefined): string | undefined {
  return item?.kind === "path" && item.segments.length === 1 ? item.segments[0]?.text : undefined;
}

const isNamedAlready = ({ head, items }: Statement): boolean =>
  head.segments[0]?.text === "let" && items[1]?.kind === "quantity";

const isAdded = ({ items }: Statement): boolean => items.some((item) => plainName(item) === "by");

function* placesIn(items: readonly Item[], word: string, owner: string | undefined): Generator<ValuePlace> {
  for (const { unit, numbers } of coveredIn(items)) {
    const isShared = numbers.length > 1 && numbers.some((number) => number.unit !== undefined);
    if (isShared) continue;
    for (const number of numbers) {
      const { start, end, digits } = number;
      if (digits.startsWith("+")) continue;
      const spoken = number.unit === undefined ? `${word}-${axisOf(items, number)}` : word;
      yield { start, end, digits, unit: unit.text, word: spoken, owner };
    }
  }
}

/** Points of a planar linkage have no x. */
function axisOf(items: readonly Item[], number: Quantity): string {
  const tuple = items.find((item) => item.kind === "tuple" && item.members.includes(number));
  if (tuple?.kind !== "tuple") return "value";
  const axes = tuple.members.length === 2 ? ["y", "z"] : ["x", "y", "z"];
  return axes[tuple.members.indexOf(number)] ?? "value";
}
