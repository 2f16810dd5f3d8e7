/** Load cases from words to figures: roads, air, height tables, clearance points, expectations at a case. */
import { describe, expect, it } from "vitest";
import { figures } from "../../../grammar/vocabulary/figures.js";
import { figureAtCase } from "../../../server/analyses/case-paths.js";
import { motionAt } from "../../../server/analyses/moving-paths.js";
import { solveCase } from "../../../server/analyses/equilibrium/car-cases.js";
import type { CaseFigures, CaseResult } from "../../../server/analyses/equilibrium/results.js";
import { assembleLoadedCar, loadCaseOf, loadedCarKey } from "../../../server/assemble/loaded-car.js";
import type { CarModel } from "../../../server/model/car.js";
import { contextOf } from "../../support/context.js";
import { expectClose } from "../../support/approx.js";
import { readyFor } from "../../support/loaded-car.js";
import { quill, quillParts, quillText } from "../../support/quill.js";
import { CLOSED_FORM } from "../../support/tolerances.js";
import { number, reason } from "../../support/written-car.js";

const withLines = (...lines: readonly string[]): string => quillText.replace(/\}\n$/, `${lines.join("\n")}\n}\n`);

const changed = (from: string | RegExp, to: string): string => {
  const text = quillText.replace(from, to);
  if (text === quillText) throw new Error("nothing was changed");
  return text;
};

function resultIn(car: CarModel, name: string): CaseResult {
  const asked = car.cases.find((one) => one.name === name);
  if (asked === undefined) throw new Error(`no case ${name}`);
  return solveCase(readyFor(assembleLoadedCar(car)), loadCaseOf(asked));
}

function solvedIn(text: string, name: string): CaseFigures {
  const result = resultIn(quill(text), name);
  if (result.kind !== "equilibrium") throw new Error(JSON.stringify(result));
  return result;
}

describe("roads", () => {
  it("a gradient in % is the rise for each length along the level; an angle is an angle", () => {
    const [percent, angle] = quill(
      withLines(
        "  case a { gradient 10 % }",
        "  case b { gradient 5.710593137499643 deg, banking 3 deg, vertical -0.2 g }",
      ),
    ).cases.slice(-2);
    expectClose(loadCaseOf(percent!).gradient, Math.atan(0.1), CLOSED_FORM);
    expectClose(loadCaseOf(angle!).gradient, Math.atan(0.1), CLOSED_FORM);
    expectClose(loadCaseOf(angle!).banking, (3 * Math.PI) / 180, CLOSED_FORM);
    expectClose(loadCaseOf(angle!).vertical, -0.2 * 9.80665, CLOSED_FORM);
  });
});

describe("air", () => {
  const density = (line: string): number =>
    assembleLoadedCar(quill(changed("lag 15 ms", `lag 15 ms\n    ${line}`))).density;

  it("is that of the standard atmosphere unless it is stated", () => {
    expectClose(density("lag-not-a-word"), 1.225, 1e-7);
    expect(density("altitude 1000 m")).toBeLessThan(1.12);
    expectClose(density("temperature 30 degC"), (1.225 * 288.15) / 303.15, 1e-7);
    expect(density("density 1.1 kg/m^3")).toBe(1.1);
  });

  const table = (second: string): string =>
    changed(
      /downforce-front[\s\S]*?height-slopes.*\n/,
      `height-table {
      rear-height 60 mm { ${second} }
      rear-height 35 mm { front { 10 mm: 0.5 m^2, 20 mm: 1 m^2, 40 mm: 0.8 m^2 }, rear { 10 mm: 1.2 m^2, 20 mm: 1.2 m^2, 40 mm: 1.2 m^2 } }
    }
`,
    );
  const rows =
    "front { 10 mm: 0.5 m^2, 20 mm: 1 m^2, 40 mm: 0.8 m^2 }, rear { 10 mm: 1.3 m^2, 20 mm: 1.3 m^2, 40 mm: 1.3 m^2 }";

  it("downforce follows a height table", () => {
    const found = solvedIn(table(rows), "top-speed");
    const q = (1.225 / 2) * (195 / 3.6) ** 2;
    const rear = number(found.rear.rideHeight);
    expect(found.air.front / q).toBeGreaterThan(0.85);
    // The rear row rises by 0.1 m² over 25 mm of rear height, the same at every front one.
    expectClose(found.air.rear / q, 1.2 + (0.1 * (rear - 0.035)) / 0.025, 1e-6);
    expect(found.air.outside).toEqual(rear < 0.035 ? ["front", "rear"] : []);
  });

  it("a table that is none is said, and nothing is computed with it", () => {
    const car = quill(table(rows.replace("front { 10 mm", "front { 11 mm")));
    const [checked] = contextOf(
      { ...quillParts, "car.crank": table(rows.replace("front { 10 mm", "front { 11 mm")) },
      "car.crank",
    ).cars;
    expect(car.cases).toHaveLength(3);
    expect(reason(checked?.cases.at("hairpin"))).toMatch(/each with the same two or more front heights/);
  });
});

