/**
 * Transfer functions of a car about a case: what a unit of road height that swings does to tyre loads, travels, ride
 * heights and the body, as gain and phase over the frequency.
 *
 * Heave, pitch, roll and warp of the road are the patterns of `elements/patterns`, a metre at every wheel; a wheel's own name
 * is a metre under it alone; `passing` is a road that is driven over: alike on both sides, the rear axle ℓ/v later.
 *
 * Dampers count with their low-speed coefficients, gaps and stops as they stand in the case: gains of small movements.
 * Invariant: a car that does not settle has no transfer function, and says so.
 */
import { PATTERNS } from "../../elements/patterns.js";
import { absent } from "../absent.js";
import type { Absent } from "../results.js";
import type { WholeCar } from "./car-data.js";
import { type CarDynamics, carDynamics } from "./dynamics.js";
import type { Output } from "./channels.js";
import { partOf } from "./parts.js";
import { outputsOf } from "./road.js";
import { operated, type Responder, responderOf } from "./transfer.js";

/** Road heights that may swing, in the order in which they are offered. */
export const ROAD_MOTIONS = [
  "passing",
  "heave",
  "pitch",
  "roll",
  "warp",
  "front-left",
  "front-right",
  "rear-left",
  "rear-right",
] as const;

export type RoadMotion = (typeof ROAD_MOTIONS)[number];

export interface ResponseAsked {
  readonly motion: RoadMotion;
  /** Hz, each above nought. */
  readonly frequencies: readonly number[];
  /** m/s; only `passing` needs one. */
  readonly speed: number;
}

/** N/m for a load, 1 for a travel or a height, rad/m for an angle. */
export type Quantity = "load" | "length" | "angle";

export interface ResponseCurve {
  /** `front-left`, `front` or `body`. */
  readonly of: string;
  readonly name: string;
  readonly quantity: Quantity;
  /** One for each frequency; phases in rad from −π to π, ahead of the road at the front axle where above nought. */
  readonly gain: readonly number[];
  readonly phase: readonly number[];
}

export interface FrequencyResponse {
  readonly kind: "frequency-response";
  readonly curves: readonly ResponseCurve[];
}

interface Shown extends Output {
  readonly of: string;
  readonly name: string;
  readonly quantity: Quantity;
}

const WHEELS = ["front-left", "front-right", "rear-left", "rear-right"] as const;

/** @param way of the responder, for tests */
export function frequencyResponse(
  car: WholeCar,
  asked: ResponseAsked,
  way?: Responder["way"],
): FrequencyResponse | Absent {
  const dynamics = carDynamics(car);
  const part = partOf(dynamics, undefined);
  if (part === undefined) return absent("masses or inertias are missing");
  if (part.spectrum.re.some((re) => re >= 0)) return absent("the car does not settle there");
  if (asked.motion === "passing" && !(asked.speed > 0))
    return absent("a road that passes under the car needs a speed above nought");
  const outputs = shownOf(dynamics);
  const responder = responderOf(part, outputs, way);
  const rows = outputs.map(() => ({ gain: [] as number[], phase: [] as number[] }));
  const into = new Float64Array(2 * outputs.length);
  for (const frequency of asked.frequencies) {
    const omega = 2 * Math.PI * frequency;
    const road = heightsOf(asked, omega * (car.wheelbase / asked.speed));
    if (!responder.at(omega, road, into)) return absent("nothing resists the car at a frequency that was asked for");
    for (const [i, { operator }] of outputs.entries()) {
      const [re, im] = operated(operator, omega, [into[2 * i]!, into[2 * i + 1]!]);
      rows[i]!.gain.push(Math.hypot(re, im));
      rows[i]!.phase.push(Math.atan2(im, re));
    }
  }
  const curves = outputs.map(({ of, name, quantity }, i) => ({ of, name, quantity, ...withoutNoise(rows[i]!) }));
  return { kind: "frequency-response", curves };
}

/** Below this, N/m, 1 or rad/m, a gain is what rounding leaves of nought, and its phase says nothing. */
const NOISE = 1e-11;

function withoutNoise({ gain, phase }: Pick<ResponseCurve, "gain" | "phase">): Pick<ResponseCurve, "gain" | "phase"> {
  const isNoise = gain.map((value) => value < NOISE);
  return {
    gain: gain.map((value, i) => (isNoise[i] ? 0 : value)),
    phase: phase.map((value, i) => (isNoise[i] ? 0 : value)),
  };
}

/** The four heights, re and im by turns. */
function heightsOf({ motion }: ResponseAsked, late: number): Float64Array {
  const road = new Float64Array(8);
  const amplitudes = motion === "passing" ? PATTERNS.heave : amplitudesOf(motion);
  for (const [i, amplitude] of amplitudes.entries()) {
    const isLate = motion === "passing" && i >= 2;
    road[2 * i] = isLate ? amplitude * Math.cos(late) : amplitude;
    road[2 * i + 1] = isLate ? -amplitude * Math.sin(late) : 0;
  }
  return road;
}

function amplitudesOf(motion: Exclude<RoadMotion, "passing">): readonly number[] {
  const wheel = WHEELS.findIndex((name) => name === motion);
  if (wheel >= 0) return WHEELS.map((_, i) => (i === wheel ? 1 : 0));
  return PATTERNS[motion as keyof typeof PATTERNS];
}

/** Loads and travels of the wheels, both heights above the road, and the body's own three movements. */
function shownOf(dynamics: CarDynamics): readonly Shown[] {
  const outputs = outputsOf(dynamics);
  const named = (from: number, of: readonly string[], name: string, quantity: Quantity): Shown[] =>
    of.map((one, i) => ({ ...outputs[from + i]!, of: one, name, quantity }));
  const body = (["heave", "roll", "pitch"] as const).map(
    (name, i): Shown => ({
      ...outputs[14 + i]!,
      operator: [1, 0, 0],
      of: "body",
      name,
      quantity: name === "heave" ? "length" : "angle",
    }),
  );
  return [
    ...body,
    ...named(12, ["front", "rear"], "ride height", "length"),
    ...named(0, WHEELS, "tyre load", "load"),
    ...named(4, WHEELS, "travel", "length"),
  ];
}
