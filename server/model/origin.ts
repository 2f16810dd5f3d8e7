/** Where a value was written, and what it replaced on the way there. */
import type { Span } from "../../grammar/index.js";

/** A place in a file. */
export interface Origin extends Span {
  readonly uri: string;
}

/** A value with its provenance. Numbers inside are SI (m, N, rad, kg, s). */
export interface Given<T = number> {
  readonly value: T;
  /** The unit as the author wrote it ("" for a plain number): figures are shown back in it. */
  readonly unit: string;
  /** The value that is in force. */
  readonly origin: Origin;
  /** The whole statement that is in force (for "remove the line" and "insert below"). */
  readonly statement: Origin;
  /** Places of the values that this one replaced or adjusted, oldest first. */
  readonly chain: readonly Origin[];
}

export interface Sides<T> {
  readonly left: T;
  readonly right: T;
}
export type Side = "left" | "right";
export type AxleName = "front" | "rear";
