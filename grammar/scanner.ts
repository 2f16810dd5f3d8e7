/**
 * Reads the leaves of the tree straight from the characters: numbers with their units, dotted
 * paths, and points made of plain numbers. In: the text and a place. Out: a finished node, with
 * `position` moved behind it; problems go to the list given.
 *
 * This is the inner loop of the parser's speed, hence plain loops over character codes.
 *
 * Invariant: a method that returns `undefined` has left `position` where it was; `quantity` alone
 * goes on behind a number that no double can hold.
 */
import type { Name, Path, Quantity, Tuple, Unit } from "./ast.js";
import { BLANK, classOf, DIGIT, isDigit, isMiddleDot, isRaised, LETTER, NAME, UNIT } from "./characters.js";
import { isConnective } from "./connectives.js";
import type { SyntaxProblem } from "./problem.js";

export const longestName = 200;

const SPACE = 32;
const BRACKET = 40;
const CLOSE = 41;
const STAR = 42;
const PLUS = 43;
const COMMA = 44;
const MINUS = 45;
const DOT = 46;
const SLASH = 47;
const ONE = 49;
const CARET = 94;
const LETTER_X = 120;

/** 10^k is exact in a double up to k = 22. */
const powersOfTen = Array.from({ length: 23 }, (_, exponent) => Number(`1e${exponent}`));

export class Scanner {
  position = 0;

  constructor(
    readonly text: string,
    readonly problems: SyntaxProblem[],
  ) {}

  skipBlanks(): void {
    const text = this.text;
    let at = this.position;
    for (;;) {
      const code = text.charCodeAt(at);
      if (code !== SPACE && (classOf(code) & BLANK) === 0) break;
      at++;
    }
    this.position = at;
  }

  /** A dotted path; the caller has seen a letter at `position`. A dot with no name after it is told and left out. */
  path(): Path {
    const start = this.position;
    const first = this.name();
    if (this.text.charCodeAt(this.position) !== DOT) {
      return { kind: "path", start, end: this.position, segments: [first] };
    }
    const segments: Name[] = [first];
    while (this.text.charCodeAt(this.position) === DOT) {
      const after = this.text.charCodeAt(this.position + 1);
      if (after === DOT) break;
      this.position++;
      if ((classOf(after) & LETTER) === 0) {
        const dot = { start: this.position - 1, end: this.position };
        this.problems.push({ kind: "unexpected", ...dot, found: ".", expected: ["name"] });
        break;
      }
      segments.push(this.name());
    }
    return { kind: "path", start, end: segments[segments.length - 1]!.end, segments };
  }

  private name(): Name {
    const text = this.text;
    const start = this.position;
    let end = start + 1;
    while ((classOf(text.charCodeAt(end)) & NAME) !== 0) end++;
    if (text.charCodeAt(end - 1) === MINUS) end = this.beforeGluedMinus(end);
    if (end - start > longestName) this.problems.push({ kind: "too-long-name", start, end, limit: longestName });
    this.position = end;
    return { kind: "name", start, end, text: text.slice(start, end) };
  }

  /** In `a- b` the minus was meant to subtract; in `a-` at the end of what is being typed it is part of the name. */
  private beforeGluedMinus(end: number): number {
    let after = end;
    while ((classOf(this.text.charCodeAt(after)) & BLANK) !== 0) after++;
    const code = this.text.charCodeAt(after);
    const operand = code === BRACKET || (after > end && (classOf(code) & (LETTER | DIGIT)) !== 0);
    return operand ? end - 1 : end;
  }

  /**
   * A number with its unit, the sign included where one stands at `position`. A number that no
   * double can hold, or that is not written as one (`1.2.3`), is told; the former is `undefined`
   * *with* `position` moved behind its unit, so that the caller goes on there.
   */
  quantity(): Quantity | undefined {
    const start = this.position;
    const value = this.number();
    const end = this.position;
    if (Number.isNaN(value)) {
      this.unit();
      return undefined;
    }
    const digits = this.text.slice(start, end);
    const unit = this.unit();
    return { kind: "quantity", start, end: unit === undefined ? end : unit.end, value, digits, unit };
  }

  /** The value of the number at `position`, or NaN (told as a problem) where it has none; moves behind it. */
  private number(): number {
    const text = this.text;
    const start = this.position;
    let at = start;
    let code = text.charCodeAt(at);
    if (code === MINUS || code === PLUS) code = text.charCodeAt(++at);
    const first = at;
    let mantissa = 0;
    for (; isDigit(code); code = text.charCodeAt(++at)) mantissa = mantissa * 10 + (code - 48);
    let decimals = 0;
    if (code === DOT && isDigit(text.charCodeAt(at + 1))) {
      const point = at;
      for (code = text.charCodeAt(++at); isDigit(code); code = text.charCodeAt(++at))
        mantissa = mantissa * 10 + (code - 48);
      decimals = at - point - 1;
    }
    this.position = at;
    // Fifteen digits fit a double exactly, and so does the power of ten: the quotient is then correctly rounded.
    const plain = at - first <= 15 && decimals <= 22 && code !== DOT && (code | 32) !== 101;
    if (!plain) return this.unusualNumber(start);
    const size = decimals === 0 ? mantissa : mantissa / powersOfTen[decimals]!;
    return text.charCodeAt(start) === MINUS && size !== 0 ? -size : size;
  }