describe("drag", () => {
  const q = (1.225 / 2) * (195 / 3.6) ** 2;
  const dragOf = (found: CaseFigures): number => found.air.drag / q;

  it("follows both ride heights by its slopes", () => {
    const line = /drag \{ area 0.95 m\^2/;
    const found = solvedIn(
      changed(line, "drag { area 0.95 m^2, by-front 0.01 m^2/mm, by-rear -0.004 m^2/mm"),
      "top-speed",
    );
    const [front, rear] = [number(found.front.rideHeight), number(found.rear.rideHeight)];
    const { axles } = quill();
    const drawn = [axles.front!.drawnRideHeight!.value, axles.rear!.drawnRideHeight!.value] as const;
    expect(Math.abs(front - drawn[0])).toBeGreaterThan(0.002);
    expectClose(dragOf(found), 0.95 + 10 * (front - drawn[0]) - 4 * (rear - drawn[1]), 1e-6);
    // What drives the car is what holds it back: a steady speed on the level.
    expectClose(
      found.wheels.reduce((sum, wheel) => sum + wheel.longitudinal, 0),
      found.air.drag,
      1e-6,
    );
  });

  const table = (rows: readonly [string, string], drag = "drag { height 460 mm }"): string => {
    const others = "front { 10 mm: 0.8 m^2, 40 mm: 0.8 m^2 }, rear { 10 mm: 1.2 m^2, 40 mm: 1.2 m^2 }";
    return changed(
      /downforce-front[\s\S]*?height-slopes.*\n/,
      `height-table {
      rear-height 35 mm { ${others}${rows[0]} }
      rear-height 60 mm { ${others}${rows[1]} }
    }
`,
    ).replace(/drag \{ area.*\}/, drag);
  };

  it("is that of the table's rows, which leave no bumps of their own", () => {
    const rows = [", drag { 10 mm: 0.9 m^2, 40 mm: 0.9 m^2 }", ", drag { 10 mm: 1 m^2, 40 mm: 1 m^2 }"] as const;
    const found = solvedIn(table(rows), "top-speed");
    expectClose(dragOf(found), 0.9 + (0.1 * (number(found.rear.rideHeight) - 0.035)) / 0.025, 1e-6);
  });

  it("in one row of the table only, or nowhere, is said", () => {
    const why = (text: string): string =>
      reason(contextOf({ ...quillParts, "car.crank": text }, "car.crank").cars[0]?.cases.at("hairpin"));
    expect(why(table([", drag { 10 mm: 0.9 m^2, 40 mm: 0.9 m^2 }", ""]))).toContain("height-table");
    expect(why(table(["", ""]))).toContain("the drag of the aero block needs an area, or drag rows");
  });
});

describe("clearance points", () => {
  const text = withLines(
    "  clearance-point nose { point (400, 0, 10) mm }",
    "  expect nose.clearance at braking above 1 mm",
    "  expect tail.clearance at braking above 1 mm",
  );

  it("their height above the road is told and can be expected", () => {
    const found = solvedIn(text, "braking");
    const [nose] = found.clearances;
    // On the straight line through both axle lines, 10 mm up; 0.4 m ahead of the front one.
    const [front, rear] = [number(found.front.rideHeight), number(found.rear.rideHeight)];
    expectClose(nose?.height ?? 0, front - ((rear - front) * 0.4) / 2.54 + 0.01, 1e-4);
    const context = contextOf({ ...quillParts, "car.crank": text }, "car.crank");
    const judged = context.cars[0]?.analysis.expectations.at(-1);
    expect(judged?.value).toBe(nose?.height);
    expect(context.problems.map((problem) => ("name" in problem ? problem.name : problem.kind))).toEqual(["tail"]);
  });
});

describe("figures by path in a case", () => {
  const found = solvedIn(withLines("  clearance-point nose { point (400, 0, 10) mm }"), "hairpin");

  it("answers to every name that the vocabulary has: a number, or that it is one at rest", () => {
    const paths = figures.flatMap(({ figure, scope, modes }) =>
      (modes ?? [""]).map((mode) => {
        const before = { car: "", axle: "front.", wheel: "front.left.", element: "front.side.", point: "nose." }[scope];
        return before + figure.replace("<mode>", mode);
      }),
    );
    const onRoad = paths.filter((path) => /\.(contact|platform)$/.test(path));
    for (const path of onRoad) expect(reason(figureAtCase(found, path))).toMatch(/of a car on a road only$/);
    const moving = paths.filter((path) => motionAt(path) !== undefined);
    expect(moving).toHaveLength(10);
    for (const path of moving) expect(reason(figureAtCase(found, path))).toMatch(/of a car that moves only$/);
    const inCase = paths.filter((path) => ![...onRoad, ...moving].includes(path));
    const without = inCase.filter((path) => typeof figureAtCase(found, path) !== "number");
    // The Quill's side dampers carry nothing in a steady turn, so that none of their figures are of the case.
    expect(without.filter((path) => !path.startsWith("front.side."))).toEqual([
      "front.heave-frequency",
      "cross-weight",
    ]);
    for (const path of without)
      expect(reason(figureAtCase(found, path))).toMatch(/is a figure at rest, without a case$/);
  });

  it("reads wheels, axles and elements", () => {
    expect(figureAtCase(found, "front.left.wheel-load")).toBe(found.wheels[0]?.load);
    expectClose(
      number(figureAtCase(found, "rear.wheel-load")),
      (found.wheels[2]!.load + found.wheels[3]!.load) / 2,
      CLOSED_FORM,
    );
    const bars = found.elements.filter(({ path }) => path.startsWith("front.") && path.endsWith("corner-bar"));
    expectClose(
      number(figureAtCase(found, "front.corner-bar.load")),
      (bars[0]!.force + bars[1]!.force) / 2,
      CLOSED_FORM,
    );
    expect(figureAtCase(found, "roll-angle")).toBe(found.roll);
    expect(reason(figureAtCase(found, "front.third.roll-leak"))).toBe(
      "front.third.roll-leak is a figure at rest, without a case",
    );
  });
});

describe("the key of a car's cases", () => {
  const key = (text: string): string => {
    const car = quill(text);
    return loadedCarKey(car, car.cases.map(loadCaseOf));
  };

  it.each([
    ["speed 70 km/h", "speed 71 km/h"],
    ["front-by-rear 0.002", "front-by-rear 0.003"],
    ["height 460 mm", "height 470 mm"],
    ["cg-height 285 mm", "cg-height 290 mm"],
    ["brakes { front 58 %", "brakes { front 57 %"],
    ["mounting outboard", "mounting inboard"],
    ["drive rear", "drive all"],
    ["tyre-rate 185", "tyre-rate 186"],
    ["mass 540 kg", "mass 541 kg"],
  ])("%s is in it", (from, to) => {
    expect(key(changed(from, to))).not.toBe(key(quillText));
  });

  it("a title is not", () => {
    expect(key(changed("Quill 7, hill-climb", "Quill 8, hill-climb"))).toBe(key(quillText));
  });
});

describe("steering", () => {
  const turned = (line: string, axle = ""): CaseResult => {
    const text = withLines(`  case turned { speed 40 km/h, lateral 0.4 g, ${line} }`).replace(
      "trim by corner-bar",
      `trim by corner-bar\n    ${axle}`,
    );
    return resultIn(quill(text), "turned");
  };
  const toes = (result: CaseResult): readonly number[] => {
    if (result.kind !== "equilibrium") throw new Error(JSON.stringify(result));
    return result.wheels.map(({ toe }) => number(toe));
  };

  it("turns both front wheels to the left: the left one out, the right one in; the rear ones stay", () => {
    const [straight, left] = [toes(turned("steer 0 mm")), toes(turned("steer 8 mm"))];
    expect(left[0]! - straight[0]!).toBeLessThan(-0.05);
    expect(left[1]! - straight[1]!).toBeGreaterThan(0.05);
    expectClose(left[2]!, straight[2]!, 0.02, 1e-5);
  });

  it("mirrors", () => {
    const text = withLines(
      "  case l { speed 40 km/h, lateral 0.4 g, steer 8 mm }",
      "  case r { speed 40 km/h, lateral -0.4 g, steer -8 mm }",
    );
    const [l, r] = [solvedIn(text, "l"), solvedIn(text, "r")];
    for (const [i, wheel] of l.wheels.entries()) expectClose(r.wheels[i ^ 1]!.load, wheel.load, 1e-8);
  });

  it("by the steering wheel needs the rack's travel a turn", () => {
    expect(reason(turned("steer 36 deg"))).toMatch(/the front axle has no rack/);
    const [byWheel, byRack] = [toes(turned("steer 36 deg", "rack 80 mm/turn")), toes(turned("steer 8 mm"))];
    for (const [i, toe] of byWheel.entries()) expectClose(toe, byRack[i]!, 1e-9);
  });
});
