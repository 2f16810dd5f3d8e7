/**
 * Text to tokens. In: the text. Out: the tokens, a few hundred ahead of the parser that asks for
 * them, the comments, and the problems met on the way.
 *
 * Written by hand around chevrotain's token types, for speed (`test/bench/parser.ts`) and because
 * two things of the language ask for it: what a newline or a comma means depends on the bracket
 * around it, and a unit is whatever word stands behind a number.
 *
 * Invariant: every character is part of one token, comment, blank or problem; brackets and braces
 * of the tokens always balance (`nesting.ts`).
 */
import { EOF } from "chevrotain";
import type { Comment } from "./ast.js";
import { BLANK, classOf, DIGIT, isDigit, LETTER, plainCharacter } from "./characters.js";
import { isOperandAt, lineEndAt } from "./continuation.js";
import { joinDecimalComma } from "./decimal-comma.js";
import { Nesting } from "./nesting.js";
import { Operators } from "./operators.js";
import type { SyntaxProblem } from "./problem.js";
import { Scanner } from "./scanner.js";
import {
  CLOSE_BLOCK,
  CLOSE_BRACKET,
  COMMA,
  OPEN_BLOCK,
  PATH,
  POINT,
  QUANTITY,
  SEPARATOR,
  TEXT,
  TokenWriter,
  unsettled,
} from "./token-writer.js";
import * as tokens from "./tokens.js";
import { indexOf, type Token } from "./tokens.js";

export interface LexerOptions {
  /** Whether a line that stands no further in than an open block ends it, as where a brace is missing. */
  readonly byIndentation?: boolean;
  /** Whether a line that stands further in than the one above it begins a block, as where its `{` is missing. */
  readonly opensMissing?: boolean;
  /** Whether points may be single tokens. Off in the test that holds both ways against each other. */
  readonly points?: boolean;
  /** Where to begin: the start of a line outside of every block. */
  readonly from?: number;
}

const END = indexOf(EOF);
const TIMES = indexOf(tokens.Times);
const DIVIDE = indexOf(tokens.Divide);
const COLON = indexOf(tokens.Colon);
const EQUALS = indexOf(tokens.Equals);

const NEWLINE = 10;
const RETURN = 13;
const QUOTE = 34;
const HASH = 35;
const LETTER_X = 120;
const BYTE_ORDER_MARK = 0xfeff;

/** How many tokens the lexer works ahead. The ring holds as many as one step can add besides. */
const ahead = 256;
/** What `step` knows beside letters, digits and blanks. */
const punctuation = '\n\r#"(){},+-.*/:=';

export class Lexer {
  readonly problems: SyntaxProblem[] = [];

  private readonly scanner: Scanner;
  private readonly writer: TokenWriter;
  private readonly nesting: Nesting;
  private readonly operators: Operators;
  private readonly points: boolean;
  private readonly onlyNewlines: boolean;
  private lineFrom = 0; // where this line starts
  private atLineStart = true; // nothing but blanks so far on this line
  private newlineEnded = false; // a newline has come since the last comma
  private finished = false;

  constructor(
    private readonly text: string,
    { byIndentation = false, opensMissing = false, points = true, from = 0 }: LexerOptions = {},
  ) {
    this.points = points;
    this.scanner = new Scanner(text, this.problems);
    this.writer = new TokenWriter(text);
    this.nesting = new Nesting(text, this.writer, this.problems, byIndentation, opensMissing);
    this.operators = new Operators(text, this.scanner, this.writer, this.problems);
    this.onlyNewlines = !text.includes("\r");
    this.lineFrom = this.scanner.position = from;
    this.newlineEnded = from > 0;
    if (from === 0 && text.charCodeAt(0) === BYTE_ORDER_MARK) this.lineFrom = this.scanner.position = 1;
    const replaced = text.indexOf("\ufffd", from);
    if (replaced >= 0) this.problems.push({ kind: "not-utf8", start: replaced, end: replaced + 1 });
  }

  get ring(): readonly Token[] {
    return this.writer.ring;
  }

  get comments(): readonly Comment[] {
    return this.writer.comments;
  }

  get braceFaults(): number {
    return this.nesting.braceFaults;
  }

  /** Reads on from token `next`; returns the number of the first token before which to read on again. */
  readAhead(next: number): number {
    const { text, scanner, writer } = this;
    const end = next + ahead;
    while (writer.count < end && scanner.position < text.length) this.step(text.charCodeAt(scanner.position));
    if (scanner.position < text.length) return writer.count - unsettled;
    if (!this.finished) this.finish();
    return 0x3fffffff;
  }

  private finish(): void {
    const { writer, text } = this;
    this.finished = true;
    this.nesting.closeAll();
    writer.comments.sort((a, b) => a.start - b.start);
    writer.push(END, text.length, text.length, undefined);
    writer.push(END, text.length, text.length, undefined);
  }

