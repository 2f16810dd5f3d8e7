/**
 * Figures of the elements that join the axles: how they follow the four modes of wheel travel, their leak into modes
 * that they are not for, what they give at the wheels and carry at static trim.
 *
 * Finite leaks are looked at over the part of both envelopes that all four wheels have in common.
 */
import type { CarDeflection, Wheels } from "../elements/car-connection.js";
import type { CarElement } from "../elements/mechanism.js";
import { CAR_MODES, type CarMode, PATTERNS } from "../elements/patterns.js";
import { absent, isAbsent } from "./absent.js";
import { type CarAxles, type CarPositions, travelsIn } from "./car-positions.js";
import type { BodyMotions } from "./car-motions.js";
import { type CarParts, deflectionOf, ownerOf } from "./car-parts.js";
import type { CarSums } from "./car-sums.js";
import { HELD, staticForce, staticRate } from "./carrying.js";
import { fluidFigures } from "./fluid-figures.js";
import type { Absent, ByMode, ElementFigures, Figure, FluidFigures, Leak } from "./results.js";
import { along as formAlong, type WheelMatrix } from "./wheel-matrix.js";

/** What the figures of one element are worked out from. */
export interface CarContext {
  readonly elements: readonly CarElement[];
  readonly axles: CarAxles;
  readonly positions: CarPositions;
  readonly parts: CarParts;
  readonly sums: CarSums;
  readonly body: BodyMotions;
}

const IDLE = 0.02;
/** Below this share of a cylinder's area, or of m/m, nothing moves it: rounding. */
const STILL = 1e-9;
/** Parts that cancel to less than this share of them are nothing. */
const ROUNDING = 1e-14;

interface Span {
  readonly from: number;
  readonly to: number;
}
type Spans = Readonly<Record<CarMode, Span | Absent>>;

function along(gradient: Wheels, mode: CarMode): number {
  const parts = gradient.map((slope, wheel) => (PATTERNS[mode][wheel] ?? 0) * slope);
  const sum = parts.reduce((total, part) => total + part, 0);
  const size = parts.reduce((total, part) => total + Math.abs(part), 0);
  return Math.abs(sum) <= ROUNDING * size ? 0 : sum;
}

const sensitivities = ({ d }: CarDeflection): ByMode => ({
  heave: along(d, "heave"),
  roll: along(d, "roll"),
  pitch: along(d, "pitch"),
  warp: along(d, "warp"),
});

/** Smallest and largest deflection of a mode over its amplitudes, design included. */
function spanOf(element: CarElement, mode: CarMode, { axles, positions }: CarContext): Span | Absent {
  let from = 0;
  let to = 0;
  for (const travels of travelsIn(axles, mode)) {
    const d = deflectionOf(element, positions, travels);
    if (isAbsent(d)) return d;
    from = Math.min(from, d.s);
    to = Math.max(to, d.s);
  }
  return { from, to };
}

const spansOf = (element: CarElement, context: CarContext): Spans => ({
  heave: spanOf(element, "heave", context),
  pitch: spanOf(element, "pitch", context),
  roll: spanOf(element, "roll", context),
  warp: spanOf(element, "warp", context),
});

const largest = ({ from, to }: Span): number => Math.max(-from, to);

function whole(spans: Spans): Span | Absent {
  let from = 0;
  let to = 0;
  for (const mode of CAR_MODES) {
    const span = spans[mode];
    if (isAbsent(span)) return span;
    from = Math.min(from, span.from);
    to = Math.max(to, span.to);
  }
  return { from, to };
}

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

const damps = ({ law }: CarElement): boolean => law?.kind === "damper";

/** Its own matrix of what it mainly gives: damping of a damper, else stiffness. */
const ownMatrix = (element: CarElement, { parts }: CarContext): WheelMatrix | undefined =>
  (damps(element) ? parts.damping : parts.stiffness).get(element);

function rateLeak(element: CarElement, into: CarMode, context: CarContext): Figure {
  const own = ownMatrix(element, context);
  if (own === undefined) return absent(noRate(element));
  const sum = damps(element) ? context.sums.damping : context.sums.stiffness;
  if (isAbsent(sum)) return sum;
  const part = formAlong(own, PATTERNS[into], PATTERNS[into]);
  const all = formAlong(sum, PATTERNS[into], PATTERNS[into]);
  if (part === 0) return 0;
  return all === 0 ? absent("there is no rate in that mode to be a share of") : part / all;
}

function noRate({ law, lawMissing }: CarElement): string {
  if (law?.kind === "hold") return HELD;
  return lawMissing ?? "it has neither rate nor damping";
}

/** The modes that it can be judged in: a ratio knows only those that it states. */
const statedIn = ({ connection }: CarElement): readonly CarMode[] =>
  CAR_MODES.filter((mode) => connection?.statedFor === undefined || connection.statedFor.includes(mode));

