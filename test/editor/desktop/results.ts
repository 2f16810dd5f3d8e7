/** What the suite and the program inside VS Code agree on. */
export interface Result {
  readonly name: string;
  /** Absent where the check passed. */
  readonly error?: string;
}

/** Names of the environment variables that carry paths to the program inside. */
export const RESULTS_FILE = "BELLCRANK_RESULTS";
export const SAMPLE_FOLDER = "BELLCRANK_SAMPLE";
