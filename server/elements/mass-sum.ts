/**
 * Masses put together and taken apart: Σ m, their centre, and inertias by the parallel-axis theorem. What one of them lacks
 * the sum lacks, with the reason.
 *
 * Invariant: a figure is a number, or the reason why there is none, a full clause; nothing is NaN.
 */

export type Known = number | string;

export interface Place {
  readonly behind: Known;
  readonly left: Known;
  /** At the ride height that the car is set to. */
  readonly height: Known;
}

/** One part of the sum, at design ride height. */
export interface Part extends Place {
  readonly mass: Known;
}

export const isKnown = (value: Known): value is number => typeof value === "number";

export const plus = (a: Known, b: Known): Known => (isKnown(a) ? (isKnown(b) ? a + b : b) : a);

type Coordinate = keyof Place;

/** Σ sign m c / Σ sign m, or what is missing of it; parts that weigh nothing need no place. */
function centreOf(parts: readonly Part[], taken: readonly Part[], of: Coordinate): Known {
  let sum = 0;
  let moment = 0;
  for (const [part, sign] of [...parts.map((one) => [one, 1] as const), ...taken.map((one) => [one, -1] as const)]) {
    if (!isKnown(part.mass)) return part.mass;
    if (part.mass === 0) continue;
    const at = part[of];
    if (!isKnown(at)) return at;
    sum += sign * part.mass;
    moment += sign * part.mass * at;
  }
  if (!(sum > 0)) return NOTHING_SPRUNG;
  const at = moment / sum;
  return Number.isFinite(at) ? at : "a mass lies beyond any place";
}

/** kg */
const MOST = 1e12;

const NOTHING_SPRUNG = "the unsprung masses leave nothing of the car's mass";

function massOf(parts: readonly Part[], taken: readonly Part[] = []): Known {
  let sum = 0;
  for (const { mass } of parts) {
    if (!isKnown(mass)) return mass;
    sum += mass;
  }
  for (const { mass } of taken) {
    if (!isKnown(mass)) return mass;
    sum -= mass;
  }
  if (!(sum < MOST)) return "the masses are beyond what a car weighs";
  return sum > 0 ? sum : NOTHING_SPRUNG;
}

export function together(parts: readonly Part[], taken: readonly Part[] = []): Part {
  // One part alone is its own centre, to the last digit.
  const [only, more] = parts;
  if (only !== undefined && more === undefined && taken.length === 0) return only;
  return {
    mass: massOf(parts, taken),
    behind: centreOf(parts, taken, "behind"),
    left: centreOf(parts, taken, "left"),
    height: centreOf(parts, taken, "height"),
  };
}

/** The stated inertia moved from the centre of what it was stated for to the common one, and the lines added. */
export function inertiaOf(
  stated: number | undefined,
  word: string,
  parts: readonly Part[],
  centre: Place,
  across: readonly Coordinate[],
): Known {
  if (stated === undefined) return `the car has no ${word}`;
  if (parts.length === 1) return stated;
  let sum = stated;
  for (const part of parts) {
    if (part.mass === 0) continue;
    for (const of of across) {
      const [mass, at, from] = [part.mass, part[of], centre[of]];
      if (!isKnown(mass)) return mass;
      if (!isKnown(at)) return at;
      if (!isKnown(from)) return from;
      sum += mass * (at - from) ** 2;
    }
  }
  return sum;
}
