/**
 * Dotted paths through the tree: names where statements have one, words where they have none;
 * `linkage` and `wheel` may be left out.
 */
import { findWord, wordsIn } from "../../grammar/vocabulary/index.js";
import type { AxleName, Side } from "./origin.js";
import { axleBlock, wordIn, type CarTree, type TreeBlock, type TreeStatement } from "./tree.js";

/** Blocks that a path may pass through without naming them. */
const passedOver = ["wheel", "linkage"] as const;

export interface Step {
  readonly index: number;
  /** How many segments it takes: 2 where a word and its name are both written (`rocker.eye.side`). */
  readonly used: 1 | 2;
}

export function stepIn(block: TreeBlock, path: readonly string[], at: number): Step | undefined {
  const segment = path[at];
  let byWord: Step | undefined;
  for (let index = 0; index < block.statements.length; index++) {
    const statement = block.statements[index] as TreeStatement;
    if (statement.name?.text === segment) return { index, used: 1 };
    if (byWord !== undefined || statement.word !== segment) continue;
    if (statement.name === undefined) byWord = { index, used: 1 };
    else if (statement.name.text === path[at + 1]) byWord = { index, used: 2 };
  }
  return byWord;
}

/** The block that the next segment may be found in without being named itself. */
export function passedOverFor(block: TreeBlock, path: readonly string[], at: number): number | undefined {
  if (block.concept !== "axle") return undefined;
  const isLast = at === path.length - 1;
  for (const word of passedOver) {
    const index = block.statements.findIndex((statement) => statement.word === word);
    const inner = block.statements[index]?.block;
    if (inner === undefined) continue;
    const canBeAdded = isLast && findWord(inner.concept, path[at] ?? "") !== undefined;
    if (canBeAdded || stepIn(inner, path, at) !== undefined) return index;
  }
  return undefined;
}

/** Where a path leads: into an axle (of one side, or of both alike) or into the car itself. */
export interface Route {
  readonly axle: AxleName | undefined;
  readonly side: Side | undefined;
  /** What is left of the path inside. */
  readonly rest: readonly string[];
  /** How many segments the axle and the side took. */
  readonly skipped: number;
}

export function routeOf(tree: CarTree, path: readonly string[]): Route {
  const [first, second] = path;
  const isAxle = first === "front" || first === "rear";
  if (!isAxle || axleBlock(tree, first, "left") === undefined) {
    return { axle: undefined, side: undefined, rest: path, skipped: 0 };
  }
  const side = second === "left" || second === "right" ? second : undefined;
  const skipped = side === undefined ? 1 : 2;
  return { axle: first, side, rest: path.slice(skipped), skipped };
}

export function startOf(tree: CarTree, route: Route, side: Side): TreeBlock | undefined {
  return route.axle === undefined ? tree.block : axleBlock(tree, route.axle, side);
}

export interface Found {
  readonly statement: TreeStatement;
  readonly parent: TreeBlock;
  /** The segment of the path that ends at this statement. */
  readonly segment: number;
}

/** The statement at the end of a path, on the side that it names, else the left. `seen` is told of each step. */
export function statementAt(tree: CarTree, path: readonly string[], seen?: (step: Found) => void): Found | undefined {
  const route = routeOf(tree, path);
  let block = startOf(tree, route, route.side ?? "left");
  let at = 0;
  while (block !== undefined && at < route.rest.length) {
    const step = stepIn(block, route.rest, at);
    if (step === undefined) {
      const over = passedOverFor(block, route.rest, at);
      block = over === undefined ? undefined : block.statements[over]?.block;
      if (block === undefined || stepIn(block, route.rest, at) === undefined) return undefined;
      continue;
    }
    const statement = block.statements[step.index] as TreeStatement;
    at += step.used;
    const found = { statement, parent: block, segment: route.skipped + at - 1 };
    seen?.(found);
    if (at === route.rest.length) return found;
    block = statement.block;
  }
  return undefined;
}

/** What could have stood where a path finds nothing. */
export function stepsFrom(block: TreeBlock, isLast: boolean): readonly string[] {
  const names = block.statements.map((statement) => statement.name?.text ?? statement.word);
  if (block.concept === "axle") {
    for (const word of passedOver) names.push(...(wordIn(block, word)?.block?.statements ?? []).map(nameOf));
  }
  if (isLast) names.push(...wordsIn(block.concept).map((word) => word.word));
  return [...new Set(names)];
}

const nameOf = (statement: TreeStatement): string => statement.name?.text ?? statement.word;
