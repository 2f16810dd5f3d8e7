/** Where a block is being read: its kind, its names, and the statement that opens it. */
import type { Statement } from "../../grammar/index.js";
import type { Concept } from "../../grammar/vocabulary/word.js";
import type { Origin } from "./origin.js";
import type { Scope } from "./scope.js";

export interface BlockPlace {
  readonly concept: Concept;
  readonly scope: Scope;
  /** The statement that opens the block, its word and name: for messages. */
  readonly opener: Statement;
  readonly word: string;
  readonly name: { readonly text: string; readonly origin: Origin } | undefined;
  /** True where only what differs is written, so that nothing is needed. */
  readonly partial: boolean;
}

/** How messages call the owner of a block: `axle front`, `rocker`. */
export const ownerOf = ({ word, name }: Pick<BlockPlace, "word" | "name">): string =>
  name === undefined ? word : `${word} ${name.text}`;
