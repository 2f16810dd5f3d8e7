/**
 * Left and right that each have a line of their own for the same thing (`front.left.side.fit …`, `front.right.side.fit …`): the
 * line on the other side of a place, the same text where the two mirror each other, and edits that make them alike or one.
 *
 * What one line alone makes different from the other side is the finding `asymmetry`; it has the fixes for that.
 * Invariant: lines of one declaration only; what a set-up inherits is never changed where it is inherited from.
 */
import type { Block, Document, Span, Statement } from "../../grammar/index.js";
import { applyEdits, removal } from "../findings/edits.js";
import type { TextEdit } from "../findings/finding.js";
import {
  mirroredValue,
  pathWithoutSide,
  sidedLine,
  type SidedLine,
  sidedLineAt,
  valueSpan,
} from "../findings/sided-line.js";
import type { FileView } from "../snapshot/workspace.js";
import type { Refactored } from "./refactoring.js";
import { areSameCars } from "./same-cars.js";

export interface SideEdit {
  readonly title: string;
  readonly edits: readonly TextEdit[];
}

/** A line for one side with what it says, and the line of the other side. */
interface Pair {
  readonly path: string;
  readonly own: Said;
  readonly other: Said;
}

interface Said {
  readonly sided: SidedLine;
  readonly span: Span;
  readonly text: string;
}

type Sides = Refactored;

export function bothSides(on: Sides): readonly SideEdit[] {
  const { file, offset } = on;
  const pair = pairAt(file, offset);
  if (pair === undefined) return [];
  return areMirrored(pair) ? saidOnce(on, pair) : madeTheSame(on, pair);
}

/** The places that change together: the word or number here, and the same one of the mirrored line. */
export function linkedPlaces(file: FileView, offset: number): readonly Span[] {
  const pair = pairAt(file, offset);
  if (pair === undefined || !areMirrored(pair)) return [];
  const [own, other] = [pieces(pair.own), pieces(pair.other)];
  const index = own.findIndex(({ start, end }) => start <= offset && offset <= end);
  const [here, there] = [own[index], other[index]];
  if (here === undefined || there === undefined || own.length !== other.length) return [];
  return textAt(file, here) === textAt(file, there) ? [here, there] : [];
}

const textAt = ({ text }: FileView, { start, end }: Span): string => text.slice(start, end);

/** Words, numbers without their sign, units: what stands between blanks, brackets and signs. */
function pieces({ span, text }: Said): readonly Span[] {
  return [...text.matchAll(/[\p{L}\p{N}_]+(?:[.-][\p{L}\p{N}_]+)*/gu)].map(({ index, 0: piece }) => ({
    start: span.start + index,
    end: span.start + index + piece.length,
  }));
}

function pairAt({ parsed, text }: FileView, offset: number): Pair | undefined {
  const sided = sidedLineAt(parsed.document, { start: offset, end: offset });
  const own = sided && saidBy(text, sided);
  if (own === undefined) return undefined;
  const path = pathWithoutSide(own.sided.chain);
  const other = sidedLinesIn(parsed.document, own.sided.chain[0])
    .filter(({ side, chain }) => side !== own.sided.side && pathWithoutSide(chain) === path)
    .at(-1);
  const found = other && saidBy(text, other);
  return found && { path, own, other: found };
}

/** Undefined where the line says nothing yet, or is left open at its end. */
function saidBy(text: string, sided: SidedLine): Said | undefined {
  const span = valueSpan(sided.line);
  const isOpen = [...sided.chain, sided.line].some(({ block }) => block?.closed === false);
  return span === undefined || isOpen ? undefined : { sided, span, text: text.slice(span.start, span.end) };
}

function sidedLinesIn({ entries }: Document, declaration: Statement | undefined): readonly SidedLine[] {
  const found: SidedLine[] = [];
  const look = (chain: readonly Statement[], block: Block): void => {
    for (const entry of block.entries) {
      if (entry.kind === "row") continue;
      const here = [...chain, entry];
      const inside = entry.block?.entries.some(({ kind }) => kind === "statement") === true;
      const sided = inside && entry.head.segments.at(-1)?.text !== "lever" ? undefined : sidedLine(here);
      if (sided !== undefined) found.push(sided);
      else if (entry.block !== undefined) look(here, entry.block);
    }
  };
  if (declaration?.block !== undefined && entries.includes(declaration)) look([declaration], declaration.block);
  return found;
}

const plain = (text: string): string => text.replace(/\s+/g, " ").trim();

function areMirrored({ own, other }: Pair): boolean {
  const mirrored = mirroredValue(own.text);
  return mirrored !== undefined && plain(mirrored) === plain(other.text);
}

function madeTheSame({ file, changed }: Sides, { own, other }: Pair): readonly SideEdit[] {
  const newText = mirroredValue(own.text);
  if (newText === undefined) return [];
  const edits = [{ uri: file.uri, span: other.span, newText }];
  const now = changed(changedTexts(file, edits))(file.uri);
  if (now.problems.length > file.problems.length) return [];
  const said = newText.includes("\n") ? "" : `: ${newText}`;
  return [{ title: `Make the ${other.sided.side} side's own line the same${said}`, edits }];
}

/** In a set-up, where a line for both sides may stand anywhere: one in place of the two. */
function saidOnce(on: Sides, { path, own, other }: Pair): readonly SideEdit[] {
  const { file, resting, changed } = on;
  const declaration = own.sided.chain[0];
  if (declaration?.head.segments[0]?.text !== "setup" || own.sided.chain[1] !== own.sided.shell) return [];
  const said = own.sided.side === "left" ? own.text : other.text;
  const { shell } = own.sided;
  if (saysMore(file, shell, other.sided.shell)) return [];
  const edits = [
    { uri: file.uri, span: { start: shell.start, end: shell.end }, newText: `${path} ${said}` },
    { uri: file.uri, span: wholeOf(file, other.sided.shell), newText: "" },
  ];
  const now = changed(changedTexts(file, edits));
  const isSame = resting([file.uri])?.every((one) => areSameCars(one.cars, now(one.uri).cars)) === true;
  return isSame ? [{ title: `Say it once, for both sides: ${path}`, edits }] : [];
}

/** Whether something would be lost: a comment in either line, or a note that the line which stays has not. */
function saysMore({ text, parsed }: FileView, stays: Statement, goes: Statement): boolean {
  const gone = removal(text, { start: goes.notes[0]?.start ?? goes.start, end: goes.end });
  const isCommented = parsed.comments.some((comment) =>
    [stays, gone].some(({ start, end }) => start <= comment.start && comment.end <= end),
  );
  return isCommented || goes.notes.some((note) => !stays.notes.some((other) => other.text === note.text));
}

/** With the notes that are about it. */
function wholeOf({ text }: FileView, { start, end, notes }: Statement): Span {
  return removal(text, { start: notes[0]?.start ?? start, end });
}

function changedTexts(file: FileView, edits: readonly TextEdit[]): ReadonlyMap<string, string> {
  return new Map([[file.uri, applyEdits(file.text, edits)]]);
}
