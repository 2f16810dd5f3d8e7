/**
 * How far something still holds on the way from a place where it does to one where it does not.
 *
 * Invariant: it holds at `holding`, not at `failing`; what comes and goes in between is not seen.
 */

export interface ClosedIn {
  readonly holding: number;
  readonly failing: number;
}

/** Halves the way between both so often. */
export function closedIn(holding: number, failing: number, holds: (x: number) => boolean, halvings: number): ClosedIn {
  let [good, bad] = [holding, failing];
  for (let i = 0; i < halvings; i++) {
    const middle = (good + bad) / 2;
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return { holding: good, failing: bad };
}
