/**
 * Text to tokens. In: the text. Out: the tokens, a few hundred ahead of the parser that asks for
 * them, the comments, and the problems met on the way.
 *
 * Written by hand around chevrotain's token types, for speed (`test/bench/parser.ts`) and because
 * two things of the language ask for it: what a newline or a comma means depends on the bracket
 * around it, and a unit is whatever word stands behind a number.
 *
 * Invariant: brackets and braces of the tokens always balance. What the text left open is closed
 * by a token of no width, where the half-typed line most likely ends, and told as a problem.
 */
import { EOF, type TokenType } from "chevrotain";
import type { Comment, Item, Note, Quantity, Unit } from "./ast.js";
import { classOf, DIGIT, isDigit, LETTER, NAME, plainCharacter } from "./characters.js";
import type { SyntaxProblem } from "./problem.js";
import { Scanner } from "./scanner.js";
import * as tokens from "./tokens.js";
import { indexOf, Token } from "./tokens.js";

/** Blocks in blocks, brackets in brackets, operators in a row: what no set-up needs, and a stack can hold. */
export const deepest = 200;

const SEPARATOR = indexOf(tokens.Separator);
const PATH = indexOf(tokens.Path);
const QUANTITY = indexOf(tokens.Quantity);
const POINT = indexOf(tokens.Point);
const TEXT = indexOf(tokens.Text);
const OPEN_BLOCK = indexOf(tokens.OpenBlock);
const CLOSE_BLOCK = indexOf(tokens.CloseBlock);
const OPEN_BRACKET = indexOf(tokens.OpenBracket);
const CLOSE_BRACKET = indexOf(tokens.CloseBracket);
const COMMA = indexOf(tokens.Comma);
const NEGATE = indexOf(tokens.Negate);
const END = indexOf(EOF);

const NEWLINE = 10;
const RETURN = 13;
const HASH = 35;
const QUOTE = 34;
const BYTE_ORDER_MARK = 0xfeff;
/** What `step` knows beside letters, digits and blanks. */
const punctuation = '\n\r#"(){},+-.*/:=';

export interface LexerOptions {
  /** Whether a line that stands no further in than an open block ends it, as where a brace is missing. */
  readonly byIndentation?: boolean;
  /** Whether points may be single tokens. Off in the test that holds both ways against each other. */
  readonly points?: boolean;
}

/** The lexer works ahead by this many tokens, and keeps as many as one step can add besides. */
const ahead = 256;
export const ringMask = 2047;
/** The newest tokens may be taken back, so the parser is kept from them. */
const unsettled = 4;

interface OpenBlock {
  readonly token: Token;
  /** The column at which the line of the brace begins. */
  readonly indentation: number;
}

export class Lexer {
  /** Token n is at `n & ringMask`. The parser follows close behind, so old ones need not be kept. */
  readonly ring: Token[] = [];
  readonly comments: Comment[] = [];
  readonly problems: SyntaxProblem[] = [];
  /** How often braces failed to match. */
  braceFaults = 0;

  private count = 0;
  private finished = false;

  private readonly scanner: Scanner;
  private readonly onlyNewlines: boolean;
  private last = 0; // the last token's type, 0 before the first
  private lastEnd = 0; // where the last token ends that is no separator
  private lineStart = true; // nothing but blanks so far on this line
  private lineFrom = 0; // where this line starts
  private lineFirst = 0; // its first character that is no blank
  private indentation = 0; // its column
  private newlineEnded = false; // the last separator was a newline
  private bracketGoesOnUntil = 0;
  private notes: Note[] = [];
  private readonly brackets: Token[] = [];
  private readonly blocks: OpenBlock[] = [];

  private readonly byIndentation: boolean;
  private readonly points: boolean;

