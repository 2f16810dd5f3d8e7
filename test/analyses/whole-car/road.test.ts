/** A car on a random road against an integration of its own by SciPy (test/oracle/whole_car.py), and against what has to hold. */
import { describe, expect, it } from "vitest";
import type { WholeCar } from "../../../server/analyses/whole-car/car-data.js";
import {
  classOf,
  commonShare,
  contactFilter,
  heightDensityInTime,
  profileRms,
  type RoadClass,
  roughnessOf,
  velocityDensity,
} from "../../../server/analyses/whole-car/road-profile.js";
import { type RoadCase, type RoadResponse, roadResponse } from "../../../server/analyses/whole-car/road.js";
import { expectClose } from "../../support/approx.js";
import { CLOSED_FORM, ROAD_FINE, ROAD_SHOWN } from "../../support/tolerances.js";
import { car7, crookedCar } from "../../support/whole-car.js";
import { wholeCarData } from "../../support/whole-car-data.js";

const loads = [3200, 3100, 3000, 2900];

function response(car: WholeCar, road: Partial<RoadCase>): RoadResponse {
  const found = roadResponse(car, { roughness: 16e-6, speed: 40, staticLoads: loads, ...road });
  if (found.kind !== "road-response") throw new Error(found.reason);
  return found;
}

const rmsOf = ({ wheels, front, rear, body }: RoadResponse): number[] => [
  ...wheels.map(({ load }) => load),
  ...wheels.map(({ travel }) => travel),
  ...wheels.map(({ travelSpeed }) => travelSpeed),
  front.platform,
  rear.platform,
  body.heave,
  body.roll,
  body.pitch,
];

describe("root mean squares on a random road", () => {
  it.each(wholeCarData.cars.map((entry, i) => [i, entry] as const))(
    "of car %d are SciPy's",
    (_, { car, road, rms }) => {
      const fine = rmsOf(response(car, { ...road, accuracy: 1e-9 }));
      const shown = rmsOf(response(car, road));
      for (const [i, expected] of rms.entries()) {
        expectClose(fine[i]!, expected, ROAD_FINE, 1e-8);
        expectClose(shown[i]!, expected, ROAD_SHOWN, 1e-8);
      }
    },
  );

  it("grow with the root of the roughness", () => {
    const [smooth, rough] = [response(car7, {}), response(car7, { roughness: 64e-6 })].map(rmsOf);
    for (const [i, value] of smooth!.entries()) expectClose(rough![i]!, 2 * value, CLOSED_FORM);
  });

  it("swap with the sides of the car", () => {
    const turned = (rows: readonly (readonly number[])[]) => [...rows].reverse().map((row) => [...row].reverse());
    const axle = ({ left, right, stiffness, damping, inertance, track }: WholeCar["front"]): WholeCar["front"] => ({
      track,
      left: right,
      right: left,
      stiffness: turned(stiffness),
      damping: turned(damping),
      inertance: turned(inertance),
    });
    const { cross: _, ...plain } = crookedCar;
    const mirrored = {
      ...plain,
      sprung: { ...plain.sprung, left: -0.03 },
      front: axle(plain.front),
      rear: axle(plain.rear),
    };
    const [one, other] = [response(plain, { accuracy: 1e-9 }), response(mirrored, { accuracy: 1e-9 })];
    for (const [a, b] of [
      [0, 1],
      [1, 0],
      [2, 3],
      [3, 2],
    ] as const) {
      expectClose(one.wheels[a]!.load, other.wheels[b]!.load, ROAD_FINE);
      expectClose(one.wheels[a]!.travel, other.wheels[b]!.travel, ROAD_FINE);
    }
  });

  it("do not roll a mirrored car on a road that is the same left and right", () => {
    const { body } = response(car7, { sides: "same" });
    expect(body.roll).toBe(0);
    expect(body.heave).toBeGreaterThan(0);
  });

  it("shrink with a longer contact length", () => {
    const [point, long] = [response(car7, {}), response(car7, { contactLength: 0.2 })];
    expect(long.wheels[0]!.load).toBeLessThan(0.99 * point.wheels[0]!.load);
  });
});

