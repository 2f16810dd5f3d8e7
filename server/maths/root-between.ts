/** The place between two others where a function with a known slope is nought. */

export interface Sloped {
  readonly value: number;
  readonly slope: number;
}

const STEPS = 60;

/**
 * Newton's steps, which fall back to halving where they would leave the bracket.
 *
 * @param f undefined where it has no value
 * @returns undefined where the ends are not of opposite sign, or the function has no value on the way
 */
export function rootBetween(f: (x: number) => Sloped | undefined, from: number, to: number): number | undefined {
  const [start, end] = [f(from), f(to)];
  if (start === undefined || end === undefined || start.value * end.value > 0) return undefined;
  if (start.value === 0) return from;
  if (end.value === 0) return to;
  let [low, high] = start.value < 0 ? [from, to] : [to, from];
  let x = (from * end.value - to * start.value) / (end.value - start.value);
  for (let i = 0; i < STEPS; i++) {
    const at = f(x);
    if (at === undefined) return undefined;
    if (at.value === 0) return x;
    if (at.value < 0) low = x;
    else high = x;
    const step = x - at.value / at.slope;
    const next = step > Math.min(low, high) && step < Math.max(low, high) ? step : (low + high) / 2;
    if (Math.abs(next - x) <= 4 * Number.EPSILON * Math.max(Math.abs(from), Math.abs(to))) return next;
    x = next;
  }
  return x;
}
