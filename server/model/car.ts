/**
 * One resolved car: everything that a `car`, or a `setup … from` it, says, after references,
 * the set-up chain, parts, mirroring and expressions. All numbers SI, all places kept.
 *
 * Frames: ISO 8855 (x forward, y left, z up), one origin for the whole car, points at design
 * ride height. A `CornerModel` of the right side holds its true points (y mostly negative).
 *
 * Invariant: readonly, plain data; knows nothing of positions other than the design position.
 */
import type { Concept, DimensionName } from "../../grammar/vocabulary/word.js";
import type { Given, Origin, AxleName, Side, Sides } from "./origin.js";

export type Vec3 = readonly [number, number, number];
export type Vec2 = readonly [number, number];

export type Mode = "corner" | "heave" | "roll" | "pitch" | "warp";

export interface CarModel {
  readonly name: string;
  readonly title: string | undefined;
  /** The set-up's name; undefined for the car as it is written. */
  readonly setup: string | undefined;
  /** Set-ups and car that this one derives from, nearest first. */
  readonly bases: readonly string[];
  readonly origin: Origin;
  /** The place of the name in the declaring statement. */
  readonly nameOrigin: Origin;
  readonly notes: readonly string[];
  readonly wheelbase: Given | undefined;
  readonly mass: Given | undefined;
  /** Share of the mass on the front axle, 0 … 1. */
  readonly massFront: Given | undefined;
  readonly cgHeight: Given | undefined;
  readonly rollInertia: Given | undefined;
  readonly pitchInertia: Given | undefined;
  readonly brakes: { readonly front: Given | undefined; readonly mounting: "outboard" | "inboard" } | undefined;
  readonly drive: "front" | "rear" | "all" | undefined;
  readonly axles: { readonly [A in AxleName]: AxleModel | undefined };
  /** Elements at car level (`hydraulic-link` and whatever else joins the axles). */
  readonly elements: readonly ElementModel[];
  readonly cases: readonly CaseModel[];
  readonly expectations: readonly ExpectationModel[];
  /** Leak thresholds as fractions: information above the first, warning above the second. */
  readonly leakLimits: { readonly information: number; readonly warning: number };
  /** The block that everything above was read from, for words that only later analyses use. */
  readonly block: ResolvedBlock;
}

export interface AxleModel {
  readonly name: AxleName;
  readonly origin: Origin;
  readonly nameOrigin: Origin;
  readonly track: Given | undefined;
  readonly rideHeight: Given | undefined;
  /** The one that the linkage is drawn at: the car's own, whatever set-ups make of it. */
  readonly drawnRideHeight: Given | undefined;
  /** Wheel travel that the checks look at, bump positive. */
  readonly travel: {
    readonly from: number;
    readonly to: number;
    readonly given: Given<readonly [number, number]> | undefined;
  };
  readonly trim: TrimModel;
  readonly wheel: Sides<WheelModel>;
  readonly corner: Sides<CornerModel>;
  readonly elements: readonly ElementModel[];
  readonly block: ResolvedBlock;
  /** Of the right side, in the frame of a left one; the same block where the sides mirror each other. */
  readonly rightBlock?: ResolvedBlock;
}

/** `given` is undefined where the default rule chose (corner springs, else the heave element). */
export interface TrimModel {
  readonly by: "push-rod" | "element" | "nothing";
  readonly element: string | undefined;
  readonly given: Origin | undefined;
}

export interface WheelModel {
  readonly centre: Given<Vec3> | undefined;
  /** Static, ISO 8855: positive with the top outboard. */
  readonly camber: Given | undefined;
  /** Static toe-in, positive with the front edge inboard. */
  readonly toe: Given | undefined;
  readonly loadedRadius: Given | undefined;
  readonly unsprungMass: Given | undefined;
  readonly tyreRate: Given | undefined;
  readonly tyreDamping: Given | undefined;
}

export type CornerModel = HardpointCorner | PlanarCorner | RatioCorner | IncompleteCorner;

/** A linkage with something left out: nothing can be solved, and `missing` says why (dotted words: `rocker.pivot`). */
export interface IncompleteCorner {
  readonly kind: "incomplete";
  readonly missing: readonly string[];
  readonly origin: Origin;
}

export interface HardpointCorner {
  readonly kind: "hardpoints";
  readonly origin: Origin;
  readonly lower: Wishbone;
  readonly upper: Wishbone;
  readonly trackRod: { readonly inner: Given<Vec3>; readonly outer: Given<Vec3> };
  readonly rod: Rod | undefined;
  readonly rocker: RockerModel | undefined;
}

export interface Wishbone {
  readonly fore: Given<Vec3>;
  readonly aft: Given<Vec3>;
  readonly outer: Given<Vec3>;
}

export type RodCarrier = "lower-wishbone" | "upper-wishbone" | "upright";

