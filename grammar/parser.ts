/**
 * The grammar, in chevrotain's embedded-actions form: tokens in, the tree out.
 *
 *   document  → (Separator | entry)*
 *   entry     → statement | row
 *   statement → Path piece* block?           also a row whose key is a path: `hairpin: 4 mm`
 *   row       → piece+ block?                begins with a number: `50 mm/s: 320 N`
 *   piece     → value | operation | "=" | ":"
 *   operation → (operator operand?)+         joins the value before it with those behind it
 *   value     → Quantity | Path | Point | Text | bracket | negation
 *   bracket   → "(" (piece | ",")* ")"
 *   block     → "{" (Separator | entry)* "}"
 *
 * Recovery is part of the grammar: brackets always balance (the lexer sees to it) and every token
 * is allowed wherever it can turn up, so no rule ever fails; `build-ast` tells what does not fit
 * and keeps the rest. Hence chevrotain's own recovery, which costs time at every repetition, is off.
 *
 * The alternatives are made once and kept in fields, and pieces are collected in fields too:
 * otherwise each statement would make a dozen closures (half of the time, when measured).
 *
 * Invariant: one token of look-ahead decides everywhere; nothing is read twice.
 */
import { EmbeddedActionsParser, EOF, type IToken } from "chevrotain";
import type { Block, Entry, Item, Path } from "./ast.js";
import { AstBuilder, exact, type Operation, type Operator, type Pieces } from "./build-ast.js";
import { Lexer } from "./lexer.js";
import type { Span } from "./span.js";
import { CLOSE_BLOCK, ringMask, SEPARATOR } from "./token-writer.js";
import * as tokens from "./tokens.js";
import { indexOf, type Token } from "./tokens.js";

const END = indexOf(EOF);

interface Alternative {
  readonly ALT: () => unknown;
}

const operators = new Map<number, Operator>([
  [indexOf(tokens.Plus), "+"],
  [indexOf(tokens.Minus), "-"],
  [indexOf(tokens.Times), "*"],
  [indexOf(tokens.Divide), "/"],
  [indexOf(tokens.Dots), ".."],
]);

const nothing = new Lexer("");

export class BellcrankParser extends EmbeddedActionsParser {
  /** Chevrotain's own: the number of the last token consumed. */
  declare protected currIdx: number;
  private builder = new AstBuilder("", []);
  private lexer = nothing;
  private ring: readonly Token[] = nothing.ring;
  private readOnAt = 0;
  private entries: Entry[] = [];
  private pieces: Pieces = startPieces();

  /** `checked` has chevrotain validate the grammar itself, which a test does once and for all. */
  constructor(checked = false) {
    super([...tokens.tokenTypes], { maxLookahead: 1, recoveryEnabled: false, skipValidations: !checked });
    this.performSelfAnalysis();
  }

  /** The entries of the document that the lexer reads. */
  parse(lexer: Lexer, builder: AstBuilder): readonly Entry[] {
    this.builder = builder;
    this.entries = [];
    this.input = [];
    this.lexer = lexer;
    this.ring = lexer.ring;
    this.readOnAt = lexer.readAhead(0);
    this.document();
    for (const { token } of this.errors) builder.unexpected(spanOf(token));
    const { entries } = this;
    this.forget();
    return exact(entries);
  }

  /** The parser lives on, and the text that it read should not. */
  private forget(): void {
    this.lexer = nothing;
    this.ring = nothing.ring;
    this.builder = new AstBuilder("", []);
    this.entries = [];
    this.pieces = startPieces();
  }

  /** Chevrotain's way to its tokens, led to the lexer's ring instead of a list of them all. */
  protected override LA_FAST(howMuch: number): IToken {
    return this.ring[(this.currIdx + howMuch) & ringMask] as Token;
  }

  protected override LA(howMuch: number): IToken {
    return this.LA_FAST(howMuch);
  }

  protected consumeToken(): void {
    this.currIdx++;
    if (this.currIdx + 2 >= this.readOnAt) this.readOnAt = this.lexer.readAhead(this.currIdx + 1);
  }

