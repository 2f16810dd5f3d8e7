/** Set-ups that keep the seats of what they derive from: hand figures, balances, the mirror, and the scales' answer made. */
import { describe, expect, it } from "vitest";
import { asItStands } from "../../server/analyses/as-it-stands.js";
import { axlePositions } from "../../server/analyses/states.js";
import { assembleAxle } from "../../server/assemble/assemble.js";
import type { CarAnalysis } from "../../server/analyses/results.js";
import type { CheckedCar } from "../../server/findings/context.js";
import { createWorkspace } from "../../server/snapshot/create.js";
import { weightsOf } from "../../server/views/weights-page.js";
import { twoAxles } from "../support/two-axles.js";
import { cornerSpring, number, reason } from "../support/written-car.js";

const G = 9.80665;

function carsIn(text: string): readonly CheckedCar[] {
  const workspace = createWorkspace({ read: () => ({ missing: "missing" }) });
  workspace.set("file:///car.crank", text);
  return workspace.file("file:///car.crank").cars;
}

/** The car, and the set-up of these lines that keeps its seats. */
function kept(car: string, ...lines: readonly string[]): readonly [CarAnalysis, CarAnalysis, CheckedCar] {
  const [was, is] = carsIn(`${car}\nsetup left-alone from tried {\n  keep-seats\n${lines.join("\n")}\n}\n`);
  if (was === undefined || is === undefined) throw new Error("no set-up in the text");
  return [was.analysis, is.analysis, is];
}

const loadsOf = ({ axles }: CarAnalysis): readonly number[] =>
  [axles.front?.atRest.left, axles.front?.atRest.right, axles.rear?.atRest.left, axles.rear?.atRest.right].map(
    (wheel) => number(wheel?.load),
  );

const crossOf = (car: CarAnalysis): number => {
  const [fl = 0, fr = 0, rl = 0, rr = 0] = loadsOf(car);
  return (fr + rl) / (fl + fr + rl + rr);
};

/** The rear axle is the front one put back whole, so that its linkage fits its wheels. */
const back = (text: string): string =>
  text.replaceAll(/\((-?\d+), (-?\d+), (-?\d+)\) mm/g, (_, x, y, z) => `(${Number(x) - 2500}, ${y}, ${z}) mm`);

function carText({ rods = false, elements = cornerSpring, more = "" } = {}): string {
  const trimmed = rods ? elements.replace("rate 150 N/mm", "rate 150 N/mm\n      preload 2200 N") : elements;
  const text = twoAxles(more, trimmed);
  const split = text.indexOf("axle front");
  const [head, front] = [text.slice(0, split), text.slice(split)];
  const whole = head.replace(/axle rear[\s\S]*/, (rear) => back(rear)) + front;
  return rods
    ? whole
        .replaceAll("inner (-2, 333, 519) mm }", "inner (-2, 333, 519) mm, thread 1.25 mm/turn }")
        .replaceAll("inner (-2502, 333, 519) mm }", "inner (-2502, 333, 519) mm, thread 1.25 mm/turn }")
        .replaceAll("ride-height 30 mm", "ride-height 30 mm\n    trim by push-rod")
    : whole;
}

/** No geometry: springs on the wheels, so that everything is straight and can be done by hand. */
const plainAxle = (name: string, x: number, rate: number): string => `axle ${name} {
    track 1500 mm
    ride-height 30 mm
    wheel { centre (${x}, 750, 250) mm, unsprung-mass 15 kg, tyre-rate 200 N/mm }
    linkage ratio
    spring side for corner { rate ${rate} N/mm, ratio corner 1 }
  }`;
const plain = `car tried {
  wheelbase 2500 mm
  mass 500 kg
  mass-front 50 %
  cg-height 300 mm
  ${plainAxle("front", 0, 50)}
  ${plainAxle("rear", -2500, 50)}
}`;

