/**
 * Values that read other properties (`ride-height front.ride-height + 8 mm`): worked out when the
 * car is whole, in the order in which they need each other, and again in every set-up.
 *
 * Invariant: the tree that is given is not changed; in the one that comes back a value is final
 * or not there, and what did not change is shared.
 */
import type { Item, Path } from "../../grammar/index.js";
import { adjusted } from "./adjust.js";
import type { Amount } from "./amount.js";
import { evaluate } from "./expressions.js";
import { letsIn } from "./lets.js";
import type { ModelProblem } from "./problem.js";
import { amountOf, findProperty, isUnread, nearbyProperties } from "./properties.js";
import { Reader, type Properties } from "./reader.js";
import { withChain } from "./provenance.js";
import { isSameStatement } from "./same.js";
import { pathOf } from "./place.js";
import { visibleLets, type Let, type Scope } from "./scope.js";
import { settle, type Knot, type Progress } from "./settle.js";
import { mirrorStatement } from "./sides.js";
import { at, type Sink } from "./sink.js";
import type { CarTree, Formula, TreeBlock, TreeStatement } from "./tree.js";
import { readFormula } from "./write.js";

export function settleFormulas(tree: CarTree, sink: Sink): CarTree {
  const solver = new Solver(tree, sink);
  const starts = [tree.block, tree.right.front, tree.right.rear];
  for (const block of starts) if (block !== undefined) solver.settleAll(block);
  if (solver.results.size === 0) return tree;
  const rewrite = rewriter(solver.results);
  const { front, rear } = tree.right;
  return { block: rewrite(tree.block), right: { front: front && rewrite(front), rear: rear && rewrite(rear) } };
}

type Results = Map<TreeStatement, TreeStatement | undefined>;

/** Blocks that hold no formula are kept as they are; one that both sides share stays shared. */
function rewriter(results: Results): (block: TreeBlock) => TreeBlock {
  const done = new Map<TreeBlock, TreeBlock>();
  const rewrite = (block: TreeBlock): TreeBlock => {
    const known = done.get(block);
    if (known !== undefined) return known;
    const statements: TreeStatement[] = [];
    let changed = false;
    for (const statement of block.statements) {
      const now = results.has(statement) ? results.get(statement) : statement;
      const inner = now?.block && rewrite(now.block);
      const complete = now === undefined || inner === now.block ? now : { ...now, block: inner };
      if (complete !== statement) changed = true;
      if (complete !== undefined) statements.push(complete);
    }
    const rewritten = changed ? { ...block, statements } : block;
    done.set(block, rewritten);
    return rewritten;
  };
  return rewrite;
}

class Solver implements Properties {
  readonly results: Results = new Map();
  readonly #tree: CarTree;
  readonly #sink: Sink;
  readonly #progress: Progress = new Map();
  readonly #knots = new Map<TreeStatement | Let, Knot>();
  readonly #lets = new Map<Let, Amount | undefined>();
  readonly #visited = new Set<TreeBlock>();

  constructor(tree: CarTree, sink: Sink) {
    this.#tree = tree;
    this.#sink = sink;
  }

