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
import { holderOf, hull, within } from "./span-search.js";

export function unreadableLines(parsed: Parsed): readonly Span[] | undefined {
  const { text, document, problems } = parsed;
  if (problems.some(isBraceFault)) return undefined;
  const places = problems.filter(isUnreadable);
  return places.length === 0 ? [] : new Search(parsed).runsIn(document.entries, { start: 0, end: text.length }, places);
}

function isBraceFault(problem: SyntaxProblem): boolean {
  return (
    problem.kind === "unclosed-block" ||
    problem.kind === "unopened-block" ||
    (problem.kind === "stray-closing" && problem.found === "}")
  );
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
    const here: Span[] = [];
    const deeper: Span[] = [];
    for (const [entry, inner] of this.byEntry(entries, places)) {
      const block = entry === undefined ? undefined : blockOf(entry);
      const runs = block === undefined ? undefined : this.runsIn(block.entries, insideOf(block), inner);
      if (runs !== undefined) deeper.push(...runs);
      else if (entry === undefined) here.push(...inner);
      else here.push(entry);
    }
    here.push(...this.leftOut(entries, inside));
    const covering = merged(here.map((place) => this.grown(place, entries)));
    if (covering.some(({ start, end }) => start < inside.start || end > inside.end)) return undefined;
    return merged([...covering, ...deeper.filter((run) => holderOf(covering, run) === undefined)]);
  }

  /** The places by the entry in whose block they are; under `undefined` those that are in none. */
  private byEntry(entries: readonly Entry[], places: readonly Span[]): Map<Entry | undefined, Span[]> {
    const groups = new Map<Entry | undefined, Span[]>();
    for (const place of places) {
      const entry = holderOf(entries, place);
      const block = entry === undefined ? undefined : blockOf(entry);
      const isInside = block !== undefined && block.start < place.start && place.end < block.end;
      const group = groups.get(isInside ? entry : undefined);
      if (group === undefined) groups.set(isInside ? entry : undefined, [place]);
      else group.push(place);
    }
    return groups;
  }

  /**
   * Between each two entries, from the first of what is neither blank, comma, comment nor note to
   * the last: the grammar left it out. Commas and comments in between and behind may belong to it.
   */
  private leftOut(entries: readonly Entry[], inside: Span): readonly Span[] {
    const found: Span[] = [];
    let behind = inside.start;
    for (const entry of entries) {
      found.push(...this.unknownIn({ start: behind, end: entry.start }, entry.notes));
      behind = entry.end;
    }
    found.push(...this.unknownIn({ start: behind, end: inside.end }, []));
    return found;
  }

  private unknownIn(gap: Span, notes: readonly Span[]): readonly Span[] {
    let masked = "";
    let behind = gap.start;
    for (const { start, end } of [...within(this.comments, gap), ...notes].sort((a, b) => a.start - b.start)) {
      masked += this.text.slice(behind, start) + " ".repeat(end - start);
      behind = end;
    }
    masked += this.text.slice(behind, gap.end);
    // A comma that begins a line may have kept the brackets above it going.
    const beginsLine = gap.start === 0 ? /(?<=(?:^|[\r\n])\s*),/ : /(?<=[\r\n]\s*),/;
    const first = firstOf(masked.search(/[^\s,]/), masked.search(beginsLine));
    return first < 0 ? [] : [{ start: gap.start + first, end: gap.start + masked.trimEnd().length }];
  }

  /** The whole lines around the place, and around every entry that reaches into them. */
  private grown(place: Span, entries: readonly Entry[]): Span {
    let run = this.wholeLines(place);
    for (;;) {
      const next = this.wholeLines(hull(entries, run));
      if (next.start === run.start && next.end === run.end) return run;
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

function blockOf(entry: Entry): Block | undefined {
  return entry.kind === "statement" ? entry.block : undefined;
}

function insideOf({ start, end }: Block): Span {
  return { start: start + 1, end: end - 1 };
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
