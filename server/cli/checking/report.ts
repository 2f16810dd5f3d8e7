/** What a report of `check` is made from: files, and which of their findings were known before. */
import type { CheckedFile, CheckedFinding } from "./checked-file.js";

export interface Report {
  readonly files: readonly CheckedFile[];
  /** Set where findings are held against a list of known ones. */
  readonly against?: Against;
}

export interface Against {
  /** The list, as it is shown. */
  readonly list: string;
  readonly known: ReadonlySet<CheckedFinding>;
  /** What is on the list and is found no more. */
  readonly gone: readonly GoneFinding[];
}

export interface GoneFinding {
  /** As it is shown. */
  readonly path: string;
  readonly rule: string;
  readonly severity: CheckedFinding["severity"];
  readonly place: string;
  readonly fingerprint: string;
}

/** Only what was not known: all of it where there is no list. */
export function newFindings({ against }: Report, { findings }: CheckedFile): readonly CheckedFinding[] {
  return against === undefined ? findings : findings.filter((finding) => !against.known.has(finding));
}

export const isKnown = ({ against }: Report, finding: CheckedFinding): boolean => against?.known.has(finding) === true;
