/**
 * Makes nodes of what the parser collected: statements, rows, tuples and expressions with their
 * precedence. In: finished nodes and tokens. Out: a node or, where the parts make none,
 * `undefined` and a problem.
 *
 * Invariant: a node's span covers those of its parts, and parts stand in text order.
 */
import type { Binary, Block, Entry, Item, Note, Path, Range, Row, Unit } from "./ast.js";
import { deepest } from "./nesting.js";
import type { SyntaxProblem } from "./problem.js";
import type { Span } from "./span.js";
import type { Token } from "./tokens.js";

/** What one statement, row or pair of brackets holds, in the order in which it came. */
export interface Pieces {
  readonly items: Item[];
  /** The first of the items that an operator may take for its left side. */
  base: number;
  /** The sign of `let name = value`, and how many items stand before it. */
  equals: Token | undefined;
  equalsAt: number;
  /** The colon of a row, and how many items stand before it. */
  colon: Token | undefined;
  colonAt: number;
  /** The commas inside brackets: how many items stand before each. */
  commas: number[] | undefined;
  /** Whether something stood here that made no item, which was told where it stands. */
  lost: boolean;
}

export type Operator = Binary["operator"] | "..";

export interface Operation {
  readonly sign: Token;
  readonly operator: Operator;
  readonly operand: Item | undefined;
}

const noNotes: readonly Note[] = [];

export class AstBuilder {
  constructor(
    private readonly text: string,
    readonly problems: SyntaxProblem[],
  ) {}

  unexpected(place: Span, ...expected: string[]): void {
    const { start, end } = place;
    this.problems.push({
      kind: "unexpected",
      start,
      end,
      found: this.text.slice(start, Math.min(end, start + 40)),
      expected,
    });
  }

  statement(
    head: Path,
    pieces: Pieces,
    block: Block | undefined,
    notes: readonly Note[] | undefined,
  ): Entry | undefined {
    if (pieces.colon !== undefined) return this.row(head, pieces.colonAt, pieces, notes);
    const isLet = head.segments.length === 1 && head.segments[0]!.text === "let";
    const equals = isLet ? this.letSign(head, pieces) : this.noSign(pieces);
    const items = exact(pieces.items);
    const last = items.length > 0 ? items[items.length - 1]!.end : head.end;
    const end = block !== undefined ? block.end : Math.max(last, equals?.end ?? 0);
    return { kind: "statement", start: head.start, end, head, items, equals, block, notes: notes ?? noNotes };
  }

  /** The place of the sign in `let name = value`; tells and drops what does not fit that form. */
  private letSign(head: Path, pieces: Pieces): Span | undefined {
    const { items, equals, equalsAt } = pieces;
    if (equals === undefined) {
      this.unexpected(items[1] ?? items[0] ?? head, items.length === 0 ? "name" : "=");
      return undefined;
    }
    const sign = { start: equals.startOffset, end: equals.endOffset };
    if (equalsAt !== 1) this.unexpected(equalsAt === 0 ? sign : items[1]!, equalsAt === 0 ? "name" : "=");
    this.single(items, equalsAt);
    if (items.length === equalsAt) this.unexpected(sign, "value");
    return sign;
  }

  private noSign({ equals }: Pieces): undefined {
    if (equals !== undefined) this.unexpected({ start: equals.startOffset, end: equals.endOffset });
    return undefined;
  }

  /** A row `key: value`; `key` is the path at its head, or else the first of the items. */
  row(head: Item | undefined, colonAt: number, pieces: Pieces, notes: readonly Note[] | undefined): Row | undefined {
    const { items } = pieces;
    const keyItems = head === undefined ? 1 : 0;
    const key = head ?? items[0];
    const colon = pieces.colon as Token;
    const sign = { start: colon.startOffset, end: colon.endOffset };
    this.noSign(pieces);
    if (colonAt > keyItems) this.unexpected(items[keyItems]!, ":");
    else if (colonAt < keyItems) this.unexpected(sign, "value");
    this.single(items, colonAt);
    const value = items[colonAt];
    if (value === undefined) this.unexpected(sign, "value");
    if (key === undefined || value === undefined || colonAt < keyItems) return undefined;
    return { kind: "row", start: key.start, end: value.end, key, value, notes: notes ?? noNotes };
  }

  /** Where one value has its place, from `at` on: `a -2` there was meant to subtract; the rest is told and dropped. */
  private single(items: Item[], at: number): void {
    while (items.length > at + 1 && this.joinSigned(items, at + 1));
    if (items.length <= at + 1) return;
    this.unexpected({ start: items[at + 1]!.start, end: items[items.length - 1]!.end }, "end of statement");
    items.length = at + 1;
  }

  /** Turns the two items before and at `at` into a sum where the latter is a number with a sign. */
  private joinSigned(items: Item[], at: number): boolean {
    const left = items[at - 1];
    const right = items[at];
    if (left === undefined || right?.kind !== "quantity" || !/^[+-]/.test(right.digits)) return false;
    const { start } = right;
    const operator = right.digits.startsWith("-") ? "-" : "+";
    this.problems.push({ kind: "spaceless-minus", start, end: start + 1, suggestion: `${operator} ` });
    const size = Math.abs(right.value);
    const operand: Item = { ...right, start: start + 1, value: size, digits: right.digits.slice(1) };
    items.splice(at - 1, 2, { kind: "binary", start: left.start, end: right.end, operator, left, right: operand });
    return true;
  }

