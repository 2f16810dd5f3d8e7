/**
 * The working form of a resolved car: the published blocks and statements with what the resolver
 * needs to edit them. Blocks are shared between a car and the set-ups made from it; an edit copies
 * the blocks on its way and leaves the rest as it is.
 *
 * The right side of an axle is kept in the frame of a left one (y turned round), so that a
 * symmetrical axle is one block for both sides, and "differs from its mirror image" is `left !== right`.
 */
import type { Item, Statement } from "../../grammar/index.js";
import type { Word } from "../../grammar/vocabulary/word.js";
import type { ResolvedBlock, ResolvedStatement } from "./car.js";
import type { AxleName, Origin, Side } from "./origin.js";
import type { Scope } from "./scope.js";

export interface TreeBlock extends ResolvedBlock {
  readonly statements: readonly TreeStatement[];
  /** Words that stand in the text but could not be read; a problem tells about each. */
  readonly broken: ReadonlySet<string> | undefined;
}

export interface TreeStatement extends ResolvedStatement {
  readonly block: TreeBlock | undefined;
  /** Where the name was declared first; what replaces a statement of the same name keeps it. */
  readonly root: Origin | undefined;
  /** Set where the value reads other properties, so that it follows them when a set-up changes them. */
  readonly formula: Formula | undefined;
  /** The catalogue part that brought this statement in. */
  readonly part: string | undefined;
}

/** How to read a statement's values again once the properties that it names are known. */
export interface Formula {
  readonly raw: Statement;
  readonly word: Word;
  /** What stands behind the head, without a name that the path of an override says already. */
  readonly items: readonly Item[];
  readonly scope: Scope;
  /** The statement that was replaced, or that `by` adds to. */
  readonly inherited: TreeStatement | undefined;
  readonly by: boolean;
  /** True where it was written for the right side only, in the frame of the car. */
  readonly mirrored: boolean;
}

export interface CarTree {
  readonly block: TreeBlock;
  /** Right sides, in the frame of a left one; the left ones are the blocks of the `axle` statements. */
  readonly right: { readonly [A in AxleName]: TreeBlock | undefined };
}

export function axleStatement(tree: CarTree, axle: AxleName): TreeStatement | undefined {
  return tree.block.statements.find((statement) => statement.word === "axle" && statement.name?.text === axle);
}

export function axleBlock(tree: CarTree, axle: AxleName, side: Side): TreeBlock | undefined {
  return side === "right" ? tree.right[axle] : axleStatement(tree, axle)?.block;
}

/** The one statement of a word that may stand once. */
export function wordIn(block: TreeBlock | undefined, word: string): TreeStatement | undefined {
  if (block === undefined) return undefined;
  for (const statement of block.statements) if (statement.word === word) return statement;
  return undefined;
}

export function withStatement(block: TreeBlock, index: number, statement: TreeStatement): TreeBlock {
  const statements = block.statements.slice();
  statements[index] = statement;
  return { ...block, statements };
}

export function withAdded(block: TreeBlock, statement: TreeStatement): TreeBlock {
  return { ...block, statements: [...block.statements, statement] };
}

export function withoutStatement(block: TreeBlock, index: number): TreeBlock {
  return { ...block, statements: block.statements.filter((_, at) => at !== index) };
}

export function withAxle(tree: CarTree, axle: AxleName, left: TreeBlock, right: TreeBlock): CarTree {
  const index = tree.block.statements.findIndex((other) => other.word === "axle" && other.name?.text === axle);
  const statement = tree.block.statements[index];
  if (statement === undefined) return tree;
  const block = statement.block === left ? tree.block : withStatement(tree.block, index, { ...statement, block: left });
  return { block, right: { ...tree.right, [axle]: right } };
}
