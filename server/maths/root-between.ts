/** The place between two others where a function with a known slope is nought. */

export interface Sloped {
  readonly value: number;
  readonly slope: number;
}

const STEPS = 200;

/**
 * Newton's steps, which fall back to halving where they would leave the bracket or the last one did not halve the value.
 *
 * @param f undefined where it has no value
 * @returns undefined where the ends are not of opposite sign, or the function has no value on the way
 */
export function rootBetween(f: (x: number) => Sloped | undefined, from: number, to: number): number | undefined {
  const [start, end] = [f(from), f(to)];
  if (start === undefined || end === undefined || start.value * end.value > 0) return undefined;
  if (start.value === 0) return from;
  if (end.value === 0) return to;
  const close = 4 * Number.EPSILON * Math.max(Math.abs(from), Math.abs(to));
  let [low, high] = start.value < 0 ? [from, to] : [to, from];
  let x = (from * end.value - to * start.value) / (end.value - start.value);
  let before = Number.MAX_VALUE;
  for (let i = 0; i < STEPS; i++) {
    const at = f(x);
    if (at === undefined) return undefined;
    if (at.value === 0) return x;
    if (at.value < 0) low = x;
    else high = x;
    const half = (low + high) / 2;
    if (Math.abs(high - low) <= close) return half;
    const step = x - at.value / at.slope;
    const isInside = step > Math.min(low, high) && step < Math.max(low, high);
    const isUseful = isInside && Math.abs(at.value) <= before / 2;
    before = Math.abs(at.value);
    if (isUseful && Math.abs(step - x) <= close && changesBeyond(f, at.value, step, step < x ? -close : close))
      return step;
    x = isUseful && Math.abs(step - x) > close ? step : half;
  }
  return x;
}

/** Whether the sign changes a little further on: a short step is no proof where the slope is not to be trusted. */
function changesBeyond(f: (x: number) => Sloped | undefined, value: number, x: number, further: number): boolean {
  const beyond = f(x + further);
  return beyond !== undefined && beyond.value * value <= 0;
}