  /** An entry that does not begin with a path: a row where it is one, else told as no statement. */
  headless(first: Token, pieces: Pieces, notes: readonly Note[] | undefined): Row | undefined {
    const start = { start: first.startOffset, end: first.endOffset };
    if (pieces.colon !== undefined) return this.row(undefined, pieces.colonAt, pieces, notes);
    const isKey = pieces.items.length === 1 && pieces.items[0]!.kind === "quantity";
    this.unexpected(start, isKey ? ":" : "statement");
    return undefined;
  }

  negation(sign: Token, operand: Item | undefined): Item | undefined {
    const { startOffset: start, endOffset } = sign;
    if (operand?.kind === "quantity" && !/^[+-]/.test(operand.digits)) {
      return { ...operand, start, value: operand.value === 0 ? 0 : -operand.value, digits: `-${operand.digits}` };
    }
    if (operand !== undefined) return { kind: "negation", start, end: operand.end, operand };
    this.unexpected({ start, end: endOffset }, "value");
    return undefined;
  }

  /** What round brackets hold: one expression, or the members of a tuple. */
  bracketed(open: Token, pieces: Pieces, close: Token): Item | undefined {
    const { startOffset: start } = open;
    const { endOffset: end } = close;
    const { items } = pieces;
    const unit = close.leaf as Unit | undefined;
    for (const sign of [pieces.equals, pieces.colon]) {
      if (sign !== undefined) this.unexpected({ start: sign.startOffset, end: sign.endOffset });
    }
    if (pieces.commas === undefined) while (items.length > 1 && this.joinSigned(items, 1));
    this.checkCommas(open, items, pieces.commas ?? []);
    const inner = items[0];
    if (inner === undefined) {
      if (pieces.commas === undefined && !pieces.lost) this.unexpected({ start, end }, "value");
      return undefined;
    }
    // Where nobody closed the brackets, a comma behind the first member may belong to what follows.
    const isSupplied = close.startOffset === end;
    if (items.length === 1 && (pieces.commas === undefined || isSupplied))
      return { kind: "group", start, end, inner, unit };
    return { kind: "tuple", start, end, members: exact(items), unit };
  }

  /** One member before each comma and one, or none, behind the last. */
  private checkCommas(open: Token, items: readonly Item[], commas: readonly number[]): void {
    let before = 0;
    for (const count of commas) {
      if (count === before)
        this.unexpected(items[before - 1] ?? { start: open.startOffset, end: open.endOffset }, "value");
      if (count > before + 1) this.unexpected(items[before + 1]!, ",");
      before = count;
    }
    if (items.length > before + 1) this.unexpected(items[before + 1]!, ",");
  }

  /** Joins the last of the pieces and the operands behind it; an operator that lacks a side is told and dropped. */
  operate({ items, base }: Pieces, operations: readonly Operation[]): void {
    const whole: Operation[] = [];
    for (const operation of operations) {
      if (operation.operand !== undefined) whole.push(operation);
      else this.unexpected({ start: operation.sign.startOffset, end: operation.sign.endOffset }, "value");
    }
    let first = items.length > base ? items.pop() : undefined;
    if (first === undefined && operations[0]?.operand !== undefined) {
      const { sign } = operations[0];
      this.unexpected({ start: sign.startOffset, end: sign.endOffset }, "value");
      first = whole.shift()?.operand;
    }
    if (first !== undefined) items.push(this.expression(first, this.withinDepth(whole)));
  }

  /** `first op operand op operand …`: `*` and `/` bind before `+` and `-`, and these before `..`; each from the left. */
  private expression(first: Item, operations: readonly Operation[]): Item {
    let from: Item | undefined;
    let sum: Item | undefined;
    let sumOperator: Binary["operator"] = "+";
    let product = first;
    for (const { operator, operand, sign } of operations) {
      if (operand === undefined) continue;
      if (operator === "*" || operator === "/") {
        product = binary(operator, product, operand);
        continue;
      }
      const total = sum === undefined ? product : binary(sumOperator, sum, product);
      if (operator === ".." && from !== undefined) {
        this.unexpected({ start: sign.startOffset, end: sign.endOffset }, "end of statement");
        return range(from, total);
      }
      product = operand;
      sum = operator === ".." ? undefined : total;
      if (operator === "..") from = total;
      else sumOperator = operator;
    }
    const total = sum === undefined ? product : binary(sumOperator, sum, product);
    return from === undefined ? total : range(from, total);
  }

  /** A chain of operators makes a tree as deep as it is long, and others walk it. */
  private withinDepth(operations: readonly Operation[]): readonly Operation[] {
    if (operations.length <= deepest) return operations;
    const { startOffset: start, endOffset: end } = operations[deepest]!.sign;
    this.problems.push({ kind: "too-deep", start, end, limit: deepest });
    return operations.slice(0, deepest);
  }
}

const none: readonly never[] = [];

/** A list that grew has room for sixteen more; a copy has none, and the tree keeps the copy. */
export function exact<T>(list: readonly T[]): readonly T[] {
  return list.length === 0 ? none : list.slice();
}

function binary(operator: Binary["operator"], left: Item, right: Item): Binary {
  return { kind: "binary", start: left.start, end: right.end, operator, left, right };
}

function range(from: Item, to: Item): Range {
  return { kind: "range", start: from.start, end: to.end, from, to };
}
