/**
 * Stiffness or damping over the four wheels of the car, FL, FR, RL, RR: a symmetric 4 × 4 matrix, and what it comes to
 * along motions of the wheels.
 *
 * N/m or N·s/m. Invariant: what cancels to within rounding is 0.
 */
import { type CarDeflection, eachPair, type Wheels } from "../elements/car-connection.js";

export type WheelMatrix = CarDeflection["dd"];

export const NO_MATRIX: WheelMatrix = eachPair(() => 0);

export const plusMatrix = (a: WheelMatrix, b: WheelMatrix): WheelMatrix =>
  eachPair((i, j) => (a[i]?.[j] ?? 0) + (b[i]?.[j] ?? 0));

/** k ∇s∇sᵀ + F ∇²s. */
export const matrixOf = ({ d, dd }: CarDeflection, k: number, force: number): WheelMatrix =>
  eachPair((i, j) => k * (d[i] ?? 0) * (d[j] ?? 0) + force * (dd[i]?.[j] ?? 0));

/** Two axles beside each other. */
export function beside(
  front: readonly (readonly number[])[] | undefined,
  rear: readonly (readonly number[])[] | undefined,
): WheelMatrix {
  return eachPair((i, j) => (i < 2 && j < 2 ? front?.[i]?.[j] : i > 1 && j > 1 ? rear?.[i - 2]?.[j - 2] : 0) ?? 0);
}

/** Parts that cancel to less than this share of them are nothing: a zero is a zero. */
const ROUNDING = 1e-12;

/** uᵀ M v for motions u and v of the wheels. */
export function along(matrix: WheelMatrix, u: readonly number[], v: readonly number[]): number {
  let sum = 0;
  let size = 0;
  for (let i = 0; i < matrix.length; i++) {
    const row = matrix[i]!;
    for (let j = 0; j < row.length; j++) {
      const part = (u[i] ?? 0) * row[j]! * (v[j] ?? 0);
      sum += part;
      size += Math.abs(part);
    }
  }
  return Math.abs(sum) <= ROUNDING * size ? 0 : sum;
}

/** PᵀMP for motions p. */
export const between = (matrix: WheelMatrix, motions: readonly Wheels[]): readonly (readonly number[])[] =>
  motions.map((u) => motions.map((v) => along(matrix, u, v)));
