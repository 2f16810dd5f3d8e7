/**
 * What the mechanism panel draws, as plain data: positions sampled over travel and steer, so that the page interpolates and a slider
 * asks nobody.
 *
 * Positions are in the car's frame (ISO 8855: x forward, y left, z up; right-hand points have negative y), m and rad, travel bump
 * positive. Tables are flat arrays of finite numbers, `null` where the links do not reach.
 */

export interface PanelRange {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}

export interface PanelPlace {
  readonly uri: string;
  readonly range: PanelRange;
}

export interface PanelCar {
  readonly name: string;
  /** As written behind the name, if anything is. */
  readonly title: string | undefined;
  readonly wheelbase: number | undefined;
  /** What the author writes lengths in, and how much of it a metre is. */
  readonly length: { readonly unit: string; readonly scale: number };
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
  /** x, y, z for every entry of the table; once where it does not move; for every travel where steering does not move it. */
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
  /** Several for one with several cylinders; none for an element given by ratios. */
  readonly drawn: readonly PanelDrawn[];
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

/** Between two points, about a rocker's axis, or a T-shaped bar. */
export type PanelDrawn =
  | { readonly kind: "between"; readonly from: PanelEnd; readonly to: PanelEnd }
  | { readonly kind: "about"; readonly axle: "front" | "rear"; readonly side: "left" | "right" }
  | PanelTee;

/** The stem from its foot on the chassis to the cross arm, whose ends both wheels move. */
export interface PanelTee {
  readonly kind: "tee";
  readonly axle: "front" | "rear";
  readonly foot: readonly [number, number, number];
  /** The far ends of its drop links; none where a link is off. */
  readonly links: { readonly left: PanelEnd | undefined; readonly right: PanelEnd | undefined };
  /** Of the cross arm: x, y, z for every entry as in a deflection of `both`; once each where nothing moves it. */
  readonly ends: { readonly left: readonly (number | null)[]; readonly right: readonly (number | null)[] };
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
