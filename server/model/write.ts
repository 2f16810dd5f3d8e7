/**
 * The statement that an override puts in place: read like any other, with the provenance of what
 * it replaces, and keeping what the line does not speak of (the name, the block of an adjuster).
 */
import type { Item, Statement } from "../../grammar/index.js";
import type { Concept, Slot, Word } from "../../grammar/vocabulary/word.js";
import { adjusted, isAdjustment } from "./adjust.js";
import type { ResolvedValue } from "./car.js";
import { formsWithoutName } from "./forms.js";
import { checkName } from "./names.js";
import type { Origin } from "./origin.js";
import { chainAfter, inherits } from "./provenance.js";
import { newStatement, readInner, type Reading } from "./read-block.js";
import { Reader } from "./reader.js";
import { readItems, type Read } from "./read-statement.js";
import { scopeIn, type Scope } from "./scope.js";
import { mirrorStatement } from "./sides.js";
import { at } from "./sink.js";
import type { Formula, TreeBlock, TreeStatement } from "./tree.js";

export interface WrittenLine {
  readonly raw: Statement;
  readonly path: readonly string[];
  readonly items: readonly Item[];
  readonly scope: Scope;
}

export interface Writing {
  readonly word: Word;
  readonly parent: TreeBlock;
  readonly target: TreeStatement | undefined;
  /** Written for the right side, in the frame of the car. */
  readonly isMirrored: boolean;
}

/** Undefined where the line could not be read; a problem is told. */
export function writeStatement(line: WrittenLine, writing: Writing, reading: Reading): TreeStatement | undefined {
  const { word, target } = writing;
  const { raw } = line;
  const scope = scopeIn(line.scope, line.path.slice(0, -1));
  const origin = at(scope.uri, raw);
  const reader = new Reader(scope).on(origin, word.word, word);
  if (target !== undefined && isAdjustment(word, line.items)) return adjust(line, writing, reader, origin);
  const read = keptValues(word, readLine(line, writing, reader), target);
  if (target === undefined && read.name !== undefined && !takesName(writing, read, scope)) return undefined;
  const { concept } = writing.parent;
  const inner = { concept, scope, opener: raw, word: word.word, name: target?.name, partial: false };
  const own = readInner(keptWord(word, target), keptForm(read, line, target), raw, inner, reading, false);
  if (!read.whole && !read.deferred && (own === undefined || target !== undefined || read.form === -1))
    return undefined;
  const block = raw.block === undefined ? (own ?? keptBlock(read, target)) : own;
  const written = newStatement(word, raw, origin, read, block, scope);
  const framed = writing.isMirrored ? mirrorStatement(written) : written;
  return target === undefined ? framed : inherits(keepName(pending(framed, line, target), target, raw), target);
}

function pending(statement: TreeStatement, { items }: WrittenLine, inherited: TreeStatement): TreeStatement {
  const { formula } = statement;
  return formula === undefined ? statement : { ...statement, formula: { ...formula, items, inherited } };
}

/** The values of a formula, now that the reader can look up the car's properties. */
export function readFormula({ raw, word, items, inherited }: Formula, reader: Reader, concept: Concept): Read {
  return readNamed(word, inherited, raw, items, reader, concept);
}

function readLine({ raw, items }: WrittenLine, { word, parent, target }: Writing, reader: Reader): Read {
  const isOnlyBlock = target !== undefined && items.length === 0 && raw.block !== undefined && target.form !== -1;
  if (isOnlyBlock) return { form: target.form, values: target.values, name: target.name, whole: true, deferred: false };
  return readNamed(word, target, raw, items, reader, parent.concept);
}

function readNamed(
  word: Word,
  target: TreeStatement | undefined,
  raw: Statement,
  items: readonly Item[],
  reader: Reader,
  concept: Concept,
): Read {
  if (target?.name === undefined) return readItems(word, word.takes, raw, items, reader, concept);
  const read = readItems(word, formsWithoutName(word), raw, items, reader, concept);
  return read.form === -1 ? read : { ...read, name: target.name, values: withName(word, read, target) };
}

