/** The modified Bessel function of the second kind and first order, as roads need it: times its argument. */

/** Terms or steps that suffice for double precision on either side of 2, with room to spare. */
const MOST = 500;

/**
 * x K₁(x), 1 at 0 and falling to 0; x ≥ 0. Relative accuracy about 1e-14, where it is not too small to be told from 0.
 *
 * Below 2 by its ascending series (Abramowitz & Stegun 9.6.11), above by Steed's continued fraction
 * (N. M. Temme, J. Comput. Phys. 19 (1975) 324).
 */
export function timesK1(x: number): number {
  if (!(x > 0)) return 1;
  return x <= 2 ? bySeries(x) : byFraction(x);
}

/** 1 + x ln(x/2) I₁(x) − x²/4 Σ [ψ(k+1) + ψ(k+2)] (x²/4)ᵏ / (k! (k+1)!). */
function bySeries(x: number): number {
  const square = (x * x) / 4;
  const log = Math.log(x / 2);
  // ψ(1) + ψ(2) = 1 − 2γ.
  let digamma = 1 - 2 * 0.5772156649015329;
  let term = 1;
  let total = 0;
  for (let k = 0; k < MOST; k++) {
    const part = term * (2 * log - digamma);
    total += part;
    if (Math.abs(part) < 1e-18) break;
    digamma += 1 / (k + 1) + 1 / (k + 2);
    term *= square / ((k + 1) * (k + 2));
  }
  return 1 + square * total;
}

function byFraction(x: number): number {
  let b = 2 * (1 + x);
  let d = 1 / b;
  let [h, step] = [d, d];
  let [q1, q2, q, c, a] = [0, 1, 0.25, 0.25, -0.25];
  let sum = 1 + q * step;
  for (let i = 2; i < MOST; i++) {
    a -= 2 * (i - 1);
    c = (-a * c) / i;
    const next = (q1 - b * q2) / a;
    [q1, q2] = [q2, next];
    q += c * next;
    b += 2;
    d = 1 / (b + a * d);
    step *= b * d - 1;
    h += step;
    sum += q * step;
    if (Math.abs(q * step) < 1e-17 * Math.abs(sum)) break;
  }
  return ((Math.sqrt(Math.PI / (2 * x)) * Math.exp(-x)) / sum) * (x + 0.5 - h / 4);
}
