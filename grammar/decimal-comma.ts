/**
 * `12,5 mm` where 12.5 mm was meant. In braces a comma also ends a statement, and rows of a table
 * may begin with a number; so only digits glued to both sides of the comma, with no row behind it,
 * make a decimal comma.
 *
 * Invariant: where the comma separates, nothing has changed.
 */
import type { Quantity } from "./ast.js";
import { isDigit } from "./characters.js";
import type { SyntaxProblem } from "./problem.js";
import type { Scanner } from "./scanner.js";
import { OPEN_BLOCK, QUANTITY, SEPARATOR, type TokenWriter } from "./token-writer.js";

/** At a comma outside of brackets: reads the number on, tells it and returns true; false where the comma separates. */
export function joinDecimalComma(
  comma: number,
  scanner: Scanner,
  writer: TokenWriter,
  problems: SyntaxProblem[],
  inBlock: boolean,
): boolean {
  const { text } = scanner;
  const token = writer.back();
  if (
    token === undefined ||
    writer.last !== QUANTITY ||
    token.endOffset !== comma ||
    !isDigit(text.charCodeAt(comma + 1))
  ) {
    return false;
  }
  const whole = token.leaf as Quantity;
  if (whole.unit !== undefined || !/^[+-]?\d+$/.test(whole.digits)) return false;
  const before = writer.back(2)?.tokenTypeIdx ?? SEPARATOR;
  const isKey = before === SEPARATOR || before === OPEN_BLOCK;
  if (!isKey && inBlock && isRowAt(comma + 1, scanner, problems)) return false;

  let end = comma + 1;
  while (isDigit(text.charCodeAt(end))) end++;
  scanner.position = end;
  const digits = `${whole.digits},${text.slice(comma + 1, end)}`;
  const suggestion = digits.replace(",", ".");
  problems.push({ kind: "decimal-comma", start: whole.start, end, suggestion });
  const unit = scanner.unit();
  token.endOffset = writer.lastEnd = unit?.end ?? end;
  token.leaf = { kind: "quantity", start: whole.start, end: token.endOffset, value: Number(suggestion), digits, unit };
  return true;
}

/** Whether a row of a table (`5 mm/s: …`) begins with the number at `start`. */
function isRowAt(start: number, scanner: Scanner, problems: SyntaxProblem[]): boolean {
  const told = problems.length;
  const { position } = scanner;
  scanner.position = start;
  scanner.quantity();
  scanner.skipBlanks();
  const isRow = scanner.text.charAt(scanner.position) === ":";
  problems.length = told;
  scanner.position = position;
  return isRow;
}
