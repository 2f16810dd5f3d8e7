/**
 * The syntax tree: a readonly union on `kind`, every node a span. It knows statements,
 * values with units, tuples, ranges, paths, expressions and blocks, and nothing of cars:
 * what a word means is the vocabulary's business.
 *
 * Invariant: a tree is always whole. What could not be read is left out of it and told
 * as a problem; `missing` never stands for a value.
 */
import type { Span } from "./span.js";

export interface Document extends Span {
  readonly kind: "document";
  readonly entries: readonly Entry[];
}

export type Entry = Statement | Row;

/**
 * `head item item … [block]`. The head is a path of one segment for a word (`spring`) and of
 * several for an override (`front.third.rate`). In `let name = value` the items are the name
 * and the value, and `equals` is the place of the sign.
 */
export interface Statement extends Span {
  readonly kind: "statement";
  readonly head: Path;
  readonly items: readonly Item[];
  readonly equals: Span | undefined;
  readonly block: Block | undefined;
  /** `##` lines directly above: the notes that belong to this statement. */
  readonly notes: readonly Note[];
}

/** A table row `key: value` (`50 mm/s: 320 N`, `top-speed: 4 mm`). */
export interface Row extends Span {
  readonly kind: "row";
  readonly key: Item;
  readonly value: Item;
  readonly notes: readonly Note[];
}

export interface Block extends Span {
  readonly kind: "block";
  readonly entries: readonly Entry[];
  /** False when the closing brace was missing and recovery ended the block. */
  readonly closed: boolean;
}

export interface Note extends Span {
  readonly kind: "note";
  /** Without the leading `##` and the blank after it. */
  readonly text: string;
}

/** What may follow a head: values, and words (a word is a path of one segment). */
export type Item = Quantity | Tuple | Range | Text | Path | Binary | Negation | Group;

export interface Quantity extends Span {
  readonly kind: "quantity";
  readonly value: number;
  /** The digits as written, sign included, without the unit. */
  readonly digits: string;
  readonly unit: Unit | undefined;
}

/** A unit as written (`N*s/mm`, `%`, `in`); whether it exists is not the grammar's question. */
export interface Unit extends Span {
  readonly kind: "unit";
  readonly text: string;
}

/** `(1, 2, 3) mm`: the unit covers every member that has none of its own. */
export interface Tuple extends Span {
  readonly kind: "tuple";
  readonly members: readonly Item[];
  readonly unit: Unit | undefined;
}

/** `-30 .. 25 mm`: the unit stands on the last number and covers both. */
export interface Range extends Span {
  readonly kind: "range";
  readonly from: Item;
  readonly to: Item;
}

export interface Text extends Span {
  readonly kind: "text";
  readonly value: string;
}

/** Dotted names; also every plain word. */
export interface Path extends Span {
  readonly kind: "path";
  readonly segments: readonly Name[];
}

export interface Name extends Span {
  readonly kind: "name";
  readonly text: string;
}

export interface Binary extends Span {
  readonly kind: "binary";
  readonly operator: "+" | "-" | "*" | "/";
  readonly left: Item;
  readonly right: Item;
}

export interface Negation extends Span {
  readonly kind: "negation";
  readonly operand: Item;
}

/** Round brackets around one expression; a unit may follow (`(a + 2) mm`). */
export interface Group extends Span {
  readonly kind: "group";
  readonly inner: Item;
  readonly unit: Unit | undefined;
}

/** Comments are trivia: kept beside the tree, in order, for the formatter. */
export interface Comment extends Span {
  readonly kind: "comment";
  /** As written, from the `#` on, without blanks at its end. */
  readonly text: string;
}

export type Node = Document | Statement | Row | Block | Note | Item | Unit | Name | Comment;
