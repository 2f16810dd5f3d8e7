/**
 * A block of the text as the resolver's tree: words known to the place, their values, blocks
 * inside, names unique, nothing needed left out. Lines that are overrides (dotted heads, `left {}`)
 * are collected, to be applied once the car is whole.
 */
import type { Block, Row, Statement } from "../../grammar/index.js";
import { conceptOf, findWord, opensAt, opensFor, wordsIn } from "../../grammar/vocabulary/index.js";
import type { Concept, Word } from "../../grammar/vocabulary/word.js";
import type { ResolvedRow } from "./car.js";
import { expandFit, type Parts } from "./fit.js";
import { plainWord } from "./forms.js";
import { checkName } from "./names.js";
import type { BlockPlace } from "./block-place.js";
import { checkNeeded } from "./needed.js";
import type { Origin } from "./origin.js";
import { Reader } from "./reader.js";
import type { KeptReading, Readings } from "./readings.js";
import { readItems, type Read } from "./read-statement.js";
import { readRows } from "./rows.js";
import { type Place } from "./place.js";
import { blockScope, within, type Scope } from "./scope.js";
import { at } from "./sink.js";
import type { Tables } from "./tables.js";
import type { TreeBlock, TreeStatement } from "./tree.js";

/** An override that stands in a car, with the dotted place of the block around it. */
export interface LocalOverride {
  readonly raw: Statement;
  readonly scope: Scope;
  readonly place: Place | undefined;
}

export interface Reading {
  readonly parts: Parts;
  readonly tables: Tables;
  /** Overrides found on the way; undefined where none can be (parts). */
  readonly overrides: LocalOverride[] | undefined;
  /** What was read before, where that may be taken over. */
  readonly before: Readings | undefined;
}

export function readBlock(block: Block, where: BlockPlace, reading: Reading): TreeBlock {
  const scope = blockScope(where.scope, block.entries, where.concept);
  const read = new BlockReader(block, scope === where.scope ? where : { ...where, scope }, reading);
  return read.all();
}

/** Up to this many lines are simply gone through. */
const shortBlock = 64;

class BlockReader {
  readonly #raw: Block;
  readonly #where: BlockPlace;
  readonly #reading: Reading;
  readonly #reader: Reader;
  readonly #statements: TreeStatement[];
  /** In long blocks, what stands once: no more than the vocabulary has words for. */
  readonly #once: TreeStatement[] | undefined;
  #count = 0;
  #names: Map<string, Origin> | undefined;
  #broken: Set<string> | undefined;
  #fitted = false;

  constructor(raw: Block, where: BlockPlace, reading: Reading) {
    this.#raw = raw;
    this.#where = where;
    this.#reading = reading;
    this.#reader = new Reader(where.scope);
    // As many as there are lines, at once: arrays that grow by pushing take several times their room.
    this.#statements = [];
    this.#statements.length = raw.entries.length;
    this.#once = raw.entries.length > shortBlock ? [] : undefined;
  }

  all(): TreeBlock {
    const { concept } = this.#where;
    const { entries } = this.#raw;
    this.#fitted = entries.some((entry) => entry.kind === "statement" && headOf(entry) === "fit");
    let rows: Row[] | undefined;
    for (const entry of entries) {
      if (entry.kind === "statement") this.#statement(entry);
      else if (rows === undefined) rows = [entry];
      else rows.push(entry);
    }
    const block = this.#block(rows === undefined ? noRows : readRows(rows, concept, this.#where.word, this.#reader));
    const whole = this.#fitted ? expandFit(block, this.#reading.parts, this.#where.scope.sink, "below") : block;
    if (!this.#where.partial) {
      checkNeeded(whole, this.#raw, this.#where, (word) => this.#reading.parts.isPartWord(word));
    }
    return whole;
  }

  #block(rows: readonly ResolvedRow[]): TreeBlock {
    const origin = at(this.#reader.uri, this.#raw);
    this.#statements.length = this.#count;
    return { concept: this.#where.concept, origin, statements: this.#statements, rows, broken: this.#broken };
  }

  #statement(raw: Statement): void {
    const { concept } = this.#where;
    const head = headOf(raw);
    if (head === "let" && findWord(concept, "let") !== undefined) return;
    const word = head === undefined ? undefined : findWord(concept, head);
    if (word === undefined) return this.#other(raw, head);
    const opened = word.opens === undefined ? undefined : conceptOf(word.opens);
    if (opened?.overrides !== undefined) {
      this.#override(raw);
      return;
    }
    const statement = this.#known(word, raw);
    if (statement !== undefined) this.#statements[this.#count++] = statement;
  }

  /** A dotted head is an override of something further inside; a plain one is a mistake. */
  #other(raw: Statement, head: string | undefined): void {
    const { concept } = this.#where;
    if (head === undefined && this.#reading.overrides !== undefined) return this.#override(raw);
    const word = raw.head.segments.map((segment) => segment.text).join(".");
    const candidates = wordsIn(concept).map((known) => known.word);
    this.#reader.report({ ...at(this.#reader.uri, raw.head), kind: "unknown-word", word, concept, candidates });
  }

  #override(raw: Statement): void {
    const { scope } = this.#where;
    scope.sink.cannotRepeat();
    this.#reading.overrides?.push({ raw, scope, place: scope.place });
  }

