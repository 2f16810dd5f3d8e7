/**
 * What the linear whole car is made of: numbers of one car about one case, all SI.
 *
 * Axes ISO 8855 (x forward, y left, z up). Wheels FL, FR, RL, RR. Wheel matrices are over wheel travel relative to the
 * body, bump positive: stiffness ∂²U/∂z² with its geometric part, damping and inertance by Σ c ∇s∇sᵀ and Σ b ∇s∇sᵀ.
 *
 * Invariant: plain data; whoever makes it has linearised every law already.
 */
import type { Rows } from "../../maths/rows.js";

export interface WholeCar {
  readonly wheelbase: number;
  readonly sprung: SprungMass;
  readonly front: AxleNumbers;
  readonly rear: AxleNumbers;
  /** What joins the axles, 4 × 4 over FL, FR, RL, RR. */
  readonly cross?: WheelMatrices;
  /** Σ of what gravity takes off the roll stiffness, m_s g H, N·m/rad: H is the sprung centre of gravity's height above the roll axis. */
  readonly rollGravity?: number;
  readonly air?: AirNumbers;
}

export interface SprungMass {
  readonly mass: number;
  /** About its own centre of gravity, kg·m². */
  readonly rollInertia: number;
  readonly pitchInertia: number;
  /** Of the sprung centre of gravity: behind the front axle, and left of the centre plane, m. */
  readonly behindFront: number;
  readonly left?: number;
}

export interface AxleNumbers extends WheelMatrices {
  readonly track: number;
  readonly left: WheelNumbers;
  readonly right: WheelNumbers;
}

/** 2 × 2 over (left, right) for an axle: N/m, N·s/m, kg. */
export interface WheelMatrices {
  readonly stiffness: Rows;
  readonly damping: Rows;
  readonly inertance: Rows;
}

export interface WheelNumbers {
  readonly unsprungMass: number;
  readonly tyreRate: number;
  readonly tyreDamping: number;
}

export interface AirNumbers {
  /** ∂downforce/∂ride height, N/m, [[front by front, front by rear], [rear by front, rear by rear]]; negative: more as it drops. */
  readonly slopes: Rows;
  /** First order, s. */
  readonly lag?: number;
}
