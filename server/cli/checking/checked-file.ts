/**
 * A file with what the checks found in it, as plain data: what every report of `check` is made from, whether it was
 * checked here or by a worker.
 *
 * Invariant: nothing here depends on what else was checked, so that the same file gives the same data everywhere.
 */
import type { Severity } from "../../findings/finding.js";
import type { JudgedExpectation } from "../../views/expectations.js";

/** Counted from 1; an end stands behind the last character. */
export interface LineColumn {
  readonly line: number;
  readonly column: number;
}

export interface RelatedPlace {
  /** As it is shown. */
  readonly file: string;
  /** Both undefined where the file could not be read. */
  readonly start?: LineColumn;
  readonly end?: LineColumn;
  readonly message: string;
}

export interface CheckedFinding {
  readonly rule: string;
  readonly severity: Severity;
  readonly message: string;
  readonly start: LineColumn;
  readonly end: LineColumn;
  readonly related: readonly RelatedPlace[];
  /** The first line of the place, and how many characters of it are meant. */
  readonly line: { readonly text: string; readonly from: number; readonly length: number };
  /** Where it stands in the tree: `setup wet from quill > front.third.rate`. */
  readonly place: string;
  /** The same for the same finding after edits elsewhere; see `identity.ts`. */
  readonly fingerprint: string;
}

export interface CheckedExpectation {
  /** The car or set-up. */
  readonly of: string;
  readonly text: string;
  readonly verdict: JudgedExpectation["verdict"];
  readonly message: string;
  /** "quill.crank:157:3" */
  readonly place: string;
  /** Which of the file's findings says that it is missed; undefined where none does. */
  readonly finding: number | undefined;
}

export interface CheckedFile {
  readonly uri: string;
  /** As it is shown. */
  readonly path: string;
  readonly findings: readonly CheckedFinding[];
  /** Of all cars and set-ups, in the order of the text. */
  readonly expectations: readonly CheckedExpectation[];
}
