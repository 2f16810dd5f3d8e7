/**
 * What client and server say to each other about the mechanism panel. Types only.
 *
 * The server samples the mechanism; the page interpolates. So a slider moves without a question, and only a change of the
 * text asks again. Positions are in the car's frame (ISO 8855: x forward, y left, z up; right-hand points have negative y),
 * m and rad, travel bump positive. Tables are flat arrays of finite numbers, `null` where the links do not reach.
 */
import type { PlainRange } from "./protocol.js";

/** Asks for what the panel shows of one car or set-up. */
export type MechanismMethod = "bellcrank/mechanism";

export interface MechanismParams {
  readonly uri: string;
  /** A car or set-up declared in that file; the first of the file where absent or not there. */
  readonly name?: string;
}

export interface MechanismAnswer {
  readonly uri: string;
  /** Cars and set-ups that the file declares, in the order of the text. */
  readonly cars: readonly { readonly name: string; readonly range: PlainRange }[];
  /** The text cannot be read to its end; what is shown may lack what stands there. */
  readonly broken: string | undefined;
  /** Undefined where the file declares none. */
  readonly car: PanelCar | undefined;
}

export interface PanelPlace {
  readonly uri: string;
  readonly range: PlainRange;
}

export interface PanelCar {
  readonly name: string;
  /** As written behind the name, if anything is. */
  readonly title: string | undefined;
  readonly wheelbase: number | undefined;
  readonly axles: readonly PanelAxle[];
  /** Elements that join the axles. */
  readonly elements: readonly PanelElement[];
}

export type PanelMode = "heave" | "roll" | "pitch" | "warp" | "corner";

export interface PanelAxle {
  readonly name: "front" | "rear";
  readonly place: PanelPlace;
  readonly track: number | undefined;
  /** The envelope that the text states. */
  readonly travel: { readonly from: number; readonly to: number };
  /** Of both wheels at rest. */
  readonly staticTravel: number;
  readonly left: PanelCorner;
  readonly right: PanelCorner;
  readonly elements: readonly PanelElement[];
  /** Headline figures, worded as everywhere: heave rate, roll stiffness, wheel rate, heave frequency. */
  readonly figures: readonly PanelFigure[];
}

export interface PanelFigure {
  readonly name: string;
  /** "171.3 N/mm". */
  readonly text: string;
  /** In the unit of `text`; undefined where it is absent (`text` is the reason then). */
  readonly value: number | undefined;
}

/** Figures of one corner at `travels` × `steers`: index = steer index × travels.length + travel index. */
export interface PanelCorner {
  /** Rising; from the lower to the upper end that the links reach within the envelope. One entry where nothing moves. */
  readonly travels: readonly number[];
  /** Rack travel, m, as it turns the wheels to the left; `[0]` where there is nothing to steer. */
  readonly steers: readonly number[];
  /** In words, where a link ends the travel before the envelope does: "push rod in line with its rocker". */
  readonly lowEnd: string | undefined;
  readonly highEnd: string | undefined;
  /** Why nothing can be drawn: "given by ratios, without geometry". The tables are empty then. */
  readonly missing: string | undefined;
  readonly points: readonly PanelPoint[];
  /** Indices into `points`. */
  readonly lines: readonly PanelLine[];
  readonly wheel: PanelWheel | undefined;
  readonly rocker: PanelRocker | undefined;
}

export interface PanelPoint {
  /** "lower-wishbone.outer", "rocker.roll-low": distinct in its corner. */
  readonly id: string;
  readonly role: "chassis" | "joint" | "pivot" | "eye" | "end";
  /** x, y, z for every entry of the table, or once where it does not move. */
  readonly at: readonly (number | null)[];
  /** Where its coordinates are written; the right side's may be those of the left. */
  readonly place: PanelPlace | undefined;
}

export interface PanelLine {
  readonly role: "wishbone" | "track-rod" | "rod" | "lever" | "drop-link" | "upright";
  /** Two, or more for an outline that is closed and filled. */
  readonly points: readonly number[];
}

export interface PanelWheel {
  readonly radius: number;
  /** Flat like a point's: the centre, the contact point, and the unit vector along the spin axis (outboard). */
  readonly centre: readonly (number | null)[];
  readonly contact: readonly (number | null)[];
  readonly spin: readonly (number | null)[];
  readonly camber: readonly (number | null)[];
  readonly toe: readonly (number | null)[];
}

