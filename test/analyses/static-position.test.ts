/**
 * A set-up that puts the car higher or lower than it is drawn: everything at rest is taken where the wheels then stand.
 * Held against second differences of energy there, and against the same car drawn anew in that position.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyseAxle } from "../../server/analyses/analyse-axle.js";
import { figureAtPath } from "../../server/analyses/figure-paths.js";
import { kinematics } from "../../server/analyses/kinematics.js";
import type { AxleAnalysis, AxleRates } from "../../server/analyses/results.js";
import { assembleAxle, axleKey } from "../../server/assemble/assemble.js";
import type { Element } from "../../server/elements/element.js";
import type { AxleMechanism } from "../../server/elements/mechanism.js";
import { isDegenerate } from "../../server/linkage/geometry.js";
import { hardpointCorner } from "../../server/linkage/hardpoint.js";
import type { Corner, CornerMotion, WheelMotion } from "../../server/linkage/corner.js";
import { mirror, type Vec3 } from "../../server/maths/vec3.js";
import type { CarModel } from "../../server/model/car.js";
import { expectClose } from "../support/approx.js";
import { contextOf } from "../support/context.js";
import {
  antiRollBar,
  axle,
  damping,
  element,
  heaveSpring,
  joined,
  chassis,
  rockerEye,
  rollDamper,
  sideSprings,
  spring,
  wishboneCorner,
} from "../support/mechanisms.js";
import { ENERGY_DIFFERENCE, IDENTITY, INVARIANCE } from "../support/tolerances.js";
import { hardpoint, wishboneGeometry } from "../support/wishbone-case.js";
import { analysisOf, carText, cornerSpring, number } from "../support/written-car.js";

const GRAVITY = 9.80665;

const loaded = fc
  .record({
    travel: fc.double({ min: -8e-3, max: 8e-3, noNaN: true }),
    side: fc.double({ min: 20e3, max: 300e3, noNaN: true }),
    third: fc.double({ min: 10e3, max: 200e3, noNaN: true }),
    preload: fc.double({ min: 0, max: 1500, noNaN: true }),
    bar: fc.double({ min: 100, max: 4000, noNaN: true }),
  })
  .map(({ travel, side, third, preload, bar }) =>
    axle(
      [
        ...sideSprings(spring(side)),
        heaveSpring(spring(third, { preload })),
        antiRollBar(spring(bar)),
        rollDamper(damping(4000)),
      ],
      { staticTravel: travel },
    ),
  );

type OnWheels = CornerMotion & { readonly wheel: WheelMotion };

const hasWheel = (motion: CornerMotion): motion is OnWheels => motion.wheel !== undefined;

function cornerAt(travel: number, corner: Corner = wishboneCorner): OnWheels {
  const motion = corner.motion(travel);
  if ("kind" in motion || !hasWheel(motion)) throw new Error("out of reach");
  return motion;
}

/** Energy of all springs at the trim's seats, against both wheels' travel from design. */
function energyOf({ elements }: AxleMechanism, { trim }: AxleRates): (left: number, right: number) => number {
  if ("kind" in trim) throw new Error(trim.reason);
  const seats = new Map(trim.map(({ path, seat }) => [path, seat]));
  return (left, right) => {
    const motion = { left: cornerAt(left), right: cornerAt(right) };
    let energy = 0;
    for (const { law, connection, path } of elements) {
      const d = connection?.deflection(motion);
      if (law?.kind !== "spring" || d === undefined || "kind" in d) continue;
      energy += law.energy(d.s + (seats.get(path) ?? 0));
    }
    return energy;
  };
}

