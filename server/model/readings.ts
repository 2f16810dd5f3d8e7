/**
 * Statements with blocks as they were read in an earlier version of the text: one that the new version has as the very same node is
 * taken over, with what was said of names in it.
 *
 * Likewise an axle of the car whose lines are all taken over.
 *
 * Invariant: only what reading it again would give is kept: nothing that had a problem, an override, a `let` around it, a formula
 * or a table from a file of its own. Whoever hands these on to a new version sees to it that parts and used files are the same.
 */
import type { Statement } from "../../grammar/index.js";
import type { Concept } from "../../grammar/vocabulary/word.js";
import type { AxleSides } from "./axle-sides.js";
import type { AxleModel } from "./car.js";
import type { Place } from "./place.js";
import type { Scope } from "./scope.js";
import type { Mark, Said, Sink } from "./sink.js";
import type { TreeBlock, TreeStatement } from "./tree.js";

/** All that the reading of a statement rests on besides its own text. */
export interface Circumstances {
  readonly concept: Concept;
  readonly scope: Scope;
  readonly partial: boolean;
  /** Whether a part is fitted beside it. */
  readonly fitted: boolean;
}

export interface KeptReading<T> {
  readonly value: T;
  readonly said: readonly Said[];
}

interface Kept extends KeptReading<unknown>, Omit<Circumstances, "scope"> {
  readonly place: Place | undefined;
}

interface KeptAxle extends KeptReading<AxleModel> {
  readonly statement: TreeStatement;
  readonly right: TreeBlock;
}

export class Readings {
  readonly #kept = new WeakMap<Statement, Kept>();
  readonly #axles = new WeakMap<TreeBlock, KeptAxle>();

  /** The axle as it was made of these very lines, or as `make` makes it now. */
  axle(statement: TreeStatement, { blocks: { left, right } }: AxleSides, sink: Sink, make: () => AxleModel): AxleModel {
    const kept = this.#axles.get(left);
    if (kept?.statement === statement && kept.right === right) {
      sink.repeat(kept.said);
      return kept.value;
    }
    const since = sink.mark();
    const value = make();
    const said = sink.since(since);
    if (said !== undefined) this.#axles.set(left, { value, said, statement, right });
    return value;
  }

  /** `T` is what `keep` was given for such statements: each kind of them is kept by one reader. */
  find<T>(raw: Statement, { concept, scope, partial, fitted }: Circumstances): KeptReading<T> | undefined {
    const kept = this.#kept.get(raw);
    if (kept === undefined || kept.concept !== concept || kept.partial !== partial || kept.fitted !== fitted)
      return undefined;
    return isSamePlace(kept.place, scope.place) && !hasLets(scope) ? (kept as KeptReading<T>) : undefined;
  }

  /** @param since where the sink was before it was read */
  keep(raw: Statement, { concept, scope, partial, fitted }: Circumstances, value: unknown, since: Mark): void {
    const said = hasLets(scope) ? undefined : scope.sink.since(since);
    if (said !== undefined) this.#kept.set(raw, { value, said, concept, partial, fitted, place: scope.place });
  }
}

function isSamePlace(a: Place | undefined, b: Place | undefined): boolean {
  if (a === b) return true;
  return a !== undefined && b !== undefined && a.segment === b.segment && isSamePlace(a.outer, b.outer);
}

/** Of the blocks around; those of the files are the same for all. */
function hasLets(scope: Scope): boolean {
  for (let here: Scope | undefined = scope; here?.inCar === true; here = here.outer)
    if (here.lets !== undefined) return true;
  return false;
}
