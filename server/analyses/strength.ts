/**
 * What an element of an axle bears over the travel: stresses, what is left to a coil's solid length and of a damper's
 * stroke, and where a spring would lose its seat; and where its law goes over into another stage.
 *
 * Over the travel means: both wheels together over the whole envelope, and opposed as far as it allows. Loads are
 * static, without the damper's forces.
 */
import type { Element, SpringLaw } from "../elements/element.js";
import type { CoilLengths, Strength, StressedPart, Stroke } from "../elements/strength.js";
import { firstWhere, type Happens, type Path, stepOf } from "./along.js";
import type { Absent, CoilFigures, LawEvent, StrengthFigures, StressFigures, StrokeFigures, Where } from "./results.js";
import { deflectionAt, type Span } from "./sampled.js";
import type { State } from "./states.js";

export interface StrengthContext {
  readonly element: Element;
  /** Deflection at rest, from design. */
  readonly rest: number;
  /** Deflections over the envelope, from design. */
  readonly travel: Span;
  /** What its trim adds to its deflection, or why that is not known. */
  readonly seat: number | Absent;
  readonly paths: readonly Path[];
}

/** A load whose sign turns by less than this share of its largest is one that works one way. */
const ONE_WAY = 0.1;

interface Loads {
  readonly atRest: number;
  readonly least: number;
  readonly most: number;
  at(state: State): number | undefined;
}

/** Forces of springs never fall with deflection, so that their extremes are those of the travel. */
function loadsOf({ element, rest, travel, paths }: StrengthContext, law: SpringLaw, seat: number): Loads {
  const ends = [travel.from, travel.to].map((s) => law.force(s + seat));
  return {
    atRest: law.force(rest + seat),
    least: Math.min(...ends),
    most: Math.max(...ends),
    at(state) {
      const s = deflectionAt(element, state);
      return paths.length > 0 && typeof s === "number" ? law.force(s + seat) : undefined;
    },
  };
}

function stressOf(part: StressedPart, loads: Loads, paths: readonly Path[]): StressFigures {
  const { name, kind, perLoad, allowable } = part;
  const largest = Math.max(Math.abs(loads.least), Math.abs(loads.most));
  const against = Math.min(Math.max(0, loads.most), Math.max(0, -loads.least));
  const usual = against > ONE_WAY * largest ? allowable.bothWays : allowable.oneWay;
  const limit = allowable.stated ?? usual;
  const passes: Happens = (state) => {
    const load = loads.at(state);
    return load === undefined ? undefined : Math.abs(load) * perLoad - limit;
  };
  const most = largest * perLoad;
  return {
    part: name,
    kind,
    atRest: Math.abs(loads.atRest) * perLoad,
    most,
    allowable: limit,
    stated: allowable.stated !== undefined,
    source: allowable.source,
    passed: most > limit ? firstWhere(paths, passes) : undefined,
  };
}

/** A coil is never longer than without load: beyond that it is loose. */
function coilOf({ rate, free, solid }: CoilLengths, loads: Loads, paths: readonly Path[]): CoilFigures {
  const length = (load: number): number => free - Math.max(0, load) / rate;
  const margin = length(loads.most) - solid;
  const closes: Happens = (state) => {
    const load = loads.at(state);
    return load === undefined ? undefined : solid - length(load);
  };
  return {
    atRest: length(loads.atRest),
    solid,
    margin,
    binds: margin < 0 ? firstWhere(paths, closes) : undefined,
  };
}

function strokeOf({ element, rest, travel, paths }: StrengthContext, { from, to }: Stroke): StrokeFigures {
  const passes = (beyond: (s: number) => number): Where | undefined =>
    firstWhere(paths, (state) => {
      const s = deflectionAt(element, state);
      return typeof s === "number" ? beyond(s) : undefined;
    });
  const [bump, rebound] = [to - travel.to, travel.from - from];
  return {
    bump: { atRest: to - rest, least: bump, passed: bump < 0 ? passes((s) => s - to) : undefined },
    rebound: { atRest: rest - from, least: rebound, passed: rebound < 0 ? passes((s) => from - s) : undefined },
  };
}

/** A spring that hardly carries anything at rest is one that works both ways, and is held so. */
function unseated({ pullsUnsaid }: Strength, loads: Loads, paths: readonly Path[]): Where | undefined {
  const largest = Math.max(Math.abs(loads.least), Math.abs(loads.most));
  if (!pullsUnsaid || !(loads.atRest > ONE_WAY * largest) || !(loads.least < 0)) return undefined;
  return firstWhere(paths, (state) => {
    const load = loads.at(state);
    return load === undefined ? undefined : -load;
  });
}

/** @returns undefined where nothing of it is known; absent where its load is needed and not to be had */
export function strengthFigures(context: StrengthContext): StrengthFigures | Absent | undefined {
  const { element, seat, paths } = context;
  const { strength, law } = element;
  if (strength === undefined) return undefined;
  const { parts, coil, stroke, pullsUnsaid } = strength;
  const moved = stroke && strokeOf(context, stroke);
  const loaded = parts.length > 0 || coil !== undefined || pullsUnsaid;
  if (law?.kind !== "spring" || !loaded) {
    return moved && { stresses: [], coil: undefined, stroke: moved, unseated: undefined };
  }
  if (typeof seat !== "number") return seat;
  const loads = loadsOf(context, law, seat);
  return {
    stresses: parts.map((part) => stressOf(part, loads, paths)),
    coil: coil && coilOf(coil, loads, paths),
    stroke: moved,
    unseated: unseated(strength, loads, paths),
  };
}

/** Where in the element's own modes its deflection gets to `at`; upwards in heave first. */
function reached({ element, rest, paths }: StrengthContext, at: number): Where | undefined {
  const own = paths.filter(({ mode }) => (mode === "roll" ? element.for.includes("roll") : !isForRollOnly(element)));
  const way = Math.sign(at - rest);
  if (way === 0) return { mode: "rest", travel: own[0]?.mode === "heave" ? own[0].where(0).travel : 0 };
  for (const path of own) {
    const step = stepOf(path, (state) => {
      const s = deflectionAt(element, state);
      return typeof s === "number" ? way * (s - at) : undefined;
    });
    if (step !== undefined) return path.where(step);
  }
  return undefined;
}

const isForRollOnly = (element: Element): boolean => element.for.every((mode) => mode === "roll");

/** @returns undefined where its law is one and the same everywhere; absent where its trim is not known */
export function lawEvents(context: StrengthContext): readonly LawEvent[] | Absent | undefined {
  const { element, seat } = context;
  const marks = element.law?.kind === "spring" ? (element.law.marks ?? []) : [];
  const told = marks.flatMap(({ at, what }) => (what === "table-end" ? [] : [{ at, what }]));
  if (told.length === 0) return undefined;
  if (typeof seat !== "number") return seat;
  return told.map(({ at, what }) => ({ what, at: at - seat, where: reached(context, at - seat) }));
}
