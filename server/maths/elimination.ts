/**
 * Small square systems by Gaussian elimination with partial pivoting, for inner loops that solve thousands of them a
 * second: ml-matrix spends most of its time there on making matrices.
 *
 * Invariant: what goes in stays as it is.
 */
import type { Rows } from "./rows.js";

/** x of A x = b; undefined where A is singular. */
export function linearRoot(a: Rows, b: readonly number[]): number[] | undefined {
  const [rows, x] = [copied(a), b.slice()];
  if (eliminated(rows, x) === 0) return undefined;
  for (let i = rows.length - 1; i >= 0; i--) {
    const row = rows[i]!;
    let rest = x[i]!;
    for (let j = i + 1; j < row.length; j++) rest -= row[j]! * x[j]!;
    x[i] = rest / row[i]!;
  }
  return x;
}

/** A⁻¹ by Gauss and Jordan; undefined where A is singular. */
export function inverted(a: Rows): Rows | undefined {
  const n = a.length;
  const rows = a.map((row, i) => beside(row, i));
  for (let k = 0; k < n; k++) {
    const pivot = pivotOf(rows, k);
    const row = rows[pivot]!;
    [rows[pivot], rows[k]] = [rows[k]!, row];
    if (row[k] === 0) return undefined;
    const over = 1 / row[k]!;
    for (let j = k; j < 2 * n; j++) row[j]! *= over;
    for (let i = 0; i < n; i++) {
      const other = rows[i]!;
      const share = other[k]!;
      if (i === k || share === 0) continue;
      for (let j = k; j < 2 * n; j++) other[j]! -= share * row[j]!;
    }
  }
  return rows.map((row) => row.slice(n));
}

/** A row with that of the unit matrix beside it. */
function beside(row: readonly number[], i: number): number[] {
  const wide = [...row, ...row];
  wide.fill(0, row.length);
  wide[row.length + i] = 1;
  return wide;
}

/** The sign of A's determinant: −1, 0 (singular) or 1; 0 as well where a number is none. */
export function signOfDeterminant(a: Rows): number {
  const rows = copied(a);
  let sign = eliminated(rows, nothingOf(a));
  for (const [i, row] of rows.entries()) sign *= Math.sign(row[i]!);
  return Number.isNaN(sign) ? 0 : sign + 0;
}

const copied = (a: Rows): number[][] => a.map((row) => row.slice());
const nothingOf = (a: Rows): number[] => a.map(() => 0);

/** Brings rows to upper triangular form and b along: −1 or 1 for an odd or even number of exchanges, 0 where a pivot is none. */
function eliminated(rows: number[][], b: number[]): number {
  const n = rows.length;
  let sign = 1;
  for (let k = 0; k < n; k++) {
    const pivot = pivotOf(rows, k);
    const row = rows[pivot]!;
    if (row[k] === 0) return 0;
    if (pivot !== k) {
      [rows[pivot], rows[k]] = [rows[k]!, row];
      [b[pivot], b[k]] = [b[k]!, b[pivot]!];
      sign = -sign;
    }
    for (let i = k + 1; i < n; i++) {
      const other = rows[i]!;
      if (other[k] === 0) continue;
      const share = other[k]! / row[k]!;
      for (let j = k + 1; j < n; j++) other[j]! -= share * row[j]!;
      b[i]! -= share * b[k]!;
    }
  }
  return sign;
}

function pivotOf(rows: Rows, k: number): number {
  let pivot = k;
  for (let i = k + 1; i < rows.length; i++) if (Math.abs(rows[i]![k]!) > Math.abs(rows[pivot]![k]!)) pivot = i;
  return pivot;
}
