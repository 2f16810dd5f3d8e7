/** A file with what the checks found in it: what every report of `check` is made from. */
import type { Finding } from "../findings/finding.js";
import type { FileView } from "../snapshot/workspace.js";

export interface CheckedFile {
  readonly file: FileView;
  readonly findings: readonly Finding[];
}
