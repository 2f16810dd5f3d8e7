/**
 * Which position has a demanded travel of the wheel centre: a start from a table, then Newton in
 * t = tan(θ/2), the bracket of the travel limits around it.
 *
 * The table holds t against travel as cubics, worked out once from solved nodes. Over the middle of
 * the range it is so near that one step with its own slope is exact to rounding; wherever it is not (next to a
 * limit, where dt/dz grows without bound) a safeguarded Newton goes on from there.
 *
 * The travel is met to a few units in the last place, except within a micrometre of a toggle of the upper wishbone or the
 * track rod: there z runs away from t, whose own last place is then worth up to 1e-9 m.
 *
 * Invariant: a solve depends on nothing but the travel; no earlier solve leaves a trace in it.
 */
import type { Constants } from "./constants.js";
import { PLACED, placeRocker, placeUpright, type Pose, slope, type Status, UPPER_BINDS } from "./position.js";
import type { TravelLimits } from "./travel-limits.js";

/** The branch that holds at design, from its lowest to its highest travel. */
export interface Branch {
  readonly constants: Constants;
  readonly limits: TravelLimits;
  readonly tLow: number;
  readonly tHigh: number;
  /** Miss of the travel that counts as none: a few units in the last place, m. */
  readonly exact: number;
  /** Miss beyond which no position was found after all, m: only in a gap of the branch that the limits have overlooked. */
  readonly near: number;
  /** Cells of equal width; four numbers each: t = c₀ + x (c₁ + x (c₂ + x c₃)), x = 0 … 1 across the cell. */
  readonly cells: number;
  readonly start: Float64Array;
  readonly lowest: number;
  readonly perMetre: number;
}

const CELLS = 32;
/** Shares of the corner's size and height. */
const EXACT = 1e-15;
const NEAR = 1e-7;
/** Newton needs two to five steps; bisection, where a step leaves the bracket, at most as many as a double has bits. */
const STEPS = 80;

/** Places at t, or where a link does not reach (rounding in a toggle) leaves the pose where it was. */
function tryAt(k: Constants, p: Pose, t: number): Status {
  const before = p.t;
  p.t = t;
  const status = placeUpright(k, p);
  if (status === PLACED) return status;
  p.t = before;
  placeUpright(k, p);
  return status;
}

/**
 * Newton from p.t, kept inside a bracket that closes. Height rises strictly with t between the limits, so a
 * step that leaves the bracket is replaced by its bisection. Expects `p` placed at p.t, between the limits.
 */
function refine(b: Branch, p: Pose, wanted: number): Status {
  const k = b.constants;
  let low = b.tLow;
  let high = b.tHigh;
  let failed: Status = UPPER_BINDS;
  for (let step = 0; step < STEPS; step++) {
    const t = p.t;
    const miss = wanted - p.wz;
    if (miss > 0) low = t;
    else high = t;
    const rise = (slope(k, p) * 2) / (1 + t * t);
    let next = t + miss / rise;
    if (!(next >= low && next <= high)) next = 0.5 * (low + high);
    const status = tryAt(k, p, next);
    if (status !== PLACED) {
      failed = status;
      if (next > t) high = next;
      else low = next;
    } else if (next === t || Math.abs(wanted - p.wz) <= b.exact) break;
  }
  return Math.abs(wanted - p.wz) <= b.near ? PLACED : failed;
}

/** Newton from a t at which the corner is known to stand. */
function refineFrom(b: Branch, p: Pose, t: number, wanted: number): Status {
  p.t = t;
  placeUpright(b.constants, p);
  return refine(b, p, wanted);
}

/** Places upright and wheel centre at `travel`, m, which has to lie between the branch's limits. */
function solveTravel(b: Branch, p: Pose, travel: number): Status {
  const k = b.constants;
  const wanted = k.wheelZ + travel;
  const place = (travel - b.lowest) * b.perMetre;
  const cell = Math.min(b.cells - 1, Math.floor(place));
  const x = place - cell;
  const c = b.start;
  const i = 4 * cell;
  const c1 = c[i + 1] ?? 0;
  const c2 = c[i + 2] ?? 0;
  const c3 = c[i + 3] ?? 0;
  const t = (c[i] ?? 0) + x * (c1 + x * (c2 + x * c3));
  p.t = t;
  if (placeUpright(k, p) !== PLACED) return refineFrom(b, p, 0, wanted);
  p.t = t + (wanted - p.wz) * (c1 + x * (2 * c2 + x * 3 * c3)) * b.perMetre;
  if (!(p.t >= b.tLow && p.t <= b.tHigh) || placeUpright(k, p) !== PLACED) return refineFrom(b, p, t, wanted);
  const miss = wanted - p.wz;
  return miss <= b.exact && miss >= -b.exact ? PLACED : refine(b, p, wanted);
}

/** Places the whole corner, rocker included, at a travel between the branch's limits. */
export function placeAt(b: Branch, p: Pose, travel: number): Status {
  const status = solveTravel(b, p, travel);
  return status === PLACED ? placeRocker(b.constants, p) : status;
}

/** t at every node and dt/dz there, each solved from the one before. */
function nodes(b: Branch, p: Pose): { t: number[]; d: number[] } {
  const t: number[] = [];
  const d: number[] = [];
  p.t = b.tLow;
  placeUpright(b.constants, p);
  for (let i = 0; i <= b.cells; i++) {
    refine(b, p, b.constants.wheelZ + b.lowest + i / b.perMetre);
    const perMetre = (1 + p.t * p.t) / (2 * slope(b.constants, p));
    t.push(p.t);
    d.push(perMetre);
    tryAt(b.constants, p, Math.min(b.tHigh, p.t + perMetre / b.perMetre));
  }
  return { t, d };
}

/** The branch of a corner with its start table. */
export function branchOf(constants: Constants, limits: TravelLimits, size: number, p: Pose): Branch {
  const lowest = limits.low.travel;
  const perMetre = CELLS / (limits.high.travel - lowest);
  const [tLow, tHigh] = [limits.low.t, limits.high.t];
  const start = new Float64Array(4 * CELLS);
  const scale = size + Math.abs(constants.wheelZ);
  const [exact, near] = [EXACT * scale, NEAR * scale];
  const b = { constants, limits, tLow, tHigh, exact, near, cells: CELLS, start, lowest, perMetre };
  const { t, d } = nodes(b, p);
  for (let i = 0; i < CELLS; i++) {
    const [from = 0, to = 0] = [t[i], t[i + 1]];
    const rise = to - from;
    // Kept below three times the secant, a cubic between rising nodes rises and stays between them.
    const most = 3 * rise;
    const d0 = Math.min((d[i] ?? 0) / perMetre, most);
    const d1 = Math.min((d[i + 1] ?? 0) / perMetre, most);
    start.set([from, d0, 3 * rise - 2 * d0 - d1, d0 + d1 - 2 * rise], 4 * i);
  }
  return b;
}
