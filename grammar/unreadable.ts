/**
 * Which lines of a text the formatter keeps as they are: those with anything that the grammar could
 * not read. In: what was parsed. Out: runs of whole lines, in text order; `undefined` where braces
 * do not match, since then nobody can say which block a line belongs to.
 *
 * Invariant: a run holds an entry wholly or not at all, and whatever stands in the text is in an
 * entry, in a comment or in a run.
 */
import type { Block, Comment, Entry } from "./ast.js";
import type { LineTable } from "./line-table.js";
import type { Parsed } from "./parse.js";
import type { SyntaxProblem } from "./problem.js";
import type { Span } from "./span.js";

export function unreadableLines(parsed: Parsed): readonly Span[] | undefined {
  const { text, document, problems } = parsed;
  if (problems.some(isBraceFault)) return undefined;
  const places = problems.filter(isUnreadable);
  return places.length === 0 ? [] : new Search(parsed).runsIn(document.entries, { start: 0, end: text.length }, places);
}

function isBraceFault(problem: SyntaxProblem): boolean {
  return problem.kind === "unclosed-block" || (problem.kind === "stray-closing" && problem.found === "}");
}

/** Some problems are told about things that were read all the same. */
function isUnreadable({ kind }: SyntaxProblem): boolean {
  return kind !== "not-utf8" && kind !== "too-long-name";
}

class Search {
  private readonly text: string;
  private readonly comments: readonly Comment[];
  private readonly lines: LineTable;

  constructor({ text, comments, lines }: Parsed) {
    this.text = text;
    this.comments = comments;
    this.lines = lines;
  }

  /** The runs of one block; `undefined` where one would have to reach beyond its braces. */
  runsIn(entries: readonly Entry[], inside: Span, places: readonly Span[]): readonly Span[] | undefined {
    const deeper: Span[] = [];
    const here = places.filter((place) => !entries.some((entry) => isInBlock(entry, place)));
    here.push(...this.leftOut(entries, inside));
    for (const entry of entries) {
      const inner = places.filter((place) => isInBlock(entry, place));
      if (inner.length === 0) continue;
      const { block } = entry as { readonly block: Block };
      const runs = this.runsIn(block.entries, { start: block.start + 1, end: block.end - 1 }, inner);
      if (runs === undefined) here.push(entry);
      else deeper.push(...runs);
    }
    const covering = merged(here.map((place) => this.grown(place, entries)));
    if (covering.some(({ start, end }) => start < inside.start || end > inside.end)) return undefined;
    const uncovered = deeper.filter((run) => !covering.some(({ start, end }) => start <= run.start && run.end <= end));
    return [...covering, ...uncovered].sort((a, b) => a.start - b.start);
  }

  /**
   * Between each two entries, from the first of what is neither blank, comma, comment nor note to
   * the last: the grammar left it out. Commas and comments in between and behind may belong to it.
   */
  private leftOut(entries: readonly Entry[], inside: Span): readonly Span[] {
    const gaps: Span[] = [];
    let behind = inside.start;
    for (const { start, end } of [...entries, { start: inside.end, end: inside.end }]) {
      gaps.push({ start: behind, end: start });
      behind = end;
    }
    const notes = entries.flatMap((entry) => entry.notes);
    return gaps.flatMap((gap) => this.unknownIn(gap, notes) ?? []);
  }

  private unknownIn(gap: Span, notes: readonly Span[]): Span | undefined {
    const isIn = ({ start, end }: Span) => gap.start <= start && end <= gap.end;
    let masked = this.text.slice(gap.start, gap.end);
    for (const { start, end } of [...this.comments, ...notes].filter(isIn)) {
      masked = masked.slice(0, start - gap.start) + " ".repeat(end - start) + masked.slice(end - gap.start);
    }
    // A comma that begins a line may have kept the brackets above it going.
    const beginsLine = gap.start === 0 ? /(?<=(?:^|[\r\n])\s*),/ : /(?<=[\r\n]\s*),/;
    const first = firstOf(masked.search(/[^\s,]/), masked.search(beginsLine));
    if (first < 0) return undefined;
    return { start: gap.start + first, end: gap.start + masked.trimEnd().length };
  }

  /** The whole lines around the place, and around every entry that reaches into them. */
  private grown(place: Span, entries: readonly Entry[]): Span {
    let run = this.wholeLines(place);
    for (;;) {
      const { start, end } = run;
      const touched = entries.filter((entry) => entry.start <= end && start <= entry.end);
      const next = this.wholeLines({
        start: Math.min(start, ...touched.map((entry) => entry.start)),
        end: Math.max(end, ...touched.map((entry) => entry.end)),
      });
      if (next.start === start && next.end === end) return run;
      run = next;
    }
  }

  private wholeLines({ start, end }: Span): Span {
    const { lines } = this;
    return { start: lines.lineStart(lines.position(start).line), end: lines.lineEnd(lines.position(end).line) };
  }
}

/** The smaller of two indices, of which -1 means none. */
function firstOf(a: number, b: number): number {
  return a < 0 || b < 0 ? Math.max(a, b) : Math.min(a, b);
}

function isInBlock(entry: Entry, { start, end }: Span): boolean {
  if (entry.kind === "row" || entry.block === undefined) return false;
  return entry.block.start < start && end < entry.block.end;
}

function merged(runs: readonly Span[]): readonly Span[] {
  const result: Span[] = [];
  for (const run of [...runs].sort((a, b) => a.start - b.start)) {
    const last = result[result.length - 1];
    if (last === undefined || run.start > last.end) result.push(run);
    else result[result.length - 1] = { start: last.start, end: Math.max(last.end, run.end) };
  }
  return result;
}
