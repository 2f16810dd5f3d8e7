/**
 * Text in, syntax tree out.
 *
 *   parse(text) → { document, comments, problems, lines }
 *   format(text) → the canonical layout of the same text
 *
 * Invariant: neither throws, whatever the text.
 */
export type * from "./ast.js";
export type { Position, Span } from "./span.js";
export type { SyntaxProblem } from "./problem.js";
export { parse, type Parsed } from "./parse.js";
export { reparse } from "./reparse.js";
export { format, formatEdits, formatRange, type TextEdit } from "./format.js";
export { LineTable } from "./line-table.js";