  /** Exponents, many digits, and numbers written wrongly; `position` is behind the plain part. */
  private unusualNumber(start: number): number {
    const text = this.text;
    let at = this.position;
    if ((text.charCodeAt(at) | 32) === 101) {
      const sign = text.charCodeAt(at + 1);
      const digits = sign === PLUS || sign === MINUS ? at + 2 : at + 1;
      if (isDigit(text.charCodeAt(digits))) for (at = digits; isDigit(text.charCodeAt(at)); ) at++;
    }
    const value = Number(text.slice(start, at));
    const end = this.behindStrayDots(at);
    this.position = end;
    if (end > at || !Number.isFinite(value)) {
      this.problems.push({ kind: "bad-number", start, end, found: text.slice(start, end) });
    }
    if (!Number.isFinite(value)) return Number.NaN;
    return value === 0 ? 0 : value;
  }

  /** Behind the rest of `1.2.3` or `5.`; a range's two dots are not the number's. */
  private behindStrayDots(at: number): number {
    const text = this.text;
    let end = at;
    while (text.charCodeAt(end) === DOT && text.charCodeAt(end + 1) !== DOT) {
      end++;
      while (isDigit(text.charCodeAt(end))) end++;
    }
    return end;
  }

  /** The unit that binds to what ends at `position`, blanks between allowed. */
  unit(): Unit | undefined {
    const text = this.text;
    const before = this.position;
    let start = before;
    let first = text.charCodeAt(start);
    while (first === SPACE || (classOf(first) & BLANK) !== 0) first = text.charCodeAt(++start);
    if ((classOf(first) & UNIT) === 0) return undefined;
    const reciprocal = first === ONE && text.charCodeAt(start + 1) === SLASH;
    if ((classOf(first) & DIGIT) !== 0 && !reciprocal) return undefined;
    const end = this.unitEnd(reciprocal ? start + 1 : this.unitFactorEnd(start));
    if (reciprocal && end === start + 1) return undefined;
    if (this.isWordInstead(start, end, first)) return undefined;
    this.position = end;
    return { kind: "unit", start, end, text: text.slice(start, end) };
  }

  /** The end of `*b/c^2` and so on, from behind the first factor. */
  private unitEnd(from: number): number {
    const text = this.text;
    let at = from;
    for (;;) {
      const operator = text.charCodeAt(at);
      if (operator !== STAR && operator !== SLASH && !isMiddleDot(operator)) return at;
      const kind = classOf(text.charCodeAt(at + 1));
      if ((kind & UNIT) === 0 || (kind & DIGIT) !== 0) return at;
      const end = this.unitFactorEnd(at + 1);
      if (this.isNameGoingOn(end)) return at;
      at = end;
    }
  }

  /** The end of one word with its power: `mm`, `m^2`, `s^-1`, `m²`, `%`. */
  private unitFactorEnd(start: number): number {
    const text = this.text;
    let at = start;
    while ((classOf(text.charCodeAt(at)) & UNIT) !== 0) at++;
    const code = text.charCodeAt(at);
    if (code === CARET) {
      let digits = at + 1;
      if (text.charCodeAt(digits) === MINUS) digits++;
      if (!isDigit(text.charCodeAt(digits))) return at;
      while (isDigit(text.charCodeAt(digits))) digits++;
      return digits;
    }
    while (isRaised(text.charCodeAt(at))) at++;
    return at;
  }

  /** A connective (`3 of 5`, `8x30`), a name with hyphens or a dotted path is not a unit. */
  private isWordInstead(start: number, end: number, first: number): boolean {
    const text = this.text;
    if (this.isNameGoingOn(end) || (first === LETTER_X && isDigit(text.charCodeAt(start + 1)))) return true;
    return isConnective(text.slice(start, end), first);
  }

  private isNameGoingOn(end: number): boolean {
    const after = this.text.charCodeAt(end);
    return after === MINUS || (after === DOT && this.text.charCodeAt(end + 1) !== DOT);
  }

  /** `(n, n, …) unit`: a tuple of plain numbers with nothing unusual in it, or `undefined`. */
  point(): Tuple | undefined {
    const text = this.text;
    const start = this.position;
    const told = this.problems.length;
    const members: Quantity[] = [];
    this.position = start + 1;
    for (;;) {
      let code = text.charCodeAt(this.position);
      while (code === SPACE) code = text.charCodeAt(++this.position);
      if (code === MINUS || code === PLUS) code = text.charCodeAt(this.position + 1);
      if (!isDigit(code)) break;
      const member = this.quantity();
      if (member === undefined) break;
      members.push(member);
      for (code = text.charCodeAt(this.position); code === SPACE; ) code = text.charCodeAt(++this.position);
      if (code === CLOSE && members.length > 1 && this.problems.length === told) {
        const end = ++this.position;
        const unit = this.unit();
        return { kind: "tuple", start, end: unit === undefined ? end : unit.end, members, unit };
      }
      if (code !== COMMA) break;
      this.position++;
    }
    this.position = start;
    this.problems.length = told;
    return undefined;
  }
}
