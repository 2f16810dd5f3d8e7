/**
 * How an element is deflected along one of the modes that it is for, as a function of the mode's travel alone: a step
 * that its curves share, the same for an element of one axle and for one between the axles.
 *
 * Travel q in m as `ModeCurves` says; s in the element's own unit with its first and second derivative by q.
 */
import { type CarDeflection, eachWheel, type Wheels } from "../elements/car-connection.js";
import type { Deflection, Element } from "../elements/element.js";
import type { AxleMechanism, CarElement } from "../elements/mechanism.js";
import { type CarMode, PATTERNS } from "../elements/patterns.js";
import { absent, bindsReason, isAbsent, noDeflectionReason } from "./absent.js";
import { deflectionOf } from "./car-parts.js";
import type { CarAxles, CarPositions } from "./car-positions.js";
import type { OwnMode } from "./curve-data.js";
import type { Absent, Figure } from "./results.js";
import { type AxlePositions, isBound, type State } from "./states.js";

export interface Along {
  readonly s: number;
  readonly ds: number;
  readonly dds: number;
}

export interface OwnMotion {
  readonly mode: OwnMode;
  /** The envelope. */
  readonly from: number;
  readonly to: number;
  readonly rest: number;
  at(travel: number): Along | Absent;
  /** From what it gives per wheel travel to what is told: t²/4 in the roll of one axle. */
  readonly lever: Figure;
  readonly turns: boolean;
}

/** Weights of left and right wheel. */
type Pair = readonly [left: number, right: number];

function alongPair({ s, dL, dR, dLL, dLR, dRR }: Deflection, [l, r]: Pair): Along {
  return { s, ds: l * dL + r * dR, dds: l * l * dLL + 2 * l * r * dLR + r * r * dRR };
}

function onAxle(element: Element, { motion }: State, pair: Pair): Along | Absent {
  if (isBound(motion)) return absent(bindsReason(motion.why, motion.side));
  const d = element.connection?.deflection(motion);
  if (d === undefined) return absent(element.connectionMissing ?? "it is not connected");
  return "kind" in d ? absent(noDeflectionReason(d, element.path)) : alongPair(d, pair);
}

/** Wheel travels at q are `start` + q · `pair`. */
interface Way {
  readonly mode: "corner" | "heave" | "roll";
  readonly pair: Pair;
  readonly start: Pair;
  readonly range: readonly [from: number, to: number, rest: number];
}

function waysOf(element: Element, { staticTravel: rest, travel: { from, to } }: AxleMechanism): readonly Way[] {
  const most = Math.max(0, Math.min(rest - from, to - rest));
  const { side } = element;
  return element.for.flatMap((mode): readonly Way[] => {
    if (mode === "roll") return [{ mode, pair: [-1, 1], start: [rest, rest], range: [-most, most, 0] }];
    if (mode === "heave") return [{ mode, pair: [1, 1], start: [0, 0], range: [from, to, rest] }];
    if (mode !== "corner") return [];
    const pair: Pair = side === "right" ? [0, 1] : [1, 0];
    return [{ mode, pair, start: side === "right" ? [rest, 0] : [0, rest], range: [from, to, rest] }];
  });
}

function leverOf({ mode }: Way, { track, name }: AxleMechanism): Figure {
  if (mode !== "roll") return 1;
  return track === undefined ? absent(`the ${name} axle has no track`) : (track * track) / 4;
}

/** The modes of an axle that the element is for. */
export function motionsOnAxle(
  element: Element,
  mechanism: AxleMechanism,
  positions: AxlePositions,
): readonly OwnMotion[] {
  return waysOf(element, mechanism).map((way) => {
    const { mode, pair, start, range } = way;
    const [from, to, rest] = range;
    const at = (q: number): Along | Absent =>
      onAxle(element, positions.at(start[0] + q * pair[0], start[1] + q * pair[1]), pair);
    return { mode, from, to, rest, at, lever: leverOf(way, mechanism), turns: mode === "roll" };
  });
}

const isCarMode = (mode: string): mode is CarMode => mode in PATTERNS;

/** How far a pattern goes from rest until a wheel meets an end of its axle's envelope; [0, 0] where it does not go. */
function rangeInCar({ front, rear }: CarAxles, rest: Wheels, mode: CarMode): readonly [from: number, to: number] {
  let [low, high] = [-Infinity, Infinity];
  for (const [wheel, sign] of PATTERNS[mode].entries()) {
    const axle = wheel < 2 ? front : rear;
    if (axle === undefined) continue;
    const ends = [axle.travel.from, axle.travel.to].map((end) => sign * (end - (rest[wheel] ?? 0)));
    low = Math.max(low, Math.min(...ends));
    high = Math.min(high, Math.max(...ends));
  }
  return low < high && Number.isFinite(low) && Number.isFinite(high) ? [Math.min(low, 0), Math.max(high, 0)] : [0, 0];
}

/** Derivatives along a motion of the wheels. */
function alongPattern({ s, d, dd }: CarDeflection, pattern: readonly number[]): Along {
  const sum = (values: readonly number[]): number =>
    values.reduce((total, value, wheel) => total + value * (pattern[wheel] ?? 0), 0);
  return { s, ds: sum(d), dds: sum(dd.map(sum)) };
}

/** The modes of the car that the element is for, as patterns of wheel travel. */
export function motionsInCar(element: CarElement, axles: CarAxles, positions: CarPositions): readonly OwnMotion[] {
  return element.for.filter(isCarMode).map((mode) => {
    const pattern = PATTERNS[mode];
    const [from, to] = rangeInCar(axles, positions.rest, mode);
    const at = (q: number): Along | Absent => {
      const travels = eachWheel((wheel) => (positions.rest[wheel] ?? 0) + (pattern[wheel] ?? 0) * q);
      const d = deflectionOf(element, positions, travels);
      return isAbsent(d) ? d : alongPattern(d, pattern);
    };
    return { mode, from, to, rest: 0, at, lever: 1, turns: false };
  });
}
