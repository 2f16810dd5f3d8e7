/**
 * Which deflection carries a demanded force: for preload and for the seat that trims an axle.
 *
 * Invariant: never hangs and never returns a value that does not carry the force.
 */

interface Rising {
  force(x: number): number;
  rate(x: number): number;
}

const STEPS = 80;
/** Relative to the demanded force: well below anything that a scale shows. */
const CLOSE = 1e-13;

/** Two deflections that the demanded force lies between; undefined where the curve never gets there. */
function bracket(curve: Rising, force: number, reach: number): [number, number] | undefined {
  let width = reach;
  for (let i = 0; i < STEPS; i++) {
    if (curve.force(-width) <= force && force <= curve.force(width)) return [-width, width];
    width *= 2;
  }
  return undefined;
}

/**
 * Deflection x with F(x) = force, by Newton steps that fall back to halving the bracket.
 * Undefined where the curve never reaches it (a one-way spring asked to pull, a flat curve).
 *
 * @param curve a force that never falls with deflection
 * @param force N or N·m
 */
export function deflectionAt(curve: Rising, force: number): number | undefined {
  if (!Number.isFinite(force)) return undefined;
  const found = bracket(curve, force, 0.01);
  if (found === undefined) return undefined;
  let [low, high] = found;
  const tolerance = CLOSE * Math.max(1, Math.abs(force));
  let x = 0;
  for (let i = 0; i < 2 * STEPS; i++) {
    const off = curve.force(x) - force;
    if (Math.abs(off) <= tolerance) return x;
    if (off < 0) low = x;
    else high = x;
    const step = x - off / curve.rate(x);
    x = step > low && step < high ? step : (low + high) / 2;
    if (high - low <= Number.EPSILON * Math.max(Math.abs(low), Math.abs(high))) return x;
  }
  return x;
}
