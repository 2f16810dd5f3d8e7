/**
 * What stands at an offset: the chain of syntax nodes, the kind of block around it and the word
 * that the statement begins with. Read by hover, completion, signature help and selection ranges.
 */
import type { Block, Document, Entry, Node, Span, Statement } from "../../grammar/index.js";
import { findWord, opensFor } from "../../grammar/vocabulary/index.js";
import type { Concept, Word } from "../../grammar/vocabulary/word.js";

export interface Place {
  /** From the document inwards. */
  readonly chain: readonly Node[];
  /** The kind of the innermost block whose inside holds the offset; undefined where an unknown word opened it. */
  readonly concept: Concept | undefined;
  readonly statement: Statement | undefined;
  /** The vocabulary's entry for that statement's head, where it has one. */
  readonly word: Word | undefined;
  /** Statements whose blocks are open around the offset, outermost first. */
  readonly around: readonly Statement[];
}

/** An end counts as inside, since a cursor stands behind what it has just typed. */
export const holds = (span: Span, offset: number): boolean => span.start <= offset && offset <= span.end;

export function placeAt(document: Document, offset: number): Place {
  const chain: Node[] = [document];
  const around: Statement[] = [];
  let concept: Concept | undefined = "file";
  let statement: Statement | undefined;
  let word: Word | undefined;
  let entries: readonly Entry[] | undefined = document.entries;
  while (entries !== undefined) {
    const entry: Entry | undefined = entryAt(entries, offset);
    entries = undefined;
    if (entry === undefined) {
      statement = undefined;
      word = undefined;
      break;
    }
    chain.push(entry);
    if (entry.kind === "row") break;
    statement = entry;
    word = wordOf(concept, entry);
    const block: Block | undefined = entry.block;
    if (block !== undefined && isInside(block, offset)) {
      chain.push(block);
      around.push(entry);
      concept = conceptInside(concept, entry);
      entries = block.entries;
    } else {
      chain.push(...itemsAt(entry, offset));
    }
  }
  return { chain, concept, statement, word, around };
}

/** The kind of block that a statement opens, as far as its head alone tells. */
export function conceptInside(outside: Concept | undefined, statement: Statement): Concept | undefined {
  const word = wordOf(outside, statement);
  return word === undefined ? undefined : opensFor(word, plainWords(statement));
}

function plainWords(statement: Statement): readonly string[] {
  return statement.items.flatMap((item) => (item.kind === "path" ? item.segments.map((name) => name.text) : []));
}

export function wordOf(concept: Concept | undefined, statement: Statement): Word | undefined {
  const [only, more] = statement.head.segments;
  return concept === undefined || only === undefined || more !== undefined ? undefined : findWord(concept, only.text);
}

function entryAt(entries: readonly Entry[], offset: number): Entry | undefined {
  let found: Entry | undefined;
  let last: Entry | undefined;
  for (const entry of entries) {
    if (entry.start > offset) break;
    last = entry;
    if (entry.end >= offset) found = entry;
  }
  return found ?? (isOpen(last) ? last : undefined);
}

/** A block whose brace is not there yet goes on until the next statement: whoever types from the top is still in it. */
const isOpen = (entry: Entry | undefined): boolean => entry?.kind === "statement" && entry.block?.closed === false;

function isInside(block: Block, offset: number): boolean {
  return block.start < offset && (!block.closed || offset < block.end);
}

function itemsAt(statement: Statement, offset: number): Node[] {
  for (const item of [statement.head, ...statement.items]) {
    if (!holds(item, offset)) continue;
    const segment = item.kind === "path" ? item.segments.find((name) => holds(name, offset)) : undefined;
    return segment === undefined ? [item] : [item, segment];
  }
  return [];
}
