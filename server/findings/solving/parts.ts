/** Catalogue parts that go into an element's block, by the words of the catalogues that a file has at hand. */
import type { Entry, Statement } from "../../../grammar/index.js";
import { findWord } from "../../../grammar/vocabulary/index.js";
import type { RuleContext } from "../context.js";

const firstName = ({ items: [item] }: Statement): string | undefined =>
  item?.kind === "path" ? item.segments[0]?.text : undefined;

const headOf = (entry: Entry): string | undefined =>
  entry.kind === "statement" ? entry.head.segments[0]?.text : undefined;

export interface ShelfPart {
  readonly name: string;
  /** `torsion-bar`, `valving`. */
  readonly word: string;
}

/** In the order of the shelf, those of the file itself first; a name that comes twice is its first. */
export function partsFor(
  { uses, parsedOf }: Pick<RuleContext, "uses" | "parsedOf">,
  concept: string,
): readonly ShelfPart[] {
  const entries = uses.flatMap((uri) => parsedOf(uri)?.document.entries ?? []);
  const shelved = entries.flatMap((entry) =>
    entry.kind === "statement" && headOf(entry) === "catalogue" ? (entry.block?.entries ?? []) : [],
  );
  const parts = new Map<string, string>();
  for (const entry of shelved) {
    const word = headOf(entry) ?? "";
    const name = entry.kind === "statement" ? firstName(entry) : undefined;
    if (name !== undefined && !parts.has(name)) parts.set(name, word);
  }
  return [...parts]
    .filter(([, word]) => findWord("catalogue", word)?.fits?.into.includes(concept) === true)
    .map(([name, word]) => ({ name, word }));
}

/** Those of the same kind as the one that is fitted, in order: what it is exchanged for. */
export function partsLike(
  file: Pick<RuleContext, "uses" | "parsedOf">,
  concept: string,
  fitted: string,
): readonly string[] {
  const all = partsFor(file, concept);
  const own = all.find(({ name }) => name === fitted)?.word;
  return all.filter(({ word }) => word === own).map(({ name }) => name);
}
