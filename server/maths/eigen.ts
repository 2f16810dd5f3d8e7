/**
 * Eigenvalues of a general real matrix with the real basis of its eigenvectors, of the symmetric generalised
 * problem, and how a linear system's answer is made of both.
 *
 * Invariant: a matrix that is not finite gets no answer, since the library's iteration would not end on it.
 */
import {
  CholeskyDecomposition,
  EigenvalueDecomposition,
  inverse as inverseOf,
  LuDecomposition,
  Matrix,
} from "ml-matrix";
import { inverted } from "./elimination.js";
import { finiteRows, type Rows } from "./rows.js";

/** A = W Λ W⁻¹ with blocks [σ, ω; −ω, σ] in Λ for each pair σ ± iω. */
export interface Spectrum {
  /** Real and imaginary parts; pairs stand together, the one with the positive imaginary part first. */
  readonly re: readonly number[];
  readonly im: readonly number[];
  /** Columns: an eigenvector, or the real and the imaginary part of that of the pair's first. */
  readonly basis: Rows;
}

/**
 * Eigenvalues and eigenvectors of A x = λ x, unordered; undefined where A is not finite. What is too small for a normal
 * number is taken for nought, since the library's iteration may not end on it.
 * Source of the algorithm: ml-matrix (Hessenberg form and the QR iteration of EISPACK).
 */
export function spectrumOf(a: Rows): Spectrum | undefined {
  if (a.length === 0) return { re: [], im: [], basis: [] };
  if (!finiteRows(a)) return undefined;
  const found = new EigenvalueDecomposition(new Matrix(a.map((row) => row.map(normalOrNought))));
  const basis = found.eigenvectorMatrix.to2DArray();
  const [re, im] = [found.realEigenvalues, found.imaginaryEigenvalues];
  return finiteRows([re, im]) && finiteRows(basis) ? { re, im, basis } : undefined;
}

const LEAST_NORMAL = 2 ** -1022;
const normalOrNought = (value: number): number => (Math.abs(value) < LEAST_NORMAL ? 0 : value);

/** W⁻¹, and how much rounding it blows up: |W| |W⁻¹| in the largest row sum; undefined where W is singular. */
export function invertedBasis(basis: Rows): { readonly inverse: Rows; readonly condition: number } | undefined {
  const inverse = inverted(basis);
  if (inverse === undefined) return undefined;
  const condition = rowSum(basis) * rowSum(inverse);
  return Number.isFinite(condition) ? { inverse, condition } : undefined;
}

const rowSum = (a: Rows): number => Math.max(...a.map((row) => row.reduce((total, v) => total + Math.abs(v), 0)));

/**
 * K x = ω² M x with both symmetric and M positive definite: ω² rising, with shapes for which xᵀM x = 1.
 * By M = LLᵀ and the symmetric problem L⁻¹K L⁻ᵀ. Undefined where M is not positive definite or a number is missing.
 */
export function undampedSpectrum(
  mass: Rows,
  stiffness: Rows,
): { readonly squares: readonly number[]; readonly shapes: Rows } | undefined {
  if (!finiteRows(mass) || !finiteRows(stiffness)) return undefined;
  const factor = new CholeskyDecomposition(new Matrix(mass));
  if (!factor.isPositiveDefinite()) return undefined;
  const back = inverseOf(factor.lowerTriangularMatrix);
  const symmetric = back.mmul(new Matrix(stiffness)).mmul(back.transpose());
  const found = new EigenvalueDecomposition(symmetric, { assumeSymmetric: true });
  return { squares: found.realEigenvalues, shapes: back.transpose().mmul(found.eigenvectorMatrix).to2DArray() };
}

/** A⁻¹ B; undefined where A is singular or a number is missing. */
export function solved(a: Rows, b: Rows): Rows | undefined {
  if (!finiteRows(a) || !finiteRows(b)) return undefined;
  const lu = new LuDecomposition(new Matrix(a));
  if (lu.isSingular()) return undefined;
  const x = lu.solve(new Matrix(b)).to2DArray();
  return finiteRows(x) ? x : undefined;
}