  constructor(
    private readonly text: string,
    { byIndentation = false, points = true }: LexerOptions = {},
  ) {
    this.byIndentation = byIndentation;
    this.points = points;
    this.scanner = new Scanner(text, this.problems);
    this.onlyNewlines = !text.includes("\r");
    if (text.charCodeAt(0) === BYTE_ORDER_MARK) this.lineFrom = this.scanner.position = 1;
    const replaced = text.indexOf("\ufffd");
    if (replaced >= 0) this.problems.push({ kind: "not-utf8", start: replaced, end: replaced + 1 });
  }

  /** Reads on from token `next`; returns the number of the first token before which to read on again. */
  readAhead(next: number): number {
    const { text, scanner } = this;
    const end = next + ahead;
    while (this.count < end && scanner.position < text.length) this.step(text.charCodeAt(scanner.position));
    if (scanner.position < text.length) return this.count - unsettled;
    if (!this.finished) this.finish();
    return 0x3fffffff;
  }

  private finish(): void {
    this.finished = true;
    this.closeBrackets();
    this.keepNotesAsComments();
    while (this.blocks.length > 0) this.closeMissing();
    this.comments.sort((a, b) => a.start - b.start);
    const { length } = this.text;
    this.push(END, length, length, undefined);
    this.push(END, length, length, undefined);
  }

  private step(code: number): void {
    const { scanner } = this;
    const kind = classOf(code);
    if (kind === 4) return void scanner.position++;
    if (code === NEWLINE || code === RETURN) return this.newline(code);
    if (code === HASH) return this.comment();
    if (this.lineStart) this.beginLine(code);
    if ((kind & LETTER) !== 0) return this.word(code);
    if ((kind & DIGIT) !== 0) return this.number();
    const start = scanner.position;
    switch (code) {
      case QUOTE:
        return this.quoted(start);
      case 40: // (
        return this.openBracket(start);
      case 41: // )
        return this.closeBracket(start);
      case 44: // ,
        return this.comma(start);
      case 123: // {
        return this.openBlock(start);
      case 125: // }
        return this.closeBlock(start);
      case 43: // +
      case 45: // -
        return this.sign(code, start);
      case 46: // .
        return this.dot(start);
      case 42: // *
        return this.mark(tokens.Times, start, 1);
      case 47: // /
        return this.mark(tokens.Divide, start, 1);
      case 58: // :
        return this.mark(tokens.Colon, start, 1);
      case 61: // =
        return this.mark(tokens.Equals, start, 1);
      default:
        return this.badCharacter(start);
    }
  }

  private push(type: number, start: number, end: number, leaf: Item | Unit | undefined): Token {
    const token = new Token(type, start, end, leaf);
    if (this.notes.length > 0) this.attachNotes(token);
    this.ring[this.count++ & ringMask] = token;
    this.last = type;
    if (type !== SEPARATOR) this.lastEnd = end;
    return token;
  }

  private mark(type: TokenType, start: number, width: number): void {
    this.scanner.position = start + width;
    this.push(indexOf(type), start, start + width, undefined);
  }

  private atStatementStart(): boolean {
    return this.last === 0 || this.last === SEPARATOR || this.last === OPEN_BLOCK;
  }

  /** Whether the last token ends a value, so that an operator may follow. */
  private afterOperand(): boolean {
    const last = this.last;
    return last === PATH || last === QUANTITY || last === POINT || last === CLOSE_BRACKET || last === TEXT;
  }

  private word(code: number): void {
    const { scanner, text } = this;
    const start = scanner.position;
    if (code === 120 && this.last === QUANTITY && isDigit(text.charCodeAt(start + 1))) return this.glued(start);
    if (this.brackets.length > 0 && this.last === COMMA && !this.bracketGoesOnWith(start)) this.endBracketBeforeComma();
    const path = scanner.path();
    this.push(PATH, start, path.end, path);
  }

  /** The `x` of `8x30`. */
  private glued(start: number): void {
    const end = start + 1;
    this.scanner.position = end;
    const name = { kind: "name", start, end, text: "x" } as const;
    this.push(PATH, start, end, { kind: "path", start, end, segments: [name] });
  }

