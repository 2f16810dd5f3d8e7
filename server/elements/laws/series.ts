/**
 * A spring with a softer stage in series that is used up at a stated travel: dual rate.
 *
 * Invariant: both carry the same force; beyond the stage's travel only the main curve moves.
 */
import type { Curve, Mark } from "./curve.js";
import { deflectionAt } from "./inverse.js";

export interface Stage {
  /** N/m or N·m/rad. */
  readonly rate: number;
  /** Deflection of the stage at which it is used up, either way, m or rad; Infinity where it never is. */
  readonly travel: number;
}

const STEPS = 60;

interface Split {
  /** Deflection of the main curve. */
  readonly x: number;
  /** Deflection of the stage. */
  readonly y: number;
  readonly usedUp: boolean;
}

/** The root of x + F(x)/k = s: both curves pass the origin and rise, so that it lies between 0 and s. */
function sharedDeflection(main: Curve, k: number, s: number): number {
  if (main.constantRate !== undefined) return (s * k) / (k + main.constantRate);
  let low = Math.min(0, s);
  let high = Math.max(0, s);
  let x = s / 2;
  for (let i = 0; i < STEPS; i++) {
    const off = x + main.force(x) / k - s;
    if (Math.abs(off) <= Number.EPSILON * Math.abs(s)) break;
    if (off < 0) low = x;
    else high = x;
    const step = x - off / (1 + main.rate(x) / k);
    x = step > low && step < high ? step : (low + high) / 2;
  }
  return x;
}

function splitOf(main: Curve, stage: Stage, s: number): Split {
  const y = Math.sign(s) * stage.travel;
  if (Math.abs(s) > stage.travel && Math.abs(main.force(s - y)) >= stage.rate * stage.travel) {
    return { x: s - y, y, usedUp: true };
  }
  const x = sharedDeflection(main, stage.rate, s);
  return { x, y: s - x, usedUp: false };
}

/** Where the stage is used up, either way; the main curve's own marks move on by what the stage has taken by then. */
function marksOf(main: Curve, { rate, travel }: Stage): readonly Mark[] | undefined {
  if (travel === Infinity) return main.marks;
  const knees = [-1, 1].flatMap((way): Mark[] => {
    const x = deflectionAt(main, way * rate * travel);
    return x === undefined ? [] : [{ at: x + way * travel, what: "stage" }];
  });
  const moved = (main.marks ?? []).map((mark): Mark => {
    const y = main.force(mark.at) / rate;
    return { ...mark, at: mark.at + Math.min(travel, Math.max(-travel, y)) };
  });
  return [...knees, ...moved].sort((a, b) => a.at - b.at);
}

/**
 * The main curve (through the origin) in series with a linear stage.
 *
 * Until the stage is used up: 1/k = 1/k_main + 1/k_stage; after that the main curve alone.
 * At the kink itself the rate is that of the main curve.
 */
export function inSeries(main: Curve, stage: Stage): Curve {
  return {
    force: (s) => main.force(splitOf(main, stage, s).x),
    rate: (s) => {
      const { x, usedUp } = splitOf(main, stage, s);
      const k = main.rate(x);
      return usedUp ? k : (k * stage.rate) / (k + stage.rate);
    },
    energy: (s) => {
      const { x, y } = splitOf(main, stage, s);
      return main.energy(x) + 0.5 * stage.rate * y * y;
    },
    constantRate:
      main.constantRate !== undefined && stage.travel === Infinity
        ? (main.constantRate * stage.rate) / (main.constantRate + stage.rate)
        : undefined,
    range: undefined,
    marks: marksOf(main, stage),
  };
}

/** Two equal springs end to end, each deflected by half: two bars that are tied to each other. */
export function twoInSeries(each: Curve): Curve {
  return {
    force: (s) => each.force(s / 2),
    rate: (s) => each.rate(s / 2) / 2,
    energy: (s) => 2 * each.energy(s / 2),
    constantRate: each.constantRate === undefined ? undefined : each.constantRate / 2,
    range: each.range === undefined ? undefined : { from: 2 * each.range.from, to: 2 * each.range.to },
    marks: each.marks?.map((mark) => ({ ...mark, at: 2 * mark.at })),
  };
}
