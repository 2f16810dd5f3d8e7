/** The page's keys, wherever the focus is, but for where they are typed into or already mean something. */
import type { Actions } from "./actions.js";
import type { ViewName } from "./camera.js";
import { AT_REST, type Motion } from "./pose.js";
import type { State } from "./state.js";

const VIEWS = new Map<string, ViewName>([
  ["1", "front"],
  ["2", "side"],
  ["3", "top"],
  ["4", "free"],
]);

/** A step of each motion, SI. */
const STEPS = new Map<string, readonly [Motion, number]>([
  ["h", ["heave", 0.002]],
  ["r", ["roll", 0.002]],
  ["p", ["pitch", 0.001]],
  ["w", ["single", 0.002]],
  ["s", ["steer", 0.002]],
]);

export interface KeyPress {
  readonly key: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
}

type Keyed = Actions & { undo(): void };

/** @returns whether the key meant something */
export function pressed(event: KeyPress, state: State, actions: Keyed): boolean {
  const key = event.key.toLowerCase();
  if (event.ctrlKey || event.metaKey) {
    if (key !== "z" || event.shiftKey) return false;
    actions.undo();
    return true;
  }
  if (event.altKey) return false;
  const view = VIEWS.get(key);
  const step = STEPS.get(key);
  if (view !== undefined) actions.change((old) => ({ ...old, view, zoom: 1, pan: [0, 0] }));
  else if (step !== undefined) actions.move(step[0], state.pose[step[0]] + (event.shiftKey ? -step[1] : step[1]));
  else if (key === "0") actions.change((old) => ({ ...old, pose: AT_REST, playing: false, why: undefined }));
  else if (key === "c") actions.change((old) => ({ ...old, near: !old.near, zoom: 1, pan: [0, 0] }));
  else return false;
  return true;
}
