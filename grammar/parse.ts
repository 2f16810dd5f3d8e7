/**
 * Text to tree, the room's front door. The parser is made once, when first needed.
 *
 * Invariant: never throws and takes time in proportion to the text; the tree is whole, and what is
 * left out of it is told in `problems`, in text order.
 */
import type { Comment, Document } from "./ast.js";
import { AstBuilder } from "./build-ast.js";
import { Lexer, type LexerOptions } from "./lexer.js";
import { LineTable } from "./line-table.js";
import { BellcrankParser } from "./parser.js";
import type { SyntaxProblem } from "./problem.js";

export interface Parsed {
  readonly text: string;
  readonly document: Document;
  /** In text order; notes (`##`) that belong to a statement are on it and not here. */
  readonly comments: readonly Comment[];
  readonly problems: readonly SyntaxProblem[];
  readonly lines: LineTable;
}

let parser: BellcrankParser | undefined;

export function parse(text: string): Parsed {
  const plain = read(text, {});
  if (plain.braceFaults === 0) return plain.parsed;
  // Somewhere a brace is missing or too many. Where it is, the indentation usually tells.
  const indented = read(text, { byIndentation: true });
  const closed = indented.braceFaults <= plain.braceFaults ? indented : plain;
  if (!closed.parsed.problems.some(({ kind }) => kind === "stray-closing")) return closed.parsed;
  // One that closes nothing may be the end of a block whose opening brace is missing.
  const opened = read(text, { byIndentation: true, opensMissing: true });
  return opened.braceFaults <= closed.braceFaults ? opened.parsed : closed.parsed;
}

/** One reading of the text. Separate from `parse` for the tests that hold two ways of reading against each other. */
export function read(text: string, options: LexerOptions): { readonly parsed: Parsed; readonly braceFaults: number } {
  const lexer = new Lexer(text, options);
  parser ??= new BellcrankParser();
  const { comments, problems } = lexer;
  const entries = parser.parse(lexer, new AstBuilder(text, problems));
  if (problems.length > 1) problems.sort((a, b) => a.start - b.start || a.end - b.end);
  const document: Document = { kind: "document", start: 0, end: text.length, entries };
  return { parsed: { text, document, comments, problems, lines: new LineTable(text) }, braceFaults: lexer.braceFaults };
}
