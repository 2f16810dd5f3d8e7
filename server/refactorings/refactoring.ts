/** A change of the text that leaves every car what it is: what a refactoring gives, and what it is given. */
import type { Position } from "../../grammar/index.js";
import type { RuleContext } from "../findings/context.js";
import type { TextEdit } from "../findings/finding.js";
import type { FileView } from "../snapshot/workspace.js";

export interface Refactoring {
  readonly title: string;
  readonly kind: "extract" | "inline" | "move";
  readonly edits: readonly TextEdit[];
  /** A file that is made for it. */
  readonly creates?: { readonly uri: string; readonly text: string };
  /** The name that it made up: the author may want another one. */
  readonly named?: MadeName;
}

export interface MadeName {
  readonly uri: string;
  readonly name: string;
}

/** One that has proven itself. */
export interface Offered extends Refactoring {
  /** Where the name that it made up stands in the changed text. */
  readonly named?: MadeName & { readonly position: Position };
}

/** What a file would be with other texts. */
export type Looked = Pick<RuleContext, "cars" | "problems">;

export interface Refactored {
  readonly file: FileView;
  readonly offset: number;
  /** Files whose cars have to stay what they are: this one, and whichever rest on a file of these; undefined: too many to look at. */
  readonly resting: (uris: readonly string[]) => readonly FileView[] | undefined;
  /** Whether a file of that address is there, used or not. */
  readonly exists: (uri: string) => boolean;
  /** The files as they would be with these texts; nothing is changed by it. */
  readonly changed: (texts: ReadonlyMap<string, string>) => (uri: string) => Looked;
}