export interface Rod {
  readonly kind: "push-rod" | "pull-rod";
  readonly on: RodCarrier;
  readonly outer: Given<Vec3>;
  readonly inner: Given<Vec3>;
  /** Length change per turn of the adjuster, m. */
  readonly thread: Given | undefined;
  /** How much longer than the distance of its drawn joints it is set, m. */
  readonly longer: Given | undefined;
  readonly origin: Origin;
}

export interface RockerModel {
  readonly pivot: Given<Vec3>;
  /** Direction of the axis, not normalised. */
  readonly axis: Given<Vec3>;
  /** Named eyes at design position. */
  readonly eyes: ReadonlyMap<string, Given<Vec3>>;
  readonly origin: Origin;
}

/**
 * All joints in the transverse plane of the wheel centre: the wishbones turn about
 * fore-and-aft axes, the rocker about one parallel to x; steer and caster do not change.
 * Points are (y, z).
 */
export interface PlanarCorner {
  readonly kind: "planar";
  readonly origin: Origin;
  readonly lower: { readonly inner: Given<Vec2>; readonly outer: Given<Vec2> };
  readonly upper: { readonly inner: Given<Vec2>; readonly outer: Given<Vec2> };
  readonly rod:
    | {
        readonly kind: "push-rod" | "pull-rod";
        readonly on: RodCarrier;
        readonly outer: Given<Vec2>;
        readonly inner: Given<Vec2>;
        readonly thread: Given | undefined;
        readonly longer: Given | undefined;
        readonly origin: Origin;
      }
    | undefined;
  readonly rocker:
    | { readonly pivot: Given<Vec2>; readonly eyes: ReadonlyMap<string, Given<Vec2>>; readonly origin: Origin }
    | undefined;
}

/** No geometry: every element brings its own motion ratio. */
export interface RatioCorner {
  readonly kind: "ratio";
  readonly origin: Origin;
}

export type ElementKind =
  | "spring"
  | "damper"
  | "inerter"
  | "bump-stop"
  | "anti-roll-bar"
  | "gas-spring"
  | "hydraulic-link"
  | "actuator";

export interface ElementModel {
  readonly kind: ElementKind;
  readonly name: string;
  /** `front.third`; one side of a corner element: `front.left.side`; car level: `pitch-line`. */
  readonly path: string;
  readonly axle: AxleName | undefined;
  /** Set where the element is `for corner`: it is resolved once a side. */
  readonly side: Side | undefined;
  readonly for: readonly Mode[];
  readonly origin: Origin;
  readonly nameOrigin: Origin;
  /** The words after `for`, one place a mode, in the order of `for`. */
  readonly forOrigins: readonly Origin[];
  readonly notes: readonly string[];
  /** Undefined where none is written or none could be read (a problem says so). */
  readonly connection: ConnectionModel | undefined;
  /** Law words (`rate`, `coil`, `torsion-bar`, `bump`, `gap`, …) after `fit` and overrides. */
  readonly block: ResolvedBlock;
  /** The catalogue part that is fitted, if any. */
  readonly part: { readonly name: string; readonly word: string; readonly origin: Origin } | undefined;
}

export type Attachment =
  /** `point` in the car frame, as written (mirrored already for the right one of a corner pair). */
  | { readonly kind: "chassis"; readonly point: Given<Vec3>; readonly origin: Origin }
  | {
      readonly kind: "eye";
      readonly side: Side;
      readonly eye: string;
      readonly point: Given<Vec3>;
      readonly axle: AxleName;
      readonly origin: Origin;
    }
  | {
      readonly kind: "body";
      readonly side: Side;
      readonly body: RodCarrier;
      readonly point: Given<Vec3>;
      readonly axle: AxleName;
      readonly origin: Origin;
    }
  /** The end of a lever of an anti-roll bar of the axle. */
  | {
      readonly kind: "lever-end";
      readonly side: Side;
      readonly bar: string;
      readonly axle: AxleName;
      readonly origin: Origin;
    };

