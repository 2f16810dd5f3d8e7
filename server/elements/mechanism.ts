/**
 * One axle as the analyses take it: corners, elements, and the numbers of its wheels. All SI.
 * Built by `assemble`; what the text leaves out is `undefined`, and each analysis says what it misses.
 *
 * Invariant: readonly, no state and no text; the same mechanism gives the same figures.
 */
import type { Corner } from "../linkage/corner.js";
import type { CarConnection } from "./car-connection.js";
import type { Element } from "./element.js";
import type { End } from "./ends.js";

export type AxleName = "front" | "rear";

export interface Sides<T> {
  readonly left: T;
  readonly right: T;
}

export interface WheelData {
  readonly unsprungMass: number | undefined;
  readonly tyreRate: number | undefined;
}

export interface TrimChoice {
  readonly by: "push-rod" | "element" | "nothing" | "kept";
  /** Name of the element whose seat moves; a corner element moves on both sides. */
  readonly element: string | undefined;
}

/** What could not be built as it is written. */
export type AssemblyProblem =
  | { readonly kind: "linkage"; readonly side: "left" | "right"; readonly reason: string }
  | {
      readonly kind: "connection" | "law";
      readonly path: string;
      readonly reason: string;
      /** What is to blame, as dotted words in the element's block, the likeliest first. */
      readonly lines?: readonly string[] | undefined;
    };

export interface Rods {
  readonly kind: "push-rod" | "pull-rod";
  /** The same axle with its rods that much longer, m, than they are; undefined where a rocker is not reached. */
  readonly longer: (left: number, right: number) => AxleMechanism | undefined;
}

/** Seats and rods as they were set for another car, and where the axle comes to rest on them. */
export interface KeptSeats {
  /** By path, in the element's own deflection. */
  readonly seats: ReadonlyMap<string, number>;
  /** Rods that were set longer than they are written, m; `rods` of the mechanism have it already. */
  readonly rods?: { readonly kind: "push-rod" | "pull-rod"; readonly left: number; readonly right: number } | undefined;
  /** Travel of the wheels, m, and load of the tyres, N. */
  readonly travels: Sides<number>;
  readonly loads: Sides<number>;
  /** m */
  readonly rideHeight: number | undefined;
  /** Roll of the body on the flat patch, rad: positive lifts the left side. */
  readonly roll: number;
}

/** Both corners with the steering rack moved, or why they cannot be built. */
export type Steered = (rack: number) => Sides<Corner> | string;

export interface AxleMechanism {
  /** Corners with the rack moved by so much, m, as it turns the wheels to the left; undefined where there is nothing to steer. */
  readonly steered?: Steered | undefined;
  readonly name: AxleName;
  readonly track: number | undefined;
  readonly rideHeight: number | undefined;
  /**
   * Travel of both wheels at rest, m: the ride height that the linkage is drawn at less the one that the car is set to
   * (car up by 2 mm: −2 mm, droop). 0 where either is not given.
   */
  readonly staticTravel: number;
  /** The envelope that figures over travel look at, m, bump positive. */
  readonly travel: { readonly from: number; readonly to: number };
  /** The same object on both sides where they mirror each other. */
  readonly corners: Sides<Corner>;
  /** Why there is no position, where the linkage cannot be built; `corners` then only know the wheels' travel. */
  readonly cornerMissing: Sides<string | undefined>;
  readonly elements: readonly Element[];
  readonly wheels: Sides<WheelData>;
  readonly trim: TrimChoice;
  /** Mass of the whole car and the share of it on the front wheels, with driver, fuel and ballast where those have lines. */
  readonly carMass: number | undefined;
  readonly massFront: number | undefined;
  /** Why either is not known, where a line is at fault. */
  readonly massMissing?: string | undefined;
  /** What the left wheel carries more than the right one at rest, kg, or why that is not known; nothing where undefined. */
  readonly leftMore?: number | string | undefined;
  readonly problems: readonly AssemblyProblem[];
  /** Set where seats are kept: `trim` is by "kept" then, `staticTravel` the mean of both wheels'. */
  readonly kept?: KeptSeats | undefined;
  /** Why it is not known where the axle stands on kept seats. */
  readonly keptMissing?: string | undefined;
  /** The rods of both sides, where there are any. */
  readonly rods?: Rods | undefined;
  /** What elements that join the axles carry for each wheel at design, N, or why that is not known; undefined without any. */
  readonly joined?: Sides<number> | string | undefined;
}

/** An end of an element that joins the axles, with the axle that it is on (none for the chassis). */
export interface CarEnd {
  readonly axle: AxleName | undefined;
  readonly end: End;
}

/** An element at car level: as one of an axle, with a deflection that follows all four wheels. */
export interface CarElement extends Omit<Element, "connection" | "side"> {
  readonly connection: CarConnection | undefined;
}
