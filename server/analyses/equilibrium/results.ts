/** The figures of load cases, and of sweeps over them, as they leave the analyses: plain readonly data, SI. */
import type { LoadCase } from "../../elements/loaded-car.js";
import type { Absent, ByMode, Figure } from "../results.js";
import type { WheelName, WhyNot } from "./outcome.js";

export type { LoadCase } from "../../elements/loaded-car.js";
export type { WheelName, WhyNot } from "./outcome.js";

/** A case in equilibrium, a case that has none, or one that cannot be asked. */
export type CaseResult = CaseFigures | NoEquilibrium | CaseAbsent;

export interface CaseAbsent extends Absent {
  readonly name: string;
}

export interface NoEquilibrium {
  readonly kind: "no-equilibrium";
  readonly name: string;
  readonly why: WhyNot;
  /** "downforce grows faster than …": a full clause. */
  readonly words: string;
  readonly iterations: number;
  /** N */
  readonly residual: number;
  readonly element: string | undefined;
  /** Share of the way from rest to the case that could be gone. */
  readonly reached: number;
}

export interface CaseFigures {
  readonly kind: "equilibrium";
  readonly name: string;
  readonly asked: LoadCase;
  readonly iterations: number;
  /** N */
  readonly residual: number;
  /** Of the plane z = 0 at the axle line, m. */
  readonly front: CaseAxle;
  readonly rear: CaseAxle;
  /** FL, FR, RL, RR. */
  readonly wheels: readonly CaseWheel[];
  /** From rest, rad: left side up, nose down. */
  readonly roll: number;
  readonly pitch: number;
  /** rad for each m/s² along the road; absent without any. */
  readonly rollGradient: Figure;
  readonly elements: readonly CaseElement[];
  readonly clearances: readonly { readonly name: string; readonly height: number }[];
  readonly air: CaseAir;
  readonly loadTransferFront: Figure;
  /** Springs and bars at the positions of the case, tyres left out. */
  readonly rollStiffnessFront: Figure;
  readonly downforceFront: Figure;
}

export interface CaseAir {
  /** kg/m³ */
  readonly density: number;
  /** N, down and backwards. */
  readonly front: number;
  readonly rear: number;
  readonly drag: number;
  /** ∂area/∂height at these heights, m: [[front by front, front by rear], [rear by front, rear by rear]]. */
  readonly slopes: readonly (readonly [number, number])[] | undefined;
  /** Axles whose table does not reach to these heights. */
  readonly outside: readonly ("front" | "rear")[];
}

export interface CaseAxle {
  /** Absent where the axle has no ride-height. */
  readonly rideHeight: Figure;
  /** Springs at the positions of the case, tyres left out: N/m, N·m/rad, N/m. */
  readonly heaveRate: number;
  readonly rollStiffness: Figure;
  readonly wheelRate: { readonly left: number; readonly right: number };
  /** With the tyres in series. */
  readonly rideRate: { readonly heave: Figure; readonly roll: Figure; readonly single: Figure };
  /** Dampers at low speed, N·s/m and N·m·s/rad. */
  readonly heaveDamping: Figure;
  readonly rollDamping: Figure;
}

export interface CaseWheel extends WheelName {
  /** From design, bump positive, m; what is left of the envelope. */
  readonly travel: number;
  readonly left: { readonly bump: number; readonly rebound: number };
  /** Of the tyre, N; lateral to the left, longitudinal forwards. */
  readonly load: number;
  readonly lateral: number;
  readonly longitudinal: number;
  readonly isLifted: boolean;
  /** Against the body, and the wheel's inclination against the road, rad. */
  readonly camber: Figure;
  readonly camberToRoad: Figure;
  readonly toe: Figure;
}

export interface CaseElement {
  readonly path: string;
  readonly kind: string;
  readonly torsional: boolean;
  readonly measure: "volume" | undefined;
  /** N, N·m, or Pa above atmosphere. */
  readonly force: number;
  /** From design, m, rad or m³. */
  readonly deflection: number;
  /** ds per unit amplitude of each mode at every wheel, at the positions of the case. */
  readonly sensitivity: ByMode;
  /** At this deflection, N/m, N·m/rad or Pa/m³; undefined where it holds a length. */
  readonly rate: number | undefined;
  /** Of gas or oil, Pa above atmosphere. */
  readonly pressure: number | undefined;
  /** What is left of its stroke. */
  readonly stroke: { readonly bump: number; readonly rebound: number } | undefined;
  readonly stresses: readonly { readonly part: string; readonly stress: number }[];
  /** Of a stop, or a spring with play: whether it carries, and what is left until it does. */
  readonly stop: { readonly isReached: boolean; readonly left: number } | undefined;
}

export interface SweepPoint {
  /** m/s or m/s². */
  readonly value: number;
  /** A push would grow on the unstable one: the car is never found there, it parts what returns from what does not. */
  readonly branch: "stable" | "unstable";
  readonly figures: CaseFigures;
}

/** Something that begins on the way. */
export interface SweepEvent {
  readonly value: number;
  readonly what: "wheel-lifts" | "stop-reached";
  /** "front left", or the path of the stop. */
  readonly name: string;
}

export interface Sweep {
  readonly kind: "sweep";
  readonly over: "speed" | "lateral";
  /** The stable branch from the start, then what follows it round its ends. */
  readonly points: readonly SweepPoint[];
  readonly events: readonly SweepEvent[];
  /** Where the stable branch ends before what was asked for, and why; undefined where it does not. */
  readonly end: { readonly value: number; readonly why: string } | undefined;
}

export interface SweepQuestion {
  readonly over: "speed" | "lateral";
  /** The case that everything else is taken from; undefined for a straight, level road (in a speed sweep) or standstill. */
  readonly from: string | undefined;
  /** m/s or m/s²; a lateral sweep goes on until the first wheel lifts, but no further. */
  readonly to: number;
  /** Steps of the stable branch. */
  readonly steps: number;
}

export type SweepResult = Sweep | Absent;

/** The load cases of one car or set-up, each worked out when it is first asked for; sweeps are worked out anew each time. */
export interface CarCases {
  readonly names: readonly string[];
  /** Undefined where the car has no case of that name. */
  at(name: string): CaseResult | undefined;
  sweep(question: SweepQuestion): SweepResult;
}
