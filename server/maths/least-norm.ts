/** The smallest change that does what is asked: systems with more unknowns than equations. */
import { Matrix, SingularValueDecomposition } from "ml-matrix";

/** Singular values below this share of the largest count as none; what is left over above it counts as unmet. */
const NOTHING = 1e-10;

/**
 * The x of least |x| with A x = b, by the pseudo-inverse; rows may depend on each other.
 *
 * Rows are scaled to length 1 first, so that their units do not matter. Source: G. H. Golub, C. F. Van Loan, Matrix
 * Computations, ch. 5 (from memory).
 *
 * @returns undefined where no x does it
 */
export function leastNorm(rows: readonly (readonly number[])[], b: readonly number[]): number[] | undefined {
  const lengths = rows.map((row) => Math.hypot(...row));
  const asked = rows.flatMap((row, i) => {
    const length = lengths[i] ?? 0;
    return length > 0 ? [{ row: row.map((value) => value / length), to: (b[i] ?? 0) / length }] : [];
  });
  const isUnmoved = rows.some((_, i) => lengths[i] === 0 && b[i] !== 0);
  if (isUnmoved || asked.length === 0) return isUnmoved ? undefined : (rows[0] ?? []).map(() => 0);
  const matrix = new Matrix(asked.map(({ row }) => row));
  const to = Matrix.columnVector(asked.map((one) => one.to));
  const svd = new SingularValueDecomposition(matrix, { autoTranspose: true });
  const [u, v, sizes] = [svd.leftSingularVectors, svd.rightSingularVectors, svd.diagonal];
  const most = Math.max(...sizes);
  const inside = u.transpose().mmul(to);
  const along = sizes.map((size, i) => (size > NOTHING * most ? inside.get(i, 0) / size : 0));
  const x = v.mmul(Matrix.columnVector(along));
  const missed = Matrix.sub(matrix.mmul(x), to).norm();
  return missed <= 1e-8 * Math.max(to.norm(), Number.MIN_VALUE) ? x.to1DArray() : undefined;
}
