/**
 * Statements with blocks as they were read in an earlier version of the text: one that the new version has as the very same node is
 * taken over, with what was said of names in it.
 *
 * Invariant: only what reading it again would give is kept: nothing that had a problem, an override, a `let` around it, a formula
 * or a table from a file of its own. Whoever hands these on to a new version sees to it that parts and used files are the same.
 */
import type { Statement } from "../../grammar/index.js";
import type { Concept } from "../../grammar/vocabulary/word.js";
import type { Place } from "./place.js";
import type { Scope } from "./scope.js";
import type { Mark, Said } from "./sink.js";

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

export class Readings {
  readonly #kept = new WeakMap<Statement, Kept>();

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
