/** A car on the scales as its analysis takes it: plain data, and mechanisms on demand. Built by `assemble`. */
import type { Wheels } from "./car-connection.js";
import type { AxleMechanism } from "./mechanism.js";

/** What is turned at one corner. */
export interface CornerAdjusterData {
  readonly kind: "seat" | "rod";
  /** `front.left.side`, `front.left.push-rod` */
  readonly path: string;
  /** For one turn, m: of a seat the ride height that it changes, of a rod its length. */
  readonly thread: number | undefined;
}

export interface WeighingData {
  /** What the pads show, FL FR RL RR, kg. */
  readonly readings: Wheels | undefined;
  /** Wanted share of front right and rear left, and how far from it a check speaks. */
  readonly target: number;
  readonly within: number;
  /** Of the wheels, forward from the rear axle line and left of y = 0, m; or why they are not known. */
  readonly places: { readonly x: Wheels; readonly y: Wheels } | string;
  /** FL, FR, RL, RR; or why there is none. */
  readonly corners: readonly (CornerAdjusterData | string)[];
  readonly mechanisms: {
    readonly front: () => AxleMechanism | undefined;
    readonly rear: () => AxleMechanism | undefined;
  };
}
