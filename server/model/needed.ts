/** Properties that a block cannot do without. */
import type { Block } from "../../grammar/index.js";
import { wordsIn } from "../../grammar/vocabulary/index.js";
import type { Concept, Word } from "../../grammar/vocabulary/word.js";
import type { BlockPlace } from "./read-block.js";
import type { TreeBlock } from "./tree.js";

const neededIn = new Map<Concept, readonly Word[]>();

function needed(concept: Concept): readonly Word[] {
  let words = neededIn.get(concept);
  if (words === undefined) neededIn.set(concept, (words = wordsIn(concept).filter((word) => word.needed === true)));
  return words;
}

/** `seen` are the words that stand in the text, read or not: what is there but wrong is not missing. */
export function checkNeeded(block: TreeBlock, raw: Block, where: BlockPlace, seen: ReadonlyMap<string, unknown>): void {
  const isThere = (word: string) => seen.has(word) || block.statements.some((statement) => statement.word === word);
  for (const word of needed(where.concept)) {
    if (isThere(word.word) || word.unless?.some(isThere) === true) continue;
    const insertAt = raw.closed ? raw.end - 1 : raw.end;
    where.scope.sink.report({
      ...where.ownerPlace,
      kind: "missing-property",
      word: word.word,
      concept: where.concept,
      owner: where.owner,
      starter: starterOf(word),
      insertAt,
    });
  }
}

/** What to write behind the word to begin with: a usual value, else the block of the vocabulary's example. */
export function starterOf({ word, starter, example }: Word): string | undefined {
  if (starter !== undefined) return starter;
  return example?.startsWith(`${word} `) === true ? example.slice(word.length + 1) : undefined;
}