describe("a car on kept seats", () => {
  it("stands as it was trimmed where nothing is changed, by seats or by rods, at any ride height", () => {
    for (const text of [carText(), carText({ rods: true }), carText({ more: "cg-left 15 mm" }), plain]) {
      const [was, is] = kept(text);
      for (const name of ["front", "rear"] as const) {
        const [before, after] = [was.axles[name], is.axles[name]];
        expect(number(after?.atRest.rideHeight)).toBeCloseTo(0.03, 10);
        expect(number(after?.atRest.left.load)).toBeCloseTo(number(before?.atRest.left.load), 5);
        expect(number(after?.rates.heaveRate)).toBeCloseTo(number(before?.rates.heaveRate), 3);
        expect(after?.atRest.left.travel).toBeCloseTo(0, 10);
      }
    }
  });

  it("sinks under ballast by its weight over springs and tyres in series, as by hand", () => {
    // 40 kg midway between the axles: 10 kg at each corner; springs of 50 N/mm on tyres of 200 N/mm are 40 N/mm.
    const [, is] = kept(plain, "ballast floor { mass 40 kg, centre (-1250, 0, 50) mm }");
    const down = (10 * G) / 40e3;
    expect(number(is.axles.front?.atRest.rideHeight)).toBeCloseTo(0.03 - down, 10);
    expect(number(is.axles.rear?.atRest.rideHeight)).toBeCloseTo(0.03 - down, 10);
    expect(is.axles.front?.atRest.left.travel).toBeCloseTo((10 * G) / 50e3, 10);
    for (const load of loadsOf(is)) expect(load).toBeCloseTo(135 * G, 6);
  });

  it("leans on a weight at its side, as by hand", () => {
    // 20 kg 500 mm left of the middle: roll stiffness 2 · t²/2 · 40 N/mm, so that the left sinks by 20 g · 0.5 m / Kφ · t/2 more.
    const [, is] = kept(plain, "ballast pod { mass 20 kg, centre (-1250, 500, 50) mm }");
    const angle = (20 * G * 0.5) / (40e3 * 1.5 * 1.5);
    const [fl = 0, fr = 0] = loadsOf(is);
    expect(fl - fr).toBeCloseTo(2 * 40e3 * angle * 0.75, 5);
    const { left, right } = is.axles.front?.atRest ?? {};
    expect((left?.travel ?? 0) - (right?.travel ?? 0)).toBeCloseTo((fl - fr) / 50e3, 10);
  });

  it("keeps its weight and both moments, in newtons to 1e-5 and better", () => {
    const [, is] = kept(
      carText({ rods: true }),
      "ballast pod { mass 20 kg, centre (-400, 500, 50) mm }",
      "front.left.push-rod by +1 turn",
    );
    const [fl = 0, fr = 0, rl = 0, rr = 0] = loadsOf(is);
    const half = 1.571171173495033 / 2;
    expect(fl + fr + rl + rr).toBeCloseTo(580 * G, 5);
    expect((fl + fr) * 2.5).toBeCloseTo(G * (560 * 1.25 + 20 * 2.1), 5);
    expect((fl - fr + rl - rr) * half).toBeCloseTo(G * 20 * 0.5, 5);
  });

  it("gains cross weight from one longer push rod, and is mirrored by the other", () => {
    const [was, left] = kept(carText({ rods: true }), "front.left.push-rod by +1 turn");
    const [, right] = kept(carText({ rods: true }), "front.right.push-rod by +1 turn");
    expect(crossOf(was)).toBeCloseTo(0.5, 9);
    // The front left and rear right corners carry more.
    expect(crossOf(left)).toBeLessThan(0.493);
    expect(crossOf(right)).toBeCloseTo(1 - crossOf(left), 7);
    // A longer rod lifts the body there.
    expect(number(left.axles.front?.atRest.rideHeight)).toBeGreaterThan(0.0301);
    expect(left.axles.front?.atRest.left.travel).toBeLessThan(-1e-4);
    expect(number(left.axles.front?.atRest.left.camber)).not.toBe(number(was.axles.front?.atRest.left.camber));
  });

  it("comes to the wanted cross weight with the turns that the scales ask for", () => {
    const off = "front.left.push-rod by +0.5 turn";
    const [, crooked, checked] = kept(carText({ rods: true }), off);
    const pads = loadsOf(crooked).map((load) => (load / G).toFixed(9));
    const scales = `scales { front-left ${pads[0]} kg, front-right ${pads[1]} kg, rear-left ${pads[2]} kg, rear-right ${pads[3]} kg }`;
    const [, , weighed] = kept(carText({ rods: true }), off, scales);
    const { turns } = weightsOf(weighed).scales ?? {};
    if (turns === undefined || "kind" in turns) throw new Error(JSON.stringify(turns));
    const made = turns.map(
      ({ path, turns: count }) => `${path} by ${number(count) < 0 ? "" : "+"}${number(count).toFixed(9)} turn`,
    );
    const corrected = made.map((line) => (line.startsWith("front.left.") ? `${line}\n  ${off}` : line));
    const [, straight] = kept(carText({ rods: true }), ...corrected);
    const missed = Math.abs(crossOf(crooked) - 0.5);
    expect(missed).toBeGreaterThan(0.003);
    // The answer is linear, the car is not: a hundredth of what was wrong is left.
    expect(Math.abs(crossOf(straight) - 0.5)).toBeLessThan(missed / 100);
    for (const name of ["front", "rear"] as const) {
      const height = (one: CarAnalysis): number => number(one.axles[name]?.atRest.rideHeight);
      expect(Math.abs(height(straight) - height(crooked))).toBeLessThan(1e-5);
    }
    expect(checked.model.setup).toBe("left-alone");
  });

  it("gets cross weight from a bar that is twisted at rest", () => {
    const bar = `${cornerSpring}
    anti-roll-bar bar for roll {
      rate 400 N*m/deg
      lever { pivot (-110, 346, 300) mm, axis (0, 1, 0), end (-25, 346, 295) mm }
      drop-link rocker.bar
    }`;
    const [was, is] = kept(carText({ elements: bar }), "front.left.bar.drop-link.longer 2 mm");
    expect(crossOf(was)).toBeCloseTo(0.5, 9);
    expect(Math.abs(crossOf(is) - 0.5)).toBeGreaterThan(0.002);
  });

  it("says why where it does not come to rest, or what it derives from is not trimmed", () => {
    const [, lifted] = kept(plain, "ballast pod { mass 90 kg, centre (-1250, 5000, 50) mm }");
    expect(reason(lifted.axles.front?.atRest.left.load)).toMatch(/would lift its .* right wheel/);
    expect(
      reason(lifted.axles.front?.rates.heaveRate === undefined ? undefined : lifted.axles.front.atRest.rideHeight),
    ).toMatch(/lift/);
    const untrimmed = plain.replaceAll("rate 50 N/mm, ", "");
    const [, unknown] = kept(untrimmed);
    expect(reason(unknown.axles.front?.atRest.left.load)).toMatch(/the seats of what it derives from are not known/);
  });

  it("takes over the seats of a base that keeps them itself", () => {
    const cars = carsIn(
      `${plain}\nsetup one from tried {\n keep-seats\n ballast floor { mass 40 kg, centre (-1250, 0, 50) mm }\n}\nsetup two from one {\n remove floor\n}\n`,
    );
    expect(number(cars[2]?.analysis.axles.front?.atRest.rideHeight)).toBeCloseTo(0.03, 10);
  });
});

