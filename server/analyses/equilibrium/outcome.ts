/** What comes of putting a car into equilibrium: a position with its forces, or why there is none. */
import type { BindingLink } from "../../linkage/corner.js";
import type { Absent } from "../results.js";
import type { Balance } from "./balance.js";
import type { Load } from "./load.js";

export interface Solved {
  readonly kind: "solved";
  readonly x: readonly number[];
  readonly balance: Balance;
  readonly load: Load;
  readonly iterations: number;
  /** Largest force that is left over, N; moments over half the track or wheelbase. */
  readonly residual: number;
}

/**
 * - `aero-stiffness`: downforce grows faster with sinking than springs and tyres push back;
 * - `aground`: the body would have to be below the road at an axle line;
 * - `airborne`: both wheels of an axle are off the ground;
 * - `tips-over`: both wheels of a side are off the ground, and nothing turns the car back;
 * - `reach`: the links do not reach as far as it would take;
 * - `stroke`: an element has no position (a drop link that does not reach, ends that meet);
 * - `unheld`: nothing holds some freedom any more, a lifted wheel for one;
 * - `not-found`: the search ended without either.
 */
export type WhyNot =
  | { readonly kind: "aero-stiffness" | "unheld" | "not-found" }
  | { readonly kind: "aground" | "airborne"; readonly axle: "front" | "rear" }
  | { readonly kind: "tips-over"; readonly side: "left" | "right" }
  | { readonly kind: "reach"; readonly wheel: WheelName; readonly link: BindingLink; readonly travel: number }
  | { readonly kind: "stroke"; readonly element: string };

export interface WheelName {
  readonly axle: "front" | "rear";
  readonly side: "left" | "right";
}

export interface NotConverged {
  readonly kind: "not-converged";
  readonly reason: WhyNot;
  readonly iterations: number;
  readonly residual: number;
  /** Path of the element that it is about, where there is one. */
  readonly element: string | undefined;
  /** Share of the way from rest to the case that could still be gone. */
  readonly reached: number;
}

export type Outcome = Solved | NotConverged | Absent;
