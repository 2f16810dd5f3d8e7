/**
 * The canonical layout: a tree and its comments to text.
 *
 * One statement a line, two spaces a level, at most one empty line between two of them, no columns
 * lined up. A block stands on its statement's line where it is a short leaf (nothing in it has a
 * block of its own, no comment inside, the line fits) and is of a kind that only holds properties:
 * what can hold parts of a car or an element's connections always gets its lines, so that a
 * changed fact is a changed line.
 *
 * Invariant: only blanks, newlines and the commas between statements change.
 */
import type { Block, Comment, Document, Entry, Item, Note, Statement, Unit } from "./ast.js";
import type { Span } from "./span.js";
import { holderOf, holdsAny, within } from "./span-search.js";
import { type Concept, findWord, opensFor, words } from "./vocabulary/index.js";

/** Columns that a line with a block on it may take, its comment not counted. */
const widest = 120;

export interface LayoutInput {
  readonly text: string;
  readonly document: Document;
  readonly comments: readonly Comment[];
  /** Whole lines to be kept as they are, in text order. */
  readonly kept: readonly Span[];
}

/** Lines without their line breaks. */
export function layOut(input: LayoutInput): readonly string[] {
  const layout = new Layout(input);
  layout.body(input.document.entries, { start: 0, end: input.text.length }, 0, "file");
  return layout.lines;
}

type Piece = Entry | Comment | Note | (Span & { readonly kind: "kept" });

class Layout {
  readonly lines: string[] = [];
  private readonly text: string;
  private readonly comments: readonly Comment[];
  private readonly kept: readonly Span[];

  constructor({ text, comments, kept }: LayoutInput) {
    this.text = text;
    this.comments = comments;
    this.kept = kept;
  }

  /** Writes what stands between two braces, or in the document. */
  body(entries: readonly Entry[], inside: Span, depth: number, concept: Concept | undefined): void {
    let behind = inside.start;
    let first = true;
    for (const piece of this.piecesOf(entries, inside)) {
      if (piece.kind === "comment" && this.isOnLineOf(behind, piece)) {
        this.append(`  ${piece.text}`);
      } else {
        if (!first && this.hasEmptyLine(behind, piece.start)) this.lines.push("");
        this.piece(piece, depth, concept);
        first = false;
      }
      behind = piece.end;
    }
  }

  private piece(piece: Piece, depth: number, concept: Concept | undefined): void {
    const indentation = "  ".repeat(depth);
    if (piece.kind === "kept") this.lines.push(this.text.slice(piece.start, piece.end));
    else if (piece.kind === "comment") this.lines.push(indentation + piece.text);
    else if (piece.kind === "note") this.lines.push(`${indentation}## ${piece.text}`.trimEnd());
    else if (piece.kind === "row") this.lines.push(indentation + this.header(piece));
    else this.statement(piece, depth, concept);
  }

  private statement(statement: Statement, depth: number, concept: Concept | undefined): void {
    const { block } = statement;
    const indentation = "  ".repeat(depth);
    const header = indentation + this.header(statement);
    if (block === undefined) return void this.lines.push(header);
    const opened = openedBy(statement, concept);
    const opening = holdsAny(this.comments, headerSpan(statement)) ? header : `${header} {`;
    const leaf = opened !== undefined && spreadConcepts().has(opened) ? undefined : this.leaf(block);
    if (leaf !== undefined && opening.length + leaf.length <= widest) return void this.lines.push(opening + leaf);
    this.lines.push(opening);
    this.body(block.entries, { start: block.start + 1, end: block.end - 1 }, depth + 1, opened);
    this.lines.push(`${indentation}}`);
  }

  /** What follows the brace where the block stands on one line; `undefined` where it may not. */
  private leaf({ start, end, entries }: Block): string | undefined {
    if (holdsAny(this.comments, { start, end }) || holdsAny(this.kept, { start, end })) return undefined;
    const isPlain = (entry: Entry) => entry.notes.length === 0 && (entry.kind === "row" || entry.block === undefined);
    if (!entries.every(isPlain)) return undefined;
    return entries.length === 0 ? "}" : ` ${entries.map((entry) => this.header(entry)).join(", ")} }`;
  }