  settleAll(block: TreeBlock): void {
    if (this.#visited.has(block)) return;
    this.#visited.add(block);
    for (const statement of block.statements) {
      if (statement.formula !== undefined) settle(this.#knotOf(statement, statement.formula, block), this.#progress);
      if (statement.block !== undefined) this.settleAll(statement.block);
    }
  }

  letAmount(known: Let): Amount | undefined {
    return this.#lets.get(known);
  }

  amountOf(path: Path, scope: Scope): Amount | undefined {
    const property = findProperty(this.#tree, path, scope);
    if (property === undefined) {
      this.#reportUnknown(path, scope);
      return undefined;
    }
    const { statement } = property;
    const now = statement.formula === undefined ? statement : this.results.get(statement);
    const amount = now && amountOf(now, property);
    if (now !== undefined && amount === undefined) this.#reportUnknown(path, scope);
    return amount;
  }

  #report(problem: ModelProblem): void {
    this.#sink.report(problem);
  }

  #reportUnknown(path: Path, scope: Scope): void {
    if (isUnread(this.#tree, path, scope)) return;
    const name = path.segments.map((segment) => segment.text).join(".");
    const candidates = [...visibleLets(scope), ...nearbyProperties(this.#tree, scope)];
    this.#report({ ...at(scope.uri, path), kind: "unknown-name", name, target: "let", candidates });
  }

  #needsOf(item: Item, scope: Scope): readonly Knot[] {
    const { lets, others } = letsIn(item, scope);
    const knots: Knot[] = [];
    for (const known of lets) if (known.settled?.readsProperties === true) knots.push(this.#knotOfLet(known));
    for (const path of others) {
      const found = findProperty(this.#tree, path, scope);
      const formula = found?.statement.formula;
      if (found !== undefined && formula !== undefined)
        knots.push(this.#knotOf(found.statement, formula, found.parent));
    }
    return knots;
  }

  #knotOfLet(known: Let): Knot {
    const { item, scope, name, nameOrigin } = known;
    return this.#knot(known, {
      name,
      needs: () => this.#needsOf(item, scope),
      settle: () => this.#lets.set(known, evaluate(item, this.#reader(scope).on(nameOrigin, name, undefined))),
      circle: (names) => this.#report({ ...nameOrigin, kind: "cycle", what: "let", path: names }),
    });
  }

  #knotOf(statement: TreeStatement, formula: Formula, parent: TreeBlock): Knot {
    const { inherited, scope, items, by } = formula;
    return this.#knot(statement, {
      name: [...pathOf(scope.place), statement.name?.text ?? statement.word].join("."),
      needs: () => {
        const needs = items.flatMap((item) => this.#needsOf(item, scope));
        if (by && inherited?.formula !== undefined) needs.push(this.#knotOf(inherited, inherited.formula, parent));
        return needs;
      },
      settle: () => this.results.set(statement, this.#read(statement, formula, parent)),
      circle: (names) => {
        this.results.set(statement, undefined);
        this.#report({ ...statement.origin, kind: "cycle", what: "let", path: names });
      },
    });
  }

  #knot(of: TreeStatement | Let, made: Knot): Knot {
    const known = this.#knots.get(of);
    if (known === undefined) this.#knots.set(of, made);
    return known ?? made;
  }

  #reader(scope: Scope): Reader {
    return new Reader(scope, this, (problem) => this.#report(problem));
  }

  /** The statement with its values; the same one where they are what they were in the base. */
  #read(statement: TreeStatement, formula: Formula, parent: TreeBlock): TreeStatement | undefined {
    const reader = this.#reader(formula.scope).on(statement.origin, formula.word.word, formula.word);
    const fresh = formula.by
      ? this.#adjusted(statement, formula, parent, reader)
      : whole(statement, formula, parent, reader);
    return fresh !== undefined && isSameStatement(fresh, statement) ? statement : fresh;
  }

  #adjusted(statement: TreeStatement, formula: Formula, parent: TreeBlock, reader: Reader): TreeStatement | undefined {
    const { inherited, word, raw, mirrored } = formula;
    const target = inherited?.formula === undefined ? inherited : this.results.get(inherited);
    const sum = target && adjusted(word, target, parent, raw, reader, mirrored);
    return sum?.values && { ...statement, values: sum.values, form: target?.form ?? statement.form };
  }
}

function whole(
  statement: TreeStatement,
  formula: Formula,
  parent: TreeBlock,
  reader: Reader,
): TreeStatement | undefined {
  const read = readFormula(formula, reader, parent.concept);
  if (!read.whole) return undefined;
  const { values } = formula.mirrored ? mirrorStatement({ ...statement, values: read.values, block: undefined }) : read;
  const from = formula.inherited?.values;
  const chained = from === undefined ? values : values.map((value, index) => withChain(value, from[index]));
  return { ...statement, values: chained, form: read.form };
}
