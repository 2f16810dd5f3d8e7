/** One thing that completion offers. */
import type { Span } from "../../../grammar/index.js";

export type CandidateKind =
  | "word"
  | "element"
  | "property"
  | "mode"
  | "part"
  | "name"
  | "eye"
  | "unit"
  | "figure"
  | "file";

export interface Candidate {
  readonly label: string;
  readonly kind: CandidateKind;
  readonly detail: string;
  readonly documentation: string;
  /** Inserted instead of the label; `$1`, `${1:text}` are tab stops where `snippet` is set. */
  readonly insert: string;
  readonly snippet: boolean;
  /** What it replaces. */
  readonly span: Span;
  /** Lower comes first. */
  readonly rank: number;
}

export function candidate(label: string, kind: CandidateKind, span: Span, more: Partial<Candidate> = {}): Candidate {
  return { label, kind, detail: "", documentation: "", insert: label, snippet: false, span, rank: 1, ...more };
}
