/** What the car weighs, from its words: against sums done by hand, and against itself mirrored. */
import { describe, expect, it } from "vitest";
import { massesOfCar } from "../../server/assemble/masses.js";
import type { CarModel } from "../../server/model/car.js";
import { contextOf } from "../support/context.js";
import { twoAxles } from "../support/two-axles.js";

/** 560 kg, half of it at the front, 300 mm high; both axles' wheels at (…, ±780, 320) mm, 30 mm above the ground. */
const base = twoAxles("roll-inertia 60 kg*m^2\n pitch-inertia 400 kg*m^2");
/** The rear axle, which that text writes first, put behind the front one. */
const withRear = (text: string): string => text.replace("centre (0, 780, 320) mm", "centre (-2500, 780, 320) mm");
/** The last car or set-up of the text. */
const lastCar = (text: string): CarModel => {
  const found = contextOf({ "car.crank": text }, "car.crank").cars.at(-1);
  if (found === undefined) throw new Error("no car in the text");
  return found.model;
};
const masses = (...lines: readonly string[]) =>
  massesOfCar(lastCar(withRear(twoAxles(`roll-inertia 60 kg*m^2\n pitch-inertia 400 kg*m^2\n${lines.join("\n")}`))));
const known = (value: number | string): number => {
  if (typeof value === "string") throw new Error(value);
  return value;
};

describe("the masses of a car", () => {
  it("without lines of their own are those that are stated, to the last digit", () => {
    const { total, frontShare, centre, sprung, unsprung } = massesOfCar(lastCar(withRear(base)));
    expect(total).toBe(560);
    expect(frontShare).toBe(0.5);
    expect(centre).toEqual({ behind: 1.25, left: 0, height: 0.3 });
    expect(unsprung).toEqual([18, 18, 18, 18]);
    expect(sprung.mass).toBe(560 - 72);
    expect([sprung.rollInertia, sprung.pitchInertia]).toEqual([60, 400]);
    // By hand: (560·0.3 − 72·0.35)/488, wheel centres 320 mm above z = 0, which is 30 mm above the ground.
    expect(known(sprung.centre.height)).toBeCloseTo((560 * 0.3 - 72 * 0.35) / 488, 12);
  });

  it("take driver, fuel and ballast as masses at their place", () => {
    // By hand: 560 + 75 + 12 + 6 = 653 kg.
    const { total, frontShare, centre, point } = masses(
      "driver { mass 75 kg, centre (-1150, 0, 250) mm }",
      "fuel { mass 12 kg, centre (-1500, -100, 200) mm }",
      "ballast nose { mass 6 kg, centre (480, 50, 60) mm }",
    );
    expect(total).toBe(653);
    const behind = (560 * 1.25 + 75 * 1.15 + 12 * 1.5 - 6 * 0.48) / 653;
    const left = (-12 * 0.1 + 6 * 0.05) / 653;
    const height = (560 * 0.3 + 75 * 0.28 + 12 * 0.23 + 6 * 0.09) / 653;
    expect(known(centre.behind)).toBeCloseTo(behind, 12);
    expect(known(centre.left)).toBeCloseTo(left, 12);
    expect(known(centre.height)).toBeCloseTo(height, 12);
    expect(known(frontShare)).toBeCloseTo(1 - behind / 2.5, 12);
    expect(point).toEqual([-known(centre.behind), known(centre.left), known(centre.height) - 0.03]);
  });

  it("add lines to the inertias by the parallel-axis theorem, whatever the order", () => {
    const lines = [
      "ballast a { mass 20 kg, centre (-200, 300, 100) mm }",
      "ballast b { mass 8 kg, centre (-2400, -500, 400) mm }",
    ];
    const { sprung } = masses(...lines);
    const h0 = (560 * 0.3 - 72 * 0.35) / 488;
    const bodies = [
      { m: 488, x: 1.25, y: 0, z: h0 },
      { m: 20, x: 0.2, y: 0.3, z: 0.13 },
      { m: 8, x: 2.4, y: -0.5, z: 0.43 },
    ];
    const m = 516;
    const mean = (of: "x" | "y" | "z"): number => bodies.reduce((sum, body) => sum + body.m * body[of], 0) / m;
    // Second method: Σ m c² − m c̄² instead of Σ m (c − c̄)².
    const spread = (of: "x" | "y" | "z"): number =>
      bodies.reduce((sum, body) => sum + body.m * body[of] ** 2, 0) - m * mean(of) ** 2;
    expect(known(sprung.rollInertia)).toBeCloseTo(60 + spread("y") + spread("z"), 9);
    expect(known(sprung.pitchInertia)).toBeCloseTo(400 + spread("x") + spread("z"), 9);
    const turned = masses(...[...lines].reverse()).sprung;
    expect(known(turned.rollInertia)).toBeCloseTo(known(sprung.rollInertia), 12);
  });

  it("are mirrored with what is written", () => {
    const one = masses("cg-left 12 mm", "ballast a { mass 20 kg, centre (-200, 300, 100) mm }");
    const other = masses("cg-left -12 mm", "ballast a { mass 20 kg, centre (-200, -300, 100) mm }");
    expect(other.centre.left).toBe(-known(one.centre.left));
    expect({ ...other.centre, left: 0 }).toEqual({ ...one.centre, left: 0 });
    expect(other.sprung.rollInertia).toBe(one.sprung.rollInertia);
  });

  it("rise with the body where a set-up puts the car higher, the wheels staying on the ground", () => {
    const text = `${withRear(base)}\nsetup high from tried { front.ride-height by +4 mm\n rear.ride-height by +4 mm }`;
    const { centre, sprung, point } = massesOfCar(lastCar(text));
    expect(known(centre.height)).toBeCloseTo(0.3 + (0.004 * 488) / 560, 12);
    expect(known(sprung.centre.height)).toBeCloseTo((560 * 0.3 - 72 * 0.35) / 488 + 0.004, 12);
    expect(typeof point === "string" ? point : point[2]).toBeCloseTo(0.27, 12);
  });

  it("are changed, taken off and added in a set-up", () => {
    const driver =
      "driver { mass 75 kg, centre (-1150, 0, 250) mm }\n ballast nose { mass 6 kg, centre (480, 0, 60) mm }";
    const after = (lines: string): number =>
      known(massesOfCar(lastCar(`${withRear(twoAxles(driver))}\nsetup s from tried {\n${lines}\n}`)).total);
    expect(after("driver.mass 82 kg")).toBe(648);
    expect(after("driver.mass by +2 kg\n remove nose")).toBe(637);
    expect(after("remove driver")).toBe(566);
    expect(
      after(
        "ballast tail { mass 3 kg, centre (-2600, 0, 60) mm }\n ballast left-pod { mass 2 kg, centre (-1200, 500, 60) mm }",
      ),
    ).toBe(646);
  });

  it("say what is missing and still add up the rest", () => {
    const { total, centre, frontShare } = masses("ballast a { mass 20 kg }");
    expect(total).toBe(580);
    expect(centre.behind).toBe("a has no centre");
    expect(frontShare).toBe("a has no centre");
  });
});
