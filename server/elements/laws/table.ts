/** A spring or bump stop by measured points: deflection against force. */
import { monotone } from "../../maths/monotone.js";
import type { Curve } from "./curve.js";

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
  const free = through.integral(0);
  return {
    force: (at) => through.value(at),
    rate: (at) => through.slope(at),
    energy: (at) => through.integral(at) - free,
    constantRate: x.length === 2 ? through.slope(0) : undefined,
    range: { from: through.from, to: through.to },
    marks: [
      { at: through.from, what: "table-end" },
      { at: through.to, what: "table-end" },
    ],
  };
}
