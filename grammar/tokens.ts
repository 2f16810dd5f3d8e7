/**
 * The kinds of token and what the lexer hands to the parser.
 *
 * Tokens are coarse so that the parser has few of them to look at: a number with its unit, a
 * dotted path and a point made of plain numbers are one token each, and bring their finished
 * syntax node along. Tokens hold offsets only; lines and columns come from the line table.
 */
import { createToken, EOF, type IToken, type TokenType } from "chevrotain";
import type { Item, Note, Unit } from "./ast.js";

const kind = (name: string): TokenType => createToken({ name });

/** End of a statement: a newline or, inside braces, a comma; a run of them is one token. */
export const Separator = kind("Separator");
export const Path = kind("Path");
export const Quantity = kind("Quantity");
/** A tuple whose members are all plain numbers, with its unit: `(1, 2, 3) mm`. */
export const Point = kind("Point");
export const Text = kind("Text");
export const OpenBlock = kind("OpenBlock");
export const CloseBlock = kind("CloseBlock");
export const OpenBracket = kind("OpenBracket");
/** Brings the unit that follows it. */
export const CloseBracket = kind("CloseBracket");
/** A comma inside round brackets. */
export const Comma = kind("Comma");
export const Colon = kind("Colon");
export const Equals = kind("Equals");
export const Dots = kind("Dots");
export const Plus = kind("Plus");
export const Minus = kind("Minus");
export const Times = kind("Times");
export const Divide = kind("Divide");
/** A minus that belongs to the operand after it. */
export const Negate = kind("Negate");

export const tokenTypes: readonly TokenType[] = [
  Separator,
  Path,
  Quantity,
  Point,
  Text,
  OpenBlock,
  CloseBlock,
  OpenBracket,
  CloseBracket,
  Comma,
  Colon,
  Equals,
  Dots,
  Plus,
  Minus,
  Times,
  Divide,
  Negate,
];

const byIndex: TokenType[] = [];
for (const type of [...tokenTypes, EOF]) byIndex[indexOf(type)] = type;

/** The number by which chevrotain tells token types apart. */
export function indexOf(type: TokenType): number {
  return type.tokenTypeIdx as number;
}

/** One token. `startOffset === endOffset` marks a closing that recovery supplied. `endOffset` is exclusive. */
export class Token implements IToken {
  /** The `##` lines above, on the first token of a statement. */
  notes: readonly Note[] | undefined = undefined;

  constructor(
    readonly tokenTypeIdx: number,
    readonly startOffset: number,
    public endOffset: number,
    public leaf: Item | Unit | undefined,
  ) {}

  get tokenType(): TokenType {
    return byIndex[this.tokenTypeIdx] as TokenType;
  }

  /** Chevrotain asks for the image in messages only, which nothing here shows. */
  get image(): string {
    return this.tokenType.name;
  }
}