  private number(): void {
    const start = this.scanner.position;
    const quantity = this.scanner.quantity();
    if (quantity !== undefined) this.push(QUANTITY, start, quantity.end, quantity);
  }

  private newline(code: number): void {
    const { scanner, text } = this;
    const position = scanner.position;
    scanner.position += code === RETURN && text.charCodeAt(position + 1) === NEWLINE ? 2 : 1;
    if (this.brackets.length > 0) {
      if (position >= this.bracketGoesOnUntil && !this.bracketGoesOn()) this.closeBrackets();
    }
    if (this.brackets.length === 0 && !this.atStatementStart()) {
      this.push(SEPARATOR, position, position + 1, undefined);
      this.newlineEnded = true;
    }
    this.lineStart = true;
    this.lineFrom = scanner.position;
  }

  /** At the first character of a line that is no blank. */
  private beginLine(code: number): void {
    this.lineFirst = this.scanner.position;
    this.indentation = this.lineFirst - this.lineFrom;
    this.lineStart = false;
    if (!this.byIndentation || this.brackets.length > 0 || code === 123) return;
    const kept = code === 125 ? this.indentation + 1 : this.indentation;
    while (this.blocks.length > 0 && this.blocks[this.blocks.length - 1]!.indentation >= kept) this.closeMissing();
  }

  private comment(): void {
    const { scanner, text } = this;
    const start = scanner.position;
    const lineEnd = this.lineEnd(start);
    scanner.position = lineEnd;
    let end = lineEnd;
    while ((classOf(text.charCodeAt(end - 1)) & 4) !== 0) end--;
    const isNote = text.charCodeAt(start + 1) === HASH && text.charCodeAt(start + 2) !== HASH;
    if (isNote && this.lineStart && this.brackets.length === 0) {
      const from = text.charCodeAt(start + 2) === 32 ? start + 3 : start + 2;
      this.notes.push({ kind: "note", start, end, text: text.slice(Math.min(from, end), end) });
    } else {
      this.comments.push({ kind: "comment", start, end, text: text.slice(start, end) });
    }
  }

  private lineEnd(from: number): number {
    const { text } = this;
    if (this.onlyNewlines) {
      const found = text.indexOf("\n", from);
      return found < 0 ? text.length : found;
    }
    let at = from;
    for (; at < text.length; at++) {
      const code = text.charCodeAt(at);
      if (code === NEWLINE || code === RETURN) break;
    }
    return at;
  }

  private attachNotes(token: Token): void {
    if (token.tokenTypeIdx !== CLOSE_BLOCK && this.atStatementStart()) {
      token.notes = this.notes;
      this.notes = [];
    } else this.keepNotesAsComments();
  }

  /** Notes with no statement below them. */
  private keepNotesAsComments(): void {
    for (const { start, end } of this.notes) {
      this.comments.push({ kind: "comment", start, end, text: this.text.slice(start, end) });
    }
    this.notes = [];
  }

  private quoted(start: number): void {
    const { scanner, text } = this;
    let at = start + 1;
    let code = text.charCodeAt(at);
    while (code !== QUOTE && code !== NEWLINE && code !== RETURN && at < text.length) code = text.charCodeAt(++at);
    const closed = code === QUOTE && at < text.length;
    const end = closed ? at + 1 : at;
    if (!closed) this.problems.push({ kind: "unclosed-text", start, end });
    scanner.position = end;
    this.push(TEXT, start, end, { kind: "text", start, end, value: text.slice(start + 1, at) });
  }

  private openBracket(start: number): void {
    const { scanner } = this;
    if (this.points) {
      const point = scanner.point();
      if (point !== undefined) return void this.push(POINT, start, point.end, point);
    }
    if (this.brackets.length >= deepest) return this.skipTooDeep(start, 40, 41);
    scanner.position = start + 1;
    this.brackets.push(this.push(OPEN_BRACKET, start, start + 1, undefined));
  }

