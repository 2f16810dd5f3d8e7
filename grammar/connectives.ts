/**
 * The words that join parts of a statement and are therefore never units: in `3 of 5`,
 * `8 x 30 mm` and `2 mm for heave` the word after the number is not what it is counted in.
 * The lexer does not know which units exist, so this list is all that it goes by.
 *
 * Invariant: no unit of `server/quantities` is spelled like one of these (a test there holds it).
 */
export const connectives: ReadonlySet<string> = new Set([
  "above",
  "against",
  "and",
  "at",
  "below",
  "between",
  "by",
  "crossed",
  "for",
  "from",
  "of",
  "on",
  "or",
  "per",
  "then",
  "to",
  "with",
  "within",
  "x",
]);

/** Whether a word may begin with this code unit and be a connective: a test before the costlier one. */
const firstLetters = new Uint8Array(128);
for (const word of connectives) firstLetters[word.charCodeAt(0)] = 1;

/** Whether `word`, whose first code unit is `first`, joins rather than measures. */
export function isConnective(word: string, first: number): boolean {
  return first < 128 && firstLetters[first] === 1 && connectives.has(word);
}