export interface PanelRocker {
  /** Index of its pivot in `points`, and of what its outline goes round, in order. */
  readonly pivot: number;
  readonly outline: readonly number[];
  /** Unit vector, car frame, and the angle about it (right-handed) from design. */
  readonly axis: readonly [number, number, number];
  readonly angle: readonly (number | null)[];
}

export interface PanelElement {
  readonly path: string;
  readonly name: string;
  readonly kind: string;
  readonly for: readonly PanelMode[];
  /** Set on a corner element. */
  readonly side: "left" | "right" | undefined;
  readonly place: PanelPlace;
  /** What is drawn: between two points, or about a rocker's axis; nothing for an element given by ratios. */
  readonly drawn:
    | { readonly kind: "between"; readonly from: PanelEnd; readonly to: PanelEnd }
    | { readonly kind: "about"; readonly axle: "front" | "rear"; readonly side: "left" | "right" }
    | undefined;
  /** What the deflection is shown in, and how much of it one SI unit is: "mm" and 1000. */
  readonly unit: string;
  readonly scale: number;
  readonly deflection: PanelDeflection | undefined;
  /** Over the envelope, SI, from design. */
  readonly travel: { readonly from: number; readonly to: number } | undefined;
  /** How much stroke there is, SI, from design; undefined where none is stated. */
  readonly stroke: { readonly from: number; readonly to: number } | undefined;
  readonly leak: PanelLeak | undefined;
}

export interface PanelEnd {
  readonly axle: "front" | "rear";
  readonly side: "left" | "right";
  /** Index into that corner's `points`. */
  readonly point: number;
}

/** SI, from design, compression positive. */
export type PanelDeflection =
  /** Of its own wheel alone: one for every travel of that corner (steer 0). */
  | { readonly kind: "own"; readonly values: readonly (number | null)[] }
  /** index = left travel index × right travels.length + right travel index. */
  | { readonly kind: "both"; readonly values: readonly (number | null)[] }
  /** By its sensitivity alone: deflection per travel in each pattern. */
  | {
      readonly kind: "linear";
      readonly heave: number;
      readonly roll: number;
      readonly pitch: number;
      readonly warp: number;
    };

export interface PanelLeak {
  readonly mode: string;
  /** The larger of first-order and finite leak, as a share. */
  readonly share: number;
  /** "3.1 % in heave". */
  readonly text: string;
  /** Above the threshold that the checks warn or tell from. */
  readonly level: "warning" | "info" | undefined;
}

/** Asks for the curves of a car: more work than the mechanism, so asked for only where they are shown. */
export type PanelCurvesMethod = "bellcrank/panelCurves";

export type PanelCurvesParams = MechanismParams;

export interface PanelCurvesAnswer {
  readonly curves: readonly PanelCurve[];
}

export interface PanelCurve {
  readonly id: string;
  /** "wheels", "rates", "leaks", "forces", "speed". */
  readonly group: string;
  readonly title: string;
  readonly x: { readonly name: string; readonly unit: string };
  readonly y: { readonly name: string; readonly unit: string };
  /** What `x` is of the pose, so that a mark can follow the sliders, and its scale: SI value × scale = x. */
  readonly follows: { readonly motion: "heave" | "roll"; readonly scale: number } | undefined;
  readonly series: readonly PanelSeries[];
  /** Why there is none, or not all of it. */
  readonly missing: string | undefined;
}

export interface PanelSeries {
  readonly label: string;
  readonly axle: "front" | "rear" | undefined;
  /** Of the element whose curve it is. */
  readonly place: PanelPlace | undefined;
  /** In the units shown; `null` breaks the line. */
  readonly points: readonly (readonly [x: number, y: number | null])[];
}

/** Moves an eye of a rocker: what the text would become, and what that does. Nothing is changed by asking. */
export type MoveEyeMethod = "bellcrank/moveEye";

export interface MoveEyeParams {
  readonly uri: string;
  readonly name: string;
  readonly axle: "front" | "rear";
  readonly side: "left" | "right";
  /** `PanelPoint.id`. */
  readonly point: string;
  /** At design, car frame, m; brought into the rocker's plane and rounded to 0.1 mm by the server. */
  readonly to: readonly [number, number, number];
}

export interface MoveEyeAnswer {
  /** Undefined where it cannot be moved: `reason` says why. */
  readonly edit:
    | { readonly uri: string; readonly range: PlainRange; readonly newText: string; readonly version?: number }
    | undefined;
  readonly reason: string | undefined;
  /** Where it then is, car frame at design, m. */
  readonly at: readonly [number, number, number];
  /** The axle as it would be, so that the drawing follows the pointer. */
  readonly axle: PanelAxle | undefined;
}