describe("an axle as it stands", () => {
  it("deflects its elements as its figures say, on kept seats and on rods that trim set", () => {
    const [was, is, checked] = kept(carText({ rods: true }), "ballast floor { mass 40 kg, centre (-1250, 0, 50) mm }");
    const { front } = checked.model.axles;
    if (front === undefined) throw new Error("no front axle");
    for (const analysis of [was.axles.front, is.axles.front]) {
      if (analysis === undefined) throw new Error("no figures");
      const mechanism = asItStands(assembleAxle(front, checked.model), analysis);
      const { motion } = axlePositions(mechanism).at(mechanism.staticTravel, mechanism.staticTravel);
      if ("why" in motion) throw new Error("out of reach");
      const d = mechanism.elements[0]?.connection?.deflection(motion);
      if (d === undefined || "kind" in d) throw new Error("not joined");
      expect(d.s).toBeCloseTo(number(analysis.elements[0]?.deflection), 12);
    }
  });
});

describe("a load case of a car on kept seats", () => {
  it("starts from where it stands", () => {
    const text = plain.replace("cg-height 300 mm", "cg-height 300 mm\n  case nothing { speed 0 km/h }");
    const [, analysis, is] = kept(text, "ballast pod { mass 20 kg, centre (-1250, 500, 50) mm }");
    const found = is.cases.at("nothing");
    if (found?.kind !== "equilibrium") throw new Error(JSON.stringify(found));
    // A second solver, exact in the body's angles: a roll of 0.06 degrees costs next to nothing.
    const atRest = loadsOf(analysis);
    for (const [i, { load }] of found.wheels.entries()) expect(Math.abs(load - (atRest[i] ?? 0))).toBeLessThan(0.02);
    expect(number(found.front.rideHeight)).toBeCloseTo(number(analysis.axles.front?.atRest.rideHeight), 6);
  });
});
