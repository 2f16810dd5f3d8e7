/**
 * What the page shows, and how it changes. Plain data and pure functions; the page keeps the part that is to outlive a reload
 * (`Kept`) with the editor.
 *
 * Invariant: `answer` is the last one that had a car; a text that cannot be read leaves it standing, and `note` says so.
 */
import type {
  MechanismAnswer,
  MoveEyeAnswer,
  PanelAxle,
  PanelCar,
  PanelCurvesAnswer,
} from "../../../server/lsp/protocol-panel.js";
import type { Cursor, Followed } from "../messages.js";
import { type Camera, cameras, type ViewName } from "./camera.js";
import type { Point2 } from "./geometry.js";
import { type AxleName, AT_REST, drawnBack, type Motion, type Pose } from "./pose.js";
import { isWithin, pathAt } from "./places.js";
import { rangesOf } from "./scene.js";
import { changesInWords } from "./words.js";

export type AxlesShown = AxleName | "both";
export type Tab = "mechanism" | "curves";

/** Survives a reload of the window. */
export interface Kept {
  readonly followed: Followed | undefined;
  readonly axles: AxlesShown;
  readonly view: ViewName;
  /** Of the free view. */
  readonly free: Camera;
  readonly near: boolean;
  readonly trails: boolean;
  readonly road: boolean;
  readonly tab: Tab;
  readonly pose: Pose;
}

export interface HeldEye {
  readonly axle: AxleName;
  readonly side: "left" | "right";
  readonly point: string;
  /** Asked for last, at design. */
  readonly to: readonly [number, number, number];
  readonly answer: MoveEyeAnswer | undefined;
}

export interface State extends Kept {
  readonly answer: MechanismAnswer | undefined;
  readonly note: string | undefined;
  /** Why there is nothing at all. */
  readonly nothing: string | undefined;
  readonly curves: PanelCurvesAnswer | undefined;
  readonly chosen: string | undefined;
  readonly cursorPath: string | undefined;
  readonly motion: Motion;
  readonly playing: boolean;
  readonly why: string | undefined;
  readonly held: HeldEye | undefined;
  readonly zoom: number;
  readonly pan: Point2;
  /** The last thing said to a screen reader. */
  readonly said: string;
}

export const START: State = {
  followed: undefined,
  axles: "front",
  view: "front",
  free: cameras.free,
  near: false,
  trails: true,
  road: false,
  tab: "mechanism",
  pose: AT_REST,
  answer: undefined,
  note: undefined,
  nothing: undefined,
  curves: undefined,
  chosen: undefined,
  cursorPath: undefined,
  motion: "heave",
  playing: false,
  why: undefined,
  held: undefined,
  zoom: 1,
  pan: [0, 0],
  said: "",
};

export const kept = ({ followed, axles, view, free, near, trails, road, tab, pose }: State): Kept => ({
  followed,
  axles,
  view,
  free,
  near,
  trails,
  road,
  tab,
  pose,
});

export const cameraOf = ({ view, free }: State): Camera => (view === "free" ? free : cameras[view]);

/** While an eye is held, the axle is drawn as it would be. */
export function carOf({ answer, held }: State): PanelCar | undefined {
  const car = answer?.car;
  const moved = held?.answer?.axle;
  if (car === undefined || moved === undefined) return car;
  return { ...car, axles: car.axles.map((axle) => (axle.name === moved.name ? moved : axle)) };
}

export function axlesOf(state: State, car: PanelCar): readonly PanelAxle[] {
  if (state.axles === "both") return car.axles;
  const one = car.axles.filter(({ name }) => name === state.axles);
  return one.length > 0 ? one : car.axles.slice(0, 1);
}

/** The axle whose left wheel the slider of one wheel moves. */
export const singleAxleOf = (state: State, car: PanelCar): AxleName => axlesOf(state, car)[0]?.name ?? "front";

export function answered(state: State, answer: MechanismAnswer): State {
  const followed: Followed = { uri: answer.uri, name: state.followed?.name };
  const known = state.answer?.uri === answer.uri ? state.answer.car : undefined;
  if (answer.broken !== undefined && known !== undefined) {
    const note = `The text cannot be read now, so this is the last drawing that could be made. ${answer.broken}`;
    return { ...state, followed, note, said: note };
  }
  const { car } = answer;
  const next: State = { ...state, followed, answer, note: undefined, nothing: undefined };
  if (car === undefined) return { ...next, held: undefined };
  const note =
    answer.broken === undefined
      ? undefined
      : `The text cannot be read to its end, so the drawing may lack something. ${answer.broken}`;
  const isThere =
    car.axles.some(({ name }) => name === state.axles) || (state.axles === "both" && car.axles.length > 1);
  const axles = isThere ? state.axles : (car.axles[0]?.name ?? "front");
  return {
    ...next,
    note,
    axles,
    pose: drawnBack(next.pose, rangesOf(car, car.axles, singleAxleOf(next, car))),
    said: known === undefined ? next.said : changesInWords(known, car) || next.said,
  };
}

/** Follows the cursor: the axle it is in, and the element or eye that its line belongs to. */
export function cursorMoved(state: State, cursor: Cursor): State {
  const car = state.answer?.car;
  if (car === undefined) return state;
  const path = pathAt(car, cursor);
  const within = car.axles.find(({ place }) => isWithin(place, cursor));
  const axles = within === undefined || state.axles === "both" ? state.axles : within.name;
  if (path === state.cursorPath && axles === state.axles) return state;
  return { ...state, axles, cursorPath: path, chosen: path ?? state.chosen };
}
