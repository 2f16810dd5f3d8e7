/**
 * Which position has a demanded travel of the wheel centre: a start from a table, then Newton in
 * t = tan(θ/2), the bracket of the travel limits around it.
 *
 * The table holds t against travel as cubics, worked out once from solved nodes. Over the middle of
 * the range it is so near that one step with its own slope is exact to rounding; wherever it is not (next to a
 * limit, where dt/dz grows without bound) a safeguarded Newton goes on from there.
 *
 * Invariant: a solve depends on nothing but the travel; no earlier solve leaves a trace in it.
 */
import type { Constants } from "./constants.js";
import { PLACED, placeRocker, placeUpright, type Pose, slope, type Status } from "./position.js";
import type { TravelLimits } from "./travel-limits.js";

/** The branch that holds at design, from its lowest to its highest travel. */
export interface Branch {
  readonly constants: Constants;
  readonly limits: TravelLimits;
  readonly tLow: number;
  readonly tHigh: number;
  /** Miss of the travel that counts as none: a few units in the last place, m. */
  readonly exact: number;
  /** Miss below which a step that does not make it smaller has met rounding, m. */
  readonly close: number;
  /** Cells of equal width; four numbers each: t = c₀ + x (c₁ + x (c₂ + x c₃)), x = 0 … 1 across the cell. */
  readonly cells: number;
  readonly start: Float64Array;
  readonly lowest: number;
  readonly perMetre: number;
}

const CELLS = 32;
/** Shares of the corner's size. */
const EXACT = 1e-15;
const CLOSE = 1e-10;
/** Newton needs two to five steps; bisection, where a step leaves the bracket, at most as many as a double has bits. */
const STEPS = 80;

/** Puts a pose that rounding has carried over a limit back onto it. */
function ontoBranch(b: Branch, p: Pose): Status {
  if (p.t >= b.tLow && p.t <= b.tHigh) return PLACED;
  p.t = p.t < b.tLow ? b.tLow : b.tHigh;
  return placeUpright(b.constants, p);
}

/**
 * Newton from p.t, kept inside a bracket that closes. Height rises strictly with t between the limits, so a
 * step that leaves the bracket is replaced by its bisection. Expects `p` placed at p.t, between the limits.
 */
function refine(b: Branch, p: Pose, wanted: number): Status {
  const k = b.constants;
  let low = b.tLow;
  let high = b.tHigh;
  for (let step = 0; step < STEPS; step++) {
    const t = p.t;
    const miss = wanted - p.wz;
    if (miss > 0) low = t;
    else high = t;
    const rise = (slope(k, p) * 2) / (1 + t * t);
    let next = t + miss / rise;
    if (!(next >= low && next <= high)) next = 0.5 * (low + high);
    p.t = next;
    const status = placeUpright(k, p);
    const left = Math.abs(wanted - p.wz);
    const isRounding = left < b.close && left >= Math.abs(miss);
    if (status !== PLACED || next === t || left <= b.exact || isRounding) return status;
  }
  return PLACED;
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
  const first = placeUpright(k, p);
  if (first !== PLACED) return first;
  const perMetre = (c1 + x * (2 * c2 + x * 3 * c3)) * b.perMetre;
  p.t = t + (wanted - p.wz) * perMetre;
  if (placeUpright(k, p) === PLACED) {
    const onto = ontoBranch(b, p);
    const miss = wanted - p.wz;
    return onto !== PLACED || (miss <= b.exact && miss >= -b.exact) ? onto : refine(b, p, wanted);
  }
  // Stepped over a limit, next to which the table's slope is poor.
  p.t = t;
  placeUpright(k, p);
  return refine(b, p, wanted);
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
    p.t = Math.min(b.tHigh, p.t + perMetre / b.perMetre);
    if (placeUpright(b.constants, p) === PLACED) continue;
    p.t = b.tHigh;
    placeUpright(b.constants, p);
  }
  return { t, d };
}

/** The branch of a corner with its start table. */
export function branchOf(constants: Constants, limits: TravelLimits, size: number, p: Pose): Branch {
  const lowest = limits.low.travel;
  const perMetre = CELLS / (limits.high.travel - lowest);
  const [tLow, tHigh] = [limits.low.t, limits.high.t];
  const start = new Float64Array(4 * CELLS);
  const exact = EXACT * (size + Math.abs(constants.wheelZ));
  const b = { constants, limits, tLow, tHigh, exact, close: CLOSE * size, cells: CELLS, start, lowest, perMetre };
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