  #known(word: Word, raw: Statement): TreeStatement | undefined {
    const first = word.times === "one" ? this.#firstOf(word.word) : undefined;
    if (first !== undefined) return this.#reportSecond(word.word, at(this.#reader.uri, raw), first.origin, "property");
    if (raw.block === undefined || this.#reading.before === undefined) return this.#read(word, raw);
    const { concept, scope, partial } = this.#where;
    const circumstances = { concept, scope, partial, fitted: this.#fitted };
    const kept = this.#reading.before.find<TreeStatement>(raw, circumstances);
    if (kept !== undefined && this.#isNewName(kept.value)) return this.#again(word, kept);
    const since = scope.sink.mark();
    const statement = this.#read(word, raw);
    if (statement !== undefined) this.#reading.before.keep(raw, circumstances, statement, since);
    return statement;
  }

  #isNewName({ name }: TreeStatement): boolean {
    return name === undefined || this.#names?.has(name.text) !== true;
  }

  #again(word: Word, { value, said }: KeptReading<TreeStatement>): TreeStatement {
    if (value.name !== undefined) (this.#names ??= new Map()).set(value.name.text, value.name.origin);
    this.#where.scope.sink.repeat(said);
    if (word.times === "one") this.#once?.push(value);
    return value;
  }

  #read(word: Word, raw: Statement): TreeStatement | undefined {
    const { concept } = this.#where;
    const origin = at(this.#reader.uri, raw);
    const read = readItems(word, word.takes, raw, raw.items, this.#reader.on(origin, word.word, word), concept);
    if (read.name !== undefined && !this.#takesName(word, read)) return undefined;
    const statement = this.#finish(word, raw, origin, read);
    if (statement === undefined) (this.#broken ??= new Set()).add(word.word);
    else if (word.times === "one") this.#once?.push(statement);
    return statement;
  }

  #firstOf(word: string): TreeStatement | undefined {
    if (this.#once !== undefined) return this.#once.find((other) => other.word === word);
    for (let index = 0; index < this.#count; index++) {
      if (this.#statements[index]?.word === word) return this.#statements[index];
    }
    return undefined;
  }

  #takesName(word: Word, { name }: Read): boolean {
    if (name === undefined) return true;
    const first = this.#names?.get(name.text);
    if (first !== undefined) return this.#reportSecond(name.text, name.origin, first, "name") !== undefined;
    (this.#names ??= new Map()).set(name.text, name.origin);
    checkName(word, name, this.#where.concept, this.#where.scope);
    return true;
  }

  #reportSecond(word: string, place: Origin, first: Origin, what: "property" | "name"): undefined {
    this.#reader.report({ ...place, kind: "duplicate", word, what, first });
  }

  #finish(word: Word, raw: Statement, origin: Origin, read: Read): TreeStatement | undefined {
    const block = readInner(word, read, raw, this.#where, this.#reading, this.#fitted);
    const isKept =
      read.whole || read.deferred || (block !== undefined && (word.times !== "named" || read.name !== undefined));
    if (!isKept) return undefined;
    return newStatement(word, raw, origin, read, block, this.#where.scope);
  }
}

const headOf = (raw: Statement): string | undefined => plainWord(raw.head);

export function newStatement(
  word: Word,
  raw: Statement,
  origin: Origin,
  read: Read,
  block: TreeBlock | undefined,
  scope: Scope,
): TreeStatement {
  if (read.deferred) scope.sink.cannotRepeat();
  return {
    word: word.word,
    name: read.name,
    form: read.form,
    values: read.deferred ? [] : read.values,
    block,
    origin,
    wordOrigin: at(origin.uri, raw.head),
    chain: noChain,
    notes: raw.notes.length === 0 ? noNotes : raw.notes.map((note) => note.text),
    root: read.name?.origin,
    formula: read.deferred
      ? { raw, word, items: raw.items, scope, inherited: undefined, by: false, mirrored: false }
      : undefined,
    part: undefined,
  };
}

const noRows: readonly ResolvedRow[] = [];
const noNotes: readonly string[] = [];
const noChain: readonly Origin[] = [];

/** The block behind a statement: read where the word opens one, told where it is missing or too much. */
export function readInner(
  word: Word,
  read: Read,
  raw: Statement,
  where: BlockPlace,
  reading: Reading,
  fitted: boolean,
): TreeBlock | undefined {
  const { scope } = where;
  const concept =
    read.form === -1
      ? opensFor(
          word,
          raw.items.map((item) => plainWord(item) ?? ""),
        )
      : opensAt(word, read.form);
  const table = reading.tables.fromCsv(word, read, where.concept, scope);
  if (table !== undefined) {
    scope.sink.cannotRepeat();
    return table;
  }
  if (raw.block === undefined || concept === undefined) {
    checkBlock(word, read, raw, concept, scope);
    return undefined;
  }
  const inner: BlockPlace = {
    concept,
    scope: within(scope, read.name?.text ?? word.word),
    opener: raw,
    word: word.word,
    name: read.name,
    partial: where.partial || (fitted && reading.parts.isPartWord(word.word)),
  };
  return readBlock(raw.block, inner, reading);
}

export function checkBlock(word: Word, read: Read, raw: Statement, concept: Concept | undefined, scope: Scope): void {
  // A head that fits no form is told with its block.
  const isMissing = concept !== undefined && word.block === "required" && raw.block === undefined && read.form !== -1;
  const isTooMuch = concept === undefined && raw.block !== undefined && read.form !== -1;
  if (!isMissing && !isTooMuch) return;
  const detail = isMissing ? "Its block in braces is missing." : "It takes no block.";
  const place = isMissing ? raw.head : (raw.block ?? raw.head);
  const expected = isMissing ? [word.example ?? `${word.word} { }`] : [];
  scope.sink.report({ ...at(scope.uri, place), kind: "wrong-form", word: word.word, expected, detail });
}
