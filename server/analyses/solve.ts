/**
 * Which values of a few unknowns bring a few figures into the bands that are wanted of them.
 *
 * In: the figures as a function of the unknowns, each with its bounds, and the bands. Out: the values that meet all of
 * them, else those that come nearest with what held them there.
 *
 * One unknown for one figure is bracketed outwards from where it stands and closed in on; several are Newton's, damped, with
 * slopes by differences. Aimed at is the middle of a band, or just inside its one limit; where that cannot be had, anywhere in it.
 *
 * Invariant: every value that is handed out was evaluated; no throw, no loop without an end, never outside the bounds.
 */
import { dampedNewton } from "../maths/damped-newton.js";
import { rootBetween } from "../maths/root-between.js";

export interface Unknown {
  readonly start: number;
  readonly low: number;
  readonly high: number;
  /** A change of it that can be felt: the search begins with it. */
  readonly size: number;
}

/** Infinite on the side where nothing is wanted. */
export interface Band {
  readonly low: number;
  readonly high: number;
}

export interface SolveQuestion {
  readonly unknowns: readonly Unknown[];
  readonly bands: readonly Band[];
  /** One figure a band; undefined where there is no such car. */
  evaluate(x: readonly number[]): readonly number[] | undefined;
}

export interface Solution {
  readonly isMet: boolean;
  readonly x: readonly number[];
  readonly values: readonly number[];
}

/** How far inside a limit is aimed at, relative: more than rounding to twelve digits takes away. */
const INSIDE = 1e-7;
/** Aimed at this closely, relative. */
const CLOSE = 1e-10;

/** What counts as 1 of a figure: the size of its limits. */
export function scaleOf({ low, high }: Band): number {
  const limits = [low, high].filter(Number.isFinite).map(Math.abs);
  return Math.max(...limits, 0) || 1;
}

/** By how much a figure misses its band, relative to it; 0 inside, with the limits. */
export const missOf = (value: number, band: Band): number =>
  Math.max(band.low - value, value - band.high, 0) / scaleOf(band);

const aimOf = (band: Band): number => {
  const { low, high } = band;
  if (Number.isFinite(low) && Number.isFinite(high)) return (low + high) / 2;
  return Number.isFinite(low) ? low + INSIDE * scaleOf(band) : high - INSIDE * scaleOf(band);
};

/** How far a figure is from what is aimed at, relative. */
export const offOf = (value: number, band: Band): number => Math.abs(value - aimOf(band)) / scaleOf(band);

/** From the band, or from just inside it: nought where nothing is left to do. */
function leftOver(value: number, band: Band): number {
  const by = Math.min(INSIDE * scaleOf(band), (band.high - band.low) / 4);
  return Math.min(value - (band.low + by), 0) + Math.max(value - (band.high - by), 0);
}

/** Keeps what was evaluated and the best of it. */
class Search {
  readonly #question: SolveQuestion;
  #best: Solution | undefined;

  constructor(question: SolveQuestion) {
    this.#question = question;
  }

  at(x: readonly number[]): readonly number[] | undefined {
    const { unknowns, bands } = this.#question;
    if (x.some((value, i) => value < (unknowns[i]?.low ?? value) || value > (unknowns[i]?.high ?? value)))
      return undefined;
    const values = this.#question.evaluate(x);
    if (values?.every(Number.isFinite) !== true) return undefined;
    const found = { isMet: bands.every((band, i) => missOf(values[i] ?? Infinity, band) === 0), x, values };
    if (this.#best === undefined || this.#worth(found) < this.#worth(this.#best)) this.#best = found;
    return values;
  }

  /** Misses first; inside the bands the distance to what is aimed at. */
  #worth({ values, isMet }: Solution): number {
    const { bands } = this.#question;
    const worst = (of: (value: number, band: Band) => number): number =>
      Math.max(...bands.map((band, i) => of(values[i] ?? Infinity, band)));
    if (!isMet) return 1 + worst(missOf);
    const off = worst(offOf);
    return off / (1 + off);
  }

  get best(): Solution | undefined {
    return this.#best;
  }
}

/** Undefined where no figure can be had at all. */
export function solve(question: SolveQuestion): Solution | undefined {
  const search = new Search(question);
  const [unknown, another] = question.unknowns;
  const [band, more] = question.bands;
  if (unknown === undefined || band === undefined) return undefined;
  if (another === undefined && more === undefined) closeInOn(unknown, aimOf(band), scaleOf(band), search);
  else {
    byNewton(question, search, (value, wanted) => value - aimOf(wanted));
    if (search.best?.isMet !== true) byNewton(question, search, leftOver);
  }
  return search.best;
}

