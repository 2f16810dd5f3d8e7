/**
 * Elements at car level, which join the axles: how they follow the four modes of wheel travel, and
 * the leak into modes that they are not for.
 *
 * A two-point element between points of any of the four corners: with r = a − b and u = r/|r|,
 * ds/dz_i = −u·∂r/∂z_i for each wheel i. Its finite leak is looked at over the part of both envelopes
 * that all four wheels have in common.
 */
import type { AxleMechanism, CarElement, CarEnd } from "../elements/mechanism.js";
import { designPoint, endMotion } from "../elements/ends.js";
import type { AxleMotion } from "../linkage/corner.js";
import { distance, dot, mirror, sub, unit, type Vec3 } from "../maths/vec3.js";
import { absent, bindsReason, isAbsent, noDeflectionReason } from "./absent.js";
import type { Absent, ByMode, ElementFigures, Figure, Leak } from "./results.js";
import { type CarMode, PATTERNS } from "./sensitivity.js";
import { type AxlePositions, axlePositions } from "./states.js";

export interface CarAxles {
  readonly front: AxleMechanism | undefined;
  readonly rear: AxleMechanism | undefined;
}

const MODES = ["heave", "pitch", "roll", "warp"] as const;
const WHEELS = { "front.left": 0, "front.right": 1, "rear.left": 2, "rear.right": 3 } as const;
const STEPS = 4;
const IDLE = 0.02;
const STILL = 1e-9;
const COINCIDENT = 1e-9;

type Positions = { readonly front: AxlePositions | undefined; readonly rear: AxlePositions | undefined };

/** An end as it stands: its position in the car frame, and its velocity with its own wheel. */
interface Placed {
  readonly p: Vec3;
  readonly d: Vec3;
  readonly wheel: number | undefined;
}

const STANDING: AxleMotion["left"] = {
  travel: 0,
  point: (_body, design) => ({ p: design, d: [0, 0, 0], dd: [0, 0, 0] }),
  rocker: undefined,
  wheel: undefined,
};

function placed(end: CarEnd, positions: Positions, travels: readonly number[], path: string): Placed | Absent {
  const { axle } = end;
  const side = end.end.kind === "chassis" ? undefined : end.end.side;
  if (axle === undefined || side === undefined) {
    const fixed = endMotion(end.end, { left: STANDING, right: STANDING });
    return "kind" in fixed ? absent(noDeflectionReason(fixed, path)) : { p: fixed.p, d: fixed.d, wheel: undefined };
  }
  const at = positions[axle];
  if (at === undefined) return absent(`the car has no ${axle} axle`);
  const first = axle === "front" ? 0 : 2;
  const { motion } = at.at(travels[first] ?? 0, travels[first + 1] ?? 0);
  if ("why" in motion) return absent(bindsReason(motion.why, motion.side));
  const moved = endMotion(end.end, motion);
  if ("kind" in moved) return absent(noDeflectionReason(moved, path));
  const inCar = (v: Vec3): Vec3 => (side === "left" ? v : mirror(v));
  return { p: inCar(moved.p), d: inCar(moved.d), wheel: WHEELS[`${axle}.${side}`] };
}

interface Joined {
  readonly path: string;
  readonly ends: readonly [CarEnd, CarEnd];
  readonly design: number;
}

/** Deflection and its four derivatives at four wheel travels. */
function deflection(
  joined: Joined,
  positions: Positions,
  travels: readonly number[],
): { readonly s: number; readonly gradient: readonly number[] } | Absent {
  const a = placed(joined.ends[0], positions, travels, joined.path);
  if (isAbsent(a)) return a;
  const b = placed(joined.ends[1], positions, travels, joined.path);
  if (isAbsent(b)) return b;
  const r = sub(a.p, b.p);
  const length = Math.sqrt(dot(r, r));
  if (!(length > COINCIDENT)) return absent(`the ends of ${joined.path} fall together`);
  const u = unit(r);
  const gradient = [0, 0, 0, 0];
  if (a.wheel !== undefined) gradient[a.wheel] = (gradient[a.wheel] ?? 0) - dot(u, a.d);
  if (b.wheel !== undefined) gradient[b.wheel] = (gradient[b.wheel] ?? 0) + dot(u, b.d);
  return { s: joined.design - length, gradient };
}

function sensitivities(gradient: readonly number[]): ByMode {
  // Adding 0 turns a −0 into a 0.
  const along = (mode: CarMode): number =>
    PATTERNS[mode].reduce<number>((sum, sign, wheel) => sum + sign * (gradient[wheel] ?? 0), 0) + 0;
  return { heave: along("heave"), roll: along("roll"), pitch: along("pitch"), warp: along("warp") };
}

