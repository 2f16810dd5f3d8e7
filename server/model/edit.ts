/**
 * Changes at the end of a path: copies the blocks on the way, shares the rest. What is done there
 * is the caller's `Change`; that the path is followed the same way by all is this file's care.
 */
import { findWord, opensAt } from "../../grammar/vocabulary/index.js";
import type { Word } from "../../grammar/vocabulary/word.js";
import { passedOverFor, stepIn, type Found } from "./steps.js";
import { withStatement, type TreeBlock, type TreeStatement } from "./tree.js";

export interface Change {
  /** The path ends at this statement. Returns the block around it; the same one for "no change". */
  replace(parent: TreeBlock, index: number, target: TreeStatement): TreeBlock;
  /** Nothing is there, but the last segment is a word of the place. */
  add(parent: TreeBlock, word: Word): TreeBlock;
  /** The path finds nothing at this segment. */
  miss(block: TreeBlock, segment: number): void;
  /** A step on the way, for those who keep track of names. */
  pass(step: Found): void;
}

export function changeAt(block: TreeBlock, path: readonly string[], at: number, change: Change): TreeBlock {
  const step = stepIn(block, path, at);
  if (step !== undefined) {
    const target = block.statements[step.index] as TreeStatement;
    const next = at + step.used;
    change.pass({ statement: target, parent: block, segment: next - 1 });
    if (next === path.length) return change.replace(block, step.index, target);
    return inside(block, step.index, target, path, next, change);
  }
  const over = passedOverFor(block, path, at);
  const passed = over === undefined ? undefined : block.statements[over];
  if (over !== undefined && passed !== undefined) return inside(block, over, passed, path, at, change);
  const word = at === path.length - 1 ? findWord(block.concept, path[at] ?? "") : undefined;
  if (word !== undefined) return change.add(block, word);
  if (block.broken?.has(path[at] ?? "") !== true) change.miss(block, at);
  return block;
}

function inside(
  block: TreeBlock,
  index: number,
  target: TreeStatement,
  path: readonly string[],
  next: number,
  change: Change,
): TreeBlock {
  const below = target.block ?? opened(block, target, path, next);
  if (below === undefined) {
    change.miss(block, next);
    return block;
  }
  const inner = changeAt(below, path, next, change);
  return inner === below ? block : withStatement(block, index, { ...target, block: inner });
}

/** A block that the statement may have but has not (`ride-height 32 mm` and then `ride-height.step 1 mm`). */
function opened(block: TreeBlock, target: TreeStatement, path: readonly string[], next: number): TreeBlock | undefined {
  const word = findWord(block.concept, target.word);
  const concept = word && opensAt(word, target.form);
  if (concept === undefined || next !== path.length - 1 || findWord(concept, path[next] ?? "") === undefined) {
    return undefined;
  }
  return { concept, origin: target.origin, statements: [], rows: [], broken: undefined };
}