  private closeBracket(start: number): void {
    const { scanner } = this;
    scanner.position = start + 1;
    if (this.brackets.pop() === undefined) return this.stray(start, ")");
    const unit = scanner.unit();
    this.push(CLOSE_BRACKET, start, unit === undefined ? start + 1 : unit.end, unit);
  }

  private stray(start: number, found: string): void {
    this.problems.push({ kind: "stray-closing", start, end: start + 1, found });
  }

  /** Ends every open round bracket here, told once at the outermost. */
  private closeBrackets(): void {
    const opened = this.brackets[0];
    if (opened === undefined) return;
    const span = { start: opened.startOffset, end: opened.endOffset };
    this.problems.push({ kind: "unclosed-bracket", ...span, opened: span });
    for (let open = this.brackets.length; open > 0; open--) {
      this.push(CLOSE_BRACKET, this.lastEnd, this.lastEnd, undefined);
    }
    this.brackets.length = 0;
  }

  /** `(1, 2 mm, aft (3, 4) mm`: the comma before `aft` ends the statement, since `aft (` is no member. */
  private endBracketBeforeComma(): void {
    const comma = this.takeBack();
    this.closeBrackets();
    this.push(SEPARATOR, comma.startOffset, comma.endOffset, undefined);
  }

  /** At a newline inside round brackets: whether what follows can be more of them. */
  private bracketGoesOn(): boolean {
    const at = this.nextSignificant();
    this.bracketGoesOnUntil = at;
    const { text } = this;
    const code = text.charCodeAt(at);
    if (at >= text.length || code === 123 || code === 125 || code === 58 || code === 61) return false;
    if (this.isOperatorAt(at) || code === 41 || code === 44) return true;
    if (this.afterOperand()) return false;
    return (classOf(code) & LETTER) === 0 || this.bracketGoesOnWith(at);
  }

  /** Whether the word at `start` can be a member or an operand: what follows it then closes, divides or operates. */
  private bracketGoesOnWith(start: number): boolean {
    const { text } = this;
    let at = start;
    while ((classOf(text.charCodeAt(at)) & NAME) !== 0 || text.charCodeAt(at) === 46) at++;
    while ((classOf(text.charCodeAt(at)) & 4) !== 0) at++;
    const code = text.charCodeAt(at);
    const ends = at >= text.length || code === NEWLINE || code === RETURN || code === HASH;
    return ends || code === 41 || code === 44 || this.isOperatorAt(at);
  }

  private isOperatorAt(at: number): boolean {
    const code = this.text.charCodeAt(at);
    const next = this.text.charCodeAt(at + 1);
    if (code === 42 || code === 47) return true;
    if (code === 46) return next === 46;
    return (code === 43 || code === 45) && ((classOf(next) & 4) !== 0 || next === NEWLINE || next === RETURN);
  }

  /** The place of the next character that is neither blank, newline nor comment. */
  private nextSignificant(): number {
    const { text } = this;
    let at = this.scanner.position;
    for (; at < text.length; at++) {
      const code = text.charCodeAt(at);
      if (code === HASH) at = this.lineEnd(at);
      else if (code !== NEWLINE && code !== RETURN && (classOf(code) & 4) === 0) break;
    }
    return Math.min(at, text.length);
  }

  private openBlock(start: number): void {
    this.closeBrackets();
    if (this.blocks.length >= deepest) return this.skipTooDeep(start, 123, 125);
    this.scanner.position = start + 1;
    // A brace on the line below its statement still belongs to it.
    if (this.last === SEPARATOR && this.newlineEnded) this.joinLines();
    const token = this.push(OPEN_BLOCK, start, start + 1, undefined);
    this.blocks.push({ token, indentation: this.indentation });
  }

  private joinLines(): void {
    const before = this.tokenBack(2)?.tokenTypeIdx;
    if (before !== undefined && before !== CLOSE_BLOCK && before !== OPEN_BLOCK) this.takeBack();
  }