describe("an axle that stands off design position", () => {
  it("has the stiffness of the differenced energy there", () => {
    fc.assert(
      fc.property(loaded, (mechanism) => {
        const { rates } = analyseAxle(mechanism);
        const energy = energyOf(mechanism, rates);
        const { stiffness } = rates;
        if ("kind" in stiffness) throw new Error(stiffness.reason);
        const [z, h] = [mechanism.staticTravel, 2e-3];
        const second = (f: (x: number) => number): number =>
          (270 * (f(h) + f(-h)) - 27 * (f(2 * h) + f(-2 * h)) + 2 * (f(3 * h) + f(-3 * h)) - 490 * f(0)) /
          (180 * h * h);
        const sum = stiffness[0][0] + stiffness[1][1] + 2 * stiffness[0][1];
        expectClose(
          second((x) => energy(z + x, z)),
          stiffness[0][0],
          ENERGY_DIFFERENCE,
        );
        expectClose(
          second((x) => energy(z, z + x)),
          stiffness[1][1],
          ENERGY_DIFFERENCE,
        );
        expectClose(
          second((x) => energy(z + x, z + x)),
          sum,
          ENERGY_DIFFERENCE,
        );
      }),
      { numRuns: 30 },
    );
  });

  it("is in equilibrium with the weight there", () => {
    fc.assert(
      fc.property(loaded, (mechanism) => {
        const { rates } = analyseAxle(mechanism);
        const energy = energyOf(mechanism, rates);
        const [z, h] = [mechanism.staticTravel, 1e-3];
        const at = (x: number): number => energy(z + x, z);
        const slope = (8 * (at(h) - at(-h)) - (at(2 * h) - at(-2 * h))) / (12 * h);
        const load = ((mechanism.carMass ?? 0) * 0.25 * cornerAt(z).wheel.contact.d[2] - 18) * GRAVITY;
        expectClose(slope, load, ENERGY_DIFFERENCE, 1e-3);
      }),
      { numRuns: 30 },
    );
  });

  it("still holds 4·K_LL = heave rate + 4·K_φ/t²", () => {
    fc.assert(
      fc.property(loaded, (mechanism) => {
        const { rates } = analyseAxle(mechanism);
        const sum = number(rates.heaveRate) + (4 * number(rates.rollStiffness)) / (mechanism.track ?? 0) ** 2;
        expectClose(4 * number(rates.wheelRate.left), sum, IDENTITY);
      }),
      { numRuns: 30 },
    );
  });

  it("has the figures of the same car drawn anew in that position", () => {
    for (const travel of [-0.008, -0.002, 0.004]) {
      const moved = analyseAxle(axle(elementsOn(wishboneCorner, 0), { staticTravel: travel, travel: span(travel) }));
      const anew = drawnAt(travel);
      // The contact point is found anew where the car is drawn, and rises a little otherwise: the weight makes up for it.
      const rise = (corner: Corner, z: number): number => cornerAt(z, corner).wheel.contact.d[2];
      const carMass = (560 * rise(wishboneCorner, travel)) / rise(anew, 0);
      const overrides = { corners: { left: anew, right: anew }, travel: span(0), carMass };
      const drawn = analyseAxle(axle(elementsOn(anew, travel), overrides));
      expectSameFigures(moved, drawn);
    }
  });
});

/** The same part of the envelope on both sides of the position that the axle rests in. */
const span = (rest: number) => ({ from: rest - 0.015, to: rest + 0.015 });

/** Where a point of a body is at a travel of the check case's corner. */
const placed = (travel: number, body: "rocker" | "lower-wishbone" | "upper-wishbone" | "upright", point: Vec3): Vec3 =>
  cornerAt(travel).point(body, point).p;

function drawnAt(travel: number): Corner {
  const g = wishboneGeometry;
  const { wheel } = cornerAt(travel);
  if (g.rod === undefined) throw new Error("no rod");
  const made = hardpointCorner({
    ...g,
    lower: { ...g.lower, outer: placed(travel, "lower-wishbone", g.lower.outer) },
    upper: { ...g.upper, outer: placed(travel, "upper-wishbone", g.upper.outer) },
    trackRod: { ...g.trackRod, outer: placed(travel, "upright", g.trackRod.outer) },
    rod: {
      ...g.rod,
      outer: placed(travel, "lower-wishbone", g.rod.outer),
      inner: placed(travel, "rocker", g.rod.inner),
    },
    wheel: {
      centre: wheel.centre.p,
      camber: wheel.camber.value,
      toe: wheel.toe.value,
      loadedRadius: g.wheel.loadedRadius,
    },
  });
  if (isDegenerate(made)) throw new Error(made.reason);
  return made;
}

const PRELOAD = 700;
const THIRD = 60e3;

/** Springs and a diagonal damper with their eyes where they are at a travel; the third's preload is what it carries there. */
function elementsOn(corner: Corner, travel: number): readonly Element[] {
  const eye = (name: Parameters<typeof hardpoint>[0]): Vec3 =>
    travel === 0 ? hardpoint(name) : placed(travel, "rocker", hardpoint(name));
  const [side, third, high, low] = [eye("SPR"), eye("HSR"), eye("RDT"), eye("RDB")];
  const anchor = hardpoint("SPC");
  const shortened = 2 * (hardpoint("HSR")[1] - third[1]);
  expect(corner.basis).toBe("hardpoints");
  return [
    element("side", joined(rockerEye("left", side), chassis(anchor)), spring(120e3), { side: "left", for: ["corner"] }),
    element("side", joined(rockerEye("right", side), chassis(mirror(anchor))), spring(120e3), {
      side: "right",
      for: ["corner"],
    }),
    element(
      "third",
      joined(rockerEye("left", third), rockerEye("right", third)),
      spring(THIRD, { preload: PRELOAD + THIRD * shortened }),
      { for: ["heave"] },
    ),
    element("diagonal", joined(rockerEye("left", high), rockerEye("right", low)), damping(4000), { for: ["roll"] }),
  ];
}

