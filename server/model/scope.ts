/**
 * `let` names: which are visible where. A scope is one block; names are looked up outwards, then
 * in the file and the files that it uses. Their values are worked out in `lets.ts`.
 */
import type { Entry, Item, Path, Statement } from "../../grammar/index.js";
import { findWord } from "../../grammar/vocabulary/index.js";
import type { Concept } from "../../grammar/vocabulary/word.js";
import type { Amount } from "./amount.js";
import type { Origin } from "./origin.js";
import type { Place } from "./place.js";
import { at, type Sink } from "./sink.js";

export interface Let {
  readonly name: string;
  readonly nameOrigin: Origin;
  readonly item: Item;
  readonly scope: Scope;
  /** Set once the value is known, or known not to be had without the car's properties. */
  settled: { readonly amount: Amount | undefined; readonly readsProperties: boolean } | undefined;
}

export interface Scope {
  readonly uri: string;
  readonly sink: Sink;
  readonly lets: ReadonlyMap<string, Let> | undefined;
  readonly outer: Scope | undefined;
  /** Further places to look in when the outermost scope has been searched: the used files. */
  readonly used: (() => readonly Scope[]) | undefined;
  /** Dotted place of the block in its car, innermost last: where property names are looked up from. */
  readonly place: Place | undefined;
  /** Whether a name that is no `let` may be a property: inside of cars and set-ups. */
  readonly inCar: boolean;
}

export const within = (outer: Scope, segment: string): Scope => ({
  uri: outer.uri,
  sink: outer.sink,
  lets: undefined,
  outer: outer.lets === undefined ? outer.outer : outer,
  used: outer.lets === undefined ? outer.used : undefined,
  place: { segment, outer: outer.place },
  inCar: outer.inCar,
});

/** The scope at a place of the car for lines that are written elsewhere: their own `let`s hold. */
export function scopeIn(scope: Scope, path: readonly string[]): Scope {
  return path.reduce(within, { ...scope, place: undefined });
}

/** Every scope around, nearest first, the used files last. */
function* scopesAround(scope: Scope): Generator<Scope> {
  for (let here: Scope | undefined = scope; here !== undefined; here = here.outer) {
    yield here;
    if (here.used !== undefined) yield* here.used();
  }
}

export function findLet(scope: Scope, path: Path): Let | undefined {
  const [only, more] = path.segments;
  if (only === undefined || more !== undefined) return undefined;
  for (const here of scopesAround(scope)) {
    const found = here.lets?.get(only.text);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Every `let` name that can be used here, nearest first. */
export function visibleLets(scope: Scope): string[] {
  const names = new Set<string>();
  for (const here of scopesAround(scope)) for (const name of here.lets?.keys() ?? []) names.add(name);
  return [...names];
}

/** The scope of a block: with its own `let`s, where it has any and may have them. */
export function blockScope(scope: Scope, entries: readonly Entry[], concept: Concept): Scope {
  const found = entries.filter((entry) => entry.kind === "statement" && isLet(entry)) as Statement[];
  if (found.length === 0 || findWord(concept, "let") === undefined) return scope;
  const lets = new Map<string, Let>();
  const isBare = scope.lets === undefined;
  const inside: Scope = { ...scope, lets, outer: isBare ? scope.outer : scope, used: isBare ? scope.used : undefined };
  for (const statement of found) addLet(statement, inside, lets);
  return inside;
}

export const isLet = (statement: Statement): boolean =>
  statement.head.segments.length === 1 && statement.head.segments[0]?.text === "let";

function addLet(statement: Statement, scope: Scope, lets: Map<string, Let>): void {
  const [name, item, more] = statement.items;
  const isName = name?.kind === "path" && name.segments.length === 1;
  const text = isName ? (name.segments[0]?.text ?? "") : "";
  if (!isName || item === undefined || more !== undefined || statement.equals === undefined) {
    const place = at(scope.uri, more ?? statement.head);
    scope.sink.report({ ...place, kind: "wrong-form", word: "let", expected: ["let NAME = VALUE"], detail: undefined });
  }
  if (!isName || item === undefined) return;
  const nameOrigin = at(scope.uri, name);
  const first = lets.get(text);
  if (first !== undefined) {
    scope.sink.report({ ...nameOrigin, kind: "duplicate", word: text, what: "name", first: first.nameOrigin });
    return;
  }
  scope.sink.declare({ target: "let", name: text, place: scope.place, declaration: nameOrigin });
  lets.set(text, { name: text, nameOrigin, item, scope, settled: undefined });
}
