/** Properties that a block cannot do without. */
import type { Block } from "../../grammar/index.js";
import { wordsIn } from "../../grammar/vocabulary/index.js";
import type { Concept, Word } from "../../grammar/vocabulary/word.js";
import { type BlockPlace, ownerOf } from "./block-place.js";
import type { TreeBlock } from "./tree.js";

const neededIn = new Map<Concept, readonly Word[]>();

function needed(concept: Concept): readonly Word[] {
  let words = neededIn.get(concept);
  if (words === undefined) neededIn.set(concept, (words = wordsIn(concept).filter((word) => word.needed === true)));
  return words;
}

/**
 * What is there but could not be read is not missing.
 *
 * @param isPartWord whether a word's block may come from the shelf by itself: such a part stands in for nothing else, so
 * that a bar with fitted blades still needs its tube
 */
export function checkNeeded(
  block: TreeBlock,
  raw: Block,
  where: BlockPlace,
  isPartWord: (word: string) => boolean,
): void {
  const isThere = (word: string): boolean =>
    block.statements.some((statement) => statement.word === word) || block.broken?.has(word) === true;
  const isFitted = block.statements.some(({ word, part }) => part !== undefined && isPartWord(word));
  const standsIn = (word: string): boolean => isThere(word) && !(word === "fit" && isFitted);
  for (const word of needed(where.concept)) {
    // Some words stand in for others: a spring with a coil needs no rate.
    if (!isThere(word.word) && word.unless?.some(standsIn) !== true) reportMissing(word, raw, where);
  }
}

function reportMissing(word: Word, raw: Block, where: BlockPlace): void {
  const { scope, opener, name, concept } = where;
  scope.sink.report({
    uri: scope.uri,
    start: opener.head.start,
    end: name?.origin.end ?? opener.head.end,
    kind: "missing-property",
    word: word.word,
    concept,
    owner: ownerOf(where),
    starter: starterOf(word),
    insertAt: raw.closed ? raw.end - 1 : raw.end,
  });
}

/** What to write behind the word to begin with: a usual value, else the block of the vocabulary's example. */
export function starterOf({ word, starter, example }: Word): string | undefined {
  if (starter !== undefined) return starter;
  return example?.startsWith(`${word} `) === true ? example.slice(word.length + 1) : undefined;
}
