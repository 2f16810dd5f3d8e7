/**
 * The figures that leave the analyses: plain readonly data, SI, shared by findings, views,
 * the command line and the editor. A figure that is not to be had is an `Absent` with its reason.
 */
import type { AssemblyProblem } from "../elements/mechanism.js";
import type { BindingLink } from "../linkage/corner.js";

export type { AssemblyProblem } from "../elements/mechanism.js";

export interface Absent {
  readonly kind: "absent";
  /** A full clause in plain words: "the front axle has no tyre-rate". */
  readonly reason: string;
}
/** A figure in SI, or why there is none. */
export type Figure = number | Absent;

/** By mode, dimension-mates of a deflection per travel (1, or rad/m). */
export interface ByMode {
  readonly heave: number;
  readonly roll: number;
  readonly pitch: number;
  readonly warp: number;
}

export interface AxleRates {
  readonly axle: "front" | "rear";
  /** ∂²U/∂z² [[LL, LR], [RL, RR]], N/m, at static trim. */
  readonly stiffness: readonly [readonly [number, number], readonly [number, number]] | Absent;
  /** 1ᵀK1: both wheels together, N/m. */
  readonly heaveRate: Figure;
  /** t²/4 · pᵀKp with p = (−1, 1), N·m/rad. */
  readonly rollStiffness: Figure;
  /** K_LL and K_RR, the other wheel held, N/m. */
  readonly wheelRate: { readonly left: Figure; readonly right: Figure };
  /** With the tyres in series. */
  readonly rideRate: { readonly heave: Figure; readonly roll: Figure; readonly single: Figure };
  /** Undamped heave frequency of the sprung axle mass on the ride rate, Hz. */
  readonly heaveFrequency: Figure;
  /** Wheel damping in heave (N·s/m, both wheels) and roll (N·m·s/rad), dampers at low speed. */
  readonly heaveDamping: Figure;
  readonly rollDamping: Figure;
  /** The same over left and right wheel, N·s/m. */
  readonly damping: readonly [readonly [number, number], readonly [number, number]] | Absent;
  /** What figures of the whole car take of its axles. */
  readonly track: number | undefined;
  readonly tyreRate: { readonly left: number | undefined; readonly right: number | undefined };
  /** What each element adds to the stiffness; empty where a part of it is not known. */
  readonly shares: readonly RateShare[];
  /** The same for the damping at low speed: N·s/m, N·m·s/rad, N·s/m. */
  readonly dampingShares: readonly RateShare[];
  /** Seat adjustment that carries the static load. */
  /** Empty where rods are set and every seat stays. */
  readonly trim: readonly TrimResult[] | Absent;
  readonly rods?: RodsSet | undefined;
  /** Share of the whole car's roll stiffness; needs both axles. */
  readonly rollStiffnessShare: Figure;
}

/** What one element adds to a rate of its axle, k∇s∇sᵀ and F∇²s together. */
export interface RateShare {
  readonly path: string;
  /** N/m in heave, N·m/rad in roll, N/m on its own wheel (mean of both sides for an axle element). */
  readonly heave: number;
  readonly roll: number;
  readonly single: number;
}

/** Rods that trim set longer than they are written, m; shorter where negative. */
export interface RodsSet {
  readonly kind: "push-rod" | "pull-rod";
  readonly left: number;
  readonly right: number;
}

export interface TrimResult {
  readonly path: string;
  /** Seat shift in the element's own deflection (m or rad) and the force that it then carries (N or N·m). */
  readonly seat: number;
  readonly load: number;
}

export interface Leak {
  /** The unclaimed mode that it leaks into; `other-wheel` for a corner element. */
  readonly mode: "heave" | "roll" | "pitch" | "warp" | "other-wheel";
  /**
   * |ds/dq unclaimed| over |ds/dq claimed| at static; a fraction, above 1 where it is moved more by the wrong mode.
   * Where it is not moved at all in its own mode there is no `Leak` but an `Absent`, and `idleIn` names the mode.
   */
  readonly firstOrder: number;
  /** Largest |s| that a pure motion in the unclaimed mode causes over the largest |s| in its own, across the envelope. */
  readonly finite: Figure;
  /** Its share of the unclaimed mode's stiffness or damping, signed; absent without a law or a sum of zero. */
  readonly rate: Figure;
}

/** Of gas springs and hydraulic links, all volumes of one element together; pressures above atmosphere, Pa. */
export interface FluidFigures {
  /** How many there are; motion, rate and pressure at static are those of the first. */
  readonly volumes: number;
  /** At static trim. */
  readonly pressure: Figure;
  /** Over the envelope. */
  readonly over: { readonly lowest: number; readonly highest: number } | Absent;
  /** Largest share of the gas volume at design that is swept over the envelope; undefined without gas. */
  readonly used: Figure | undefined;
  /** Deflection from static at which next to no gas is left. */
  readonly ends: Figure | undefined;
}