  /** The last token but `back - 1`. */
  private tokenBack(back: number): Token | undefined {
    return this.count < back ? undefined : this.ring[(this.count - back) & ringMask];
  }

  /** Undoes the last token, which is a comma or a separator. */
  private takeBack(): Token {
    const token = this.tokenBack(1) as Token;
    this.count--;
    const before = this.tokenBack(1) as Token;
    this.last = before.tokenTypeIdx;
    this.lastEnd = before.endOffset;
    return token;
  }

  private closeBlock(start: number): void {
    this.closeBrackets();
    this.scanner.position = start + 1;
    const top = this.blocks[this.blocks.length - 1];
    const tooFarIn =
      this.byIndentation && start === this.lineFirst && top !== undefined && top.indentation < this.indentation;
    if (top === undefined || tooFarIn) {
      this.braceFaults++;
      return this.stray(start, "}");
    }
    this.blocks.pop();
    this.push(CLOSE_BLOCK, start, start + 1, undefined);
  }

  /** Supplies a closing brace that the text lacks, behind the last thing that was read. */
  private closeMissing(): void {
    const { token } = this.blocks.pop() as OpenBlock;
    const span = { start: token.startOffset, end: token.endOffset };
    this.braceFaults++;
    this.problems.push({ kind: "unclosed-block", ...span, opened: span });
    this.push(CLOSE_BLOCK, this.lastEnd, this.lastEnd, undefined);
    this.push(SEPARATOR, this.lastEnd, this.lastEnd, undefined);
  }

  /** Leaves out what is nested deeper than anybody needs, up to the closing that matches. */
  private skipTooDeep(start: number, open: number, close: number): void {
    const { text, scanner } = this;
    this.problems.push({ kind: "too-deep", start, end: start + 1, limit: deepest });
    let depth = 0;
    let at = start;
    for (; at < text.length; at++) {
      const code = text.charCodeAt(at);
      if (code === open) depth++;
      else if (code === close && --depth === 0) break;
      else if (open === 40 && (code === NEWLINE || code === HASH || code === 123 || code === 125)) break;
      else if (code === HASH) at = this.lineEnd(at) - 1;
    }
    scanner.position = Math.min(text.charCodeAt(at) === close ? at + 1 : at, text.length);
  }

  private comma(start: number): void {
    if (this.brackets.length > 0) return this.mark(tokens.Comma, start, 1);
    if (this.last === QUANTITY && this.lastEnd === start && this.decimalComma(start)) return;
    this.scanner.position = start + 1;
    const nothingBefore = this.atStatementStart();
    if (nothingBefore || this.blocks.length === 0) {
      this.problems.push({ kind: "unexpected", start, end: start + 1, found: ",", expected: ["statement"] });
    }
    if (!nothingBefore) this.push(SEPARATOR, start, start + 1, undefined);
    this.newlineEnded = false;
  }

  /** `12,5 mm` read as the 12.5 mm that it means, and told; false where the comma separates. */
  private decimalComma(start: number): boolean {
    const { scanner, text } = this;
    const token = this.tokenBack(1) as Token;
    const whole = token.leaf as Quantity;
    if (whole.unit !== undefined || !/^[+-]?\d+$/.test(whole.digits) || !isDigit(text.charCodeAt(start + 1)))
      return false;
    const before = this.tokenBack(2)?.tokenTypeIdx ?? SEPARATOR;
    const isKey = before === SEPARATOR || before === OPEN_BLOCK;
    if (!isKey && this.blocks.length > 0 && this.isRowAt(start + 1)) return false;
    let end = start + 1;
    while (isDigit(text.charCodeAt(end))) end++;
    scanner.position = end;
    const digits = text.slice(whole.start, end);
    const suggestion = digits.replace(",", ".");
    this.problems.push({ kind: "decimal-comma", start: whole.start, end, suggestion });
    const unit = scanner.unit();
    token.endOffset = this.lastEnd = unit?.end ?? end;
    token.leaf = {
      kind: "quantity",
      start: whole.start,
      end: token.endOffset,
      value: Number(suggestion),
      digits,
      unit,
    };
    return true;
  }

