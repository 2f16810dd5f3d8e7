/** What `compare` found, as every format of it takes it. */
import type { Review } from "../../views/comparison/review.js";

export interface Compared {
  readonly review: Review;
  /** Files that could not be compared, a sentence each. */
  readonly troubles: readonly string[];
  /** Text of a file of the newer side, and of what it was on the older one. */
  textBefore(uri: string): string | undefined;
  textAfter(uri: string): string | undefined;
}

export interface CompareOptions {
  readonly setup?: string | undefined;
  /** Threshold as a fraction; undefined for the usual one. */
  readonly share?: number | undefined;
  readonly acrossCars?: boolean | undefined;
  readonly labelOld?: string | undefined;
  readonly labelNew?: string | undefined;
  /** The path that both texts stand for. */
  readonly name?: string | undefined;
  readonly mergeBase?: boolean | undefined;
}
