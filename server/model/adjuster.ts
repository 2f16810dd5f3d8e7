/**
 * Adjusters: a rod or a drop link is made longer or shorter by its thread. `push-rod by -1 turn` speaks of
 * the rod's `longer`, which counts from 0 where it is not written.
 */
import { findWord, opensAt, wordsIn } from "../../grammar/vocabulary/index.js";
import type { Concept, Word } from "../../grammar/vocabulary/word.js";
import type { Given, Origin } from "./origin.js";
import { isWritten } from "./provenance.js";
import { wordIn, type TreeBlock, type TreeStatement } from "./tree.js";

/** The word that `by` behind this statement changes; undefined where the statement has a value of its own. */
export function adjustedInside({ word, form, values }: TreeStatement, around: Concept): Word | undefined {
  if (values.some(({ kind }) => kind === "number" || kind === "point")) return undefined;
  const known = findWord(around, word);
  const concept = known && opensAt(known, form);
  return concept === undefined ? undefined : wordsIn(concept).find(({ adjusts }) => adjusts === true);
}

/** As long as it is drawn: nothing is written, so its place is empty. */
export function asDrawn(word: Word, { origin: { uri, start } }: TreeBlock): TreeStatement {
  const nowhere: Origin = { uri, start, end: start };
  const zero = { value: 0, unit: "mm", origin: nowhere, statement: nowhere, chain: [] } as const;
  return {
    word: word.word,
    name: undefined,
    form: 0,
    values: [{ kind: "number", dimension: "length", ...zero }],
    block: undefined,
    origin: nowhere,
    wordOrigin: nowhere,
    chain: [],
    notes: [],
    root: undefined,
    formula: undefined,
    part: undefined,
  };
}

/** Length for one turn: the value's own adjuster, else the one beside it in the block. */
export function threadOf(target: TreeStatement, parent: TreeBlock): Given | undefined {
  const [value] = (wordIn(target.block, "thread") ?? wordIn(parent, "thread"))?.values ?? [];
  return value?.kind === "number" ? value : undefined;
}

/** The unit that the sum is shown in: the old value's; where nothing was written, the change's, or that of `mm/turn`. */
export function unitAfter(value: Given, change: Given, thread: Given | undefined): string {
  if (isWritten(value.origin)) return value.unit;
  return thread === undefined ? change.unit : (thread.unit.split("/")[0] ?? value.unit);
}

/** Whether a thread may be written for it: then turns are only short of one, not wrong. */
export function mayHaveThread(target: TreeStatement, parent: TreeBlock): boolean {
  return [target.block?.concept, parent.concept].some(
    (concept) => concept !== undefined && findWord(concept, "thread") !== undefined,
  );
}
