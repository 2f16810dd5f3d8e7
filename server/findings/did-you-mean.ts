/**
 * Did you mean …? The one place that ranks candidates against a word that nobody knows.
 *
 * In: the word as written and everything that would be valid there. Out: the likely ones, best first.
 * Invariant: only ever returns members of `candidates`; bounded work whatever the length of the word.
 */
import { ourWordsFor } from "./trade-words.js";

/** Longer words are not compared letter by letter: nobody mistypes sixty letters by two. */
const longest = 60;

interface Ranked {
  readonly candidate: string;
  readonly score: number;
}

export function didYouMean(word: string, candidates: readonly string[], limit = 3): readonly string[] {
  const ranked: Ranked[] = [];
  for (const candidate of new Set(candidates)) {
    if (candidate === word) continue;
    const score = scoreOf(word, candidate);
    if (score !== undefined) ranked.push({ candidate, score });
  }
  // Ties go to the order of the candidates, which is the order of the vocabulary: the sort is stable.
  ranked.sort((a, b) => a.score - b.score);
  return ranked.slice(0, limit).map((entry) => entry.candidate);
}

/** Lower is likelier; undefined where the two have nothing in common. */
function scoreOf(word: string, candidate: string): number | undefined {
  if (word.length > longest || candidate.length > longest) return undefined;
  const a = plain(word);
  const b = plain(candidate);
  if (a === b) return 0;
  if (ourWordsFor(a).includes(candidate)) return 0.5;
  // One change for short words, more for long ones; a change to every letter is no likeness.
  const most = Math.min(a.length - 1, Math.max(1, Math.floor(Math.min(a.length, b.length) / 3)));
  if (Math.abs(a.length - b.length) <= most) {
    const changes = editDistance(a, b);
    if (changes <= most) return changes;
  }
  // Half typed: `spr` for `spring`.
  if (a.length >= 3 && b.startsWith(a)) return 3;
  if (sharesParts(a, b)) return 4;
  return undefined;
}

/** Case, underscores and camel case are how the same word is written elsewhere. */
function plain(word: string): string {
  return word
    .replace(/([a-z0-9])([A-Z])/g, "$1-$2")
    .replace(/[_\s]+/g, "-")
    .toLowerCase();
}

/** `corner` for `corner-bar`, `front-mass` for `mass-front`: the same parts, some left out or in another order. */
function sharesParts(a: string, b: string): boolean {
  const left = a.split("-");
  const right = b.split("-");
  const [few, many] = left.length <= right.length ? [left, right] : [right, left];
  return few.every((part) => part.length > 2 && many.includes(part));
}

/**
 * Insertions, deletions, replacements and swaps of neighbours that turn one word into the other
 * (optimal string alignment; three rows of the usual table).
 */
export function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let least = Math.min(at(last, j) + 1, at(row, j - 1) + 1, at(last, j - 1) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        least = Math.min(least, at(beforeLast, j - 2) + 1);
      }
      row.push(least);
    }
    beforeLast = last;
    last = row;
  }
  return at(last, b.length);
}

function at(row: readonly number[], index: number): number {
  return row[index] ?? Number.MAX_SAFE_INTEGER;
}
