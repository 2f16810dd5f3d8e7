/**
 * First-order form of a linear car: ẋ = A x + B r with x = [q, v, η], v = q̇ − M⁻¹Cᵣ r, so that the road's speed is not needed.
 *
 *   q̇ = v + M⁻¹Cᵣ r
 *   v̇ = −M⁻¹K q − M⁻¹C v − M⁻¹NᵀD η + (M⁻¹Kᵣ − M⁻¹C M⁻¹Cᵣ) r
 *   η̇ = (N q − R r − η)/τ      (left out where τ = 0: the air is then part of K and Kᵣ)
 *
 * States are scaled (by √M and a typical frequency) so that all of A weighs alike; `scale` takes that back.
 */
import { finiteRows, product, type Rows, zeros } from "../../maths/rows.js";
import { solved } from "../../maths/eigen.js";
import { type LinearSystem, steadyRoadStiffness, steadyStiffness } from "./linear-system.js";

export interface StateSpace {
  /** Number of coordinates q; the states are q, v, then the lagging heights. */
  readonly freedoms: number;
  /** Of the scaled states. */
  readonly a: Rows;
  readonly b: Rows;
  /** x scaled = scale · x. */
  readonly scale: readonly number[];
  /** A typical modulus of the roots, 1/s. */
  readonly rate: number;
}

interface PerMass {
  readonly stiffness: Rows;
  readonly damping: Rows;
  readonly roadStiffness: Rows;
  readonly roadDamping: Rows;
  /** M⁻¹NᵀD where the air lags. */
  readonly air: Rows;
}

/** Undefined where the mass matrix cannot be inverted or a number is missing. */
export function stateSpace(system: LinearSystem): StateSpace | undefined {
  const n = system.mass.length;
  const lagging = system.air !== undefined && system.air.lag > 0 ? system.air : undefined;
  const perMass = overMass(system, lagging !== undefined);
  if (perMass === undefined) return undefined;
  const heights = lagging?.heights.length ?? 0;
  const a = zeros(2 * n + heights, 2 * n + heights);
  const back = product(perMass.damping, perMass.roadDamping);
  const b = [
    ...perMass.roadDamping.map((row) => [...row]),
    ...perMass.roadStiffness.map((row, i) => row.map((value, j) => value - back[i]![j]!)),
  ];
  for (let i = 0; i < n; i++) {
    a[i]![n + i] = 1;
    for (let j = 0; j < n; j++) {
      a[n + i]![j] = -perMass.stiffness[i]![j]!;
      a[n + i]![n + j] = -perMass.damping[i]![j]!;
    }
    for (let h = 0; h < heights; h++) a[n + i]![2 * n + h] = -perMass.air[i]![h]!;
  }
  for (let h = 0; h < heights; h++) {
    const { lag, road, heights: rows } = lagging!;
    for (let j = 0; j < n; j++) a[2 * n + h]![j] = rows[h]![j]! / lag;
    a[2 * n + h]![2 * n + h] = -1 / lag;
    b.push(road[h]!.map((value) => -value / lag));
  }
  return scaledSpace(a, b, system.mass, n);
}

/** M⁻¹ times everything. */
function overMass(system: LinearSystem, lagging: boolean): PerMass | undefined {
  const stiffness = lagging ? system.stiffness : steadyStiffness(system);
  const roadStiffness = lagging ? system.roadStiffness : steadyRoadStiffness(system);
  const { mass, damping, roadDamping, air } = system;
  const airForce = lagging && air !== undefined ? product(transposed(air.heights), air.slopes) : mass.map(() => []);
  const parts = [stiffness, damping, roadStiffness, roadDamping, airForce];
  const over = isDiagonal(mass) ? parts.map((part) => dividedBy(mass, part)) : dividedTogether(mass, parts);
  const [k, c, kr, cr, d] = over ?? [];
  return k && c && kr && cr && d && { stiffness: k, damping: c, roadStiffness: kr, roadDamping: cr, air: d };
}

/** M⁻¹ times each, M factored once. */
function dividedTogether(mass: Rows, parts: readonly Rows[]): readonly Rows[] | undefined {
  const over = solved(
    mass,
    mass.map((_, i) => parts.flatMap((part) => part[i]!)),
  );
  if (over === undefined) return undefined;
  let from = 0;
  return parts.map((part) => {
    const at = from;
    from += part[0]!.length;
    return over.map((row) => row.slice(at, from));
  });
}

const transposed = (a: Rows): number[][] => (a[0] ?? []).map((_, j) => a.map((row) => row[j]!));

const isDiagonal = (a: Rows): boolean => a.every((row, i) => row.every((value, j) => i === j || value === 0));

function dividedBy(mass: Rows, all: Rows): Rows | undefined {
  const over = all.map((row, i) => row.map((value) => value / mass[i]![i]!));
  return finiteRows(over) ? over : undefined;
}

/** A typical rate of change, 1/s: the geometric mean of the fastest and the slowest spring on its mass. */
function typicalRate(a: Rows, n: number): number {
  const squares = Array.from({ length: n }, (_, i) => Math.abs(a[n + i]![i]!)).filter((value) => value > 0);
  return squares.length === 0 ? 1 : (Math.max(...squares) * Math.min(...squares)) ** 0.25;
}

function scaledSpace(a: Rows, b: Rows, mass: Rows, n: number): StateSpace {
  const rate = typicalRate(a, n);
  const roots = mass.map((row, i) => Math.sqrt(Math.abs(row[i]!)) || 1);
  const height = rate * Math.max(...roots);
  const scale = a.map((_, i) => (i < n ? rate * roots[i]! : i < 2 * n ? roots[i - n]! : height));
  return {
    freedoms: n,
    a: a.map((row, i) => row.map((value, j) => (value * scale[i]!) / scale[j]!)),
    b: b.map((row, i) => row.map((value) => value * scale[i]!)),
    scale,
    rate,
  };
}
