/**
 * Where names stand in the drawing: each near what it names, none over another.
 *
 * Greedy: the names are placed in the order that they are given in, the most important first. Each tries places around its anchor,
 * near ones first, and takes the first that is free and inside. One that finds none is left out: it can still be read in
 * the list and where the pointer rests.
 */
import type { Point2 } from "./geometry.js";

export interface Wanted {
  readonly id: string;
  readonly anchor: Point2;
  readonly width: number;
  readonly height: number;
}

export interface Placed {
  readonly id: string;
  /** Of the box's upper left corner. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** From the anchor to the box, where they are apart. */
  readonly leader: readonly [Point2, Point2] | undefined;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Sideways first: a name beside its line is read most easily. */
const DIRECTIONS: readonly Point2[] = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [0.75, -0.75],
  [-0.75, -0.75],
  [0.75, 0.75],
  [-0.75, 0.75],
  [0.4, -0.95],
  [-0.4, -0.95],
  [0.95, -0.4],
  [-0.95, -0.4],
];
const REACHES = [12, 24, 40, 60, 84, 112, 140];
const LED_FROM = 16;
const MARGIN = 3;

/** @param taken what no name may cover, beside the other names */
export function placeLabels(wanted: readonly Wanted[], area: Box, taken: readonly Box[] = []): readonly Placed[] {
  const boxes: Box[] = [...taken];
  const placed: Placed[] = [];
  for (const one of wanted) {
    const found = firstFree(one, area, boxes);
    if (found === undefined) continue;
    boxes.push(found);
    placed.push(found);
  }
  return placed;
}

function firstFree(one: Wanted, area: Box, boxes: readonly Box[]): Placed | undefined {
  for (const reach of REACHES) {
    for (const direction of DIRECTIONS) {
      const box = boxAt(one, direction, reach);
      if (isInside(box, area) && !boxes.some((other) => overlap(box, other))) {
        return { id: one.id, ...box, leader: reach < LED_FROM ? undefined : [one.anchor, nearestOf(box, one.anchor)] };
      }
    }
  }
  return undefined;
}

/** The box's side that faces the anchor is at that reach from it. */
function boxAt({ anchor, width, height }: Wanted, [right, down]: Point2, reach: number): Box {
  const x = anchor[0] + right * reach + (right > 0.3 ? 0 : right < -0.3 ? -width : -width / 2);
  const y = anchor[1] + down * reach + (down > 0.3 ? 0 : down < -0.3 ? -height : -height / 2);
  return { x, y, width, height };
}

const isInside = (box: Box, area: Box): boolean =>
  box.x >= area.x &&
  box.y >= area.y &&
  box.x + box.width <= area.x + area.width &&
  box.y + box.height <= area.y + area.height;

export const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width + MARGIN &&
  b.x < a.x + a.width + MARGIN &&
  a.y < b.y + b.height + MARGIN &&
  b.y < a.y + a.height + MARGIN;

/** The point of the box that is nearest to the anchor. */
const nearestOf = ({ x, y, width, height }: Box, [ax, ay]: Point2): Point2 => [
  Math.min(x + width, Math.max(x, ax)),
  Math.min(y + height, Math.max(y, ay)),
];
