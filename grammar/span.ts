/**
 * Places in a text. Offsets count UTF-16 code units from 0; `end` is exclusive.
 * Every syntax node *is* a span, so no node carries a second object for its place.
 */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** A zero-based line and UTF-16 column, as LSP counts them. */
export interface Position {
  readonly line: number;
  readonly character: number;
}
