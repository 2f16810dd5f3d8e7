/** Two stiffnesses that carry the same loads one after the other, in any number of freedoms. */
import { inverse, Matrix, SingularValueDecomposition } from "ml-matrix";

/** Smallest over largest singular value below which a sum cannot be inverted with any sense. */
const SINGULAR = 1e-12;

/**
 * T − T (K + T)⁻¹ T for symmetric K and diagonal T: K seen through springs of rate T.
 *
 * @returns undefined where K + T is singular
 */
export function throughSprings(k: readonly (readonly number[])[], rates: readonly number[]): number[][] | undefined {
  const stiffness = new Matrix(k.map((row) => [...row]));
  const springs = Matrix.diag([...rates]);
  const sum = Matrix.add(stiffness, springs);
  const sizes = new SingularValueDecomposition(sum).diagonal;
  if (!(Math.min(...sizes) > SINGULAR * Math.max(...sizes))) return undefined;
  return Matrix.sub(springs, springs.mmul(inverse(sum)).mmul(springs)).to2DArray();
}
