/** One thing that differs between the left and the right side of an axle. */
import type { AxleName, Origin, Side, Sides } from "../model/origin.js";

export interface Difference {
  readonly axle: AxleName;
  /** "front rocker eye third", "front side damping". */
  readonly what: string;
  /** As the author wrote them; undefined where that is too long for a message. */
  readonly shown: Sides<string> | undefined;
  /** The side that has a line of its own. */
  readonly side: Side;
  /** Its value, and the whole line around it. */
  readonly origin: Origin;
  readonly statement: Origin;
  readonly other: Origin | undefined;
}