describe("contact and platform", () => {
  it("are the load over the static load, and the ride height", () => {
    const { wheels, front } = response(car7, {});
    expectClose(wheels[0]!.contact as number, wheels[0]!.load / 3200, CLOSED_FORM);
    const [l, r] = [wheels[0]!.contact as number, wheels[1]!.contact as number];
    expectClose(front.contact as number, Math.sqrt((l * l + r * r) / 2), CLOSED_FORM);
    expect(front.platform).toBeGreaterThan(1e-3);
  });

  it("are not told where a wheel carries nothing or its load is not known", () => {
    const { wheels, front, rear } = response(car7, { staticLoads: [0, 3000, undefined, 3000] });
    expect(wheels[0]!.contact).toMatchObject({ kind: "absent", reason: "the wheel carries nothing in this case" });
    expect(front.contact).toMatchObject({ kind: "absent" });
    expect(rear.contact).toMatchObject({ kind: "absent", reason: "the load of this tyre is not known" });
  });
});

describe("what cannot be told", () => {
  const road = { roughness: 16e-6, speed: 40, staticLoads: loads };
  it("is why: the car does not settle, has no masses, or does not move", () => {
    const diverging = {
      ...car7,
      air: {
        slopes: [
          [-2e5, 0],
          [0, 0],
        ],
      },
    };
    expect(roadResponse(diverging, road)).toEqual({ kind: "no-road-response", reason: "unstable" });
    const massless = { ...car7, sprung: { ...car7.sprung, mass: 0 } };
    expect(roadResponse(massless, road)).toEqual({ kind: "no-road-response", reason: "no-modes" });
    for (const speed of [0, -1, Number.NaN, Infinity]) {
      expect(roadResponse(car7, { ...road, speed })).toEqual({ kind: "no-road-response", reason: "unbounded" });
    }
  });
});

describe("ISO 8608 (from memory)", () => {
  it("has each class at four times the one before", () => {
    const classes: readonly RoadClass[] = ["A", "B", "C", "D", "E", "F", "G", "H"];
    const gv = [
      6.3165468167e-6, 2.52661872668e-5, 1.01064749067e-4, 4.04258996269e-4, 1.61703598507e-3, 6.4681439403e-3,
    ];
    for (const [i, name] of classes.entries()) {
      expect(roughnessOf(name)).toBe(16e-6 * 4 ** i);
      expect(classOf(roughnessOf(name))).toBe(name);
      if (gv[i] !== undefined) expectClose(velocityDensity(roughnessOf(name), 1), gv[i], CLOSED_FORM);
    }
    expect(classOf(32e-6)).toBe("B");
    expect(classOf(31.9e-6)).toBe("A");
    expect(classOf(1)).toBe("H");
  });

  it("has the profile and spectra of class A", () => {
    expectClose(profileRms(16e-6, 0.01, 10), 3.99799949975e-3, CLOSED_FORM);
    expectClose(velocityDensity(16e-6, 20), 0.000126330936334, CLOSED_FORM);
    expectClose(heightDensityInTime(16e-6, 20, 1), 3.2e-6, CLOSED_FORM);
  });

  it("has left and right alike at long waves and apart at short ones", () => {
    expectClose(commonShare("isotropic", 1e-6, 1.5), 1, 1e-8);
    expect(commonShare("isotropic", 5, 1.5)).toBeLessThan(1e-10);
    expect(commonShare("same", 5, 1.5)).toBe(1);
    expect(commonShare("independent", 1e-3, 1.5)).toBe(0);
  });

  it("is averaged to nothing by a contact as long as its wave", () => {
    expect(contactFilter(10, 0.1)).toBeLessThan(1e-30);
    expect(contactFilter(0.1, 0)).toBe(1);
    expectClose(contactFilter(5, 0.1), (2 / Math.PI) ** 2, CLOSED_FORM);
  });
});
