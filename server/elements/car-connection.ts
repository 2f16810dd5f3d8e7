/**
 * The connection of an element that joins the axles: a deflection that follows all four wheels.
 *
 * Wheels in the order FL, FR, RL, RR; travels in m, bump positive; units of the deflection as in `Connection`.
 *
 * Invariant: no state; an axle that the car lacks is not asked for.
 */
import type { AxleMotion } from "../linkage/corner.js";
import type { NoDeflection } from "./deflection.js";
import type { Connection } from "./element.js";

/** A number for each wheel. */
export type Wheels = readonly [number, number, number, number];

/** Deflection with gradient and Hessian over the four wheel travels. */
export interface CarDeflection {
  readonly s: number;
  readonly d: Wheels;
  readonly dd: readonly [Wheels, Wheels, Wheels, Wheels];
}

export interface CarMotion {
  readonly front: AxleMotion;
  readonly rear: AxleMotion;
}

export interface CarConnection
  extends Pick<Connection, "kind" | "basis" | "torsional" | "measure" | "idle" | "statedFor"> {
  deflection(motion: CarMotion): CarDeflection | NoDeflection;
}

const NONE: Wheels = [0, 0, 0, 0];

/** A deflection that nothing moves. */
export const CAR_STILL: CarDeflection = { s: 0, d: NONE, dd: [NONE, NONE, NONE, NONE] };

/** Number for each wheel from what it is; kept a tuple. */
export const eachWheel = (of: (wheel: number) => number): Wheels => [of(0), of(1), of(2), of(3)];

export const eachPair = (of: (one: number, other: number) => number): CarDeflection["dd"] => [
  eachWheel((j) => of(0, j)),
  eachWheel((j) => of(1, j)),
  eachWheel((j) => of(2, j)),
  eachWheel((j) => of(3, j)),
];
