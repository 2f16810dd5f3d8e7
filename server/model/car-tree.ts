/**
 * From a `car` statement to its tree, and from a set-up to the tree of what it derives from with
 * its lines applied.
 *
 * Invariant: a chain of set-ups of any length takes no stack; a circle of them is told at each
 * member and has no tree.
 */
import type { Block, Statement } from "../../grammar/index.js";
import { findWord } from "../../grammar/vocabulary/index.js";
import type { Declared } from "./file-context.js";
import { settleFormulas } from "./formulas.js";
import { plainWord } from "./forms.js";
import type { AxleName } from "./origin.js";
import { Overrides } from "./override.js";
import type { BlockPlace } from "./block-place.js";
import { newStatement, readBlock, type LocalOverride, type Reading } from "./read-block.js";
import { Reader } from "./reader.js";
import { readItems, type Read } from "./read-statement.js";
import { pathOf } from "./place.js";
import { blockScope, isLet, type Scope } from "./scope.js";
import { at } from "./sink.js";
import { axleStatement, withAdded, type CarTree, type TreeBlock } from "./tree.js";

/** What a set-up derives from, nearest first, the car last. Empty for a car; undefined where it has none. */
export function chainOf(declared: Declared): readonly Declared[] | undefined {
  const chain: Declared[] = [];
  const seen = new Set([declared]);
  for (let here = declared; here.kind === "setup"; ) {
    const base: Declared | undefined = here.base && here.context.findDeclared(here.base.text);
    if (base === undefined || base.tree === null || seen.has(base)) return undefined;
    seen.add(base);
    chain.push(base);
    here = base;
  }
  return chain;
}

/** The tree; undefined where there is no car at the end of the chain. */
export function treeOf(declared: Declared): CarTree | undefined {
  const chain = declared.tree === undefined ? chainOf(declared) : [];
  if (chain === undefined) declared.tree = null;
  for (const link of [...(chain ?? [])].reverse()) build(link);
  build(declared);
  return declared.tree ?? undefined;
}

/** Everything that it derives from is built by now. */
function build(declared: Declared): void {
  if (declared.tree !== undefined) return;
  if (declared.kind === "car") {
    declared.tree = readCar(declared);
    return;
  }
  const base = declared.base && declared.context.findDeclared(declared.base.text);
  declared.tree =
    base === undefined || base.tree === undefined || base.tree === null ? null : applySetup(declared, base.tree);
}

/** Tells about the name behind `from`: unknown, or part of a circle. */
export function checkBase(declared: Declared): void {
  const { base, context } = declared;
  if (base === undefined) return;
  const place = at(context.uri, base);
  const found = context.findDeclared(base.text);
  if (found === undefined) {
    const candidates = context.declaredNames().filter((name) => name !== declared.name);
    context.sink.report({ ...place, kind: "unknown-name", name: base.text, target: "car-or-setup", candidates });
    return;
  }
  const { kind, name, nameOrigin } = found;
  context.sink.refer({ target: kind, name, place: undefined, declaration: nameOrigin }, place);
  const circle = circleFrom(declared);
  if (circle !== undefined) context.sink.report({ ...place, kind: "cycle", what: "from", path: circle });
}

function circleFrom(start: Declared): readonly string[] | undefined {
  const names = [start.name];
  const seen = new Set([start]);
  for (let here: Declared | undefined = start; here?.kind === "setup"; ) {
    here = here.base && here.context.findDeclared(here.base.text);
    // What has a tree leads to a car: there is no way round behind it.
    if (here === undefined || (here.tree ?? undefined) !== undefined) return undefined;
    names.push(here.name);
    if (here === start) return names;
    if (seen.has(here)) return undefined;
    seen.add(here);
  }
  return undefined;
}

/** A block that is not there: the car is still known by its name. */
const emptyBlock = (raw: Statement): Block => ({
  kind: "block",
  start: raw.end,
  end: raw.end,
  entries: [],
  closed: true,
});

