/**
 * Braces and round brackets: which are open, and how those end that the text does not close.
 * In: the places of brackets, newlines and first characters of lines, as the lexer meets them.
 * Out: tokens to the writer, problems to the list.
 *
 * Invariant: brackets and braces of the written tokens always balance; those supplied have no width.
 */
import { nextSignificant, bracketsGoOn, lineEndAt } from "./continuation.js";
import type { SyntaxProblem } from "./problem.js";
import {
  CLOSE_BLOCK,
  CLOSE_BRACKET,
  OPEN_BLOCK,
  OPEN_BRACKET,
  PATH,
  SEPARATOR,
  TEXT,
  type TokenWriter,
} from "./token-writer.js";
import type { Token } from "./tokens.js";

/** Blocks in blocks, brackets in brackets, operators in a row: what no set-up needs, and a stack can hold. */
export const deepest = 200;

interface OpenBlock {
  readonly token: Token;
  /** The column at which the line of the brace begins. */
  readonly indentation: number;
}

export class Nesting {
  /** How often braces failed to match. */
  braceFaults = 0;

  private readonly brackets: Token[] = [];
  private readonly blocks: OpenBlock[] = [];
  private goesOnUntil = 0; // up to where the open brackets are known to go on
  private lineFirst = 0; // the first character of this line that is no blank
  private indentation = 0; // its column

  constructor(
    private readonly text: string,
    private readonly writer: TokenWriter,
    private readonly problems: SyntaxProblem[],
    private readonly byIndentation: boolean,
    private readonly opensMissing: boolean,
  ) {}

  inBrackets(): boolean {
    return this.brackets.length > 0;
  }

  inBlock(): boolean {
    return this.blocks.length > 0;
  }

  /** Opens a bracket; returns where to read on. */
  openBracket(start: number): number {
    if (this.brackets.length >= deepest) return this.behindTooDeep(start, "(", ")");
    this.brackets.push(this.writer.push(OPEN_BRACKET, start, start + 1, undefined));
    return start + 1;
  }

  /** Takes the bracket at `start` off the open ones; false, and told, where none is open. */
  leaveBracket(start: number): boolean {
    if (this.brackets.pop() !== undefined) return true;
    this.stray(start, ")");
    return false;
  }

  /** At a newline inside brackets, `next` behind it: ends them where what follows can be no more of them. */
  endBracketsAtLine(next: number): void {
    if (next <= this.goesOnUntil) return;
    this.goesOnUntil = nextSignificant(this.text, next);
    if (!bracketsGoOn(this.text, this.goesOnUntil, this.writer.afterOperand())) this.closeBrackets();
  }

  /** `(1, 2 mm, aft (3, 4) mm`: the comma before `aft` ends the statement, since `aft (` is no member. */
  endBracketsBeforeComma(): void {
    const comma = this.writer.takeBack();
    this.closeBrackets();
    this.writer.push(SEPARATOR, comma.startOffset, comma.endOffset, undefined);
  }

  /** Ends every open round bracket here, told once at the outermost. */
  closeBrackets(): void {
    const opened = this.brackets[0];
    if (opened === undefined) return;
    const span = { start: opened.startOffset, end: opened.endOffset };
    this.problems.push({ kind: "unclosed-bracket", ...span, opened: span });
    const { lastEnd } = this.writer;
    for (let open = this.brackets.length; open > 0; open--)
      this.writer.push(CLOSE_BRACKET, lastEnd, lastEnd, undefined);
    this.brackets.length = 0;
  }

  /** At the first character of a line that is neither blank nor a comment's. */
  beginLine(first: number, column: number): void {
    if (this.opensMissing && column > this.indentation) this.openMissing(this.text.charAt(first));
    this.lineFirst = first;
    this.indentation = column;
    const character = this.text.charAt(first);
    if (!this.byIndentation || this.inBrackets() || character === "{") return;
    const kept = character === "}" ? column + 1 : column;
    while (this.inBlock() && this.blocks[this.blocks.length - 1]!.indentation >= kept) this.closeMissing();
  }

  /** Opens a block; returns where to read on. */
  openBlock(start: number): number {
    if (this.blocks.length >= deepest) return this.behindTooDeep(start, "{", "}");
    const token = this.writer.push(OPEN_BLOCK, start, start + 1, undefined);
    this.blocks.push({ token, indentation: this.indentation });
    return start + 1;
  }

  closeBlock(start: number): void {
    const top = this.blocks[this.blocks.length - 1];
    const startsLine = this.byIndentation && start === this.lineFirst;
    if (top === undefined || (startsLine && top.indentation < this.indentation)) {
      this.braceFaults++;
      return this.stray(start, "}");
    }
    this.blocks.pop();
    this.writer.push(CLOSE_BLOCK, start, start + 1, undefined);
  }

  /** At the end of the text. */
  closeAll(): void {
    this.closeBrackets();
    this.writer.keepNotesAsComments();
    while (this.inBlock()) this.closeMissing();
  }

  /** Supplies a closing brace that the text lacks, behind the last thing that was read. */
  private closeMissing(): void {
    const { token } = this.blocks.pop() as OpenBlock;
    const span = { start: token.startOffset, end: token.endOffset };
    const { lastEnd } = this.writer;
    this.braceFaults++;
    this.problems.push({ kind: "unclosed-block", ...span, opened: span });
    this.writer.push(CLOSE_BLOCK, lastEnd, lastEnd, undefined);
    this.writer.push(SEPARATOR, lastEnd, lastEnd, undefined);
  }

  /** Supplies an opening brace behind the line above, where that ends in a name or a text and has none: `axle front`. */
  private openMissing(character: string): void {
    const { writer } = this;
    const before = writer.back(2);
    const endsLine = writer.last === SEPARATOR && this.text.charAt(writer.back()?.startOffset ?? 0) !== ",";
    if (this.inBrackets() || this.blocks.length >= deepest || "{}".includes(character) || !endsLine) return;
    if (before?.tokenTypeIdx !== PATH && before?.tokenTypeIdx !== TEXT) return;
    writer.takeBack();
    const { lastEnd } = writer;
    this.braceFaults++;
    // What could not be read may have begun a line since.
    const start = Math.min(this.lineFirst, before.startOffset);
    this.problems.push({ kind: "unopened-block", start, end: lastEnd });
    const token = writer.push(OPEN_BLOCK, lastEnd, lastEnd, undefined);
    this.blocks.push({ token, indentation: this.indentation });
  }

  private stray(start: number, found: string): void {
    this.problems.push({ kind: "stray-closing", start, end: start + 1, found });
  }

  /** Leaves out what is nested deeper than anybody needs: the place behind the closing that matches. */
  private behindTooDeep(start: number, open: "(" | "{", close: ")" | "}"): number {
    const { text } = this;
    this.problems.push({ kind: "too-deep", start, end: start + 1, limit: deepest });
    let depth = 0;
    for (let at = start; at < text.length; at++) {
      const character = text.charAt(at);
      if (character === open) depth++;
      else if (character === close && --depth === 0) return at + 1;
      else if (open === "(" && "{}\n\r#".includes(character)) return at;
      else if (character === "#") at = lineEndAt(text, at);
    }
    return text.length;
  }
}
