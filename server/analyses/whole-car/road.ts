/**
 * What a random road does to a car: RMS tyre load, suspension travel and its speed, ride height, body accelerations, and the
 * two headline figures of each axle, *contact* (RMS dynamic tyre load over static) and *platform* (RMS change of ride height).
 *
 * Linear about a case; loads below zero, stops and gaps are not seen here (`on-road.ts` takes them in, with digressive dampers).
 * Ride height is that of the axle line above the mean of the road under its two wheels.
 *
 * Invariant: a car that does not settle has no response, and says so.
 */
import { absent } from "../absent.js";
import type { Figure } from "../results.js";
import type { WholeCar } from "./car-data.js";
import { drivenOf, type Output } from "./channels.js";
import { type CarDynamics, carDynamics, FIRST_WHEEL, FREEDOMS } from "./dynamics.js";
import type { Sides } from "./road-profile.js";
import { meanSquares, type RoadConditions, USUAL_BAND } from "./road-variances.js";
import { whyUnsettled } from "./settling.js";

export interface RoadCase {
  /** G_d(n₀), m³: `roughnessOf("B")`. */
  readonly roughness: number;
  /** m/s. */
  readonly speed: number;
  /** Load of each tyre in the case, N; undefined where it is not known. */
  readonly staticLoads: readonly (number | undefined)[];
  readonly sides?: Sides;
  /** Cycle/m. */
  readonly band?: RoadConditions["band"];
  /** m. */
  readonly contactLength?: number;
  /** Of every mean square. */
  readonly accuracy?: number;
}

export interface WheelResponse {
  /** RMS change of the tyre's load, N. */
  readonly load: number;
  /** Over the static load; a fraction. */
  readonly contact: Figure;
  /** RMS travel relative to the body, m, and its speed, m/s. */
  readonly travel: number;
  readonly travelSpeed: number;
}

export interface AxleResponse {
  /** Root of the mean square of both wheels' contact; a fraction. */
  readonly contact: Figure;
  /** RMS change of ride height about its mean, m. */
  readonly platform: number;
  /** What the road adds to the mean ride height, m; nought for a linear car. */
  readonly raised: number;
}

export interface RoadResponse {
  readonly kind: "road-response";
  readonly wheels: readonly WheelResponse[];
  readonly front: AxleResponse;
  readonly rear: AxleResponse;
  /** RMS acceleration of the sprung centre of gravity, m/s², and of roll and pitch, rad/s². */
  readonly body: { readonly heave: number; readonly roll: number; readonly pitch: number };
  /** Largest relative error that a mean square may have. */
  readonly error: number;
}

export interface NoRoadResponse {
  readonly kind: "no-road-response";
  /** `unstable`: it diverges or swings up; `no-modes`: masses or numbers are missing; `unbounded`: a mean square is not finite. */
  readonly reason: "unstable" | "no-modes" | "unbounded";
}

/**
 * Of the estimated error, which is on the safe side. Held against sums to 1e-9 over ten cars, five speeds and every kind of
 * sides, the worst mean square was off by 1.7 parts in a thousand, nineteen of twenty by less than two in ten thousand: far
 * below what a road's class says.
 */
const ACCURACY = 1e-2;

export function roadResponse(car: WholeCar, road: RoadCase): RoadResponse | NoRoadResponse {
  const dynamics = carDynamics(car);
  const outputs = outputsOf(dynamics);
  const driven = drivenOf(dynamics, sidesOf(road), outputs);
  const missing = whyUnsettled(driven.map(({ system }) => system));
  if (missing !== undefined) return { kind: "no-road-response", reason: missing };
  const asked = { driven, operators: outputs.map(({ operator }) => operator), delay: car.wheelbase / road.speed };
  const found = meanSquares(asked, conditionsOf(car, road), { relative: road.accuracy ?? ACCURACY });
  if (found === undefined) return { kind: "no-road-response", reason: "unbounded" };
  return responseOf(Array.from(found.values, Math.sqrt), road.staticLoads, found.error);
}

export const sidesOf = ({ sides = "isotropic" }: RoadCase): Sides => sides;

export const conditionsOf = (car: WholeCar, road: RoadCase): RoadConditions => ({
  roughness: road.roughness,
  speed: road.speed,
  band: road.band ?? USUAL_BAND,
  contactLength: road.contactLength ?? 0,
  sides: sidesOf(road),
  track: (car.front.track + car.rear.track) / 2,
});

const along = (entries: Readonly<Record<number, number>>): number[] =>
  Array.from({ length: FREEDOMS }, (_, i) => entries[i] ?? 0);

const NO_ROAD = [0, 0, 0, 0];

/** Loads, travels and speeds of the four wheels, two heights, three accelerations; in the order that `responseOf` reads. */
export function outputsOf({ travel, heights, roadHeights, tyres }: CarDynamics): Output[] {
  const tyre = (i: number): Output => ({
    motion: along({ [FIRST_WHEEL + i]: -1 }),
    road: NO_ROAD.map((_, j) => (i === j ? 1 : 0)),
    operator: [tyres.rate[i]!, tyres.damping[i]!, 0],
  });
  return [
    ...[0, 1, 2, 3].map(tyre),
    ...travel.map((motion): Output => ({ motion, road: NO_ROAD, operator: [1, 0, 0] })),
    ...travel.map((motion): Output => ({ motion, road: NO_ROAD, operator: [0, 1, 0] })),
    ...heights.map(
      (motion, i): Output => ({ motion, road: roadHeights[i]!.map((value) => -value), operator: [1, 0, 0] }),
    ),
    ...[0, 1, 2].map((i): Output => ({ motion: along({ [i]: 1 }), road: NO_ROAD, operator: [0, 0, 1] })),
  ];
}

function responseOf(rms: readonly number[], loads: RoadCase["staticLoads"], error: number): RoadResponse {
  const wheels = [0, 1, 2, 3].map((i) => ({
    load: rms[i]!,
    contact: contactOf(rms[i]!, loads[i]),
    travel: rms[4 + i]!,
    travelSpeed: rms[8 + i]!,
  }));
  const axle = (first: number, platform: number): AxleResponse => ({
    contact: together(wheels[first]!.contact, wheels[first + 1]!.contact),
    platform,
    raised: 0,
  });
  return {
    kind: "road-response",
    wheels,
    front: axle(0, rms[12]!),
    rear: axle(2, rms[13]!),
    body: { heave: rms[14]!, roll: rms[15]!, pitch: rms[16]! },
    error,
  };
}

function contactOf(load: number, atRest: number | undefined): Figure {
  if (atRest === undefined) return absent("the load of this tyre is not known");
  return atRest > 0 ? load / atRest : absent("the wheel carries nothing in this case");
}

function together(left: Figure, right: Figure): Figure {
  if (typeof left !== "number") return left;
  if (typeof right !== "number") return right;
  return Math.sqrt((left * left + right * right) / 2);
}
