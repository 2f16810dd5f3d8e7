/**
 * What the checks ask of an editor, whichever it is: the served one answers from its page, the desktop
 * one through its programming interface. Lines and columns count from one, as editors show them.
 */
export interface Place {
  readonly line: number;
  readonly column: number;
}

export interface ShownFinding {
  readonly severity: "error" | "warning" | "info" | "hint";
  readonly message: string;
  readonly rule: string;
  readonly line: number;
}

export interface EditorUnderTest {
  /** Opens a file, and only it; the path is absolute. */
  open(path: string): Promise<void>;
  /** Closes what is open. */
  close(): Promise<void>;
  /** Saves the open file, so that its text is on disk. */
  save(): Promise<void>;
  /** Types over the text between two places of one line. */
  type(from: Place, length: number, text: string): Promise<void>;
  /** Every finding that the editor lists. */
  findings(): Promise<readonly ShownFinding[]>;
  hover(at: Place): Promise<string>;
  /** The hints in or near this line. */
  inlays(at: Place): Promise<readonly string[]>;
  /** The lenses near this line. */
  lenses(at: Place): Promise<readonly string[]>;
  fixes(at: Place): Promise<readonly string[]>;
  applyFix(at: Place, title: string): Promise<void>;
  completions(at: Place): Promise<readonly string[]>;
  /** Where the definition of what is at this place is; in the same file, on another line. */
  definition(at: Place): Promise<Place>;
  format(): Promise<void>;
  /** Keeps what the editor shows now as a picture, where it can. */
  picture(name: string): Promise<void>;
}
