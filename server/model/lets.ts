/** The values of `let` names: worked out on first use, in the order in which they need each other. */
import type { Item, Path } from "../../grammar/index.js";
import type { Amount } from "./amount.js";
import { evaluate, namesIn, type Names } from "./expressions.js";
import { findLet, visibleLets, type Let, type Scope } from "./scope.js";
import { settle, type Knot, type Progress } from "./settle.js";
import { at } from "./sink.js";

/** The value, where it can be had without the car's properties. */
export function settleLet(known: Let): NonNullable<Let["settled"]> {
  if (known.settled === undefined) settle(new LetKnot(known, new Map()), new Map() as Progress);
  return known.settled ?? { amount: undefined, readsProperties: false };
}

/** Names of `let` values in an expression; what is none of them is a property, if anything. */
export function letsIn(item: Item, scope: Scope): { readonly lets: readonly Let[]; readonly others: readonly Path[] } {
  const lets: Let[] = [];
  const others: Path[] = [];
  for (const path of namesIn(item)) {
    const known = findLet(scope, path);
    if (known === undefined) others.push(path);
    else lets.push(known);
  }
  return { lets, others };
}

export function referToLet(known: Let, scope: Scope, path: Path): void {
  const { name, nameOrigin } = known;
  const named = { target: "let", name, place: known.scope.place, declaration: nameOrigin } as const;
  scope.sink.refer(named, at(scope.uri, path));
}

export function reportUnknown(path: Path, scope: Scope): void {
  const name = path.segments.map((segment) => segment.text).join(".");
  const candidates = visibleLets(scope);
  scope.sink.report({ ...at(scope.uri, path), kind: "unknown-name", name, target: "let", candidates });
}

class LetKnot implements Knot {
  readonly name: string;
  readonly #let: Let;
  readonly #knots: Map<Let, LetKnot>;

  constructor(known: Let, knots: Map<Let, LetKnot>) {
    this.name = known.name;
    this.#let = known;
    this.#knots = knots;
    knots.set(known, this);
  }

  needs(): readonly Knot[] {
    if (this.#let.settled !== undefined) return [];
    const { lets } = letsIn(this.#let.item, this.#let.scope);
    return lets.map((other) => this.#knots.get(other) ?? new LetKnot(other, this.#knots));
  }

  settle(): void {
    const known = this.#let;
    if (known.settled !== undefined) return;
    const { lets, others } = letsIn(known.item, known.scope);
    const readsProperties =
      (others.length > 0 && known.scope.inCar) || lets.some((other) => other.settled?.readsProperties === true);
    const amount = readsProperties ? undefined : evaluate(known.item, namesFor(known));
    known.settled = { amount, readsProperties };
  }

  circle(names: readonly string[]): void {
    this.#let.settled = { amount: undefined, readsProperties: false };
    this.#let.scope.sink.report({ ...this.#let.nameOrigin, kind: "cycle", what: "let", path: names });
  }
}

/** All names that are `let`s are settled by now. */
function namesFor(known: Let): Names {
  const { scope } = known;
  const lookUp = (path: Path): Amount | undefined => {
    const other = findLet(scope, path);
    if (other === undefined) {
      reportUnknown(path, scope);
      return undefined;
    }
    referToLet(other, scope, path);
    return other.settled?.amount;
  };
  return { uri: scope.uri, word: known.name, report: (problem) => scope.sink.report(problem), lookUp };
}
