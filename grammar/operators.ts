/**
 * `+`, `-` and what people write for them: the sign of a number, an operator between two values, or
 * the minus before one. A name may hold hyphens, so where blanks stand decides.
 *
 * Invariant: every function leaves the scanner behind what it read.
 */
import { BLANK, classOf, isDigit } from "./characters.js";
import type { SyntaxProblem } from "./problem.js";
import type { Scanner } from "./scanner.js";
import { NEGATE, PATH, QUANTITY, type TokenWriter } from "./token-writer.js";
import * as tokens from "./tokens.js";
import { indexOf } from "./tokens.js";

const PLUS = indexOf(tokens.Plus);
const MINUS = indexOf(tokens.Minus);
const DOTS = indexOf(tokens.Dots);

export class Operators {
  constructor(
    private readonly text: string,
    private readonly scanner: Scanner,
    private readonly writer: TokenWriter,
    private readonly problems: SyntaxProblem[],
  ) {}

  number(): void {
    const start = this.scanner.position;
    const quantity = this.scanner.quantity();
    if (quantity !== undefined) this.writer.push(QUANTITY, start, quantity.end, quantity);
  }

  /** At a `+` or a `-`. */
  sign(character: "+" | "-", start: number): void {
    const { text, writer } = this;
    const afterOperand = writer.afterOperand();
    const glued = afterOperand && writer.lastEnd === start;
    const next = text.charCodeAt(start + 1);
    if (!glued && (isDigit(next) || (next === 46 && isDigit(text.charCodeAt(start + 2))))) return this.number();
    if (character === "+") return this.mark(PLUS, start, 1);
    const blankAfter = start + 1 >= text.length || (classOf(next) & BLANK) !== 0 || next === 10 || next === 13;
    if (!afterOperand || !(glued || blankAfter)) return this.negation(start);
    if (glued) this.tellGlued(start);
    this.mark(MINUS, start, 1);
  }

  private tellGlued(start: number): void {
    let end = start + 1;
    while ((classOf(this.text.charCodeAt(end)) & BLANK) !== 0) end++;
    this.problems.push({ kind: "spaceless-minus", start, end, suggestion: " - " });
  }

  /** Two in a row are told, and the second dropped: nobody needs them, and each would deepen the tree. */
  private negation(start: number): void {
    if (this.writer.last !== NEGATE) return this.mark(NEGATE, start, 1);
    let end = start + 1;
    while (this.text.startsWith("--", end)) end++;
    this.scanner.position = end;
    this.problems.push({
      kind: "unexpected",
      start,
      end,
      found: this.text.slice(start, Math.min(end, start + 40)),
      expected: ["value"],
    });
  }

  /** At a `.` that is part of no name. */
  dot(start: number): void {
    const next = this.text.charCodeAt(start + 1);
    if (next === 46) return this.mark(DOTS, start, 2);
    if (isDigit(next)) return this.number();
    this.scanner.position = start + 1;
    this.problems.push({ kind: "unexpected", start, end: start + 1, found: ".", expected: ["name"] });
  }

  /** The `x` of `8x30`. */
  times(start: number): void {
    const end = start + 1;
    this.scanner.position = end;
    const name = { kind: "name", start, end, text: "x" } as const;
    this.writer.push(PATH, start, end, { kind: "path", start, end, segments: [name] });
  }

  /** A typographic character is told, and read as the plain one that it stands for. */
  pasted(start: number, suggestion: string): void {
    const end = start + 1;
    this.problems.push({ kind: "bad-character", start, end, found: this.text.charAt(start), suggestion });
    if (suggestion === "x") this.times(start);
    else if (suggestion === "..") this.mark(DOTS, start, 1);
    else if (suggestion === "-") this.pastedMinus(start);
    else this.scanner.position = end;
  }

  private pastedMinus(start: number): void {
    const { text, scanner, writer } = this;
    const glued = writer.afterOperand() && writer.lastEnd === start;
    if (glued || !isDigit(text.charCodeAt(start + 1))) return this.sign("-", start);
    scanner.position = start + 1;
    const quantity = scanner.quantity();
    if (quantity === undefined) return;
    const value = quantity.value === 0 ? 0 : -quantity.value;
    writer.push(QUANTITY, start, quantity.end, { ...quantity, start, value, digits: `-${quantity.digits}` });
  }

  private mark(type: number, start: number, width: number): void {
    this.scanner.position = start + width;
    this.writer.push(type, start, start + width, undefined);
  }
}