  private step(code: number): void {
    const { scanner } = this;
    const kind = classOf(code);
    if (kind === BLANK) return void scanner.position++;
    if (code === NEWLINE || code === RETURN) return this.newline(code);
    if (code === HASH) return this.comment();
    const start = scanner.position;
    if (this.atLineStart) {
      this.atLineStart = false;
      this.nesting.beginLine(start, start - this.lineFrom);
    }
    if ((kind & LETTER) !== 0) return this.word(code);
    if ((kind & DIGIT) !== 0) return this.operators.number();
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
        return this.operators.sign("+", start);
      case 45: // -
        return this.operators.sign("-", start);
      case 46: // .
        return this.operators.dot(start);
      case 42: // *
        return this.mark(TIMES, start);
      case 47: // /
        return this.mark(DIVIDE, start);
      case 58: // :
        return this.mark(COLON, start);
      case 61: // =
        return this.mark(EQUALS, start);
      default:
        return this.badCharacter(start);
    }
  }

  private mark(type: number, start: number): void {
    this.scanner.position = start + 1;
    this.writer.push(type, start, start + 1, undefined);
  }

  private word(code: number): void {
    const { scanner, text, writer } = this;
    const start = scanner.position;
    if (code === LETTER_X && writer.last === QUANTITY && isDigit(text.charCodeAt(start + 1))) {
      return this.operators.times(start);
    }
    if (writer.last === COMMA && !isOperandAt(text, start)) this.nesting.endBracketsBeforeComma();
    const path = scanner.path();
    writer.push(PATH, start, path.end, path);
  }

  private newline(code: number): void {
    const { scanner, text, nesting, writer } = this;
    const start = scanner.position;
    const next = start + (code === RETURN && text.charCodeAt(start + 1) === NEWLINE ? 2 : 1);
    scanner.position = next;
    if (nesting.inBrackets()) nesting.endBracketsAtLine(next);
    if (!nesting.inBrackets()) {
      if (!writer.atStatementStart()) writer.push(SEPARATOR, start, start + 1, undefined);
      this.newlineEnded = true;
    }
    this.atLineStart = true;
    this.lineFrom = next;
  }

  private comment(): void {
    const { scanner, text, writer } = this;
    const start = scanner.position;
    scanner.position = this.lineEnd(start);
    let end = scanner.position;
    while ((classOf(text.charCodeAt(end - 1)) & BLANK) !== 0) end--;
    const isNote = text.charCodeAt(start + 1) === HASH && text.charCodeAt(start + 2) !== HASH;
    if (isNote && this.atLineStart && !this.nesting.inBrackets()) {
      const from = Math.min(text.charAt(start + 2) === " " ? start + 3 : start + 2, end);
      writer.addNote({ kind: "note", start, end, text: text.slice(from, end) });
    } else writer.comments.push({ kind: "comment", start, end, text: text.slice(start, end) });
  }

  private lineEnd(from: number): number {
    if (!this.onlyNewlines) return lineEndAt(this.text, from);
    const found = this.text.indexOf("\n", from);
    return found < 0 ? this.text.length : found;
  }

  private quoted(start: number): void {
    const { text } = this;
    let at = start + 1;
    let code = text.charCodeAt(at);
    while (code !== QUOTE && code !== NEWLINE && code !== RETURN && at < text.length) code = text.charCodeAt(++at);
    const closed = code === QUOTE;
    const end = closed ? at + 1 : unclosedEnd(text, start + 1, at);
    if (!closed) this.problems.push({ kind: "unclosed-text", start, end });
    this.scanner.position = end;
    this.writer.push(TEXT, start, end, { kind: "text", start, end, value: text.slice(start + 1, closed ? at : end) });
  }

  private openBracket(start: number): void {
    const { scanner } = this;
    const point = this.points ? scanner.point() : undefined;
    if (point === undefined) scanner.position = this.nesting.openBracket(start);
    else this.writer.push(POINT, start, point.end, point);
  }

  private closeBracket(start: number): void {
    const { scanner } = this;
    scanner.position = start + 1;
    if (!this.nesting.leaveBracket(start)) return;
    const unit = scanner.unit();
    this.writer.push(CLOSE_BRACKET, start, unit === undefined ? start + 1 : unit.end, unit);
  }

  private openBlock(start: number): void {
    const { writer } = this;
    this.nesting.closeBrackets();
    // A brace on the line below its statement still belongs to it.
    if (writer.last === SEPARATOR && this.newlineEnded) {
      const before = writer.back(2)?.tokenTypeIdx;
      if (before !== undefined && before !== CLOSE_BLOCK && before !== OPEN_BLOCK) writer.takeBack();
    }
    this.scanner.position = this.nesting.openBlock(start);
  }

  private closeBlock(start: number): void {
    this.nesting.closeBrackets();
    this.scanner.position = start + 1;
    this.nesting.closeBlock(start);
  }

  private comma(start: number): void {
    const { scanner, writer, nesting, problems } = this;
    if (nesting.inBrackets()) return this.mark(COMMA, start);
    if (joinDecimalComma(start, scanner, writer, problems, nesting.inBlock())) return;
    scanner.position = start + 1;
    this.newlineEnded = false;
    const nothingBefore = writer.atStatementStart();
    if (nothingBefore || !nesting.inBlock()) {
      problems.push({ kind: "unexpected", start, end: start + 1, found: ",", expected: ["statement"] });
    }
    if (!nothingBefore) writer.push(SEPARATOR, start, start + 1, undefined);
  }

  private badCharacter(start: number): void {
    const { text } = this;
    const suggestion = plainCharacter(text.charAt(start));
    if (suggestion !== undefined) return this.operators.pasted(start, suggestion);
    let end = start + 1;
    while (end < text.length && isBad(text, end)) end++;
    this.scanner.position = end;
    this.problems.push({ kind: "bad-character", start, end, found: text.slice(start, end) });
  }
}

/** Where text ends that nobody closed on its line: before a brace, which hardly belongs to it, or with its last word. */
function unclosedEnd(text: string, from: number, lineEnd: number): number {
  let end = from;
  while (end < lineEnd && text.charAt(end) !== "{" && text.charAt(end) !== "}") end++;
  while (end > from && (classOf(text.charCodeAt(end - 1)) & BLANK) !== 0) end--;
  return end;
}

function isBad(text: string, at: number): boolean {
  if ((classOf(text.charCodeAt(at)) & (LETTER | DIGIT | BLANK)) !== 0) return false;
  return !punctuation.includes(text.charAt(at)) && plainCharacter(text.charAt(at)) === undefined;
}
