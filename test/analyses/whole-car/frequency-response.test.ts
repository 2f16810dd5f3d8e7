/** Transfer functions of the whole car: closed forms of the quarter car, a second way, and the road's mean squares from them. */
import { describe, expect, it } from "vitest";
import type { WholeCar } from "../../../server/analyses/whole-car/car-data.js";
import {
  type FrequencyResponse,
  frequencyResponse,
  ROAD_MOTIONS,
  type ResponseAsked,
} from "../../../server/analyses/whole-car/frequency-response.js";
import { heightDensityInTime } from "../../../server/analyses/whole-car/road-profile.js";
import { roadResponse } from "../../../server/analyses/whole-car/road.js";
import { expectClose } from "../../support/approx.js";
import { CLOSED_FORM, DIRECT_RESPONSE, ROAD_SUMMED } from "../../support/tolerances.js";
import { car7, crookedCar } from "../../support/whole-car.js";

const row = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => from * (to / from) ** (i / (count - 1)));

const FREQUENCIES = row(0.3, 40, 41);

function response(car: WholeCar, asked: Partial<ResponseAsked> = {}, way?: "direct"): FrequencyResponse {
  const found = frequencyResponse(car, { motion: "heave", frequencies: FREQUENCIES, speed: 40, ...asked }, way);
  if (found.kind !== "frequency-response") throw new Error(found.reason);
  return found;
}

function curveOf({ curves }: FrequencyResponse, of: string, name: string) {
  const found = curves.find((curve) => curve.of === of && curve.name === name);
  if (found === undefined) throw new Error(`no curve ${of} ${name}`);
  return found;
}

/** Balanced in pitch: the centre of gravity in the middle of two like axles, so that heave is a quarter car. */
const balanced: WholeCar = { ...car7, sprung: { ...car7.sprung, behindFront: 1.35 }, rear: car7.front };

describe("transfer functions of a car", () => {
  it("in heave are those of the quarter car (two masses on springs, solved by hand; any text on vibration)", () => {
    const [mass, wheel, tyre] = [1200 / 4, 40, 220e3];
    // In heave each wheel has k_LL + k_LR and c_LL of CAR7's front axle.
    const { stiffness, damping } = car7.front;
    const [k, c] = [stiffness[0]![0]! + stiffness[0]![1]!, damping[0]![0]! + damping[0]![1]!];
    const found = response(balanced);
    for (const [i, frequency] of FREQUENCIES.entries()) {
      const w = 2 * Math.PI * frequency;
      // z_s/z_r = k_t (k + jcω)/D, (z_s − z_u) by the mass' own equation, F = k_t (z_r − z_u).
      const [a, b] = [k - mass * w * w, c * w];
      const e = k + tyre - wheel * w * w;
      const [dRe, dIm] = [a * e - b * b - (k * k - b * b), a * b + b * e - 2 * k * b];
      const d = Math.hypot(dRe, dIm);
      expectClose(curveOf(found, "body", "heave").gain[i]!, (tyre * Math.hypot(k, b)) / d, CLOSED_FORM);
      expectClose(curveOf(found, "rear-left", "travel").gain[i]!, (tyre * mass * w * w) / d, CLOSED_FORM);
      // k_t (1 − k_t a/D)
      const load = tyre * Math.hypot(dRe - tyre * a, dIm - tyre * b);
      expectClose(curveOf(found, "front-left", "tyre load").gain[i]!, load / d, CLOSED_FORM);
      expect(curveOf(found, "body", "pitch").gain[i]).toBe(0);
    }
  });

  it("follow the road as one where it swings slowly", () => {
    const slow = response(crookedCar, { motion: "heave", frequencies: [1e-6] });
    expectClose(curveOf(slow, "body", "heave").gain[0]!, 1, CLOSED_FORM);
    expectClose(curveOf(slow, "front", "ride height").gain[0]!, 0, CLOSED_FORM, 1e-9);
  });

  it.each(ROAD_MOTIONS)("of a road in %s are alike by modes and frequency by frequency", (motion) => {
    const [modes, direct] = [response(crookedCar, { motion }), response(crookedCar, { motion }, "direct")];
    for (const [i, { gain, quantity }] of modes.curves.entries()) {
      const least = quantity === "load" ? 1e-3 : 1e-9;
      for (const [k, value] of gain.entries()) expectClose(value, direct.curves[i]!.gain[k]!, DIRECT_RESPONSE, least);
    }
  });

  it("add up: the four wheels together are heave", () => {
    const wheels = ROAD_MOTIONS.slice(-4).map((motion) => response(crookedCar, { motion }));
    const heave = response(crookedCar);
    for (const [i, { gain, phase, quantity }] of heave.curves.entries()) {
      const least = quantity === "load" ? 1e-3 : 1e-9;
      for (const [k, value] of gain.entries()) {
        const sum = (part: (angle: number) => number): number =>
          wheels.reduce((total, { curves }) => total + curves[i]!.gain[k]! * part(curves[i]!.phase[k]!), 0);
        expectClose(sum(Math.cos), value * Math.cos(phase[k]!), CLOSED_FORM, least);
        expectClose(sum(Math.sin), value * Math.sin(phase[k]!), CLOSED_FORM, least);
      }
    }
  });

  it("passing under the car, summed over the spectrum of ISO 8608, are the root mean squares of the road", () => {
    const [roughness, speed, band] = [16e-6, 40, { from: 0.01, to: 10 }];
    const frequencies = row(band.from * speed, band.to * speed, 6001);
    const found = response(crookedCar, { motion: "passing", frequencies, speed });
    const rms = roadResponse(crookedCar, { roughness, speed, band, sides: "same", staticLoads: [1, 1, 1, 1] });
    if (rms.kind !== "road-response") throw new Error(rms.reason);
    const meanSquare = (gain: readonly number[]): number => {
      const step = Math.log(frequencies[1]! / frequencies[0]!);
      const values = gain.map(
        (value, i) => value ** 2 * heightDensityInTime(roughness, speed, frequencies[i]!) * frequencies[i]!,
      );
      return step * values.reduce((sum, value, i) => sum + (i === 0 || i === values.length - 1 ? value / 2 : value), 0);
    };
    const of = (subject: string, name: string): number => Math.sqrt(meanSquare(curveOf(found, subject, name).gain));
    expectClose(of("front", "ride height"), rms.front.platform, ROAD_SUMMED);
    expectClose(of("rear", "ride height"), rms.rear.platform, ROAD_SUMMED);
    expectClose(of("front-left", "tyre load"), rms.wheels[0]!.load, ROAD_SUMMED);
    expectClose(of("rear-right", "travel"), rms.wheels[3]!.travel, ROAD_SUMMED);
  });

  it("are absent with a reason where the car does not settle, or the road does not move", () => {
    const limp = {
      ...car7,
      front: {
        ...car7.front,
        stiffness: [
          [-4e5, 0],
          [0, -4e5],
        ],
      },
    };
    expect(frequencyResponse(limp, { motion: "heave", frequencies: [1], speed: 0 })).toMatchObject({
      kind: "absent",
      reason: "the car does not settle there",
    });
    expect(frequencyResponse(car7, { motion: "passing", frequencies: [1], speed: 0 })).toMatchObject({
      kind: "absent",
    });
  });
});
