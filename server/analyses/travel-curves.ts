/**
 * What an element gives at the wheels, and how far it is moved, over the travel of one of its modes.
 *
 * With U(q) its energy along the mode: d²U/dq² = k (ds/dq)² + F d²s/dq²; a damper at low speed c (ds/dq)²; an inerter
 * b (ds/dq)². A rate jumps where a stage is used up: there are two points, one on each side.
 */
import type { Law } from "../elements/element.js";
import { closedIn } from "../maths/closing-in.js";
import { type Point, polyline, type Pieces } from "../maths/polyline.js";
import { rootBetween } from "../maths/root-between.js";
import { absent, isAbsent } from "./absent.js";
import { HELD } from "./carrying.js";
import type { CurveData, CurveMark, MarkKind, ModeCurves } from "./curve-data.js";
import type { Place } from "./law-places.js";
import type { Along, OwnMotion } from "./own-motion.js";
import type { Absent } from "./results.js";

/** Steps on each side of rest in which places are looked for. */
const STEPS = 4;
const HALVINGS = 30;
/** Share of the deflections' span by which a law is read beside its kink. */
const BESIDE = 1e-9;

/** What of the envelope can be reached, and whether links cut it. */
interface Range {
  readonly from: number;
  readonly to: number;
  readonly cut: readonly number[];
}

function reachable(motion: OwnMotion, end: number): number {
  const isThere = (q: number): boolean => !isAbsent(motion.at(q));
  return isThere(end) ? end : closedIn(motion.rest, end, isThere, HALVINGS).holding;
}

export function rangeOf(motion: OwnMotion): Range {
  const [from, to] = [reachable(motion, motion.from), reachable(motion, motion.to)];
  const cut = [...(from === motion.from ? [] : [from]), ...(to === motion.to ? [] : [to])];
  return { from, to, cut };
}

/** A place of the law as it is met on the way. */
interface Met {
  readonly place: Place;
  readonly q: number;
}

function stepsOf({ from, to }: Range, rest: number): readonly number[] {
  const way = (end: number): readonly number[] =>
    end === rest ? [] : Array.from({ length: STEPS }, (_, i) => rest + ((end - rest) * (i + 1)) / STEPS);
  return [...way(from), rest, ...way(to)].sort((a, b) => a - b);
}

/** Every travel at which a deflection of the places is passed. */
function metOnTheWay(motion: OwnMotion, range: Range, places: readonly Place[]): readonly Met[] {
  const steps = stepsOf(range, motion.rest);
  const values = steps.map((q) => motion.at(q));
  return places.flatMap((place) =>
    steps.slice(1).flatMap((to, i) => {
      const from = steps[i] ?? to;
      const [a, b] = [values[i], values[i + 1]];
      if (a === undefined || b === undefined || isAbsent(a) || isAbsent(b)) return [];
      if ((a.s - place.s) * (b.s - place.s) > 0 || a.s === place.s) return [];
      const q = rootBetween(
        (x) => {
          const d = motion.at(x);
          return isAbsent(d) ? undefined : { value: d.s - place.s, slope: d.ds };
        },
        from,
        to,
      );
      return q === undefined ? [] : [{ place, q }];
    }),
  );
}

/** Value from where it is along the mode; `s` is that of the law's own side at a kink. */
type Value = (along: Along, s: number) => number;

/** Beside a kink the law is read a hair off it, since rounding may put the deflection on the wrong side. */
function pieces(motion: OwnMotion, met: readonly Met[], hair: number, value: Value): Pieces {
  return (q, side) => {
    const along = motion.at(q);
    if (isAbsent(along)) return undefined;
    const kink = side === 0 ? undefined : met.find((one) => one.place.isKink && one.q === q);
    const s = kink === undefined ? along.s : kink.place.s + Math.sign(along.ds) * side * hair;
    return value(along, s);
  };
}

function curve(motion: OwnMotion, range: Range, met: readonly Met[], value: Value): CurveData {
  const [a, b] = [range.from, range.to].map((q) => motion.at(q));
  const span = a === undefined || b === undefined || isAbsent(a) || isAbsent(b) ? 0 : Math.abs(b.s - a.s);
  const f = pieces(motion, met, BESIDE * span, value);
  const kinks = met.filter(({ place }) => place.isKink).map(({ q }) => q);
  const mark = (what: MarkKind, x: number): readonly CurveMark[] => {
    const side = Math.sign(motion.rest - x) || 1;
    const y = f(x, side > 0 ? -1 : 1);
    return y === undefined ? [] : [{ what, x, y }];
  };
  const ends = [range.from, range.to].filter((end) => !range.cut.includes(end));
  const marks = [
    ...ends.flatMap((end) => mark("travel-end", end)),
    ...range.cut.flatMap((end) => mark("link-binds", end)),
    ...met.flatMap(({ place, q }) => mark(place.what, q)),
    ...mark("static", motion.rest),
  ];
  return { points: polyline(f, range.from, range.to, kinks), marks: marks.sort(byX), beside: [] };
}

const byX = (a: Point, b: Point): number => a.x - b.x;

interface Given {
  readonly gives: ModeCurves["gives"];
  readonly value: Value | Absent;
}

/** @param seat what the trim adds to its deflection, or why that is not known */
function givenBy(law: Law | undefined, missing: string | undefined, seat: number | Absent): Given {
  if (law === undefined) return { gives: "rate", value: absent(missing ?? "it has no law") };
  switch (law.kind) {
    case "hold":
      return { gives: "rate", value: absent(HELD) };
    case "damper":
      return { gives: "damping", value: ({ ds }) => law.lowSpeed * ds * ds };
    case "inerter":
      return { gives: "mass", value: ({ ds }) => law.inertance * ds * ds };
    case "spring": {
      if (typeof seat !== "number") return { gives: "rate", value: seat };
      return {
        gives: "rate",
        value: ({ ds, dds }, s) => law.rate(s + seat) * ds * ds + law.force(s + seat) * dds,
      };
    }
  }
}

export interface Moved {
  readonly law: Law | undefined;
  readonly lawMissing: string | undefined;
  readonly seat: number | Absent;
  readonly places: readonly Place[];
}

/** Curves over the travel of one mode, each worked out when it is first read: a hover draws one of them. */
export function modeCurves(motion: OwnMotion, { law, lawMissing, seat, places }: Moved): ModeCurves {
  const { mode, turns, lever } = motion;
  const { gives, value } = givenBy(law, lawMissing, seat);
  const rest = motion.at(motion.rest);
  const range = rangeOf(motion);
  const why = isAbsent(rest)
    ? rest
    : range.from < range.to
      ? undefined
      : absent(`the axle's travel leaves none in ${mode === "corner" ? "bump and droop" : mode}`);
  if (why !== undefined) return { mode, gives, turns, motionRatio: why, atWheels: why };
  let met: readonly Met[] | undefined;
  const onTheWay = (): readonly Met[] => (met ??= metOnTheWay(motion, range, places));
  let ratio: CurveData | undefined;
  let given: CurveData | Absent | undefined;
  return {
    mode,
    gives,
    turns,
    get motionRatio() {
      const strokes = (): readonly Met[] => onTheWay().filter(({ place }) => !place.isKink);
      return (ratio ??= curve(motion, range, strokes(), ({ ds }) => ds));
    },
    get atWheels() {
      if (isAbsent(value)) return value;
      if (typeof lever !== "number") return lever;
      return (given ??= curve(motion, range, onTheWay(), (along, s) => lever * value(along, s)));
    },
  };
}
