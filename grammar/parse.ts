/**
 * Text to tree, the room's front door. The parser is made once, when first needed.
 *
 * Invariant: never throws and takes time in proportion to the text; the tree is whole, and what is
 * left out of it is told in `problems`, in text order.
 */
import type { Comment, Document } from "./ast.js";
import { AstBuilder } from "./build-ast.js";
import { lex } from "./lexer.js";
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
  const { tokens, comments, problems } = lex(text);
  parser ??= new BellcrankParser();
  const entries = parser.parse(tokens, new AstBuilder(text, problems));
  if (problems.length > 1) problems.sort((a, b) => a.start - b.start || a.end - b.end);
  const document: Document = { kind: "document", start: 0, end: text.length, entries };
  return { text, document, comments, problems, lines: new LineTable(text) };
}
