/**
 * Polynomials through many points by least squares, as a logger's channel maths takes them.
 *
 * In: points with abscissae that differ. Out: coefficients from the constant upwards, in the abscissa itself; fitted in one that is
 * scaled to −1 … 1, so that a ninth degree is as well told as a first.
 *
 * Source: ordinary least squares by QR (G. H. Golub, C. F. Van Loan, Matrix Computations, ch. 5).
 */
import { Matrix, QrDecomposition } from "ml-matrix";

/** Undefined where the points do not tell so many coefficients. */
export function polynomialFit(
  x: readonly number[],
  y: readonly number[],
  degree: number,
): readonly number[] | undefined {
  const [low, high] = [Math.min(...x), Math.max(...x)];
  const [middle, half] = [(low + high) / 2, (high - low) / 2];
  if (!(half > 0) || new Set(x).size <= degree) return undefined;
  const scaled = x.map((value) => (value - middle) / half);
  const rows = scaled.map((value) => Array.from({ length: degree + 1 }, (_, power) => value ** power));
  const qr = new QrDecomposition(new Matrix(rows));
  if (!qr.isFullRank()) return undefined;
  const inScaled = qr.solve(Matrix.columnVector([...y])).to1DArray();
  return inAbscissa(inScaled, middle, half);
}

/** Σ aₖ ((x − m)/h)ᵏ as powers of x, by Horner's scheme on polynomials. */
function inAbscissa(scaled: readonly number[], middle: number, half: number): readonly number[] {
  let result: number[] = [];
  for (let power = scaled.length - 1; power >= 0; power--) {
    const shifted = [0, ...result].map((value) => value / half);
    for (const [i, value] of result.entries()) shifted[i] = (shifted[i] ?? 0) - (value * middle) / half;
    shifted[0] = (shifted[0] ?? 0) + (scaled[power] ?? 0);
    result = shifted;
  }
  return result;
}

/** Horner's scheme. */
export const polynomialAt = (coefficients: readonly number[], x: number): number =>
  coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
