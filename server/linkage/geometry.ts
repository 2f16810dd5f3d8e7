/**
 * What a corner is built from: design positions in m, in the frame of a left corner
 * (ISO 8855: x forward, y left, z up), angles in rad. Plain data; no car model, no units.
 *
 * Invariant: a geometry that has no single well-defined motion is answered with a
 * `Degenerate` that names the part, never with a throw or a NaN.
 */
import type { Vec3 } from "../maths/vec3.js";

export type Vec2 = readonly [number, number];

/** The body that carries the outer end of a push or pull rod. */
export type RodCarrier = "lower-wishbone" | "upper-wishbone" | "upright";

/** A wishbone turns about the line from `fore` to `aft` and ends in a ball joint `outer`. */
export interface WishbonePoints {
  readonly fore: Vec3;
  readonly aft: Vec3;
  readonly outer: Vec3;
}

export interface RodPoints<Point> {
  readonly kind: "push-rod" | "pull-rod";
  readonly on: RodCarrier;
  readonly outer: Point;
  /** The end at the rocker. */
  readonly inner: Point;
  /** By how much the rod is longer than the distance of its design points, m; 0 when left out. */
  readonly lengthen?: number;
}

export interface WheelPoints<Point> {
  readonly centre: Point;
  /** Static, ISO 8855: positive with the top outboard, rad. */
  readonly camber: number;
  /** Static toe-in, rad. */
  readonly toe: number;
  /** Wheel centre to contact point, in the wheel's plane, m. */
  readonly loadedRadius: number;
}

export interface TrackRodPoints {
  readonly inner: Vec3;
  readonly outer: Vec3;
  /** How far the inner end is moved outboard of its design point, m, the rod's length kept: by the steering rack. 0 when left out. */
  readonly moved?: number;
}

/** Where the inner end of the track rod is held. */
export const trackRodInner = ({ inner, moved = 0 }: TrackRodPoints): Vec3 => [inner[0], inner[1] + moved, inner[2]];

export interface HardpointGeometry {
  readonly lower: WishbonePoints;
  readonly upper: WishbonePoints;
  readonly trackRod: TrackRodPoints;
  /** A corner without a rod has no moving rocker. */
  readonly rod?: RodPoints<Vec3> | undefined;
  /** `axis` is a direction of any length and either sense. */
  readonly rocker?: { readonly pivot: Vec3; readonly axis: Vec3 } | undefined;
  readonly wheel: WheelPoints<Vec3>;
}

/** All joints in the transverse plane of the wheel centre; points are (y, z). */
export interface PlanarGeometry {
  readonly lower: { readonly inner: Vec2; readonly outer: Vec2 };
  readonly upper: { readonly inner: Vec2; readonly outer: Vec2 };
  readonly rod?: RodPoints<Vec2> | undefined;
  readonly rocker?: { readonly pivot: Vec2 } | undefined;
  readonly wheel: WheelPoints<Vec3>;
}

export type DegeneratePart =
  | "lower-wishbone"
  | "upper-wishbone"
  | "upright"
  | "track-rod"
  | "push-rod"
  | "pull-rod"
  | "rocker"
  | "lever"
  | "drop-link"
  | "wheel";

/**
 * Why no motion can be built:
 * `not-finite`: a coordinate is no number that can be computed with; `coincident`: the two ends of the part fall together;
 * `no-axis`: an axis without a direction; `on-axis`: the part's outer end lies on the axis that it turns about;
 * `in-line`: at design position the part stands in a toggle, or is too short or too long to reach;
 * `no-travel`: the wheel centre cannot move vertically at design position.
 */
export type DegenerateReason = "not-finite" | "coincident" | "no-axis" | "on-axis" | "in-line" | "no-travel";

export interface Degenerate {
  readonly kind: "degenerate";
  readonly part: DegeneratePart;
  readonly reason: DegenerateReason;
}

export const degenerate = (part: DegeneratePart, reason: DegenerateReason): Degenerate => ({
  kind: "degenerate",
  part,
  reason,
});

export const isDegenerate = (result: object): result is Degenerate => "kind" in result && result.kind === "degenerate";
