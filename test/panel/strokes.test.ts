/** What the page interpolates is held against the engine's own kinematics of the sample. */
import { describe, expect, it } from "vitest";
import { AT_REST, type Pose } from "../../client/panel/page/pose.js";
import { bodyOver, posedCar } from "../../client/panel/page/scene.js";
import { deflectionAt, strokeOf, carriedOf } from "../../client/panel/page/strokes.js";
import { vectorAt } from "../../client/panel/page/tables.js";
import { kinematics } from "../../server/analyses/kinematics.js";
import { assembleAxle } from "../../server/assemble/assemble.js";
import { answerFor, sampleFile } from "../support/panel-page.js";
import { PANEL_INTERPOLATION } from "../support/tolerances.js";

const file = sampleFile("quill/quill.crank");
const car = answerFor(file).car!;
const front = car.axles[0]!;
const model = file.cars[0]!.model;
const mechanism = assembleAxle(model.axles.front!, model);

const poses: readonly Pose[] = [
  { ...AT_REST, heave: 0.0137 },
  { ...AT_REST, roll: 0.021 },
  { ...AT_REST, heave: -0.0083, roll: -0.013 },
];

describe("the page's interpolation against the engine", () => {
  it.each(poses)("meets wheels and elements at %o", (pose) => {
    const [row] = kinematics(mechanism, [pose.heave], [pose.roll]);
    const [axle] = posedCar(car, [front], pose, "front");
    for (const side of ["left", "right"] as const) {
      const exact = row![side];
      if ("kind" in exact) throw new Error("not reached");
      const centre = vectorAt(axle![side].data.wheel!.centre, axle![side].weights);
      for (const i of [0, 1, 2] as const)
        expect(Math.abs(centre![i] - exact.centre[i])).toBeLessThan(PANEL_INTERPOLATION);
    }
    for (const element of front.elements) {
      const exact = row!.elements.find(({ path }) => path === element.path)!.deflection;
      const shown = deflectionAt(element, car, "front", pose, "front");
      expect(Math.abs(shown! - Number(exact)) / (element.unit === "deg" ? 20 : 1)).toBeLessThan(PANEL_INTERPOLATION);
    }
  });
});

const called = (name: string) => front.elements.find((element) => element.name === name)!;

describe("strokes by motion", () => {
  it("show a roll damper that is only carried along in heave and is worked in roll", () => {
    const damper = called("roll-damper");
    const heave = strokeOf(damper, car, "front", { ...AT_REST, heave: 0.02 }, "front");
    const roll = strokeOf(damper, car, "front", { ...AT_REST, roll: 0.02 }, "front");
    expect(Math.abs(heave.whole!)).toBeLessThan(2e-4);
    expect(Math.abs(roll.whole!)).toBeGreaterThan(5e-3);
    const posed = (pose: Pose) => posedCar(car, [front], pose, "front");
    expect(carriedOf(damper, posed({ ...AT_REST, heave: 0.02 }), posed(AT_REST))).toBeGreaterThan(5e-3);
  });
  it("sum up to the whole", () => {
    const pose = { ...AT_REST, heave: 0.006, roll: 0.008, pitch: 0.003, single: 0.002 };
    for (const element of front.elements) {
      const { whole, parts } = strokeOf(element, car, "front", pose, "front");
      expect(parts.reduce((all, { by }) => all + by, 0)).toBeCloseTo(whole!, 5);
    }
  });
});

describe("the road held instead of the body", () => {
  it("lets every contact point of a rolled axle stand at one height", () => {
    const axles = posedCar(car, [front], { ...AT_REST, roll: 0.02 }, "front");
    const { turn, shift } = bodyOver(axles, -0.032);
    const heights = (["left", "right"] as const).map((side) => {
      const corner = axles[0]![side];
      const [x, y, z] = vectorAt(corner.data.wheel!.contact, corner.weights)!;
      const up = turn[2];
      return up[0] * x + up[1] * y + up[2] * z + shift[2];
    });
    expect(Math.abs(heights[0]! - heights[1]!)).toBeLessThan(1e-3);
    expect(Math.abs(heights[0]! + 0.032)).toBeLessThan(2e-3);
  });
});
