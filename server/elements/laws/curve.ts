/**
 * A force that follows a deflection, before gaps, preload and direction are put on it: the
 * part that the force laws are composed of.
 *
 * Units: m and N for telescopic elements, rad and N·m for torsional ones; compression (or twist
 * as the left wheel's bump makes it) positive, a positive force resists it.
 *
 * Invariant: force never falls with deflection, is continuous, and is the derivative of energy;
 * rate is the derivative of force (at a kink: towards more compression).
 */

/** Where a law goes over into another: for drawing it, and for saying when a stage or a stop comes into play. */
export interface Mark {
  readonly at: number;
  /** `free`: it begins to carry; `stage`: a stage is used up; `table-end`: extrapolated from there on. */
  readonly what: "free" | "stage" | "table-end";
}

export interface Curve {
  force(x: number): number;
  rate(x: number): number;
  /** ∫F dx from 0, J. */
  energy(x: number): number;
  /** The rate, where it is the same everywhere. */
  readonly constantRate: number | undefined;
  /** Measured range of a table; outside of it the curve is extrapolated. */
  readonly range: { readonly from: number; readonly to: number } | undefined;
  /** Rising; none where the curve is one and the same everywhere. */
  readonly marks?: readonly Mark[] | undefined;
}

/** Both ways from where it is free: `squat` in compression, `rise` in extension, each through the origin and rising. */
export function twoWay(squat: Curve, rise: Curve): Curve {
  const same = squat.constantRate === rise.constantRate ? squat.constantRate : undefined;
  return {
    force: (x) => (x >= 0 ? squat.force(x) : -rise.force(-x)),
    rate: (x) => (x >= 0 ? squat.rate(x) : rise.rate(-x)),
    energy: (x) => (x >= 0 ? squat.energy(x) : rise.energy(-x)),
    constantRate: same,
    range:
      squat.range === undefined && rise.range === undefined
        ? undefined
        : { from: -(rise.range?.to ?? Infinity), to: squat.range?.to ?? Infinity },
    marks: [...turnedMarks(positive(rise)), ...positive(squat)],
  };
}

const positive = ({ marks = [] }: Curve): readonly Mark[] => marks.filter(({ at }) => at > 0);

const turnedMarks = (marks: readonly Mark[]): readonly Mark[] =>
  marks.map((mark) => ({ ...mark, at: -mark.at })).reverse();

/** The same curve pulled instead of pushed: F(x) = −F₀(−x). */
export function reversed(curve: Curve): Curve {
  return {
    force: (x) => -curve.force(-x),
    rate: (x) => curve.rate(-x),
    energy: (x) => curve.energy(-x),
    constantRate: curve.constantRate,
    range: curve.range === undefined ? undefined : { from: -curve.range.to, to: -curve.range.from },
    marks: curve.marks && turnedMarks(curve.marks),
  };
}

/** The curve read from another starting point: F(x) = F₀(x + offset), its energy still from its free position. */
export function shifted(curve: Curve, offset: number): Curve {
  if (offset === 0) return curve;
  return {
    force: (x) => curve.force(x + offset),
    rate: (x) => curve.rate(x + offset),
    energy: (x) => curve.energy(x + offset),
    constantRate: curve.constantRate,
    range: curve.range === undefined ? undefined : { from: curve.range.from - offset, to: curve.range.to - offset },
    marks: curve.marks?.map((mark) => ({ ...mark, at: mark.at - offset })),
  };
}
