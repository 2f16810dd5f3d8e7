/** A place on the travel in words. */
import type { Where } from "../../analyses/results.js";
import type { ElementModel } from "../../model/car.js";
import { showQuantity } from "../../quantities/index.js";

const wayOf = (travel: number): string => (travel < 0 ? "droop" : "bump");

/** "at 12 mm of bump", "in roll, with the right wheel 12 mm in bump and the left one as far in droop". */
export function whereWords({ mode, travel }: Where, { side }: Pick<ElementModel, "side">, unit: string): string {
  const shown = showQuantity(Math.abs(travel), unit, 3);
  if (mode === "rest") return "at rest";
  if (mode === "heave") return `with both wheels at ${shown} of ${wayOf(travel)}`;
  if (side !== undefined) {
    const own = side === "right" ? travel : -travel;
    return `in roll, with its own wheel ${shown} in ${wayOf(own)}`;
  }
  const [up, down] = travel > 0 ? ["right", "left"] : ["left", "right"];
  return `in roll, with the ${up} wheel ${shown} in bump and the ${down} one as far in droop`;
}