/** Smallest and largest deflection of a mode over its amplitudes, design included. */
function spanOf(
  joined: Joined,
  positions: Positions,
  mode: CarMode,
  amplitudes: readonly number[],
): { readonly from: number; readonly to: number } | Absent {
  let from = 0;
  let to = 0;
  for (const q of amplitudes) {
    const d = deflection(
      joined,
      positions,
      PATTERNS[mode].map((sign) => sign * q),
    );
    if (isAbsent(d)) return d;
    from = Math.min(from, d.s);
    to = Math.max(to, d.s);
  }
  return { from, to };
}

/** Amplitudes that keep all four wheels inside both envelopes: in heave as far as they go, else as far as both ways allow. */
function amplitudesOf({ front, rear }: CarAxles, mode: CarMode): readonly number[] {
  const from = Math.max(front?.travel.from ?? -Infinity, rear?.travel.from ?? -Infinity);
  const to = Math.min(front?.travel.to ?? Infinity, rear?.travel.to ?? Infinity);
  if (!Number.isFinite(from) || !Number.isFinite(to)) return [];
  const both = Math.max(0, Math.min(-from, to));
  const [low, high] = mode === "heave" ? [Math.min(from, 0), Math.max(to, 0)] : [-both, both];
  const steps = (end: number): number[] => Array.from({ length: STEPS }, (_, i) => (end * (i + 1)) / STEPS);
  return [...steps(low), ...steps(high)];
}

type Spans = Readonly<Record<CarMode, { readonly from: number; readonly to: number } | Absent>>;

const largest = ({ from, to }: { readonly from: number; readonly to: number }): number => Math.max(-from, to);

function finiteLeak(spans: Spans, into: CarMode, claimed: readonly CarMode[]): Figure {
  const leaked = spans[into];
  if (isAbsent(leaked)) return leaked;
  let own = 0;
  for (const mode of claimed) {
    const span = spans[mode];
    if (isAbsent(span)) return span;
    own = Math.max(own, largest(span));
  }
  return own > 0 ? largest(leaked) / own : absent("its own mode does not move it within the travel");
}

function leakOf(element: CarElement, by: ByMode, spans: Spans): Leak | Absent | undefined {
  const claimed = MODES.filter((mode) => element.for.includes(mode));
  const others = MODES.filter((mode) => !element.for.includes(mode));
  const into = [...others].sort((a, b) => Math.abs(by[b]) - Math.abs(by[a]))[0];
  if (into === undefined) return undefined;
  const own = Math.max(0, ...claimed.map((mode) => Math.abs(by[mode])));
  if (!(own > STILL)) return absent(`it is not moved in ${claimed.join(" or ")}, which it is for`);
  return {
    mode: into,
    firstOrder: Math.abs(by[into]) / own,
    finite: finiteLeak(spans, into, claimed),
    rate: absent("rates of the whole car are not computed yet"),
  };
}

const notYet = absent("laws of elements that join the axles are not computed yet");

function figuresOf(element: CarElement, axles: CarAxles, positions: Positions): ElementFigures {
  const base = {
    path: element.path,
    kind: element.kind,
    for: element.for,
    basis: "hardpoints" as const,
    torsional: false,
    motionRatio: undefined,
    rate: notYet,
    atWheels: notYet,
    staticLoad: notYet,
  };
  const ends = element.ends;
  const none = (why: Absent): ElementFigures => ({ ...base, sensitivity: why, leak: why, travel: why, idleIn: [] });
  if (ends === undefined) return none(absent(element.missing ?? "it is not connected"));
  const joined = { path: element.path, ends, design: distance(designPoint(ends[0].end), designPoint(ends[1].end)) };
  const d = deflection(joined, positions, [0, 0, 0, 0]);
  if (isAbsent(d)) return none(d);
  const by = sensitivities(d.gradient);
  const span = (mode: CarMode) => spanOf(joined, positions, mode, amplitudesOf(axles, mode));
  const spans = { heave: span("heave"), pitch: span("pitch"), roll: span("roll"), warp: span("warp") };
  const most = Math.max(...MODES.map((mode) => Math.abs(by[mode])));
  const failing = MODES.map((mode) => spans[mode]).find(isAbsent);
  const found = MODES.flatMap((mode) => (isAbsent(spans[mode]) ? [] : [spans[mode]]));
  return {
    ...base,
    sensitivity: by,
    leak: leakOf(element, by, spans),
    travel: failing ?? {
      from: Math.min(...found.map(({ from }) => from)),
      to: Math.max(...found.map(({ to }) => to)),
    },
    idleIn: MODES.filter((mode) => element.for.includes(mode) && !(Math.abs(by[mode]) > Math.max(STILL, IDLE * most))),
  };
}

/** Figures of the elements that join the axles; their laws come with the whole car's analyses. */
export function carElementFigures(elements: readonly CarElement[], axles: CarAxles): readonly ElementFigures[] {
  if (elements.length === 0) return [];
  const positions = {
    front: axles.front && axlePositions(axles.front),
    rear: axles.rear && axlePositions(axles.rear),
  };
  return elements.map((element) => figuresOf(element, axles, positions));
}