function readCar({ raw, name, nameOrigin, context, sink }: Declared): CarTree {
  const scope = insideCar({ ...context.scope, sink }, raw, "car");
  const overrides: LocalOverride[] = [];
  const reading: Reading = { parts: context.shelf, tables: context.tables, overrides, before: context.readings };
  const where: BlockPlace = {
    concept: "car",
    scope,
    opener: raw,
    word: "car",
    name: { text: name, origin: nameOrigin },
    partial: false,
  };
  const block = readBlock(raw.block ?? emptyBlock(raw), where, reading);
  const tree: CarTree = { block, right: { front: undefined, rear: undefined } };
  const whole = { block, right: { front: leftOf(tree, "front"), rear: leftOf(tree, "rear") } };
  const edited = new Overrides(whole, reading, false);
  for (const local of overrides) edited.apply(local.raw, pathOf(local.place), local.scope);
  return settleFormulas(edited.tree, sink);
}

const leftOf = (tree: CarTree, axle: AxleName): TreeBlock | undefined => axleStatement(tree, axle)?.block;

function insideCar(scope: Scope, raw: Statement, concept: "car" | "setup"): Scope {
  const inside: Scope = { ...scope, lets: undefined, outer: scope, used: undefined, inCar: true };
  return blockScope(inside, raw.block?.entries ?? [], concept);
}

function applySetup({ raw, context, sink }: Declared, base: CarTree): CarTree {
  const scope = insideCar({ ...context.scope, sink }, raw, "setup");
  const reading: Reading = { parts: context.shelf, tables: context.tables, overrides: undefined, before: undefined };
  const overrides = new Overrides(base, reading, true);
  const own: Statement[] = [];
  for (const entry of raw.block?.entries ?? []) {
    if (entry.kind === "row") {
      const problem = { kind: "wrong-form", word: "setup", expected: [], detail: "No rows stand here." } as const;
      sink.report({ ...at(context.uri, entry), ...problem });
    } else if (plainWord(entry.head) === "remove") removeLine(entry, scope, overrides);
    else if (isOfSetups(entry)) own.push(entry);
    else if (!isLet(entry)) overrides.apply(entry, [], scope);
  }
  const settled = settleFormulas(overrides.tree, sink);
  return own.reduce((tree, entry) => withOwn(tree, entry, scope), settled);
}

/** Words that only set-ups know; whatever else stands there is about the car. */
function isOfSetups(entry: Statement): boolean {
  const head = plainWord(entry.head) ?? "";
  return findWord("setup", head) !== undefined && findWord("car", head) === undefined;
}

function removeLine(raw: Statement, scope: Scope, overrides: Overrides): void {
  if (readOwn(raw, scope)?.whole === true) overrides.remove(raw, scope);
}

function readOwn(raw: Statement, scope: Scope): Read | undefined {
  const word = findWord("setup", plainWord(raw.head) ?? "");
  const reader = word && new Reader(scope).on(at(scope.uri, raw), word.word, word);
  return word && reader && readItems(word, word.takes, raw, raw.items, reader, "setup");
}

/** `keep-seats` and the like go to the car's own lines; a set-up that says them again changes nothing. */
function withOwn(tree: CarTree, raw: Statement, scope: Scope): CarTree {
  const word = findWord("setup", plainWord(raw.head) ?? "");
  const read = readOwn(raw, scope);
  if (word === undefined || read?.whole !== true) return tree;
  const origin = at(scope.uri, raw);
  const before = tree.block.statements.find((other) => other.word === word.word);
  if (before === undefined) {
    return { ...tree, block: withAdded(tree.block, newStatement(word, raw, origin, read, undefined, scope)) };
  }
  const isSaidHere = before.origin.uri === origin.uri && before.origin.start < origin.start;
  const path = word.word;
  if (isSaidHere)
    scope.sink.report({ ...origin, kind: "duplicate", word: path, what: "property", first: before.origin });
  else {
    const inherited = before.origin;
    scope.sink.report({ ...origin, kind: "needless-override", path, inherited, why: "same-value" });
  }
  return tree;
}
