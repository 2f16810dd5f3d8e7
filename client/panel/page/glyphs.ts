/**
 * The signs that elements are drawn with between their two ends: a spring's coils, a damper's tube and rod, a rod. A kind is known
 * by its sign alone, without its colour.
 *
 * In: two places on the screen, px. Out: the `d` of paths. Where the two ends fall together, seen end on, there is no
 * direction: then a mark is drawn around the place.
 */
import type { Point2 } from "./geometry.js";

/** Along a line from its first end: how far (share of its length) and how far aside, px. */
type Along = readonly [share: number, aside: number];

const SHORTEST = 6;

export interface Glyph {
  /** Stroked. */
  readonly line: string;
  /** Stroked and filled with the ground, so that what is behind does not shine through. */
  readonly body?: string;
}

const number = (value: number): string => (Math.round(value * 10) / 10).toString();

export const polyline = (points: readonly Point2[], closed = false): string =>
  points.length === 0 ? "" : `M${points.map(([x, y]) => `${number(x)} ${number(y)}`).join("L")}${closed ? "Z" : ""}`;

export const ring = ([x, y]: Point2, radius: number): string =>
  `M${number(x - radius)} ${number(y)}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0Z`;

interface Run {
  readonly length: number;
  readonly at: (along: Along) => Point2;
}

/** Shifted aside by `aside` px, for elements that share both ends. */
function runOf([ax, ay]: Point2, [bx, by]: Point2, aside: number): Run | undefined {
  const [dx, dy] = [bx - ax, by - ay];
  const length = Math.hypot(dx, dy);
  if (length < SHORTEST) return undefined;
  const [nx, ny] = [-dy / length, dx / length];
  return {
    length,
    at: ([share, off]) => [ax + dx * share + nx * (off + aside), ay + dy * share + ny * (off + aside)],
  };
}

/** The sign takes the middle of a long element, so that it looks alike on all of them; of a short one it takes most. */
function middlePart({ length }: Run, px: number): readonly [from: number, to: number] {
  const half = Math.min(0.32, px / 2 / length);
  return [0.5 - half, 0.5 + half];
}

const endOn = (a: Point2, radius: number): Glyph => ({ line: ring(a, radius) });

/** Both ends' legs run straight, and what lies between is as long as the element is: coils close up with compression. */
export function springGlyph(a: Point2, b: Point2, size: number, aside = 0): Glyph {
  const run = runOf(a, b, aside);
  if (run === undefined) return endOn(a, size);
  const turns = run.length < 40 ? 3 : 7;
  const [from, to] = middlePart(run, 11 * size);
  const coils: Along[] = Array.from({ length: 2 * turns - 1 }, (_, i) => [
    from + ((to - from) * (i + 1)) / (2 * turns),
    i % 2 === 0 ? size : -size,
  ]);
  const way: Along[] = [[0, 0], [from, 0], ...coils, [to, 0], [1, 0]];
  return { line: joined(run, aside, a, b, way) };
}

/** A tube at the first end, the rod with its piston at the second. */
export function damperGlyph(a: Point2, b: Point2, size: number, aside = 0): Glyph {
  const run = runOf(a, b, aside);
  if (run === undefined) return endOn(a, size);
  const [from, to] = middlePart(run, 9 * size);
  const head = from + 0.6 * (to - from);
  const tube: Along[] = [
    [to, size],
    [from, size],
    [from, -size],
    [to, -size],
  ];
  const piston: Along[] = [
    [head, size * 0.7],
    [head, -size * 0.7],
  ];
  const legs = `${joined(run, aside, a, undefined, [
    [0, 0],
    [from, 0],
  ])}${joined(run, aside, undefined, b, [
    [head, 0],
    [1, 0],
  ])}`;
  return { line: `${legs}${polyline(piston.map(run.at))}`, body: polyline(tube.map(run.at)) };
}

/** A slim box in the middle of a line: gas, oil, an inerter, an actuator. `bars` lines across tell them apart. */
export function boxGlyph(a: Point2, b: Point2, size: number, bars: number, aside = 0): Glyph {
  const run = runOf(a, b, aside);
  if (run === undefined) return endOn(a, size);
  const [from, to] = middlePart(run, 7 * size);
  const box: Along[] = [
    [from, size],
    [to, size],
    [to, -size],
    [from, -size],
  ];
  const across = Array.from({ length: bars }, (_, i): string => {
    const share = from + ((to - from) * (i + 1)) / (bars + 1);
    const ends: Along[] = [
      [share, size],
      [share, -size],
    ];
    return polyline(ends.map(run.at));
  });
  const legs = `${joined(run, aside, a, undefined, [
    [0, 0],
    [from, 0],
  ])}${joined(run, aside, undefined, b, [
    [to, 0],
    [1, 0],
  ])}`;
  return { line: `${legs}${across.join("")}`, body: polyline(box.map(run.at), true) };
}

/** A line along the run; one that runs aside begins and ends at the real ends all the same. */
function joined(run: Run, aside: number, a: Point2 | undefined, b: Point2 | undefined, way: readonly Along[]): string {
  const points = way.map(run.at);
  if (aside === 0) return polyline(points);
  return polyline([...(a === undefined ? [] : [a]), ...points, ...(b === undefined ? [] : [b])]);
}
