/**
 * Where the lexer puts its tokens, and the notes that belong to them.
 *
 * Tokens go into a ring from which the parser, close behind, takes them: none is kept longer than
 * needed, which halves the memory that a large file asks for.
 *
 * Invariant: token n is at `n & ringMask` until `ringMask` more have been written; the last
 * `unsettled` of them may still be taken back, so the parser is kept from them.
 */
import type { Comment, Item, Note, Unit } from "./ast.js";
import * as tokens from "./tokens.js";
import { indexOf, Token } from "./tokens.js";

export const ringMask = 2047;
export const unsettled = 4;

export const SEPARATOR = indexOf(tokens.Separator);
export const PATH = indexOf(tokens.Path);
export const QUANTITY = indexOf(tokens.Quantity);
export const POINT = indexOf(tokens.Point);
export const TEXT = indexOf(tokens.Text);
export const OPEN_BLOCK = indexOf(tokens.OpenBlock);
export const CLOSE_BLOCK = indexOf(tokens.CloseBlock);
export const OPEN_BRACKET = indexOf(tokens.OpenBracket);
export const CLOSE_BRACKET = indexOf(tokens.CloseBracket);
export const COMMA = indexOf(tokens.Comma);
export const NEGATE = indexOf(tokens.Negate);

export class TokenWriter {
  readonly ring: Token[] = [];
  readonly comments: Comment[] = [];
  /** How many tokens there are so far. */
  count = 0;
  /** The last token's type; 0 before the first. */
  last = 0;
  /** Where the last token ends that is no separator. */
  lastEnd = 0;

  private notes: Note[] = [];

  constructor(private readonly text: string) {}

  push(type: number, start: number, end: number, leaf: Item | Unit | undefined): Token {
    const token = new Token(type, start, end, leaf);
    if (this.notes.length > 0) this.attachNotes(token);
    this.ring[this.count++ & ringMask] = token;
    this.last = type;
    if (type !== SEPARATOR) this.lastEnd = end;
    return token;
  }

  /** The last token, or one further back. */
  back(steps = 1): Token | undefined {
    return this.count < steps ? undefined : this.ring[(this.count - steps) & ringMask];
  }

  /** Undoes the last token, which is a comma or a separator and not the first. */
  takeBack(): Token {
    const token = this.back() as Token;
    this.count--;
    const before = this.back() as Token;
    this.last = before.tokenTypeIdx;
    this.lastEnd = before.endOffset;
    return token;
  }

  atStatementStart(): boolean {
    return this.last === 0 || this.last === SEPARATOR || this.last === OPEN_BLOCK;
  }

  /** Whether the last token ends a value, so that an operator may follow. */
  afterOperand(): boolean {
    const { last } = this;
    return last === PATH || last === QUANTITY || last === POINT || last === CLOSE_BRACKET || last === TEXT;
  }

  addNote(note: Note): void {
    this.notes.push(note);
  }

  private attachNotes(token: Token): void {
    if (token.tokenTypeIdx !== CLOSE_BLOCK && this.atStatementStart()) {
      token.notes = this.notes;
      this.notes = [];
    } else this.keepNotesAsComments();
  }

  /** Notes with no statement below them. */
  keepNotesAsComments(): void {
    for (const { start, end } of this.notes) {
      this.comments.push({ kind: "comment", start, end, text: this.text.slice(start, end) });
    }
    this.notes = [];
  }
}