export type ConnectionModel =
  | { readonly kind: "between"; readonly ends: readonly [Attachment, Attachment]; readonly origin: Origin }
  | {
      readonly kind: "twists";
      readonly of: { readonly side: Side; readonly axle: AxleName };
      readonly against:
        | { readonly body: "chassis" }
        | { readonly body: "rocker"; readonly side: Side; readonly axle: AxleName };
      /** Left-hand end of the small lever on the free end, where the bars are tied to each other. */
      readonly tie: Given<Vec3> | undefined;
      readonly origin: Origin;
    }
  | {
      readonly kind: "bar";
      readonly levers: Sides<{ readonly pivot: Given<Vec3>; readonly axis: Given<Vec3>; readonly end: Given<Vec3> }>;
      /** Upper ends of the drop links; `undefined` on a side where the link is off. */
      readonly links: Sides<Attachment | undefined>;
      /** How much longer than drawn each drop link is set. */
      readonly longer: Sides<Given | undefined>;
      readonly origin: Origin;
    }
  /** A T-shaped bar: stem and cross arm, in the frame of the car. */
  | {
      readonly kind: "tee";
      readonly foot: Given<Vec3>;
      readonly head: Given<Vec3>;
      readonly ends: Sides<Given<Vec3>>;
      readonly links: Sides<Attachment | undefined>;
      readonly longer: Sides<Given | undefined>;
      readonly origin: Origin;
    }
  | {
      readonly kind: "ratio";
      /** Deflection per wheel travel with both wheels moved in that mode; m/m, rad/m for torsion. */
      readonly ratios: readonly { readonly mode: Mode; readonly ratio: RatioModel; readonly origin: Origin }[];
      readonly torsional: boolean;
      readonly origin: Origin;
    }
  /** Cylinders of a hydraulic link and the lines between them; their numbers stand in their blocks. */
  | {
      readonly kind: "cylinders";
      readonly cylinders: readonly CylinderModel[];
      readonly lines: readonly LineModel[];
      readonly origin: Origin;
    };

export interface CylinderModel {
  readonly name: string;
  readonly ends: readonly [Attachment, Attachment];
  readonly block: ResolvedBlock;
  readonly origin: Origin;
}

/** A line from the working side of one cylinder to the working side of another, or to its far side where it is crossed. */
export interface LineModel {
  readonly from: string;
  readonly to: string;
  readonly crossed: boolean;
  /** The cylinder that oil flows out of freely. */
  readonly oneWay: string | undefined;
  readonly block: ResolvedBlock | undefined;
  readonly origin: Origin;
}

export type RatioModel =
  | { readonly kind: "constant"; readonly value: Given }
  /** Travel (m, increasing) against deflection (m or rad). */
  | {
      readonly kind: "table";
      readonly travel: readonly number[];
      readonly deflection: readonly number[];
      readonly origin: Origin;
    };

export interface CaseModel {
  readonly name: string;
  readonly origin: Origin;
  readonly nameOrigin: Origin;
  readonly speed: Given | undefined;
  readonly lateral: Given | undefined;
  readonly longitudinal: Given | undefined;
  readonly block: ResolvedBlock;
}

export interface ExpectationModel {
  /** Dotted path to the computed quantity: `front.heave-rate`. */
  readonly figure: string;
  readonly figureOrigin: Origin;
  readonly at: string | undefined;
  readonly wants:
    | { readonly kind: "between"; readonly from: Given; readonly to: Given }
    | { readonly kind: "above" | "below"; readonly limit: Given }
    | { readonly kind: "within"; readonly target: Given; readonly tolerance: Given };
  readonly origin: Origin;
}

/** A block after overrides: words with their values. What `assemble` and the views read. */
export interface ResolvedBlock {
  readonly concept: Concept;
  readonly origin: Origin;
  readonly statements: readonly ResolvedStatement[];
  readonly rows: readonly ResolvedRow[];
}

export interface ResolvedStatement {
  readonly word: string;
  /** The name that the statement declares (`spring third`), or the axle that it is (`axle front`). */
  readonly name: { readonly text: string; readonly origin: Origin } | undefined;
  /** Which of the word's `takes` it was written in; −1 where none fits and only its block and name are kept. */
  readonly form: number;
  /** One a slot of the matched form, keywords left out. */
  readonly values: readonly ResolvedValue[];
  readonly block: ResolvedBlock | undefined;
  readonly origin: Origin;
  readonly wordOrigin: Origin;
  readonly chain: readonly Origin[];
  readonly notes: readonly string[];
}

export interface ResolvedRow {
  readonly key: ResolvedValue;
  readonly value: ResolvedValue;
  readonly origin: Origin;
}

export type ResolvedValue =
  | ({ readonly kind: "number"; readonly dimension: DimensionName } & Given)
  | ({ readonly kind: "point" } & Given<readonly number[]>)
  | ({ readonly kind: "range" } & Given<readonly [number, number]>)
  | { readonly kind: "word"; readonly text: string; readonly origin: Origin }
  | { readonly kind: "text"; readonly text: string; readonly origin: Origin }
  | {
      readonly kind: "path";
      readonly segments: readonly string[];
      readonly origin: Origin;
      readonly segmentOrigins: readonly Origin[];
    }
  /** `rocker.side`, or a body with a point fixed to it: `chassis (10, 40, 360) mm`. */
  | {
      readonly kind: "attachment";
      readonly segments: readonly string[];
      readonly segmentOrigins: readonly Origin[];
      readonly point: Given<readonly number[]> | undefined;
      readonly origin: Origin;
    }
  | {
      readonly kind: "modes";
      readonly modes: readonly { readonly text: string; readonly origin: Origin }[];
      readonly origin: Origin;
    };
