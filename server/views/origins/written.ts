/**
 * What stands at a place of a file, and in whose declaration: read from the tree of syntax, so that it holds for parts, `let`s,
 * cars and set-ups alike.
 */
import type { Document, Statement } from "../../../grammar/index.js";
import type { Origin } from "../../model/origin.js";
import type { FileView } from "../../snapshot/workspace.js";
import { placeAt } from "../place.js";

export type FileOf = (uri: string) => FileView;

/** A whole statement with who says it. */
export interface Written {
  /** "car quill", "set-up quarrow-wet", "part TB-105", "let soft". */
  readonly by: string;
  /** On one line; a block of several is cut short. */
  readonly text: string;
  readonly origin: Origin;
}

/** The innermost statement around the place; undefined where its file is not at hand. */
export function writtenAt({ uri, start }: Origin, fileOf: FileOf): Written | undefined {
  const { parsed, text } = fileOf(uri);
  const { statement, around } = placeAt(parsed.document, start);
  if (statement === undefined) return undefined;
  return {
    by: ownerOf([...around, statement]),
    text: onOneLine(text.slice(statement.start, statement.end)),
    origin: { uri, start: statement.start, end: statement.end },
  };
}

/** Statements from the outermost inwards. */
function ownerOf([outer, inner]: readonly Statement[]): string {
  const word = wordOf(outer);
  if (word === "catalogue") return wordOf(inner) === "let" ? named("let", inner) : named("part", inner);
  return named(word === "setup" ? "set-up" : word, outer);
}

const named = (word: string, statement: Statement | undefined): string => `${word} ${nameIn(statement)}`.trim();

const wordOf = (statement: Statement | undefined): string => statement?.head.segments[0]?.text ?? "";

export function nameIn(statement: Statement | undefined): string {
  const [name] = statement?.items ?? [];
  return name?.kind === "path" ? name.segments.map(({ text }) => text).join(".") : "";
}

/** More than that is not read in a list. */
const LONGEST = 90;

function onOneLine(text: string): string {
  const lines = text.split("\n");
  const [first = ""] = lines;
  const shown = lines.length === 1 ? first : `${first.replace(/\s*\{\s*$/, "")} { … }`;
  return shown.length > LONGEST ? `${shown.slice(0, LONGEST - 1)}…` : shown;
}

/** The line of a set-up that took out what a path spoke of: `remove PATH`, `PATH.fit …`, or one that says a block anew. */
export function takenOutBy(document: Document, setup: Origin, path: readonly string[]): Statement | undefined {
  const declared = document.entries.find(({ start }) => start === setup.start);
  const lines = declared?.kind === "statement" ? (declared.block?.entries ?? []) : [];
  const speaksOf = (own: readonly string[]): boolean => isStart(own, path) || isStart(own, withoutSide(path));
  const statements = lines.filter((line): line is Statement => line.kind === "statement").reverse();
  const pathOf = ({ head }: Statement): readonly string[] => head.segments.map(({ text }) => text);
  return (
    statements.find((line) => wordOf(line) === "remove" && speaksOf(nameIn(line).split("."))) ??
    statements.find((line) => pathOf(line).at(-1) === "fit" && speaksOf(pathOf(line).slice(0, -1))) ??
    statements.find((line) => speaksOf(pathOf(line)))
  );
}

const isStart = (start: readonly string[], path: readonly string[]): boolean =>
  start.length > 0 && start.every((name, i) => path[i] === name);

export const withoutSide = (path: readonly string[]): readonly string[] =>
  path[1] === "left" || path[1] === "right" ? [path[0] ?? "", ...path.slice(2)] : path;
