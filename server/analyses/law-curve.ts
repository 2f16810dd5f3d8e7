/**
 * The force of an element against its deflection, and that of a damper against its speed, with what happens on the
 * way.
 */
import type { DamperLaw, SpringLaw } from "../elements/element.js";
import { gasForceAt } from "../elements/laws/damper-law.js";
import { type Point, polyline } from "../maths/polyline.js";
import type { CurveData, CurveMark } from "./curve-data.js";
import type { Place } from "./law-places.js";

/** Deflections from design that the envelope makes, and those at rest. */
export interface Reached {
  readonly from: number;
  readonly to: number;
  readonly rest: number;
}

/** What lies no further beyond the envelope than this share of its span is drawn as well. */
const BEYOND = 0.5;
const MARGIN = 0.04;

/** From where to where it is drawn. */
function drawn({ from, to }: Reached, places: readonly Place[]): readonly [number, number] {
  const span = to - from;
  const near = places.map(({ s }) => s).filter((s) => s > from - BEYOND * span && s < to + BEYOND * span);
  const [low, high] = [Math.min(from, ...near), Math.max(to, ...near)];
  const margin = MARGIN * (high - low);
  return [low - margin, high + margin];
}

const byX = (a: Point, b: Point): number => a.x - b.x;

/** @param force at a deflection from design, with its seat */
function forceCurve(force: (s: number) => number, reached: Reached, places: readonly Place[]): CurveData {
  const [from, to] = drawn(reached, places);
  const kinks = places.filter(({ isKink }) => isKink).map(({ s }) => s);
  const marks: CurveMark[] = [
    { what: "travel-end", x: reached.from, y: force(reached.from) },
    { what: "travel-end", x: reached.to, y: force(reached.to) },
    ...places.filter(({ s }) => s >= from && s <= to).map(({ what, s }) => ({ what, x: s, y: force(s) })),
    { what: "static", x: reached.rest, y: force(reached.rest) },
  ];
  return { points: polyline(force, from, to, kinks), marks: marks.sort(byX), beside: [] };
}

/** @param seat what the trim adds to its deflection */
export const springCurve = (law: SpringLaw, seat: number, reached: Reached, places: readonly Place[]): CurveData =>
  forceCurve((s) => law.force(s + seat), reached, places);

/** The force of a damper's own gas; undefined where it has none. */
export function gasCurve(law: DamperLaw, reached: Reached, strokes: readonly Place[]): CurveData | undefined {
  if (law.gasForce === 0 && law.gasRate === undefined) return undefined;
  const gone = law.gasRate === undefined ? [] : [-law.gasForce / law.gasRate];
  const places = [...strokes, ...gone.map((s) => ({ what: "carries" as const, s, isKink: true }))];
  return forceCurve((s) => gasForceAt(law, s), reached, places);
}

/** Beyond the last knee or measured point by this. */
const FASTER = 1.25;
/** Where it has neither: m/s of its wheel. Common practice for a damper curve, no published source. */
const WHEEL_SPEED = 0.25;

/**
 * @param perWheel how far it is moved for each wheel travel: how fast it is drawn where its law names no speed
 * @param rest its deflection at rest, for the force of its gas
 */
export function damperCurve(law: DamperLaw, perWheel: number, rest: number): CurveData {
  const named = Math.max(0, ...(law.marks ?? []).map(({ at }) => Math.abs(at)));
  const fastest = named > 0 ? FASTER * named : WHEEL_SPEED * (perWheel === 0 ? 1 : Math.abs(perWheel));
  const kinks = [0, ...(law.marks ?? []).map(({ at }) => at)];
  const line = (force: (v: number) => number): readonly Point[] => polyline(force, -fastest, fastest, kinks);
  const gas = gasForceAt(law, rest);
  const marks = (law.marks ?? []).map(({ at, what }): CurveMark => ({ what, x: at, y: law.force(at) }));
  const { closed, open } = law.settings ?? {};
  return {
    points: line((v) => law.force(v)),
    marks,
    beside: [
      ...(gas === 0 ? [] : [{ what: "with-gas" as const, points: line((v) => law.force(v) + gas) }]),
      ...(closed === undefined ? [] : [{ what: "closed" as const, points: line((v) => closed.force(v)) }]),
      ...(open === undefined ? [] : [{ what: "open" as const, points: line((v) => open.force(v)) }]),
    ],
  };
}
