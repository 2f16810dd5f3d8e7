/**
 * What the pressure in a gas spring or a hydraulic link does over the travel: a step that axle and car share.
 *
 * Pressure never falls with deflection, so that its extremes are those of the travel.
 */
import type { FluidState } from "../elements/element.js";
import { absent, isAbsent } from "./absent.js";
import type { Absent, Figure, FluidFigures } from "./results.js";

/** One body of gas or oil: its law, and the deflections that it goes through, its seat included. */
export interface FluidBody {
  readonly fluid: FluidState;
  readonly atRest: Figure;
  readonly travel: { readonly from: number; readonly to: number } | Absent;
}

const most = (values: readonly number[]): number => Math.max(...values);

/** Largest of a figure over the bodies; the first reason where one has none. */
function largest(figures: readonly Figure[]): Figure {
  const missing = figures.find(isAbsent);
  return missing ?? most(figures.filter((figure) => typeof figure === "number"));
}

function over(bodies: readonly FluidBody[]): FluidFigures["over"] {
  const ends: number[] = [];
  for (const { fluid, travel } of bodies) {
    if (isAbsent(travel)) return travel;
    ends.push(fluid.gauge(travel.from), fluid.gauge(travel.to));
  }
  return { lowest: Math.min(...ends), highest: most(ends) };
}

/**
 * @param bodies the volumes of one element, the first the one that its figures speak of
 * @returns undefined where there is neither gas nor oil
 */
export function fluidFigures(bodies: readonly FluidBody[]): FluidFigures | undefined {
  const [first] = bodies;
  if (first === undefined) return undefined;
  const { fluid, atRest } = first;
  const withGas = bodies.flatMap(({ fluid: { used }, travel }) => (used === undefined ? [] : [{ used, travel }]));
  const used = withGas.map(({ used: share, travel }): Figure => (isAbsent(travel) ? travel : share(travel.to)));
  const room = (): Figure =>
    typeof atRest !== "number"
      ? atRest
      : fluid.ends === undefined
        ? absent("there is no gas in it")
        : fluid.ends - atRest;
  return {
    volumes: bodies.length,
    pressure: typeof atRest === "number" ? fluid.gauge(atRest) : atRest,
    over: over(bodies),
    used: withGas.length === 0 ? undefined : largest(used),
    ends: withGas.length === 0 ? undefined : room(),
  };
}
