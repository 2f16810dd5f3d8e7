/**
 * The independently solved axles of the sample car (axle.py), read from test/data, and the same
 * corners built with the project's linkage. Lengths in the files are mm; everything here is SI.
 *
 * Invariant: nothing in here solves anything; figures come from the file or from the code under test.
 */
import { readFileSync } from "node:fs";
import type { Corner } from "../../server/linkage/corner.js";
import type { HardpointGeometry, RodCarrier } from "../../server/linkage/geometry.js";
import { hardpointCorner } from "../../server/linkage/hardpoint.js";
import { scale, type Vec3 } from "../../server/maths/vec3.js";

type Point = readonly [number, number, number];

export interface SolvedCorner {
  readonly travel_mm: number;
  readonly centre_mm: Point;
  readonly contact_mm: Point;
  readonly lower_outer_mm: Point;
  readonly upper_outer_mm: Point;
  readonly track_rod_outer_mm: Point;
  readonly rod_outer_mm: Point;
  readonly rod_inner_mm: Point;
  readonly lever_end_mm: Point;
  readonly eyes_mm: Readonly<Record<string, Point>>;
  readonly camber_deg: number;
  readonly toe_deg: number;
  readonly rocker_deg: number;
  readonly rocker_rad_per_mm: number;
  readonly rocker_rad_per_mm2: number;
  readonly lever_deg: number;
  readonly lever_rad_per_mm: number;
  readonly lever_rad_per_mm2: number;
  readonly d_contact_x: number;
  readonly d_contact_y: number;
  readonly d_contact_z: number;
  readonly dd_contact_y_per_mm: number;
}

/** Of one axle or of one element's share in it. */
export interface SolvedRates {
  readonly heave_N_per_mm: number;
  readonly roll_Nm_per_rad: number;
  readonly single_N_per_mm: number;
}

export interface SolvedElement {
  readonly for: readonly string[];
  readonly gradient: readonly [number, number];
  readonly hessian_per_mm: readonly [number, number, number];
  /** Springs and bars only; both sides of a corner element together. */
  readonly share?: SolvedRates;
  readonly leak?: {
    readonly mode: string;
    readonly first_order: number;
    readonly finite: number;
    readonly rate?: number;
  };
}

type InputEnd = { readonly eye: string } | { readonly chassis: Point };

export interface InputElement {
  readonly for: readonly string[];
  readonly twists?: boolean;
  readonly between?: readonly [InputEnd, InputEnd];
  readonly lever?: { readonly pivot: Point; readonly axis: Point; readonly end: Point };
  readonly "drop-link"?: string;
}

export interface SolvedAxle {
  readonly input: {
    readonly axle: "front" | "rear";
    readonly track: number;
    readonly wheel: {
      readonly centre: Point;
      readonly camber_deg: number;
      readonly toe_deg: number;
      readonly loaded_radius: number;
    };
    readonly linkage: {
      readonly "lower-wishbone": { readonly fore: Point; readonly aft: Point; readonly outer: Point };
      readonly "upper-wishbone": { readonly fore: Point; readonly aft: Point; readonly outer: Point };
      readonly "track-rod": { readonly inner: Point; readonly outer: Point };
      readonly rod: {
        readonly kind: "push-rod" | "pull-rod";
        readonly on: RodCarrier;
        readonly outer: Point;
        readonly inner: Point;
      };
      readonly rocker: { readonly pivot: Point; readonly axis: Point; readonly eyes: Readonly<Record<string, Point>> };
    };
    readonly elements: Readonly<Record<string, InputElement>>;
  };
  readonly corner: readonly SolvedCorner[];
  readonly states: readonly {
    readonly left_mm: number;
    readonly right_mm: number;
    readonly elements: Readonly<Record<string, number | readonly [number, number]>>;
  }[];
  readonly elements: Readonly<Record<string, SolvedElement>>;
  readonly trim: { readonly load: number; readonly seat: number };
  readonly stiffness_N_per_mm: readonly [readonly [number, number], readonly [number, number]];
  readonly rates: SolvedRates;
  readonly ride: SolvedRates;
  readonly damping: { readonly heave_Ns_per_mm: number; readonly roll_Nms_per_rad: number };
  readonly heave_frequency_Hz: number;
}

export interface SolvedSetup {
  readonly front: { readonly rates: SolvedRates; readonly ride: SolvedRates; readonly trim_load: number };
  readonly rear: SolvedSetup["front"];
}

export interface SolvedCar {
  readonly roll_stiffness_front_share_percent: number;
}

const solved = (name: string): unknown =>
  JSON.parse(readFileSync(new URL(`../data/quill-${name}.json`, import.meta.url), "utf8"));

export const solvedAxle = (name: "front" | "rear"): SolvedAxle => solved(name) as SolvedAxle;
export const solvedDry = (): SolvedSetup => solved("dry") as SolvedSetup;
export const solvedCar = (): SolvedCar => solved("car") as SolvedCar;

export const metres = (point: Point): Vec3 => scale(point, 1e-3);
export const radians = (degrees: number): number => (degrees * Math.PI) / 180;

export function geometryOf({ input }: SolvedAxle): HardpointGeometry {
  const { linkage, wheel } = input;
  const wishbone = (points: { fore: Point; aft: Point; outer: Point }) => ({
    fore: metres(points.fore),
    aft: metres(points.aft),
    outer: metres(points.outer),
  });
  return {
    lower: wishbone(linkage["lower-wishbone"]),
    upper: wishbone(linkage["upper-wishbone"]),
    trackRod: { inner: metres(linkage["track-rod"].inner), outer: metres(linkage["track-rod"].outer) },
    rod: {
      kind: linkage.rod.kind,
      on: linkage.rod.on,
      outer: metres(linkage.rod.outer),
      inner: metres(linkage.rod.inner),
    },
    rocker: { pivot: metres(linkage.rocker.pivot), axis: linkage.rocker.axis },
    wheel: {
      centre: metres(wheel.centre),
      camber: radians(wheel.camber_deg),
      toe: radians(wheel.toe_deg),
      loadedRadius: wheel.loaded_radius * 1e-3,
    },
  };
}

export function cornerOf(axle: SolvedAxle): Corner {
  const corner = hardpointCorner(geometryOf(axle));
  if ("kind" in corner) throw new Error(`degenerate ${corner.part}: ${corner.reason}`);
  return corner;
}
