/**
 * Curves of an element as plain data, SI: what it does against deflection, speed and wheel travel, with the places
 * where something happens. For drawing, and for machines.
 */
import type { Point } from "../maths/polyline.js";
import type { Absent } from "./results.js";

export type MarkKind =
  /** Where it stands at static trim. */
  | "static"
  /** A gap is used up, or it comes off its seat: it begins to carry there. */
  | "carries"
  /** It carries nothing there and goes over from pushing to pulling. */
  | "no-load"
  | "stage"
  | "knee"
  | "table-end"
  | "bind"
  | "stroke-end"
  | "stress"
  | "gas-end"
  /** An end of the envelope, or what the links leave of it. */
  | "travel-end"
  | "link-binds";

export interface CurveMark extends Point {
  readonly what: MarkKind;
}

export interface CurveData {
  /** In rising order of x; two with one x where it jumps. */
  readonly points: readonly Point[];
  /** On the curve, in rising order of x. */
  readonly marks: readonly CurveMark[];
  /** The same at another setting or with something added, for comparison. */
  readonly beside: readonly { readonly what: "with-gas" | "closed" | "open"; readonly points: readonly Point[] }[];
}

/**
 * Against deflection from design (m, rad, m³): N, N·m, Pa. Against its speed (m/s, rad/s, m³/s) likewise, bump positive.
 */
export interface LawCurve {
  /** What of the element it is, where there is more than one: "its gas", "volume of b". */
  readonly part: string | undefined;
  readonly against: "deflection" | "speed";
  readonly curve: CurveData | Absent;
}

export type OwnMode = "corner" | "heave" | "roll" | "pitch" | "warp";

/**
 * Over the travel of the wheels in one of its own modes, m: corner: its own wheel from design with the other one at rest;
 * heave: both wheels from design; roll: the right wheel from rest, the left one going the other way; between the axles: of
 * every wheel in the mode's pattern, from rest.
 */
export interface ModeCurves {
  readonly mode: OwnMode;
  /** Deflection per wheel travel: m/m, rad/m, m³/m. */
  readonly motionRatio: CurveData | Absent;
  readonly gives: "rate" | "damping" | "mass";
  /** What it gives there, k (ds/dq)² + F d²s/dq²: N/m, N·s/m, kg; of one axle in roll N·m/rad, N·m·s/rad, kg·m². */
  readonly atWheels: CurveData | Absent;
  /** Whether `atWheels` is of the body's roll rather than of wheel travel. */
  readonly turns: boolean;
}

export interface ElementCurves {
  readonly path: string;
  readonly torsional: boolean;
  readonly measure: "volume" | undefined;
  readonly laws: readonly LawCurve[];
  /** One for each mode that it is for. */
  readonly modes: readonly ModeCurves[];
}
