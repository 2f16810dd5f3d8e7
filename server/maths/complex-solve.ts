/** Small complex linear systems in place, for inner loops: entries re and im by turns, row by row. */

/** b ← A⁻¹ b with partial pivoting, both overwritten; false where A is singular. @param width columns of b */
export function solvedInPlace(a: Float64Array, b: Float64Array, n: number, width: number): boolean {
  for (let k = 0; k < n; k++) {
    const pivot = largestBelow(a, n, k);
    if (pivot === undefined) return false;
    if (pivot !== k) {
      exchange(a, n, k, pivot);
      exchange(b, width, k, pivot);
    }
    const at = 2 * (k * n + k);
    const re = a[at]!;
    const im = a[at + 1]!;
    const square = re * re + im * im;
    for (let i = k + 1; i < n; i++) {
      const below = 2 * (i * n + k);
      const x = a[below]!;
      const y = a[below + 1]!;
      if (x === 0 && y === 0) continue;
      const fRe = (x * re + y * im) / square;
      const fIm = (y * re - x * im) / square;
      taken(a, n, i, k, fRe, fIm, k + 1);
      taken(b, width, i, k, fRe, fIm, 0);
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) {
      const at = 2 * (i * n + k);
      taken(b, width, i, k, a[at]!, a[at + 1]!, 0);
    }
    divided(b, width, i, a[2 * (i * n + i)]!, a[2 * (i * n + i) + 1]!);
  }
  return true;
}

function largestBelow(a: Float64Array, n: number, k: number): number | undefined {
  let most = 0;
  let found: number | undefined;
  for (let i = k; i < n; i++) {
    const at = 2 * (i * n + k);
    const size = a[at]! * a[at]! + a[at + 1]! * a[at + 1]!;
    if (size > most) {
      most = size;
      found = i;
    }
  }
  return found;
}

function exchange(m: Float64Array, width: number, i: number, j: number): void {
  for (let c = 0; c < 2 * width; c++) {
    const kept = m[2 * i * width + c]!;
    m[2 * i * width + c] = m[2 * j * width + c]!;
    m[2 * j * width + c] = kept;
  }
}

/** Row i less f times row k, from a column on. */
function taken(m: Float64Array, width: number, i: number, k: number, fRe: number, fIm: number, from: number): void {
  let own = 2 * (i * width + from);
  let other = 2 * (k * width + from);
  for (let c = from; c < width; c++, own += 2, other += 2) {
    const re = m[other]!;
    const im = m[other + 1]!;
    m[own]! -= fRe * re - fIm * im;
    m[own + 1]! -= fRe * im + fIm * re;
  }
}

function divided(m: Float64Array, width: number, i: number, re: number, im: number): void {
  const square = re * re + im * im;
  for (let c = 0; c < width; c++) {
    const at = 2 * (i * width + c);
    const x = m[at]!;
    const y = m[at + 1]!;
    m[at] = (x * re + y * im) / square;
    m[at + 1] = (y * re - x * im) / square;
  }
}
