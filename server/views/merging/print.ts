/** Merged pieces as text again, in canonical layout; conflicts as one of their ways, or marked as git marks them. */
import { format } from "../../../grammar/index.js";
import type { Piece } from "./pieces.js";
import type { Conflict, MergedBody, MergedPiece } from "./three-way.js";

export type Way = "base" | "ours" | "theirs";

/** The text with each conflict settled in one way. */
export const printed = (body: MergedBody, wayOf: (conflict: Conflict) => Way): string =>
  laidOut(linesOf(body, (conflict) => [...conflict.lead, ...pieceLines(conflict[wayOf(conflict)])]));

export interface Marks {
  /** Of the lines that part the ways: seven, unless git says otherwise. */
  readonly size: number;
  readonly ours: string;
  readonly theirs: string;
}

/** The text with both ways of each conflict in it, between marks that git and editors know. */
export function marked(body: MergedBody, marksOf: (conflict: Conflict) => Marks): string {
  const found: Conflict[] = [];
  const placeOf = (index: number): string => `# ${"=".repeat(20)} conflict ${index} ${"=".repeat(20)}`;
  const text = laidOut(linesOf(body, (conflict) => [...conflict.lead, placeOf(found.push(conflict) - 1)]));
  return found.reduce((so, conflict, index) => {
    const line = new RegExp(`^([ \\t]*)${placeOf(index)}[ \\t]*$`, "m");
    return so.replace(line, (_all, indent: string) => conflictText(conflict, indent, marksOf(conflict)));
  }, text);
}

function conflictText({ ours, theirs }: Conflict, indent: string, marks: Marks): string {
  const mark = (sign: string, label = ""): string => `${sign.repeat(marks.size)}${label === "" ? "" : ` ${label}`}`;
  const way = (piece: Piece | undefined): readonly string[] =>
    laidOut(pieceLines(piece))
      .split("\n")
      .filter((line) => line !== "")
      .map((line) => `${indent}${line}`);
  return [mark("<", marks.ours), ...way(ours), mark("="), ...way(theirs), mark(">", marks.theirs)].join("\n");
}

const laidOut = (lines: readonly string[]): string => format(`${lines.join("\n")}\n`);

type Settle = (conflict: Conflict) => readonly string[];

const linesOf = ({ pieces, foot }: MergedBody, settle: Settle): readonly string[] => [
  ...pieces.flatMap((piece) => ("conflict" in piece ? settle(piece.conflict) : mergedLines(piece, settle))),
  ...foot,
];

function mergedLines({ lead, header, tail, body }: MergedPiece, settle: Settle): readonly string[] {
  const behind = tail === undefined ? "" : `  ${tail}`;
  if (body === undefined) return [...lead, `${header}${behind}`];
  const open = body.open === undefined ? "" : `  ${body.open}`;
  return [...lead, `${header} {${open}`, ...linesOf(body, settle), `}${behind}`];
}

/** A piece of one version has no conflicts. */
const pieceLines = (piece: Piece | undefined): readonly string[] =>
  piece === undefined ? [] : mergedLines(piece, () => []);