/** A place on a pure motion of the wheels, starting where they rest. */
export interface Where {
  readonly mode: "rest" | "heave" | "roll";
  /** Travel of both wheels from design in heave; in roll that of the right wheel from rest, the left one going the other way. */
  readonly travel: number;
}

/** What a part of an element is stressed by, Pa. */
export interface StressFigures {
  readonly part: "coil" | "torsion bar" | "blade";
  readonly kind: "shear" | "bending";
  readonly atRest: number;
  /** Over the envelope, in heave and in roll. */
  readonly most: number;
  /** As stated by its maker; else what is usual for such parts, with `source`. */
  readonly allowable: number;
  readonly stated: boolean;
  readonly source: string;
  /** Where the allowable stress is passed first; undefined where it is not. */
  readonly passed: Where | undefined;
}

/** Lengths of a coil, m. */
export interface CoilFigures {
  readonly atRest: number;
  /** With its turns closed up. */
  readonly solid: number;
  /** What is left to that over the envelope, at least; negative where it is passed. */
  readonly margin: number;
  readonly binds: Where | undefined;
}

/** What is left of the stroke, m or rad: at rest, and over the envelope at least. */
export interface StrokeFigures {
  readonly bump: { readonly atRest: number; readonly least: number; readonly passed: Where | undefined };
  readonly rebound: { readonly atRest: number; readonly least: number; readonly passed: Where | undefined };
}

/** A change of the law that comes on the way: it begins to carry, or a stage of it is used up. */
export interface LawEvent {
  readonly what: "free" | "stage";
  /** Deflection from design. */
  readonly at: number;
  /** Where the wheels are then, in the element's own mode; undefined where the envelope ends before. */
  readonly where: Where | undefined;
}

export interface StrengthFigures {
  readonly stresses: readonly StressFigures[];
  readonly coil: CoilFigures | undefined;
  readonly stroke: StrokeFigures | undefined;
  /** Where a spring that is not said to pull would have to. */
  readonly unseated: Where | undefined;
}

export interface ElementFigures {
  readonly path: string;
  readonly kind: string;
  readonly for: readonly string[];
  readonly basis: "hardpoints" | "planar" | "ratio";
  readonly torsional: boolean;
  /** Set where the deflection is a swept volume: sensitivity in m², rate in Pa/m³, load in Pa above atmosphere. */
  readonly measure?: "volume" | undefined;
  readonly fluid?: FluidFigures | undefined;
  /** What it bears and how much room it has; undefined where nothing of it is known, absent where its load is not. */
  readonly strength?: StrengthFigures | Absent | undefined;
  readonly events?: readonly LawEvent[] | Absent | undefined;
  /** Of an inerter, what it adds to the mass at the wheels: kg in heave, kg·m² in roll (absent without a track), kg at one wheel. */
  readonly inertance?: { readonly heave: number; readonly roll: Figure; readonly single: number } | undefined;
  /** ds per unit amplitude of each mode at every wheel, at static. A ratio says 0 for modes that it does not state. */
  readonly sensitivity: ByMode | Absent;
  /** ds/dz of the element's own wheel; corner elements only. */
  readonly motionRatio: Figure | undefined;
  /** Undefined where it is for every mode of its scope, so that nothing can leak. */
  readonly leak: Leak | Absent | undefined;
  /** The element's own rate at static (N/m or N·m/rad), or low-speed damping for a damper (N·s/m). */
  readonly rate: Figure;
  /**
   * What it gives at the wheels in its first claimed mode: N/m heave, N·m/rad roll, N/m corner (damping alike). Between the
   * axles N·m/rad in pitch too, both of the body about its centre of gravity, and N/m in warp.
   */
  readonly atWheels: Figure;
  /** Force or moment at static. */
  readonly staticLoad: Figure;
  /** At static trim, from design. */
  readonly deflection: Figure;
  /** Smallest and largest deflection over the envelope (heave and roll), from design. */
  readonly travel: { readonly from: number; readonly to: number } | Absent;
  /** Claims that its motion does not bear out: it is hardly moved in these. */
  readonly idleIn: readonly string[];
}

export interface ReachFigures {
  readonly axle: "front" | "rear";
  readonly side: "left" | "right";
  readonly from: number;
  readonly to: number;
  /** Where the demanded envelope goes further than the links. */
  readonly binds: readonly {
    readonly link: BindingLink;
    readonly travel: number;
    readonly limit: number;
    readonly element: string | undefined;
  }[];
  /** Where each link comes nearest to a toggle inside the envelope; angle in rad from it. `element`: the bar of a drop link. */
  readonly toggles: readonly {
    readonly link: BindingLink;
    readonly travel: number;
    readonly angle: number;
    readonly element: string | undefined;
  }[];
}

/** One row of `kinematics`: both wheels at a heave and roll. */
export interface KinematicsRow {
  /** Mean travel, m, and body roll angle from the travels, rad ((right − left) travel over track, ISO sign). */
  readonly heave: number;
  readonly roll: number;
  readonly left: WheelRow | Absent;
  readonly right: WheelRow | Absent;
  readonly elements: readonly { readonly path: string; readonly deflection: Figure }[];
}

