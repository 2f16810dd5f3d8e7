/** The sign of a determinant: whether a stiffness has passed through zero on the way. */
import { LuDecomposition, Matrix } from "ml-matrix";
import type { Rows } from "./rows.js";

/** −1, 0 (singular) or 1; 0 as well where a number is none. */
export function signOfDeterminant(a: Rows): number {
  const lu = new LuDecomposition(new Matrix(a));
  const sign = lu.isSingular() ? 0 : Math.sign(lu.determinant);
  return Number.isFinite(sign) ? sign : 0;
}