  private readonly pieceAlternatives: Alternative[] = [
    { ALT: () => this.addLeaf(this.CONSUME(tokens.Path) as Token) },
    { ALT: () => this.addLeaf(this.CONSUME(tokens.Quantity) as Token) },
    { ALT: () => this.addLeaf(this.CONSUME(tokens.Point) as Token) },
    { ALT: () => this.addLeaf(this.CONSUME(tokens.Text) as Token) },
    { ALT: () => this.add(this.SUBRULE(this.bracket)) },
    { ALT: () => this.add(this.SUBRULE(this.negation)) },
    { ALT: () => this.SUBRULE(this.operation) },
    { ALT: () => this.addEquals(this.CONSUME(tokens.Equals) as Token) },
    { ALT: () => this.addColon(this.CONSUME(tokens.Colon) as Token) },
  ];

  private readonly bracketAlternatives: Alternative[] = [
    ...this.pieceAlternatives,
    { ALT: () => (this.CONSUME(tokens.Comma), this.addComma()) },
  ];

  private readonly entryAlternatives: Alternative[] = [
    { ALT: () => this.CONSUME(tokens.Separator) },
    { ALT: () => this.SUBRULE(this.statement) },
    { ALT: () => this.SUBRULE(this.row) },
    { ALT: () => this.addStrayBlock(this.SUBRULE(this.block)) },
  ];
  /** A statement also begins like a row; that it comes first decides. */
  private readonly entryChoice = { DEF: this.entryAlternatives, IGNORE_AMBIGUITIES: true };

  private readonly eachPiece = (): unknown => this.OR(this.pieceAlternatives);
  private readonly eachBracketPiece = (): unknown => this.OR(this.bracketAlternatives);
  private readonly eachEntry = (): unknown => this.OR(this.entryChoice);
  private readonly optionalBlock = (): Block => this.SUBRULE(this.block);
  private readonly optionalOperand = (): Item | undefined => this.SUBRULE(this.operand);

  private readonly document = this.RULE("document", () => {
    this.MANY(this.eachEntry);
  });

  private readonly block = this.RULE("block", (): Block => {
    const outer = this.entries;
    const entries: Entry[] = [];
    this.entries = entries;
    const open = this.CONSUME(tokens.OpenBlock) as Token;
    this.MANY(this.eachEntry);
    const close = this.CONSUME(tokens.CloseBlock) as Token;
    this.entries = outer;
    const { startOffset, endOffset } = close;
    return {
      kind: "block",
      start: open.startOffset,
      end: endOffset,
      entries: exact(entries),
      closed: endOffset > startOffset,
    };
  });

  private readonly statement = this.RULE("statement", (): void => {
    const head = this.CONSUME1(tokens.Path) as Token;
    const pieces = startPieces();
    this.pieces = pieces;
    this.MANY(this.eachPiece);
    const block = this.OPTION(this.optionalBlock);
    if (this.RECORDING_PHASE) return;
    const isRow = pieces.colon !== undefined;
    this.addEntry(this.builder.statement(head.leaf as Path, pieces, block, head.notes));
    if (block === undefined) return;
    if (isRow) this.addStrayBlock(block);
    this.expectSeparator();
  });

  private readonly row = this.RULE("row", (): void => {
    const first = this.LA(1) as Token;
    const pieces = startPieces();
    this.pieces = pieces;
    this.AT_LEAST_ONE(this.eachPiece);
    const block = this.OPTION(this.optionalBlock);
    if (this.RECORDING_PHASE) return;
    this.addEntry(this.builder.headless(first, pieces, first.notes));
    if (block !== undefined) this.addStrayBlock(block);
  });

  private readonly operation = this.RULE("operation", (): void => {
    const { pieces } = this;
    const operations: Operation[] = [];
    this.AT_LEAST_ONE(() => {
      const sign = this.OR(this.operatorAlternatives) as Token;
      const operand = this.OPTION(this.optionalOperand);
      if (!this.RECORDING_PHASE)
        operations.push({ sign, operator: operators.get(sign.tokenTypeIdx) as Operator, operand });
    });
    if (!this.RECORDING_PHASE) this.builder.operate(pieces, operations);
  });

