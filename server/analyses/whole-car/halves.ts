/**
 * A mirrored car falls apart into two smaller ones that do not feel each other: heave and pitch with both wheels of
 * an axle alike, roll with them opposed.
 *
 * q = P x with x = [z, θ, z_F, z_R] (z_FL = z_FR = z_F) and x = [φ, a_F, a_R] (z_FL = a_F, z_FR = −a_F: left side up, as
 * roll); the road likewise, [r_F, r_R] each.
 *
 * Invariant: both halves together have the whole car's eigenvalues; a car that is not mirrored is never taken apart.
 */
import { addCoupling, congruent, product, type Rows, zeros } from "../../maths/rows.js";
import type { AirCoupling, LinearSystem } from "./linear-system.js";

export interface Half extends LinearSystem {
  /** P, 7 × n: the whole car's coordinates from the half's. */
  readonly coordinates: Rows;
  /** 4 × 2, for the road. */
  readonly inputs: Rows;
}

const TOGETHER: Rows = [
  [1, 0, 0, 0],
  [0, 0, 0, 0],
  [0, 1, 0, 0],
  [0, 0, 1, 0],
  [0, 0, 1, 0],
  [0, 0, 0, 1],
  [0, 0, 0, 1],
];
const OPPOSED: Rows = [
  [0, 0, 0],
  [1, 0, 0],
  [0, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
];
export const ROAD_TOGETHER: Rows = [
  [1, 0],
  [1, 0],
  [0, 1],
  [0, 1],
];
export const ROAD_OPPOSED: Rows = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
];

/** Where each freedom and each road input goes in the mirror, and whether its sign turns. */
const IN_MIRROR = [0, 1, 2, 4, 3, 6, 5];
const SIGN = [1, -1, 1, 1, 1, 1, 1];
const ROAD_IN_MIRROR = [1, 0, 3, 2];

/** A difference between a matrix and its mirror image below this share of its largest entry is rounding. */
const ROUNDING = 1e-13;

/** The two halves of the seven freedoms; undefined where left and right differ. */
export function halvesOf(car: LinearSystem): { readonly together: Half; readonly opposed: Half } | undefined {
  const mirrored =
    [car.mass, car.damping, car.stiffness].every((k) => isMirrored(k, IN_MIRROR, SIGN)) &&
    [car.roadStiffness, car.roadDamping].every((k) => isMirrored(k, ROAD_IN_MIRROR)) &&
    (car.air?.heights.every((row) => row[1] === 0) ?? true);
  if (!mirrored) return undefined;
  return { together: halfOf(car, TOGETHER, ROAD_TOGETHER), opposed: halfOf(car, OPPOSED, ROAD_OPPOSED) };
}

function isMirrored(k: Rows, columns: readonly number[], signs?: readonly number[]): boolean {
  let [largest, off] = [0, 0];
  for (let i = 0; i < k.length; i++) {
    const [row, image] = [k[i]!, k[IN_MIRROR[i]!]!];
    for (let j = 0; j < row.length; j++) {
      const sign = SIGN[i]! * (signs?.[j] ?? 1);
      largest = Math.max(largest, Math.abs(row[j]!));
      off = Math.max(off, Math.abs(row[j]! - sign * image[columns[j]!]!));
    }
  }
  return off <= ROUNDING * largest;
}

/** PᵀK Q: what motions Q do to forces P. */
function between(k: Rows, p: Rows, q: Rows): number[][] {
  const into = zeros(p[0]!.length, q[0]!.length);
  addCoupling(into, p, k, q);
  return into;
}

function halfOf(car: LinearSystem, p: Rows, road: Rows): Half {
  return {
    mass: congruent(car.mass, p),
    damping: congruent(car.damping, p),
    stiffness: congruent(car.stiffness, p),
    roadStiffness: between(car.roadStiffness, p, road),
    roadDamping: between(car.roadDamping, p, road),
    air: p === TOGETHER ? halfAir(car.air, p, road) : undefined,
    coordinates: p,
    inputs: road,
  };
}

/** Heights are on the centre plane: only heave and pitch change them. */
function halfAir(air: AirCoupling | undefined, p: Rows, road: Rows): AirCoupling | undefined {
  if (air === undefined) return undefined;
  return { ...air, heights: product(air.heights, p), road: product(air.road, road) };
}
