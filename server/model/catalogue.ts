/** The parts of a file's catalogues: found by name, read when first asked for. */
import type { Statement } from "../../grammar/index.js";
import { findWord, words, wordsIn } from "../../grammar/vocabulary/index.js";
import type { Concept, Word } from "../../grammar/vocabulary/word.js";
import type { Part, Parts } from "./fit.js";
import { plainWord } from "./forms.js";
import { checkName } from "./names.js";
import type { Origin } from "./origin.js";
import type { BlockPlace } from "./block-place.js";
import { readInner } from "./read-block.js";
import { Reader } from "./reader.js";
import type { Readings } from "./readings.js";
import { readItems } from "./read-statement.js";
import { blockScope, isLet, type Scope } from "./scope.js";
import { at, type Named, type Sink } from "./sink.js";
import type { Tables } from "./tables.js";

interface Shelved {
  readonly raw: Statement;
  readonly word: Word;
  readonly named: Named;
  readonly scope: Scope;
  /** Undefined until asked for; null where it has no block that could be read. */
  part: Part | null | undefined;
}

const partWords: ReadonlySet<string> = new Set(words.filter((word) => word.role === "part").map((word) => word.word));

/** What a shelf has to know of its file, and of those that the file uses. */
export interface ShelfPlace {
  readonly uri: string;
  readonly scope: Scope;
  readonly sink: Sink;
  readonly tables: Tables;
  readonly shelf: Shelf;
  readonly readings: Readings;
  readonly used: readonly ShelfPlace[];
}

export class Shelf implements Parts {
  readonly #context: ShelfPlace;
  readonly #shelved = new Map<string, Shelved>();

  constructor(context: ShelfPlace, statements: readonly Statement[]) {
    this.#context = context;
    for (const statement of statements) if (plainWord(statement.head) === "catalogue") this.#catalogue(statement);
  }

  #catalogue({ block }: Statement): void {
    const entries = block?.entries ?? [];
    const scope = blockScope(this.#context.scope, entries, "catalogue");
    for (const entry of entries) if (entry.kind === "statement" && !isLet(entry)) this.#shelve(entry, scope);
  }

  #shelve(raw: Statement, scope: Scope): void {
    const word = findWord("catalogue", plainWord(raw.head) ?? "");
    const [item] = raw.items;
    const name = plainWord(item);
    if (word?.role !== "part" || name === undefined || item === undefined) return this.#unreadable(raw, word, scope);
    const declaration = at(scope.uri, item);
    const first = this.#shelved.get(name);
    if (first !== undefined) {
      const before = first.named.declaration;
      scope.sink.report({ ...declaration, kind: "duplicate", word: name, what: "name", first: before });
      return;
    }
    checkName(word, { text: name, origin: declaration }, "catalogue", scope);
    const named: Named = { target: "part", name, place: undefined, declaration };
    this.#shelved.set(name, { raw, word, named, scope, part: undefined });
  }

  /** Not a part, or one without a name: nothing can be fitted from it. */
  #unreadable(raw: Statement, word: Word | undefined, scope: Scope): void {
    const place = at(scope.uri, raw);
    if (word !== undefined) {
      readItems(word, word.takes, raw, raw.items, new Reader(scope).on(place, word.word, word), "catalogue");
      return;
    }
    const written = raw.head.segments.map((segment) => segment.text).join(".");
    const candidates = wordsIn("catalogue").map((known) => known.word);
    const problem = { kind: "unknown-word", word: written, concept: "catalogue", candidates } as const;
    scope.sink.report({ ...at(scope.uri, raw.head), ...problem });
  }

  get size(): number {
    return this.#shelved.size;
  }

  find(name: string): Part | undefined {
    for (const { shelf } of [this.#context, ...this.#context.used]) {
      const found = shelf.#shelved.get(name);
      if (found !== undefined) return shelf.#read(found);
    }
    return undefined;
  }

  fitting(concept: Concept): readonly string[] {
    const names: string[] = [];
    for (const { shelf } of [this.#context, ...this.#context.used]) {
      for (const { word, named } of shelf.#shelved.values()) {
        if (word.fits?.into.includes(concept) === true) names.push(named.name);
      }
    }
    return names;
  }

  isPartWord(word: string): boolean {
    return partWords.has(word);
  }

  /** Reads every part, so that what is wrong with it is told although nothing fits it. */
  readAll(): void {
    for (const shelved of this.#shelved.values()) this.#read(shelved);
  }

  /** Parts that nothing in this file fits. */
  unfitted(isMentioned: (part: Origin) => boolean): readonly { readonly name: string; readonly origin: Origin }[] {
    return [...this.#shelved.values()]
      .filter(({ named }) => !isMentioned(named.declaration))
      .map(({ named }) => ({ name: named.name, origin: named.declaration }));
  }

  #read(shelved: Shelved): Part | undefined {
    if (shelved.part === undefined) shelved.part = this.#readPart(shelved) ?? null;
    return shelved.part ?? undefined;
  }

  #readPart(shelved: Shelved): Part | undefined {
    const { raw, scope } = shelved;
    const { readings } = this.#context;
    const circumstances = { concept: "catalogue", scope, partial: false, fitted: false } as const;
    const kept = readings.find<Part>(raw, circumstances);
    if (kept !== undefined) {
      scope.sink.repeat(kept.said);
      return kept.value;
    }
    const since = scope.sink.mark();
    const part = this.#readAnew(shelved);
    if (part !== undefined) readings.keep(raw, circumstances, part, since);
    return part;
  }

  #readAnew({ raw, word, named, scope }: Shelved): Part | undefined {
    const reader = new Reader(scope).on(at(scope.uri, raw), word.word, word);
    const read = readItems(word, word.takes, raw, raw.items, reader, "catalogue");
    const declared = { text: named.name, origin: named.declaration };
    const where: BlockPlace = {
      concept: "catalogue",
      scope,
      opener: raw,
      word: word.word,
      name: declared,
      partial: false,
    };
    const reading = { parts: this, tables: this.#context.tables, overrides: undefined, before: undefined };
    const block = readInner(word, { ...read, name: declared }, raw, where, reading, false);
    return block && { word, name: named.name, named, block };
  }
}