export interface WheelRow {
  readonly travel: number;
  readonly centre: readonly [number, number, number];
  readonly contact: readonly [number, number, number];
  readonly camber: number;
  readonly toe: number;
  /** rad from design; absent without a rocker. */
  readonly rocker: Figure;
}

/** Everything computed for one axle; recomputed only when that axle's own numbers change. */
export interface AxleAnalysis {
  readonly rates: AxleRates;
  readonly elements: readonly ElementFigures[];
  readonly reach: readonly ReachFigures[];
  readonly atRest: AtRest;
  readonly roll?: AxleRoll | Absent | undefined;
  /** What could not be built as it is written; each reason is that of the figures that it leaves absent. */
  readonly problems: readonly AssemblyProblem[];
}

/** What an axle answers to roll, for what takes the whole car. */
export interface AxleRoll {
  /** Angle of the body against the wheels, rad, rising, and the moment of springs and bars there, N·m. */
  readonly samples: readonly { readonly angle: number; readonly moment: number }[];
  readonly track: number;
  /** Roll stiffness of the tyres alone, N·m/rad. */
  readonly tyres: number;
  /** On the axle, kg, and what of it is unsprung. */
  readonly mass: number;
  readonly unsprung: number;
  /** Above the ground, m. */
  readonly rollCentre: number;
  readonly wheelHeight: number;
}

/** When a stage in line with an anti-roll bar is used up in steady cornering. */
export interface ChangeOver {
  readonly path: string;
  /** Roll of the body against the axle's wheels, and against the ground, rad; taken positive. */
  readonly angle: number;
  readonly body: Figure;
  /** Lateral acceleration, m/s². */
  readonly lateral: Figure;
}

/** At static trim. */
export interface AtRest {
  readonly rideHeight: Figure;
  readonly left: WheelAtRest;
  readonly right: WheelAtRest;
}

export interface WheelAtRest {
  /** From design position, m, bump positive: not 0 where a set-up puts the car higher or lower than it is drawn. */
  readonly travel: number;
  /** Vertical load of the tyre, N. */
  readonly load: Figure;
  readonly camber: Figure;
  readonly toe: Figure;
}

/** Stiffness or damping of the whole car; SI. */
export interface ModalFigures {
  /**
   * PᵀMP over heave, pitch, roll and warp, unit travel at every wheel: N/m or N·s/m. Off-diagonals couple the patterns; in
   * heave it is the sum of both axles' heave rates.
   */
  readonly patterns: readonly (readonly number[])[] | Absent;
  readonly body: BodyFigures;
}

/** About the centre of gravity: heave positive down, pitch nose down, roll left side up. */
export interface BodyFigures {
  /** N/m. */
  readonly heave: Figure;
  /** N·m/rad. */
  readonly pitch: Figure;
  readonly roll: Figure;
  /** Force against heave for each radian, N/rad (and moment for each metre, N·m/m): 0 where they do not disturb each other. */
  readonly heavePitch: Figure;
  readonly heaveRoll: Figure;
  /** N·m/rad. */
  readonly pitchRoll: Figure;
}

/** What an axle or an element between the axles adds to the patterns' own stiffness, N/m. */
export interface CarShare {
  readonly path: string;
  readonly heave: number;
  readonly pitch: number;
  readonly roll: number;
  readonly warp: number;
}

/** What an element between the axles damps at each of them by itself, dampers at low speed: unit travel at its wheels, N·s/m. */
export interface JoiningDamping {
  readonly path: string;
  readonly front: { readonly heave: number; readonly roll: number };
  readonly rear: { readonly heave: number; readonly roll: number };
}

/** The whole car at static trim. */
export interface CarModal {
  /** ∂²U/∂z² over FL, FR, RL, RR, N/m, tyres left out. */
  readonly wheels: readonly (readonly number[])[] | Absent;
  readonly springs: ModalFigures;
  readonly withTyres: ModalFigures;
  /** Dampers at low speed. */
  readonly damping: ModalFigures;
  readonly shares: readonly CarShare[];
  /** Of every element between the axles that damps. */
  readonly joiningDamping: readonly JoiningDamping[];
}

/** Everything computed for one car or set-up. */
export interface CarAnalysis {
  readonly modal: CarModal;
  /** What could not be built of the elements that join the axles. */
  readonly problems: readonly AssemblyProblem[];
  readonly axles: { readonly front: AxleAnalysis | undefined; readonly rear: AxleAnalysis | undefined };
  /** Of every bar with a stage in line that is used up within its axle's travel. */
  readonly changeOvers?: readonly ChangeOver[] | undefined;
  /** Elements at car level. Axle rates are those of the axle's own elements, without these. */
  readonly elements: readonly ElementFigures[];
  /** Judged expectations that this version can compute; the rest absent with the reason. */
  readonly expectations: readonly {
    readonly index: number;
    readonly value: Figure;
    readonly unit: string;
    readonly met: boolean | undefined;
    readonly margin: Figure;
  }[];
}
