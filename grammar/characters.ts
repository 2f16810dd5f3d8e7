/**
 * What each character can be part of: one table look-up for ASCII, Unicode properties beyond it.
 *
 * Invariant: a lone surrogate belongs to no class, so the lexer calls it a bad character. U+FFFD,
 * which stands where bytes were not UTF-8, counts as a letter: the name around it stays whole.
 */
export const LETTER = 1;
export const DIGIT = 2;
export const BLANK = 4;
/** May stand inside a name: letters, digits, `_` and `-`. */
export const NAME = 8;
/** May stand inside a unit's word: letters, digits, `_`, `%`. */
export const UNIT = 16;

const classes = new Uint8Array(128);
for (let code = 0; code < 128; code++) {
  const character = String.fromCharCode(code);
  if (/[A-Za-z_]/.test(character)) classes[code] = LETTER | NAME | UNIT;
  else if (/[0-9]/.test(character)) classes[code] = DIGIT | NAME | UNIT;
  else if (character === "-") classes[code] = NAME;
  else if (character === "%") classes[code] = UNIT;
  else if (/[ \t\f\v]/.test(character)) classes[code] = BLANK;
}

/** The classes of the code unit; `NaN` (past the end of the text) has none. */
export function classOf(code: number): number {
  if (code < 128) return classes[code] as number;
  return code >= 128 ? classBeyondAscii(code) : 0;
}

function classBeyondAscii(code: number): number {
  const character = String.fromCharCode(code);
  if (/[\p{L}\ufffd]/u.test(character)) return LETTER | NAME | UNIT;
  if (/[\p{M}\p{Nd}]/u.test(character)) return NAME | UNIT;
  if (character === "°") return UNIT;
  return isWideBlank(code) ? BLANK : 0;
}

/** Blanks other than ASCII's, among them the no-break spaces that word processors leave behind. */
function isWideBlank(code: number): boolean {
  return code === 0xfeff || /[\p{Zs}\u0085\u2028\u2029]/u.test(String.fromCharCode(code));
}

/** `²`, `³` and the other raised digits, the raised minus too. */
export function isRaised(code: number): boolean {
  return code === 0xb2 || code === 0xb3 || code === 0xb9 || (code >= 0x2070 && code <= 0x207b);
}

/** `·` and `⋅`, which multiply units. */
export function isMiddleDot(code: number): boolean {
  return code === 0xb7 || code === 0x22c5;
}

export function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

/** A plain character that a pasted one stands for, if it stands for one. */
export function plainCharacter(character: string): string | undefined {
  if ("\u2212\u2013\u2012\uff0d".includes(character)) return "-";
  if ("\u201c\u201d\u201e\u00ab\u00bb".includes(character)) return '"';
  if ("\u00d7".includes(character)) return "x";
  if ("\u2026".includes(character)) return "..";
  return undefined;
}
