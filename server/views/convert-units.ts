/**
 * Rewrites values in the units of the other system, here or in the whole file: a refactoring,
 * not a finding. In: a parsed file, the system wanted, and the part of the text to convert.
 * Out: edits of digits and units only.
 *
 * A converted number says the same as the written one (`converted-number.ts` says how closely), so
 * the car stays the same, and converting back gives the written number again. What cannot be told exactly (a unit behind a bracketed sum) stays as it is.
 *
 * Invariant: pure; a file without units of the other system comes out unchanged.
 */
import type { Parsed, Span } from "../../grammar/index.js";
import type { TextEdit } from "../findings/finding.js";
import { convertedNumber } from "./converted-number.js";
import { type Covered, coveredIn, entriesOf, itemsOf } from "./covered-numbers.js";
import { counterpart, type UnitTarget } from "./unit-counterparts.js";

export type { UnitTarget } from "./unit-counterparts.js";

/** @param within convert only values that this part of the text touches; the whole file without it. */
export function convertUnits(uri: string, parsed: Parsed, target: UnitTarget, within?: Span): readonly TextEdit[] {
  const edits: TextEdit[] = [];
  for (const entry of entriesOf(parsed.document.entries)) {
    for (const covered of coveredIn(itemsOf(entry))) {
      if (within === undefined || touches(covered, within)) edits.push(...converted(uri, covered, target));
    }
  }
  return edits;
}

function touches({ unit, numbers }: Covered, span: Span): boolean {
  const start = Math.min(unit.start, ...numbers.map((number) => number.start));
  return start <= span.end && span.start <= unit.end;
}

function converted(uri: string, { unit, numbers }: Covered, target: UnitTarget): readonly TextEdit[] {
  const text = counterpart(unit.text, target);
  if (text === undefined) return [];
  const edits: TextEdit[] = [];
  for (const number of numbers) {
    const newText = convertedNumber(number.digits, unit.text, text);
    if (newText === undefined) return [];
    edits.push({ uri, span: { start: number.start, end: number.start + number.digits.length }, newText });
  }
  return [...edits, { uri, span: { start: unit.start, end: unit.end }, newText: text }];
}