/** The values of the whole form: the name from the target, in its place. */
function withName(word: Word, read: Read, target: TreeStatement): readonly ResolvedValue[] {
  const name = target.values.find((value) => value.kind === "word" && value.text === target.name?.text);
  const values = [...read.values];
  const slots = word.takes[read.form]?.filter((slot) => slot.kind !== "keyword") ?? [];
  const index = slots.findIndex((slot) => slot.kind === "name");
  if (name !== undefined && index !== -1) values.splice(index, 0, name);
  return values;
}

/** `position 4` over `position 3 of 5`: a shorter way to write it keeps what it does not speak of. */
function keptValues(word: Word, read: Read, target: TreeStatement | undefined): Read {
  const short = word.takes[read.form];
  const whole = target === undefined ? undefined : word.takes[target.form];
  if (target === undefined || short === undefined || whole === undefined || read.values.length === 0) return read;
  const isStart = short.length < whole.length && short.every((slot, index) => isSameSlot(slot, whole[index]));
  const rest = target.values.slice(read.values.length);
  return isStart && rest.length > 0 ? { ...read, form: target.form, values: [...read.values, ...rest] } : read;
}

/** `below 5 mm` is no short way to write `between 5 and 9 mm`. */
function isSameSlot(short: Slot, whole: Slot | undefined): boolean {
  if (short.kind !== "keyword") return short.kind === whole?.kind;
  return whole?.kind === "keyword" && whole.word === short.word;
}

/** A block by itself stands behind the form that is inherited. */
function keptForm(read: Read, { raw }: WrittenLine, target: TreeStatement | undefined): Read {
  return read.form === -1 && raw.block !== undefined && target !== undefined ? { ...read, form: target.form } : read;
}

/** `third for roll` over a whole element: what is in its braces is there already. */
const keptWord = (word: Word, target: TreeStatement | undefined): Word =>
  target?.block === undefined || word.block !== "required" ? word : { ...word, block: "optional" };

/** A new value keeps the adjuster behind the old one; a new form (a table for a number) does not. */
function keptBlock(read: Read, target: TreeStatement | undefined): TreeBlock | undefined {
  return target !== undefined && (target.form === read.form || target.values.length === read.values.length)
    ? target.block
    : undefined;
}

function keepName(statement: TreeStatement, target: TreeStatement, raw: Statement): TreeStatement {
  const notes = raw.notes.length === 0 ? target.notes : statement.notes;
  return { ...statement, name: statement.name ?? target.name, notes, part: undefined };
}

function takesName({ word, parent }: Writing, { name }: Read, scope: Scope): boolean {
  const first = parent.statements.find((statement) => statement.name?.text === name?.text);
  if (name === undefined) return true;
  if (first?.name !== undefined) {
    scope.sink.report({ ...name.origin, kind: "duplicate", word: name.text, what: "name", first: first.name.origin });
    return false;
  }
  checkName(word, name, parent.concept, scope);
  return true;
}

function adjust(line: WrittenLine, writing: Writing, reader: Reader, origin: Origin): TreeStatement | undefined {
  const { word, target, parent, isMirrored } = writing;
  const { raw } = line;
  if (target === undefined) return undefined;
  const isPending = target.formula !== undefined;
  const sum = isPending ? { values: [], deferred: true } : adjusted(word, target, parent, raw, reader, isMirrored);
  if (sum.values === undefined && !sum.deferred) return undefined;
  return {
    ...target,
    values: sum.deferred ? [] : (sum.values ?? []),
    origin,
    wordOrigin: at(origin.uri, raw.head),
    chain: chainAfter(target),
    notes: raw.notes.length === 0 ? target.notes : raw.notes.map((note) => note.text),
    formula: sum.deferred
      ? { raw, word, items: line.items, scope: reader.scope, inherited: target, by: true, mirrored: isMirrored }
      : undefined,
    part: undefined,
  };
}
