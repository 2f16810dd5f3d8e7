/**
 * Small dense matrices as readonly rows of numbers, and the few products that assembling a car takes.
 * Factorisations and eigenvalues are ml-matrix's.
 */
export type Rows = readonly (readonly number[])[];

// oxlint-disable-next-line unicorn/no-new-array -- made thousands of times a second: `Array.from` takes ten times as long
export const nothing = (size: number): number[] => new Array<number>(size).fill(0);

export const zeros = (rows: number, columns: number): number[][] =>
  Array.from({ length: rows }, () => nothing(columns));

export const diagonal = (values: readonly number[]): number[][] =>
  values.map((value, i) => values.map((_, j) => (i === j ? value : 0)));

/** Σ aᵢ bᵢ. */
export function inner(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

/** A x. */
export const applied = (a: Rows, x: readonly number[]): number[] => a.map((row) => inner(row, x));

/** A B. */
export function product(a: Rows, b: Rows): number[][] {
  const width = b[0]?.length ?? 0;
  return a.map((row) => {
    const into = nothing(width);
    for (let k = 0; k < row.length; k++) {
      const value = row[k]!;
      if (value === 0) continue;
      const other = b[k]!;
      for (let j = 0; j < width; j++) into[j]! += value * other[j]!;
    }
    return into;
  });
}

/**
 * Adds LᵀK R to `into`: what a coupling K between the combinations L q (force) and R q (motion) is in q.
 *
 * @param left p rows over q @param k p × p @param right p rows over q
 */
export function addCoupling(into: number[][], left: Rows, k: Rows, right: Rows = left): void {
  for (const [i, by] of left.entries()) {
    for (const [j, with_] of right.entries()) {
      const value = k[i]![j]!;
      if (value !== 0) addOuter(into, by, with_, value);
    }
  }
}

/** Adds k a bᵀ to `into`. */
function addOuter(into: number[][], a: readonly number[], b: readonly number[], k: number): void {
  for (let i = 0; i < a.length; i++) {
    const scaled = k * a[i]!;
    if (scaled === 0) continue;
    const row = into[i]!;
    for (let j = 0; j < b.length; j++) row[j]! += scaled * b[j]!;
  }
}

/** PᵀK P: a matrix in coordinates x, q = P x. */
export function congruent(k: Rows, p: Rows): number[][] {
  const into = zeros(p[0]?.length ?? 0, p[0]?.length ?? 0);
  addCoupling(into, p, k);
  return into;
}

export function finiteRows(a: Rows): boolean {
  for (const row of a) for (const value of row) if (!Number.isFinite(value)) return false;
  return true;
}
