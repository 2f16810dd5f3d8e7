/** A spring or bump stop by measured points: deflection against force. */
import { monotone } from "../../maths/monotone.js";
import type { Curve } from "./curve.js";
import { deflectionAt } from "./inverse.js";

/**
 * Interpolated monotonically between the points, straight on outside of them with the slope at the
 * last one. A table that starts above zero deflection is taken to start at the origin.
 *
 * @param deflection m or rad, strictly increasing
 * @param force N or N·m, as many
 */
export function tableCurve(deflection: readonly number[], force: readonly number[]): Curve {
  const fromOrigin = (deflection[0] ?? 0) > 0;
  const x = fromOrigin ? [0, ...deflection] : deflection;
  const f = fromOrigin ? [0, ...force] : force;
  const through = monotone(x, f, "chord");
  const value = (at: number): number => through.value(at);
  const rate = (at: number): number => through.slope(at);
  // A table may carry at nought: its energy is counted from where it carries nothing, or from nought where that is nowhere.
  const free = through.integral(deflectionAt({ force: value, rate }, 0) ?? 0);
  return {
    force: value,
    rate,
    energy: (at) => through.integral(at) - free,
    constantRate: x.length === 2 ? through.slope(0) : undefined,
    range: { from: through.from, to: through.to },
    marks: [
      { at: through.from, what: "table-end" },
      { at: through.to, what: "table-end" },
    ],
  };
}
