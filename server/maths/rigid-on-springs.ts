/**
 * A rigid body on springs, some of which are pushed: how the loads under it change and how it moves.
 *
 * With springs K, what is in series with them T (nothing in series: rigid), pushes f at the springs and motions of the
 * body G (one column each):  R = T − T (K + T)⁻¹ T,  P = T (K + T)⁻¹,  q = −(Gᵀ R G)⁻¹ Gᵀ P f,  ΔN = P f + R G q.
 * Without T: R = K, P = 1. Invariant: Gᵀ ΔN = 0 to rounding.
 */
import { inverse, LuDecomposition, Matrix, SingularValueDecomposition } from "ml-matrix";
import { throughSprings } from "./in-series.js";
import type { Rows } from "./rows.js";

export interface OnSprings {
  readonly stiffness: Rows;
  readonly series: readonly number[] | undefined;
  /** One column a push. */
  readonly pushes: Rows;
  readonly motions: Rows;
}

/** For each push, one column. */
export interface Pushed {
  readonly loads: Rows;
  readonly body: Rows;
}

/** Smallest over largest singular value below which the body is not held. */
const SINGULAR = 1e-12;

const matrixOf = (rows: Rows): Matrix => new Matrix(rows.map((row) => [...row]));

/** @returns undefined where the springs do not hold the body in all its motions */
export function pushedOnSprings({ stiffness, series, pushes, motions }: OnSprings): Pushed | undefined {
  const through = series === undefined ? stiffness : throughSprings(stiffness, series);
  if (through === undefined) return undefined;
  const [springs, geometry, ride, pushed] = [stiffness, motions, through, pushes].map(matrixOf) as [
    Matrix,
    Matrix,
    Matrix,
    Matrix,
  ];
  const held = geometry.transpose().mmul(ride).mmul(geometry);
  const sizes = new SingularValueDecomposition(held).diagonal;
  if (!(Math.min(...sizes) > SINGULAR * Math.max(...sizes))) return undefined;
  const lu = new LuDecomposition(held);
  const above = series && Matrix.diag([...series]);
  const passed = above === undefined ? pushed : above.mmul(inverse(Matrix.add(springs, above))).mmul(pushed);
  const body = lu.solve(geometry.transpose().mmul(passed)).mul(-1);
  const loads = Matrix.add(passed, ride.mmul(geometry).mmul(body));
  return { loads: loads.to2DArray(), body: body.to2DArray() };
}