  /** Whether a row of a table (`5 mm/s: …`) begins with the number at `start`. */
  private isRowAt(start: number): boolean {
    const { scanner, problems } = this;
    const told = problems.length;
    const { position } = scanner;
    scanner.position = start;
    scanner.quantity();
    scanner.skipBlanks();
    const isRow = this.text.charCodeAt(scanner.position) === 58;
    problems.length = told;
    scanner.position = position;
    return isRow;
  }

  /** `+` and `-`: the sign of a number, an operator between two values, or the minus before one. */
  private sign(code: number, start: number): void {
    const { text } = this;
    const afterOperand = this.afterOperand();
    const glued = afterOperand && this.lastEnd === start;
    const next = text.charCodeAt(start + 1);
    if (!glued && (isDigit(next) || (next === 46 && isDigit(text.charCodeAt(start + 2))))) return this.number();
    const blankAfter = (classOf(next) & 4) !== 0 || next === NEWLINE || next === RETURN || start + 1 >= text.length;
    if (code === 43) return this.mark(tokens.Plus, start, 1);
    if (!afterOperand || !(glued || blankAfter)) return this.negation(start);
    if (glued) this.tellGluedMinus(start);
    this.mark(tokens.Minus, start, 1);
  }

  private tellGluedMinus(start: number): void {
    let end = start + 1;
    while (this.text.charCodeAt(end) === 32) end++;
    this.problems.push({ kind: "spaceless-minus", start, end, suggestion: " - " });
  }

  private negation(start: number): void {
    if (this.last !== NEGATE) return this.mark(tokens.Negate, start, 1);
    this.scanner.position = start + 1;
    this.problems.push({ kind: "unexpected", start, end: start + 1, found: "-", expected: ["value"] });
  }

  private dot(start: number): void {
    const next = this.text.charCodeAt(start + 1);
    if (next === 46) return this.mark(tokens.Dots, start, 2);
    if (isDigit(next)) return this.number();
    this.scanner.position = start + 1;
    this.problems.push({ kind: "unexpected", start, end: start + 1, found: ".", expected: ["name"] });
  }

  private badCharacter(start: number): void {
    const { scanner, text } = this;
    const suggestion = plainCharacter(text.charAt(start));
    if (suggestion !== undefined) return this.pasted(start, suggestion);
    let end = start + 1;
    while (end < text.length && this.isBad(end)) end++;
    scanner.position = end;
    this.problems.push({ kind: "bad-character", start, end, found: text.slice(start, end) });
  }

  private isBad(at: number): boolean {
    const character = this.text.charAt(at);
    const kind = classOf(this.text.charCodeAt(at));
    return (
      (kind & (LETTER | DIGIT | 4)) === 0 && !punctuation.includes(character) && plainCharacter(character) === undefined
    );
  }

  /** A typographic character is told, and read as the plain one that it stands for. */
  private pasted(start: number, suggestion: string): void {
    const { scanner, text } = this;
    const end = start + 1;
    this.problems.push({ kind: "bad-character", start, end, found: text.charAt(start), suggestion });
    if (suggestion === "x") return this.glued(start);
    if (suggestion === "..") return this.mark(tokens.Dots, start, 1);
    scanner.position = end;
    if (suggestion !== "-") return;
    const glued = this.afterOperand() && this.lastEnd === start;
    if (glued || !isDigit(text.charCodeAt(end))) return this.sign(45, start);
    const quantity = scanner.quantity();
    if (quantity === undefined) return;
    const negative = {
      ...quantity,
      start,
      value: quantity.value === 0 ? 0 : -quantity.value,
      digits: `-${quantity.digits}`,
    };
    this.push(QUANTITY, start, quantity.end, negative);
  }
}
