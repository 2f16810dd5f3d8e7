/**
 * Reads a text of which the last version is at hand: what stands before the change is taken over as it was read, at every depth
 * of the blocks around it, and so is what stands behind where nothing has moved.
 *
 * In: the new text and the last one with its tree. Out: what `parse` would give, node by node.
 * Only between two texts without a problem: where the grammar has to help itself, a brace may reach anywhere.
 */
import type { Block, Comment, Entry, Statement } from "./ast.js";
import { LineTable } from "./line-table.js";
import { parse, type Parsed, read } from "./parse.js";

export function reparse(text: string, before: Parsed): Parsed {
  if (before.problems.length > 0) return parse(text);
  return new Splice(text, before).whole() ?? parse(text);
}

/** A closed block with the statement that it belongs to. */
type Opened = Statement & { readonly block: Block };

class Splice {
  readonly #text: string;
  readonly #before: Parsed;
  /** Where the changed part begins in both texts, where it ends in the old one, and how far what follows has moved. */
  readonly #from: number;
  readonly #oldEnd: number;
  readonly #moved: number;
  /** Of what is read anew: its comments, and where it begins and ends. */
  readonly #comments: Comment[] = [];
  #readFrom = Number.POSITIVE_INFINITY;
  #readTo = 0;

  constructor(text: string, before: Parsed) {
    this.#text = text;
    this.#before = before;
    const old = before.text;
    this.#from = samePrefix(text, old);
    this.#oldEnd = old.length - sameSuffix(text, old, Math.min(text.length, old.length) - this.#from);
    this.#moved = text.length - old.length;
  }

  /** Undefined where it cannot be had piece by piece. */
  whole(): Parsed | undefined {
    const { document, comments } = this.#before;
    const text = this.#text;
    const entries = this.#level(document.entries, 0, this.#before.text.length, false);
    if (entries === undefined) return undefined;
    const all = [
      ...comments.filter(({ start }) => start < this.#readFrom),
      ...this.#comments,
      ...(this.#moved === 0 ? comments.filter(({ start }) => start >= this.#readTo) : []),
    ];
    const whole = { kind: "document", start: 0, end: text.length, entries } as const;
    return { text, document: whole, comments: all, problems: [], lines: new LineTable(text) };
  }

  /** Entries of one level, the document's or a block's; `begin` and `end` are those of the level in the old text. */
  #level(old: readonly Entry[], begin: number, end: number, inBlock: boolean): readonly Entry[] | undefined {
    let kept = old.length - 1;
    while (kept > 0 && !(this.#beginsLine(old, kept) && this.#lineOf(old[kept]) <= this.#from)) kept--;
    kept = Math.max(kept, 0);
    const changed = old[kept];
    if (changed !== undefined && this.#isInside(changed)) {
      const inside = this.#statement(changed);
      if (inside !== undefined) return this.#around(old, kept, inside, end);
    }
    const from = kept === 0 ? begin : this.#lineOf(changed);
    const next = this.#moved === 0 ? this.#firstBehind(old, kept) : old.length;
    const to = next < old.length ? this.#lineOf(old[next]) : end + this.#moved;
    const middle = this.#read(from, to, inBlock || next < old.length);
    return middle && [...old.slice(0, kept), ...middle, ...old.slice(next)];
  }

  /** Whether braces and all before them are as they were. */
  #isInside(entry: Entry): entry is Opened {
    const block = entry.kind === "statement" ? entry.block : undefined;
    return block?.closed === true && this.#from > block.start && this.#oldEnd < block.end;
  }

  #statement(old: Opened): Statement | undefined {
    const { block } = old;
    const entries = this.#level(block.entries, block.start + 1, block.end - 1, true);
    if (entries === undefined) return undefined;
    return { ...old, end: old.end + this.#moved, block: { ...block, end: block.end + this.#moved, entries } };
  }

  /** With what stands beside it: before it as it was, behind it too where nothing has moved. */
  #around(old: readonly Entry[], at: number, changed: Statement, end: number): readonly Entry[] | undefined {
    if (this.#moved === 0) return [...old.slice(0, at), changed, ...old.slice(at + 1)];
    const behind = this.#read(changed.end, end + this.#moved, end < this.#before.text.length);
    return behind && [...old.slice(0, at), changed, ...behind];
  }

  /** Entries between two places of the new text; undefined where something is wrong in them or reaches beyond their end. */
  #read(from: number, to: number, isFollowed: boolean): readonly Entry[] | undefined {
    const { parsed } = read(this.#text.slice(0, to), { from });
    if (parsed.problems.length > 0 || (isFollowed && endsInComment(parsed, to))) return undefined;
    this.#comments.push(...parsed.comments);
    this.#readFrom = Math.min(this.#readFrom, from);
    this.#readTo = to;
    return parsed.document.entries;
  }

  /** The first entry behind the change that begins a line, the break before it unchanged. */
  #firstBehind(old: readonly Entry[], kept: number): number {
    let next = kept + 1;
    while (next < old.length && !(this.#beginsLine(old, next) && this.#lineOf(old[next]) > this.#oldEnd)) next++;
    return next;
  }

  /** The first line of an entry: that of its notes, where it has any. */
  #lineOf(entry: Entry | undefined): number {
    const { lines } = this.#before;
    const start = entry?.notes[0]?.start ?? entry?.start ?? 0;
    return lines.lineStart(lines.position(start).line);
  }

  /** Nothing else stands on its first line. */
  #beginsLine(entries: readonly Entry[], index: number): boolean {
    return index === 0 || this.#lineOf(entries[index]) >= (entries[index - 1]?.end ?? 0);
  }
}

function samePrefix(a: string, b: string): number {
  const end = Math.min(a.length, b.length);
  let at = 0;
  while (at < end && a.charCodeAt(at) === b.charCodeAt(at)) at++;
  return at;
}

function sameSuffix(a: string, b: string, most: number): number {
  let count = 0;
  while (count < most && a.charCodeAt(a.length - 1 - count) === b.charCodeAt(b.length - 1 - count)) count++;
  return count;
}

/** What follows would belong to it: a note is about the next entry, and a comment takes in the rest of its line. */
function endsInComment({ document, comments, text }: Parsed, to: number): boolean {
  const end = document.entries.at(-1)?.end ?? 0;
  const last = comments.at(-1);
  if (last === undefined) return false;
  return (
    comments.some((comment) => comment.start >= end && comment.text.startsWith("##")) ||
    !/[\r\n]/.test(text.slice(last.end, to))
  );
}