function leakOf(element: CarElement, by: ByMode, spans: Spans, context: CarContext): Leak | Absent | undefined {
  const claimed = CAR_MODES.filter((mode) => element.for.includes(mode));
  const others = CAR_MODES.filter((mode) => !element.for.includes(mode));
  if (others.length === 0) return undefined;
  const stated = statedIn(element);
  const known = others.filter((mode) => stated.includes(mode));
  const into = [...known].sort((a, b) => Math.abs(by[b]) - Math.abs(by[a]))[0];
  if (into === undefined) return absent(`its ratio is for ${stated.join(" and ")} and says nothing of other modes`);
  const own = Math.max(0, ...claimed.map((mode) => Math.abs(by[mode])));
  if (!(own > threshold(element, by))) return absent(`it is not moved in ${claimed.join(" or ")}, which it is for`);
  return {
    mode: into,
    firstOrder: Math.abs(by[into]) / own,
    finite: finiteLeak(spans, into, claimed),
    rate: rateLeak(element, into, context),
  };
}

/** What rounding leaves: volumes are as small as their cylinders' areas. */
function threshold({ connection }: CarElement, by: ByMode): number {
  const most = Math.max(...CAR_MODES.map((mode) => Math.abs(by[mode])));
  return connection?.measure === "volume" ? STILL * most : STILL;
}

function idleIn(element: CarElement, by: ByMode): readonly CarMode[] {
  const most = Math.max(...CAR_MODES.map((mode) => Math.abs(by[mode])));
  const least = Math.max(threshold(element, by), IDLE * most);
  return CAR_MODES.filter((mode) => element.for.includes(mode) && !(Math.abs(by[mode]) > least));
}

/** In its first claimed mode: N/m in heave and warp (a pattern of travel), N·m/rad of the body in pitch and roll. */
function atWheels(element: CarElement, context: CarContext): Figure {
  const own = ownMatrix(element, context);
  if (own === undefined) return absent(noRate(element));
  const [mode] = CAR_MODES.filter((one) => element.for[0] === one);
  if (mode === undefined) return absent("it is for no mode of the car");
  const motion = mode === "pitch" || mode === "roll" ? context.body[mode] : PATTERNS[mode];
  return "kind" in motion ? motion : formAlong(own, motion, motion);
}

function rateOf(element: CarElement, s: number): Figure {
  const { law } = element;
  if (law === undefined || law.kind === "hold") return absent(noRate(element));
  if (law.kind === "inerter") return absent("an inerter has neither rate nor damping");
  return law.kind === "damper" ? law.lowSpeed : staticRate(element, s);
}

function loadOf(element: CarElement, s: number): Figure {
  const { law } = element;
  return law === undefined || law.kind === "hold" ? absent(noRate(element)) : staticForce(element, s);
}

/** Pressures of an element and of its further volumes. */
function fluidOf(element: CarElement, context: CarContext): FluidFigures | undefined {
  const bodies = context.elements.flatMap((part) => {
    const { law } = part;
    if (ownerOf(part, context.elements) !== element || law?.kind !== "spring" || law.fluid === undefined) return [];
    const d = context.parts.rest.get(part);
    const atRest = d === undefined || isAbsent(d) ? (d ?? absent("it is not connected")) : d.s;
    return [{ fluid: law.fluid, atRest, travel: whole(spansOf(part, context)) }];
  });
  return fluidFigures(bodies);
}

function figuresOf(element: CarElement, context: CarContext): ElementFigures {
  const { connection } = element;
  const base = {
    path: element.path,
    kind: element.kind,
    for: element.for,
    basis: connection?.basis ?? ("hardpoints" as const),
    torsional: connection?.torsional ?? false,
    measure: connection?.measure,
    motionRatio: undefined,
  };
  const d = context.parts.rest.get(element) ?? absent("it is not connected");
  if (isAbsent(d)) {
    const none = { sensitivity: d, leak: d, atWheels: d, staticLoad: d, deflection: d, travel: d };
    return { ...base, ...none, rate: element.law?.kind === "damper" ? element.law.lowSpeed : d, idleIn: [] };
  }
  const by = sensitivities(d);
  const spans = spansOf(element, context);
  return {
    ...base,
    fluid: fluidOf(element, context),
    sensitivity: by,
    leak: leakOf(element, by, spans, context),
    rate: rateOf(element, d.s),
    atWheels: atWheels(element, context),
    staticLoad: loadOf(element, d.s),
    deflection: d.s,
    travel: whole(spans),
    idleIn: idleIn(element, by),
  };
}

/** Figures of every element at car level; what stands beside one is told with it. */
export const carElementFigures = (context: CarContext): readonly ElementFigures[] =>
  context.elements.filter(({ part }) => part === undefined).map((element) => figuresOf(element, context));
