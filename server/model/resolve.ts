/**
 * The room's front door: one file, with everything that it rests on, to resolved cars, problems
 * and names.
 *
 * Invariant: never throws, whatever the texts; a file is resolved again only if its own text or
 * one that it rests on has changed (`ResolveCache`).
 */
import { findWord, wordsIn } from "../../grammar/vocabulary/index.js";
import type { Statement } from "../../grammar/index.js";
import { chainOf, checkBase, treeOf } from "./car-tree.js";
import { viewOf } from "./car-view.js";
import type { View } from "./view.js";
import type { Declared, FileContext } from "./file-context.js";
import { Files, ResolveCache } from "./files.js";
import { plainWord } from "./forms.js";
import { settleLet } from "./lets.js";
import type { Origin } from "./origin.js";
import type { ReadText, ResolvedFile, Source } from "./resolved-file.js";
import { Reader } from "./reader.js";
import { readItems } from "./read-statement.js";
import { checkBlock } from "./read-block.js";
import { isLet } from "./scope.js";
import { allProblems, allSymbols, at, type Sink } from "./sink.js";
import { withoutSpoiled } from "./spoiled.js";
import { wayBack } from "./use-graph.js";

export { ResolveCache } from "./files.js";
export type { ResolvedFile } from "./resolved-file.js";

export function resolveFile(
  uri: string,
  source: (uri: string) => Source,
  readText: ReadText,
  cache: ResolveCache = new ResolveCache(),
): ResolvedFile {
  const files = new Files(source, readText, cache);
  const context = files.at(uri);
  if (context === undefined) return { uri, cars: [], problems: [], uses: [uri], readsText: [], symbols: [] };
  const kept = files.keptFor(context);
  if (kept?.context !== context) return resolved(context, files);
  kept.resolved ??= resolved(context, files);
  return kept.resolved;
}

function resolved(context: FileContext, files: Files): ResolvedFile {
  checkUses(context, files);
  for (const entry of context.parsed.document.entries) {
    if (entry.kind === "statement") checkHead(entry, context);
    else reportRow(entry, context);
  }
  const cars = [...context.declared.values()].flatMap((declared) => {
    checkBase(declared);
    return viewFor(declared)?.model ?? [];
  });
  adoptForeign(context);
  context.shelf.readAll();
  for (const known of context.scope.lets?.values() ?? []) settleLet(known);
  checkUnused(context);
  return new Resolved(context, cars);
}

/** The result. Symbols are put into words only when somebody asks: most texts are gone before that. */
class Resolved implements ResolvedFile {
  readonly uri: string;
  readonly cars: ResolvedFile["cars"];
  readonly problems: ResolvedFile["problems"];
  readonly uses: readonly string[];
  readonly readsText: readonly string[];
  readonly #sinks: readonly Sink[];
  #symbols: ResolvedFile["symbols"] | undefined;

  constructor(context: FileContext, cars: ResolvedFile["cars"]) {
    this.uri = context.uri;
    this.cars = cars;
    this.#sinks = context.sinks();
    this.problems = withoutSpoiled(allProblems(this.#sinks), context.parsed);
    this.uses = usesOf(context);
    this.readsText = [...new Set([context, ...context.used].flatMap((one) => [...one.tables.texts.keys()]))];
  }

  get symbols(): ResolvedFile["symbols"] {
    return (this.#symbols ??= allSymbols(this.#sinks));
  }
}

/** Views of the whole chain, made from the car upwards and kept with what they show. */
function viewFor(declared: Declared): View | undefined {
  if (declared.view !== undefined) return declared.view ?? undefined;
  const chain = treeOf(declared) === undefined ? undefined : chainOf(declared);
  if (chain === undefined) {
    declared.view = null;
    return undefined;
  }
  const links = [declared, ...chain];
  for (let index = links.length - 1; index >= 0; index--) {
    const link = links[index] as Declared;
    const tree = treeOf(link);
    if (link.view !== undefined || tree === undefined) continue;
    link.view = viewOf(link, tree, links.slice(index + 1), links[index + 1]?.view ?? undefined);
  }
  return declared.view ?? undefined;
}

/** What is wrong at a line of the base, but only because of this file, is told at the set-up's name. */
function adoptForeign(context: FileContext): void {
  const { sink, used, declared } = context;
  const [last] = [...declared.values()].reverse();
  for (const problem of context.sinks().flatMap(({ foreign }) => foreign)) {
    const home = used.find((other) => other.uri === problem.uri);
    if (last === undefined || home?.sinks().some((known) => known.has(problem)) === true) continue;
    sink.report({ ...problem, ...last.nameOrigin });
  }
}

function checkUses(context: FileContext, files: Files): void {
  for (const { path, uri, bad } of context.uses) {
    const place = at(context.uri, path);
    const reason = bad ?? (uri === undefined ? "not-a-path" : files.missing(uri));
    const target = uri === undefined ? undefined : files.at(uri);
    if (target === undefined) {
      const problem = { kind: "file-not-found", path: path.value, reason: reason ?? "missing" } as const;
      context.sink.report({ ...place, ...problem });
      continue;
    }
    const back = wayBack(target, context, (other) => files.at(other));
    if (back !== undefined) context.sink.report({ ...place, kind: "cycle", what: "use", path: [context.uri, ...back] });
  }
}

/** The statement itself; what is inside is read where it is built. */
function checkHead(raw: Statement, context: FileContext): void {
  const { scope, sink, uri } = context;
  if (isLet(raw)) return;
  const head = plainWord(raw.head);
  const word = head === undefined ? undefined : findWord("file", head);
  if (word === undefined) {
    const written = raw.head.segments.map((segment) => segment.text).join(".");
    const candidates = wordsIn("file").map((known) => known.word);
    sink.report({ ...at(uri, raw.head), kind: "unknown-word", word: written, concept: "file", candidates });
    return;
  }
  const read = readItems(word, word.takes, raw, raw.items, new Reader(scope).on(at(uri, raw), word.word, word), "file");
  checkBlock(word, read, raw, word.opens, scope);
}

function reportRow(row: { readonly start: number; readonly end: number }, { sink, uri }: FileContext): void {
  const detail = "No rows stand outside of a table.";
  sink.report({ ...at(uri, row), kind: "wrong-form", word: "row", expected: [], detail });
}

/**
 * Parts beside a set-up are there for it, parts beside a car alone may be for set-ups in other
 * files; so are the `let`s of a file with nothing else in it.
 */
function checkUnused(context: FileContext): void {
  const { shelf, sink, declared, scope } = context;
  const sinks = context.sinks();
  const isMentioned = (declaration: Origin): boolean => sinks.some((one) => one.isMentioned(declaration));
  const hasSetup = [...declared.values()].some(({ kind }) => kind === "setup");
  if (hasSetup)
    for (const { name, origin } of shelf.unfitted(isMentioned)) sink.report({ ...origin, kind: "unused-part", name });
  if (declared.size === 0 && shelf.size === 0) return;
  for (const { name, nameOrigin } of scope.lets?.values() ?? []) {
    if (!isMentioned(nameOrigin)) sink.report({ ...nameOrigin, kind: "unused-let", name });
  }
}

function usesOf(context: FileContext): readonly string[] {
  const uris = new Set<string>();
  for (const one of [context, ...context.used]) {
    uris.add(one.uri);
    for (const { uri } of one.uses) if (uri !== undefined) uris.add(uri);
  }
  return [...uris];
}