  private readonly operatorAlternatives: Alternative[] = [
    { ALT: () => this.CONSUME(tokens.Plus) },
    { ALT: () => this.CONSUME(tokens.Minus) },
    { ALT: () => this.CONSUME(tokens.Times) },
    { ALT: () => this.CONSUME(tokens.Divide) },
    { ALT: () => this.CONSUME(tokens.Dots) },
  ];

  private readonly operand = this.RULE("operand", (): Item | undefined => this.OR(this.operandAlternatives));

  private readonly operandAlternatives: { readonly ALT: () => Item | undefined }[] = [
    { ALT: () => (this.CONSUME(tokens.Path) as Token).leaf as Item },
    { ALT: () => (this.CONSUME(tokens.Quantity) as Token).leaf as Item },
    { ALT: () => (this.CONSUME(tokens.Point) as Token).leaf as Item },
    { ALT: () => (this.CONSUME(tokens.Text) as Token).leaf as Item },
    { ALT: () => this.SUBRULE(this.bracket) },
    { ALT: () => this.SUBRULE(this.negation) },
  ];

  private readonly negation = this.RULE("negation", (): Item | undefined => {
    const sign = this.CONSUME(tokens.Negate) as Token;
    const operand = this.OPTION(this.optionalOperand);
    return this.RECORDING_PHASE ? undefined : this.builder.negation(sign, operand);
  });

  private readonly bracket = this.RULE("bracket", (): Item | undefined => {
    const outer = this.pieces;
    const pieces = startPieces();
    this.pieces = pieces;
    const open = this.CONSUME(tokens.OpenBracket) as Token;
    this.MANY(this.eachBracketPiece);
    const close = this.CONSUME(tokens.CloseBracket) as Token;
    this.pieces = outer;
    return this.RECORDING_PHASE ? undefined : this.builder.bracketed(open, pieces, close);
  });

  /** While chevrotain records the grammar, tokens are its own and bring no node; hence the tests for `undefined`. */
  private addLeaf({ leaf }: Token): void {
    if (leaf !== undefined) this.pieces.items.push(leaf as Item);
  }

  private add(item: Item | undefined): void {
    if (item !== undefined) this.pieces.items.push(item);
    else this.pieces.lost = true;
  }

  private addEquals(sign: Token): void {
    const { pieces } = this;
    if (pieces.equals !== undefined || pieces.commas !== undefined) return this.builder.unexpected(spanOf(sign));
    pieces.equals = sign;
    pieces.base = pieces.equalsAt = pieces.items.length;
  }

  private addColon(sign: Token): void {
    const { pieces } = this;
    if (pieces.colon !== undefined) return this.builder.unexpected(spanOf(sign));
    pieces.colon = sign;
    pieces.base = pieces.colonAt = pieces.items.length;
  }

  private addComma(): void {
    const { pieces } = this;
    pieces.commas ??= [];
    pieces.base = pieces.items.length;
    pieces.commas.push(pieces.base);
  }

  private addEntry(entry: Entry | undefined): void {
    if (entry !== undefined) this.entries.push(entry);
  }

  /** Braces with no statement before them: told, and what they hold counts as if they were not there. */
  private addStrayBlock(block: Block | undefined): void {
    if (this.RECORDING_PHASE || block === undefined) return;
    this.builder.unexpected({ start: block.start, end: block.start + 1 }, "statement");
    this.entries.push(...block.entries);
  }

  private expectSeparator(): void {
    const next = this.LA(1);
    if (next.tokenTypeIdx === SEPARATOR || next.tokenTypeIdx === CLOSE_BLOCK || next.tokenTypeIdx === END) return;
    this.builder.unexpected(spanOf(next), "end of statement");
  }
}

function startPieces(): Pieces {
  return {
    items: [],
    base: 0,
    equals: undefined,
    equalsAt: 0,
    colon: undefined,
    colonAt: 0,
    commas: undefined,
    lost: false,
  };
}

function spanOf({ startOffset, endOffset }: IToken): Span {
  return { start: startOffset, end: endOffset ?? startOffset };
}
