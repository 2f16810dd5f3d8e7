/**
 * What a dotted path of a set-up speaks of in a car: the property with its value in force, its adjuster and its
 * limits, or the part that is fitted.
 *
 * Invariant: a path means what it means to an override; nothing is changed.
 */
import { findWord, limitsOf, usualOf } from "../../grammar/vocabulary/index.js";
import type { Concept, DimensionName, Limits, UsualRange, Word } from "../../grammar/vocabulary/word.js";
import { adjustedInside, asDrawn, threadOf } from "./adjuster.js";
import type { CarModel, ResolvedBlock } from "./car.js";
import type { Given, Origin } from "./origin.js";
import { type Found, statementAt } from "./steps.js";
import { type CarTree, type TreeBlock, wordIn } from "./tree.js";

export type PropertyAt = NumberAt | PartAt;

export interface NumberAt {
  readonly kind: "number";
  /** As an override that sets it says it: `front.push-rod` is `front.push-rod.longer`. */
  readonly path: string;
  readonly dimension: DimensionName;
  readonly given: Given;
  /** The smallest change of its adjuster, SI; undefined where it has none or it is not known. */
  readonly step: Given | undefined;
  /** Positions and clicks: how many there are. */
  readonly count: number | undefined;
  readonly limits: Limits | undefined;
  readonly usual: UsualRange | undefined;
}

export interface PartAt {
  readonly kind: "part";
  /** `front.corner-bar.fit` */
  readonly path: string;
  /** The element's block, which decides what fits. */
  readonly concept: Concept;
  readonly name: string;
  /** Of the name, where it is written. */
  readonly origin: Origin;
}

/** Blocks of a resolved car are those that it was edited in. */
const treeBlock = (block: ResolvedBlock): TreeBlock => block as TreeBlock;

/** The car as paths are followed through it. */
export function treeOf({ block, axles: { front, rear } }: CarModel): CarTree {
  const right = (axle: typeof front): TreeBlock | undefined => axle && treeBlock(axle.rightBlock ?? axle.block);
  return { block: treeBlock(block), right: { front: right(front), rear: right(rear) } };
}

/** Undefined where the path leads to nothing that has one value: a word that is not written, a point, a block. */
export function propertyAt(car: CarModel, path: string): PropertyAt | undefined {
  const segments = path.split(".");
  const tree = treeOf(car);
  const found = statementAt(tree, segments);
  if (found === undefined) return unwritten(tree, segments);
  const { statement, parent } = found;
  const inside = adjustedInside(statement, parent.concept);
  if (inside !== undefined && statement.block !== undefined) {
    const written = wordIn(statement.block, inside.word) ?? asDrawn(inside, statement.block);
    return numberOf(inside, { statement: written, parent: statement.block }, `${path}.${inside.word}`);
  }
  const [value] = statement.values;
  if (statement.word === "fit" && value?.kind === "path")
    return { kind: "part", path, concept: parent.concept, name: value.segments.join("."), origin: value.origin };
  const word = findWord(parent.concept, statement.word);
  return word && numberOf(word, found, path);
}

/** `push-rod.longer` where none is written: as long as drawn. */
function unwritten(tree: CarTree, segments: readonly string[]): NumberAt | undefined {
  const block = statementAt(tree, segments.slice(0, -1))?.statement.block;
  const word = block && findWord(block.concept, segments.at(-1) ?? "");
  if (block === undefined || word?.adjusts !== true) return undefined;
  return numberOf(word, { statement: asDrawn(word, block), parent: block }, segments.join("."));
}

function numberOf(word: Word, { statement, parent }: Omit<Found, "segment">, path: string): NumberAt | undefined {
  const numbers = statement.values.filter((value) => value.kind === "number");
  const [value, most] = numbers;
  if (value === undefined || statement.values[0] !== value) return undefined;
  const slot = word.takes[statement.form]?.find(({ kind }) => kind === "quantity");
  const thread = threadOf(statement, parent);
  const unit = word.adjusts === true && thread !== undefined ? (thread.unit.split("/")[0] ?? value.unit) : value.unit;
  const isCounted = value.dimension === "count" && most !== undefined;
  // Only lengths of one value are turned by a thread; a section of two is none.
  if (numbers.length > 1 && !isCounted) return undefined;
  return {
    kind: "number",
    path,
    dimension: value.dimension,
    given: { ...value, unit },
    step: stepIn(statement.block) ?? (value.dimension === "length" ? thread : undefined),
    count: isCounted ? most.value : undefined,
    limits: slot && limitsOf(word, slot),
    usual: slot && usualOf(word, slot),
  };
}

function stepIn(block: TreeBlock | undefined): Given | undefined {
  const [value] = wordIn(block, "step")?.values ?? [];
  return value?.kind === "number" ? value : undefined;
}
