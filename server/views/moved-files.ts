/**
 * What `use` and `csv` lines have to say once files or folders are moved or called otherwise, so that each still leads to the file
 * that it leads to now.
 *
 * Invariant: a line that leads where it should is left as it is written; nothing is made up for a path that leads nowhere.
 */
import type { TextEdit } from "../findings/finding.js";
import { relativeTo } from "../model/relative.js";
import type { FileView } from "../snapshot/workspace.js";
import { linksOf } from "./links.js";

export interface Move {
  readonly from: string;
  readonly to: string;
}

/** @param files every file of the workspace as it stands before the move; edits are of these */
export const editsForMoves = (files: Iterable<FileView>, moves: readonly Move[]): readonly TextEdit[] =>
  [...files].flatMap((file) => editsIn(file, moves));

function editsIn(file: FileView, moves: readonly Move[]): readonly TextEdit[] {
  const home = movedTo(file.uri, moves);
  return linksOf(file).flatMap(({ span, path }) => {
    const before = relativeTo(file.uri, path);
    if (!("uri" in before)) return [];
    const target = movedTo(before.uri, moves);
    const after = relativeTo(home, path);
    if ("uri" in after && after.uri === target) return [];
    const written = wayBetween(home, target);
    return written === undefined ? [] : [{ uri: file.uri, span, newText: `"${written}"` }];
  });
}

/** Of a moved folder, everything below it. */
function movedTo(uri: string, moves: readonly Move[]): string {
  const move = moves.find(({ from }) => uri === from || uri.startsWith(`${from}/`));
  return move === undefined ? uri : move.to + uri.slice(move.from.length);
}

/** The relative path from one file to another; undefined where they have no root in common, or no text can say it. */
function wayBetween(from: string, to: string): string | undefined {
  const root = /^[a-z][a-z0-9+.-]*:(?:\/\/[^/]*)?/i.exec(from)?.[0] ?? "";
  if (!to.startsWith(`${root}/`)) return undefined;
  const [here, there] = [from, to].map((uri) => uri.slice(root.length + 1).split("/"));
  if (here === undefined || there === undefined) return undefined;
  let common = 0;
  while (common < here.length - 1 && common < there.length - 1 && here[common] === there[common]) common++;
  const steps = [...here.slice(common, -1).map(() => ".."), ...there.slice(common)];
  const written = steps.map(decoded).join("/");
  const back = relativeTo(from, written);
  return "uri" in back && back.uri === to && !/["\n]/.test(written) ? written : undefined;
}

function decoded(segment: string): string {
  try {
    return decodeURIComponent(segment);
  } catch {
    // No host spells an address so; the check of the way back then leaves the line alone.
    return segment;
  }
}
