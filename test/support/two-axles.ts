/** Cars with two axles, written as text (both the check case's) or put together from rates alone. */
import type { AxleMechanism } from "../../server/elements/mechanism.js";
import { byRatios, constantRatio } from "../../server/elements/connections/ratio.js";
import { ratioCorner } from "../../server/linkage/ratio.js";
import { axle, element, spring } from "./mechanisms.js";
import { carText, cornerSpring } from "./written-car.js";

/** The check case's axle at both ends of the car; `joining` are elements at car level. */
export function twoAxles(joining: string, elements = cornerSpring, rearElements = elements): string {
  const whole = carText({ elements: rearElements });
  const rear = whole.slice(whole.indexOf("axle front"), whole.lastIndexOf("}")).replace("axle front", "axle rear");
  return carText({ elements, car: `${rear}\n${joining}` });
}

export interface AxleOfRates {
  /** At each wheel, N/m. */
  readonly wheelRate: number;
  /** Force for each metre of difference between the wheels, N/m. */
  readonly cross?: number;
  readonly track: number;
  readonly tyreRate?: number;
}

/** An axle whose springs stand on the wheels. */
export function axleOfRates(
  name: "front" | "rear",
  { wheelRate, cross = 0, track, tyreRate = 220e3 }: AxleOfRates,
): AxleMechanism {
  const springs = (["left", "right"] as const).map((side) =>
    element("side", byRatios({ corner: constantRatio(1) }, false, side), spring(wheelRate), { side, for: ["corner"] }),
  );
  // s = 2 (z_R − z_L)/2, so that the spring's rate is the force for each metre of difference.
  const bar = element("bar", byRatios({ roll: constantRatio(2) }, false, undefined), spring(cross), { for: ["roll"] });
  const wheel = { unsprungMass: 18, tyreRate };
  return axle(cross === 0 ? springs : [...springs, bar], {
    name,
    track,
    corners: { left: ratioCorner(), right: ratioCorner() },
    wheels: { left: wheel, right: wheel },
    massFront: 0.5,
  });
}
