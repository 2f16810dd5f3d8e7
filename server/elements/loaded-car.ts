/**
 * A car as its equilibrium takes it: two axles with their elements, what joins them, masses, brakes, drive and air.
 * All SI, frames as in `linkage/NOTATION.md`. Built by `assemble`.
 *
 * Invariant: plain data and mechanisms, no state; what the text leaves out is `undefined`, and whoever needs it says so.
 */
import type { AxleMechanism, CarElement, Sides } from "./mechanism.js";
import type { Known } from "./masses.js";
import type { Vec3 } from "../maths/vec3.js";
import type { Air } from "./air.js";

/** Wheel centre and contact point as drawn, in the frame of the car: for wheels whose corner has no geometry. */
export interface WheelPlace {
  readonly centre: Vec3;
  readonly contact: Vec3;
}

export interface LoadedAxle {
  readonly mechanism: AxleMechanism;
  /** Undefined where it cannot be told where the wheels are. */
  readonly places: Sides<WheelPlace> | undefined;
  /** Ride height that the linkage is drawn at, m. */
  readonly drawnHeight: number | undefined;
}

export interface CarUnderLoad {
  readonly axles: { readonly front: LoadedAxle | undefined; readonly rear: LoadedAxle | undefined };
  /** Elements at car level. */
  readonly joining: readonly CarElement[];
  /** Height of the whole car's centre of gravity above the ground as it is set, m. */
  readonly cgHeight: Known;
  readonly brakes: { readonly front: number; readonly mounting: "outboard" | "inboard" } | undefined;
  readonly drive: "front" | "rear" | "all" | undefined;
  /** A text says why there is none where one is written. */
  readonly air: Air | string | undefined;
  /** Travel of the steering rack for a turn of the wheel, m. */
  readonly rack: number | undefined;
  /** kg/m³ */
  readonly density: number;
  /** Points of the body whose height above the ground is looked at. */
  readonly points: readonly { readonly name: string; readonly point: Vec3 }[];
}

/** Steady motion of a car on a road. */
export interface LoadCase {
  readonly name: string;
  /** m/s */
  readonly speed: number;
  /** m/s²: level and to the left; along the road and forwards; square to the road and upwards. */
  readonly lateral: number;
  readonly longitudinal: number;
  readonly vertical: number;
  /** rad: the road's left side lower, as a left turn is banked; uphill. */
  readonly banking: number;
  readonly gradient: number;
  /** Travel of the steering rack as it steers to the left, m; and turns of the steering wheel beside it. */
  readonly steer: number;
  readonly turns: number;
}

export const AT_REST: LoadCase = {
  name: "rest",
  speed: 0,
  lateral: 0,
  longitudinal: 0,
  vertical: 0,
  banking: 0,
  gradient: 0,
  steer: 0,
  turns: 0,
};
