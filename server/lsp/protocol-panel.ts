/**
 * What client and server say to each other about the mechanism panel. Types only.
 *
 * The server samples the mechanism; the page interpolates. So a slider moves without a question, and only a change of the text
 * asks again. What is sampled is worded in `views/mechanism/data.ts`.
 */
import type { PanelAxle, PanelCar, PanelCurve } from "../views/mechanism/data.js";
import type { PlainRange } from "./protocol.js";

export type * from "../views/mechanism/data.js";

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

/** Asks for the curves of a car: more work than the mechanism, so asked for only where they are shown. */
export type PanelCurvesMethod = "bellcrank/panelCurves";

export type PanelCurvesParams = MechanismParams;

export interface PanelCurvesAnswer {
  readonly curves: readonly PanelCurve[];
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
