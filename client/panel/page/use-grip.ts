/** Turns (the free view), pushes and zooms the drawing, by pointer and keys. Ctrl and the wheel zoom: the wheel alone scrolls the page. */
import type { TargetedKeyboardEvent, TargetedPointerEvent, TargetedWheelEvent } from "preact";
import { useRef } from "preact/hooks";
import type { Actions } from "./actions.js";
import { turned } from "./camera.js";
import type { Point2 } from "./geometry.js";

const TURN_PER_PX = 0.008;
const TURN_STEP = Math.PI / 36;
const PUSH_STEP = 24;
const ZOOM_STEP = 1.2;
const MOST_ZOOM = 12;

const WAYS = new Map<string, Point2>([
  ["ArrowLeft", [-1, 0]],
  ["ArrowRight", [1, 0]],
  ["ArrowUp", [0, -1]],
  ["ArrowDown", [0, 1]],
]);

const ZOOMS = new Map([
  ["+", ZOOM_STEP],
  ["=", ZOOM_STEP],
  ["-", 1 / ZOOM_STEP],
]);

export const zoomBy = (actions: Actions, by: number): void =>
  actions.change((old) => {
    const zoom = Math.min(MOST_ZOOM, Math.max(1, old.zoom * by));
    const share = zoom / old.zoom;
    return { ...old, zoom, pan: zoom === 1 ? [0, 0] : [old.pan[0] * share, old.pan[1] * share] };
  });

function shiftBy(actions: Actions, dx: number, dy: number): void {
  actions.change((old) =>
    old.view === "free"
      ? { ...old, free: turned(old.free, -dx * TURN_PER_PX, dy * TURN_PER_PX) }
      : { ...old, pan: [old.pan[0] + dx, old.pan[1] + dy] },
  );
}

export function useGrip(turns: boolean, actions: Actions, setTurning: (turning: boolean) => void) {
  const last = useRef<Point2 | undefined>(undefined);
  const end = (): void => {
    last.current = undefined;
    setTurning(false);
  };
  return {
    onPointerDown: (event: TargetedPointerEvent<SVGSVGElement>) => {
      if (event.button !== 0 || event.defaultPrevented) return;
      last.current = [event.clientX, event.clientY];
      event.currentTarget.setPointerCapture(event.pointerId);
      setTurning(true);
    },
    onPointerMove: (event: TargetedPointerEvent<SVGSVGElement>) => {
      if (last.current === undefined) return;
      const [x, y] = last.current;
      last.current = [event.clientX, event.clientY];
      shiftBy(actions, event.clientX - x, event.clientY - y);
    },
    onPointerUp: end,
    onPointerCancel: end,
    onDblClick: () => actions.change((old) => ({ ...old, zoom: 1, pan: [0, 0] })),
    onWheel: (event: TargetedWheelEvent<SVGSVGElement>) => {
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      zoomBy(actions, event.deltaY < 0 ? ZOOM_STEP : 1 / ZOOM_STEP);
    },
    onKeyDown: (event: TargetedKeyboardEvent<SVGSVGElement>) => {
      if (event.target !== event.currentTarget) return;
      const way = WAYS.get(event.key);
      const zoom = ZOOMS.get(event.key);
      const step = turns ? TURN_STEP / TURN_PER_PX : PUSH_STEP;
      if (zoom !== undefined) zoomBy(actions, zoom);
      else if (way !== undefined) shiftBy(actions, way[0] * step, way[1] * step);
      else return;
      event.preventDefault();
      event.stopPropagation();
    },
  };
}