  /** All but the block; as it was written, up to its brace, where there is a comment in it. */
  private header(entry: Entry): string {
    const span = headerSpan(entry);
    if (holdsAny(this.comments, span)) return this.text.slice(span.start, span.end);
    if (entry.kind === "row") return `${show(entry.key)}: ${show(entry.value)}`;
    const [name, value] = entry.items;
    if (entry.equals !== undefined && name !== undefined && value !== undefined) {
      return `${show(entry.head)} ${show(name)} = ${show(value)}`;
    }
    return [entry.head, ...entry.items].map(show).join(" ");
  }

  /** Entries, their notes, the comments between them and the lines to keep, in text order. */
  private piecesOf(entries: readonly Entry[], inside: Span): readonly Piece[] {
    const kept = outside(entries, within(this.kept, inside)).map((span) => ({ ...span, kind: "kept" as const }));
    const comments = outside(entries, within(this.comments, inside));
    const readable: readonly Piece[] = [...entries, ...entries.flatMap((entry) => entry.notes), ...comments];
    const laidOut = kept.length === 0 ? readable : readable.filter((piece) => holderOf(kept, piece) === undefined);
    return [...laidOut, ...kept].sort((a, b) => a.start - b.start);
  }

  private append(text: string): void {
    this.lines[this.lines.length - 1] += text;
  }

  private isOnLineOf(behind: number, { start }: Span): boolean {
    return this.lines.length > 0 && !/[\n\r]/.test(this.text.slice(behind, start));
  }

  private hasEmptyLine(from: number, to: number): boolean {
    return (this.text.slice(from, to).match(/\r\n?|\n/g)?.length ?? 0) > 1;
  }
}

/** From the first word to the brace, the brace included. */
function headerSpan(entry: Entry): Span {
  const end = entry.kind === "statement" && entry.block !== undefined ? entry.block.start + 1 : entry.end;
  return { start: entry.start, end };
}

/** Of spans in text order, those that no entry holds. */
function outside<T extends Span>(entries: readonly Entry[], spans: readonly T[]): readonly T[] {
  let next = 0;
  return spans.filter((span) => {
    while (next < entries.length && entries[next]!.end <= span.start) next++;
    const entry = entries[next];
    return entry === undefined || span.start <= entry.start;
  });
}

let spread: ReadonlySet<Concept> | undefined;

/** The kinds of block that can hold more than properties and laws, and those that the vocabulary names. */
function spreadConcepts(): ReadonlySet<Concept> {
  spread ??= new Set([
    ...words.filter(({ role }) => !["property", "law", "connection"].includes(role)).flatMap((word) => word.in),
    ...words.filter((word) => word.spread === true).flatMap(({ opens }) => opens ?? []),
  ]);
  return spread;
}

/** The kind of block that the statement opens, where the vocabulary knows the statement. */
function openedBy({ head, items }: Statement, concept: Concept | undefined): Concept | undefined {
  const [name] = head.segments;
  const word = concept === undefined || head.segments.length > 1 ? undefined : findWord(concept, name?.text ?? "");
  const plainWords = items.flatMap((item) =>
    item.kind === "path" && item.segments.length === 1 ? [item.segments[0]!.text] : [],
  );
  return word === undefined ? undefined : opensFor(word, plainWords);
}

function show(item: Item): string {
  switch (item.kind) {
    case "quantity":
      return item.digits + showUnit(item.unit);
    case "tuple":
      // A tuple of one, which nothing takes, is told from a group by its comma.
      return `(${item.members.map(show).join(", ")}${item.members.length === 1 ? "," : ""})${showUnit(item.unit)}`;
    case "group":
      return `(${show(item.inner)})${showUnit(item.unit)}`;
    case "range":
      return `${show(item.from)} .. ${show(item.to)}`;
    case "binary":
      return `${show(item.left)} ${item.operator} ${show(item.right)}`;
    case "negation":
      return `-${show(item.operand)}`;
    case "text":
      return `"${item.value}"`;
    case "path":
      return item.segments.map(({ text }) => text).join(".");
  }
}

function showUnit(unit: Unit | undefined): string {
  return unit === undefined ? "" : ` ${unit.text}`;
}