const MOST_STEPS = 40;

/** Outwards on both sides in turn, each step twice the last, until the figure passes what is aimed at. */
function closeInOn(unknown: Unknown, aim: number, scale: number, search: Search): void {
  const off = (x: number): number | undefined => {
    const value = search.at([x])?.[0];
    return value === undefined ? undefined : Math.abs(value - aim) <= CLOSE * scale ? 0 : value - aim;
  };
  const start = off(unknown.start);
  if (start === 0) return;
  const ways = [1, -1].map((way) => ({ way, last: unknown.start, value: start, step: unknown.size, isOpen: true }));
  for (let i = 0; i < MOST_STEPS && ways.some(({ isOpen }) => isOpen); i++) {
    for (const side of ways) {
      if (!side.isOpen) continue;
      const x = Math.min(unknown.high, Math.max(unknown.low, side.last + side.way * side.step));
      const value = x === side.last ? undefined : off(x);
      if (value !== undefined && side.value !== undefined && value * side.value <= 0) {
        return void rootBetween(withSlope(off), side.last, x);
      }
      side.isOpen = x !== side.last && (value !== undefined || side.value === undefined);
      Object.assign(side, { last: x, value, step: side.step * 2 });
    }
  }
  turningPoint(unknown, (x) => off(x), search);
}

/** The slope that a step of Newton's wants, from the last two places. */
function withSlope(off: (x: number) => number | undefined) {
  let last: { readonly x: number; readonly value: number } | undefined;
  return (x: number): { readonly value: number; readonly slope: number } | undefined => {
    const value = off(x);
    if (value === undefined) return undefined;
    const slope = last === undefined || last.x === x ? 0 : (value - last.value) / (x - last.x);
    last = { x, value };
    return { value, slope: slope === 0 || !Number.isFinite(slope) ? Number.MIN_VALUE : slope };
  };
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Nothing is passed: as near as it comes, about the best place found. */
function turningPoint(unknown: Unknown, off: (x: number) => number | undefined, search: Search): void {
  const best = search.best?.x[0];
  if (best === undefined) return;
  const reach = Math.max(unknown.size, Math.abs(best - unknown.start));
  let low = Math.max(unknown.low, best - reach);
  let high = Math.min(unknown.high, best + reach);
  const size = (x: number): number => Math.abs(off(x) ?? Infinity);
  for (let i = 0; i < MOST_STEPS && high - low > 1e-9 * Math.abs(best) + Number.MIN_VALUE; i++) {
    const [a, b] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
    if (size(a) <= size(b)) high = b;
    else low = a;
  }
}

/** Unknowns are counted in their sizes, figures in those of their bands. */
function byNewton(question: SolveQuestion, search: Search, off: (value: number, band: Band) => number): void {
  const { unknowns, bands } = question;
  const placeOf = (u: readonly number[]): number[] => unknowns.map(({ start, size }, i) => start + size * (u[i] ?? 0));
  const residual = (u: readonly number[]): number[] | undefined => {
    const values = search.at(placeOf(u));
    return values && bands.map((band, i) => off(values[i] ?? Infinity, band) / scaleOf(band));
  };
  dampedNewton({
    start: unknowns.map(() => 0),
    scale: bands.map(() => 1),
    tolerance: CLOSE,
    iterations: 30,
    evaluate(u) {
      const at = residual(u);
      const columns = at && unknowns.map((_, j) => column(residual, u, j, at));
      if (at === undefined || columns?.every((one) => one !== undefined) !== true) return undefined;
      return { residual: at, jacobian: at.map((_, i) => columns.map((one) => one[i] ?? 0)) };
    },
  });
}

/** Of a size of an unknown, for its difference: enough above the noise of the figures. */
const DIFFERENCE = 1e-3;

/** ∂residual/∂u_j, by central differences where both sides can be had. */
function column(
  residual: (u: readonly number[]) => readonly number[] | undefined,
  u: readonly number[],
  j: number,
  at: readonly number[],
): readonly number[] | undefined {
  const moved = (by: number) => residual(u.map((value, i) => (i === j ? value + by : value)));
  const [above, below] = [moved(DIFFERENCE), moved(-DIFFERENCE)];
  if (above === undefined && below === undefined) return undefined;
  const width = (above === undefined ? 0 : DIFFERENCE) + (below === undefined ? 0 : DIFFERENCE);
  return at.map((value, i) => ((above?.[i] ?? value) - (below?.[i] ?? value)) / width);
}