function expectSameFigures(moved: AxleAnalysis, drawn: AxleAnalysis): void {
  expectClose(number(moved.rates.heaveRate), number(drawn.rates.heaveRate), INVARIANCE);
  expectClose(number(moved.rates.rollStiffness), number(drawn.rates.rollStiffness), INVARIANCE);
  expectClose(number(moved.rates.heaveDamping), number(drawn.rates.heaveDamping), INVARIANCE);
  expectClose(number(moved.atRest.left.camber), number(drawn.atRest.left.camber), INVARIANCE);
  for (const [i, of] of moved.elements.entries()) {
    const other = drawn.elements[i];
    if (other === undefined || "kind" in of.sensitivity || "kind" in other.sensitivity) throw new Error("no motion");
    expectClose(of.sensitivity.heave, other.sensitivity.heave, INVARIANCE, INVARIANCE);
    expectClose(of.sensitivity.roll, other.sensitivity.roll, INVARIANCE, INVARIANCE);
    expectClose(number(of.staticLoad), number(other.staticLoad), INVARIANCE);
    if (of.leak === undefined || "kind" in of.leak) continue;
    if (other.leak === undefined || "kind" in other.leak) throw new Error("no leak");
    expectClose(of.leak.firstOrder, other.leak.firstOrder, INVARIANCE, INVARIANCE);
    expectClose(number(of.leak.finite), number(other.leak.finite), INVARIANCE, INVARIANCE);
    expectClose(number(of.leak.rate), number(other.leak.rate), 1e-9);
  }
}

const third = `spring third for heave {
      rate 55 N/mm
      preload 400 N
      between left.rocker.third and right.rocker.third
    }`;
const car = carText({ elements: `${cornerSpring}\n${third}` });

function setupOf(lines: string, more = ""): CarModel {
  const text = `use "car.crank"\n${more}\nsetup tried-wet from ${more === "" ? "tried" : "raised"} {\n${lines}\n}\n`;
  const made = contextOf({ "car.crank": car, "wet.crank": text }, "wet.crank").cars.at(-1);
  if (made === undefined) throw new Error("no set-up");
  return made.model;
}

const frontOf = (model: CarModel): AxleMechanism => {
  if (model.axles.front === undefined) throw new Error("no front axle");
  return assembleAxle(model.axles.front, model);
};

describe("a set-up's ride height", () => {
  it("moves the wheels by what it differs from the car's, over any number of set-ups", () => {
    expect(frontOf(setupOf("front.ride-height by +2 mm")).staticTravel).toBeCloseTo(-0.002, 15);
    expect(frontOf(setupOf("front.ride-height 26 mm")).staticTravel).toBeCloseTo(0.004, 15);
    const chained = setupOf(
      "front.ride-height by +1 mm",
      "setup raised from tried {\n front.ride-height by +2 mm\n}\n",
    );
    expect(frontOf(chained).staticTravel).toBeCloseTo(-0.003, 15);
    expect(frontOf(setupOf("mass 570 kg")).staticTravel).toBe(0);
  });

  it("leaves the linkage, the wheel's radius and the envelope as they are drawn", () => {
    const bare = car.replace(/loaded-radius .* mm\n/, "\n");
    const files = {
      "car.crank": bare,
      "up.crank": 'use "car.crank"\nsetup up from tried {\n front.ride-height 40 mm\n}\n',
    };
    const up = contextOf(files, "up.crank").cars[0]?.model;
    const drawn = contextOf(files, "car.crank").cars[0]?.model;
    if (up === undefined || drawn === undefined) throw new Error("no car");
    const [raised, level] = [frontOf(up), frontOf(drawn)];
    expect(raised.travel).toEqual(level.travel);
    const at = (mechanism: AxleMechanism) => kinematics(mechanism, [0.01], [0])[0]?.left;
    expect(at(raised)).toEqual(at(level));
  });

  it("is where camber, wheel travel, deflections and loads at rest are read", () => {
    const model = setupOf("front.ride-height by +2 mm");
    const analysis = analysisOf(model);
    const [row] = kinematics(frontOf(model), [-0.002], [0]);
    if (row === undefined || "kind" in row.left) throw new Error("no row");
    const figure = (path: string): number => number(figureAtPath(analysis, path));
    expectClose(figure("front.wheel-travel"), -0.002, IDENTITY);
    expectClose(figure("front.camber"), row.left.camber, IDENTITY);
    const shortened = number(row.elements.find(({ path }) => path === "front.third")?.deflection);
    expect(shortened).toBeLessThan(-0.001);
    expectClose(figure("front.third.deflection"), shortened, IDENTITY);
    expectClose(figure("front.third.load"), 400 + 55e3 * shortened, IDENTITY);
    expectClose(figure("front.ride-height"), 0.032, IDENTITY);
  });

  it("says why there is nothing where the links do not reach it", () => {
    const analysis = analysisOf(setupOf("front.ride-height 190 mm"));
    const rate = analysis.axles.front?.rates.heaveRate;
    expect((rate as { reason: string }).reason).toMatch(/binds at -.* mm of travel, short of -160 mm/);
  });

  it("is part of the axle's key, and what it is measured from too", () => {
    const keyOf = (model: CarModel | undefined): string => {
      if (model?.axles.front === undefined) throw new Error("no front axle");
      return axleKey(model.axles.front, model);
    };
    const raised = keyOf(setupOf("front.ride-height 32 mm"));
    expect(raised).not.toBe(keyOf(setupOf("front.ride-height 33 mm")));
    const drawn = contextOf({ "car.crank": car.replace("ride-height 30 mm", "ride-height 32 mm") }, "car.crank");
    expect(raised).not.toBe(keyOf(drawn.cars[0]?.model));
  });
});
