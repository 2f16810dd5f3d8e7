/**
 * Takes hold of an eye: by the pointer, along with which it moves in its rocker's plane, and by the arrow keys.
 *
 * While it is held, the server is asked what the move would do and nothing is written. Letting go writes it, as one step that can be
 * undone; Escape lets go without writing. A key that is kept down is one step too: what is written is where it is when the key comes up.
 */
import type { TargetedKeyboardEvent, TargetedPointerEvent } from "preact";
import { useRef } from "preact/hooks";
import type { Actions } from "./actions.js";
import { atDesign, planeAcross, rounded } from "./eye-plane.js";
import { type Point2, type Point3, sum, times } from "./geometry.js";
import type { DrawnEye } from "./layout.js";
import type { Plane, Projection } from "./projection.js";
import { cornerWeights, pointAt } from "./tables.js";

const STEP = 0.001;
const FINE_STEP = 0.0001;
/** A click is no drag. */
const SLACK_PX = 3;

const KEYS = new Map<string, readonly [right: number, up: number]>([
  ["ArrowLeft", [-1, 0]],
  ["ArrowRight", [1, 0]],
  ["ArrowUp", [0, 1]],
  ["ArrowDown", [0, -1]],
]);

interface Hold {
  readonly from: Point2;
  readonly design: Point3;
  dragged: boolean;
}

interface Grip {
  readonly design: Point3;
  readonly plane: Plane;
  readonly axis: Point3;
  readonly angle: number;
}

/** Undefined for an eye that has no place in the text or no rocker to turn with. */
function gripOf({ corner, index }: DrawnEye): Grip | undefined {
  const point = corner.data.points[index];
  const { rocker } = corner.data;
  const design = point && pointAt(point, cornerWeights(corner.data, 0, 0));
  if (point?.place === undefined || rocker === undefined || design === undefined) return undefined;
  return { design, plane: planeAcross(rocker.axis), axis: rocker.axis, angle: corner.rockerAngle };
}

export function useEyeGrip(eye: DrawnEye, actions: Actions, projection: Projection) {
  const hold = useRef<Hold | undefined>(undefined);
  const { corner, index, path } = eye;
  const point = corner.data.points[index];
  const grip = gripOf(eye);
  const ask = (to: Point3): void =>
    actions.holdEye({ axle: corner.axle, side: corner.side, point: point?.id ?? "", to: rounded(to) });
  const goTo = (): void => {
    actions.choose(path);
    actions.goTo(point?.place);
  };
  const release = (write: boolean): void => {
    hold.current = undefined;
    if (actions.heldEye() === undefined) return;
    if (write) actions.dropEye();
    else actions.letGo();
  };
  return {
    onPointerDown: (event: TargetedPointerEvent<SVGGElement>) => {
      if (event.button !== 0) return;
      event.preventDefault();
      event.stopPropagation();
      event.currentTarget.focus();
      event.currentTarget.setPointerCapture(event.pointerId);
      actions.choose(path);
      if (grip !== undefined)
        hold.current = { from: [event.clientX, event.clientY], design: grip.design, dragged: false };
    },
    onPointerMove: (event: TargetedPointerEvent<SVGGElement>) => {
      const held = hold.current;
      if (held === undefined || grip === undefined) return;
      const px: Point2 = [event.clientX - held.from[0], event.clientY - held.from[1]];
      if (!held.dragged && Math.hypot(...px) < SLACK_PX) return;
      held.dragged = true;
      ask(atDesign(held.design, projection.within(grip.plane, px), grip.axis, grip.angle));
    },
    onPointerUp: () => {
      const dragged = hold.current?.dragged === true;
      if (dragged) release(true);
      else {
        hold.current = undefined;
        goTo();
      }
    },
    onPointerCancel: () => release(false),
    onKeyDown: (event: TargetedKeyboardEvent<SVGGElement>) => {
      const way = KEYS.get(event.key);
      if (event.key === "Escape") release(false);
      else if (event.key === "Enter") goTo();
      else if (way !== undefined && grip !== undefined) {
        const step = event.altKey || event.shiftKey ? FINE_STEP : STEP;
        const held = actions.heldEye();
        ask(
          sum(
            held?.point === point?.id ? (held?.to ?? grip.design) : grip.design,
            nudge(way, step, grip.plane, projection),
          ),
        );
      } else return;
      event.preventDefault();
      event.stopPropagation();
    },
    onKeyUp: (event: TargetedKeyboardEvent<SVGGElement>) => {
      if (KEYS.has(event.key)) release(true);
    },
    onFocus: () => actions.choose(path),
    onBlur: () => {
      if (hold.current === undefined && actions.heldEye() !== undefined) actions.letGo();
    },
  };
}

/** The direction within the plane that looks most like the key, so that left is left in every view. */
function nudge([right, up]: readonly [number, number], step: number, { u, v }: Plane, projection: Projection): Point3 {
  const origin = projection.point([0, 0, 0]);
  const seen = (direction: Point3): number => {
    const to = projection.point(direction);
    return right * (to[0] - origin[0]) - up * (to[1] - origin[1]);
  };
  const ways = [u, times(-1, u), v, times(-1, v)].sort((a, b) => seen(b) - seen(a));
  return times(step, ways[0] ?? u);
}
