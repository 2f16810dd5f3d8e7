/** Curves of an element against closed forms, against the figures at rest, and against differences of the energy. */
import { describe, expect, it } from "vitest";
import type { CurveData, ElementCurves, MarkKind } from "../../server/analyses/curve-data.js";
import { asItStands } from "../../server/analyses/as-it-stands.js";
import { curvesInCar, curvesOnAxle } from "../../server/analyses/element-curves.js";
import { isAbsent } from "../../server/analyses/absent.js";
import type { Absent } from "../../server/analyses/results.js";
import { assembleAxle } from "../../server/assemble/assemble.js";
import { assembleCarElements } from "../../server/assemble/car-elements.js";
import type { CheckedCar } from "../../server/findings/context.js";
import { expectClose } from "../support/approx.js";
import { contextOf } from "../support/context.js";
import { sampleContext, sampleNames } from "../support/samples.js";
import { CLOSED_FORM, CROSSING, ENERGY_DIFFERENCE, IDENTITY } from "../support/tolerances.js";
import { carText, cornerSpring } from "../support/written-car.js";

const AXLES = ["front", "rear"] as const;

function curvesOf({ model, analysis }: CheckedCar, path: string): ElementCurves {
  for (const name of AXLES) {
    const axle = model.axles[name];
    const known = analysis.axles[name];
    if (axle === undefined || known === undefined) continue;
    const figures = known.elements.find((element) => element.path === path);
    const mechanism = asItStands(assembleAxle(axle, model), known);
    const found = curvesOnAxle(mechanism, path, { trim: known.rates.trim, figures });
    if (found !== undefined) return found;
  }
  const { elements, axles } = assembleCarElements(model);
  const found = curvesInCar(elements, axles, path);
  if (found === undefined) throw new Error(`no ${path}`);
  return found;
}

const carWith = (elements: string, more: Parameters<typeof carText>[0] = {}, files = {}): CheckedCar => {
  const [car] = contextOf({ "car.crank": carText({ ...more, elements }), ...files }, "car.crank").cars;
  if (car === undefined) throw new Error("no car");
  return car;
};

function data(curve: CurveData | Absent | undefined): CurveData {
  if (curve === undefined || isAbsent(curve)) throw new Error(curve?.reason ?? "no curve");
  return curve;
}

const lawOf = (curves: ElementCurves): CurveData => data(curves.laws[0]?.curve);
const modeOf = (curves: ElementCurves, i = 0) => {
  const mode = curves.modes[i];
  if (mode === undefined) throw new Error("no mode");
  return mode;
};
const markOf = ({ marks }: CurveData, what: MarkKind) => marks.filter((mark) => mark.what === what);

/** Value of the curve at a point of it. */
function at({ points }: CurveData, x: number): readonly number[] {
  return points.filter((point) => Math.abs(point.x - x) <= CROSSING).map(({ y }) => y);
}

const byRatio = { linkage: "" };
const corner = "spring side for corner {\n rate 100 N/mm\n ratio corner 0.8\n }";

describe("a spring with a gap, by a ratio of 0.8", () => {
  const car = carWith(
    `${corner}
     bump-stop stop for corner {\n rate 200 N/mm\n gap 8 mm\n ratio corner 0.8\n }`,
    byRatio,
  );
  const curves = curvesOf(car, "front.left.stop");

  it("carries nothing up to the gap, which is a point of its own, and F = k (s − gap) beyond", () => {
    const law = lawOf(curves);
    expect(at(law, 0.008)).toEqual([0]);
    for (const { x, y } of law.points) expectClose(y, 200e3 * Math.max(0, x - 0.008), CLOSED_FORM, 1e-6);
    expect(markOf(law, "carries")).toEqual([{ what: "carries", x: 0.008, y: 0 }]);
    expect(markOf(law, "travel-end").map(({ x }) => x)).toEqual([-0.8 * 0.03, 0.8 * 0.03]);
  });

  it("gives the wheel k r² from 10 mm of travel on, and nothing before: two points there", () => {
    const { atWheels, motionRatio, gives, turns } = modeOf(curves);
    expect([gives, turns]).toEqual(["rate", false]);
    const given = data(atWheels);
    const jump = given.points.filter(({ x }) => Math.abs(x - 0.01) < CROSSING).map(({ y }) => y);
    expect(jump).toHaveLength(2);
    expect(jump[0]).toBe(0);
    expectClose(jump[1] ?? 0, 200e3 * 0.64, CLOSED_FORM);
    for (const { x, y } of given.points)
      if (Math.abs(x - 0.01) > CROSSING) expectClose(y, x < 0.01 ? 0 : 128e3, CLOSED_FORM);
    for (const { y } of data(motionRatio).points) expectClose(y, 0.8, CLOSED_FORM);
  });
});

describe("an anti-roll bar with springs in its drop links", () => {
  it("goes over from both in series to the bar alone, in roll by t²/4", () => {
    const car = carWith(
      `${corner}
       spring bar for roll {\n rate 90 N/mm\n tender { rate 30 N/mm, travel 6 mm }\n ratio roll 0.5\n }`,
      byRatio,
    );
    const curves = curvesOf(car, "front.bar");
    const series = (90e3 * 30e3) / 120e3;
    const usedUp = (30e3 * 0.006) / series;
    const [low, high] = markOf(lawOf(curves), "stage").map(({ x }) => x);
    expectClose(low ?? 0, -usedUp, CLOSED_FORM);
    expectClose(high ?? 0, usedUp, CLOSED_FORM);
    const track = car.model.axles.front?.track?.value ?? 0;
    const { atWheels, turns } = modeOf(curves);
    expect(turns).toBe(true);
    const [before, after] = at(data(atWheels), usedUp / 0.5);
    expectClose(before ?? 0, (track ** 2 / 4) * series * 0.25, CLOSED_FORM);
    expectClose(after ?? 0, (track ** 2 / 4) * 90e3 * 0.25, CLOSED_FORM);
  });
});

describe("a damper", () => {
  const words = `bump { knee 50 mm/s, slow 2 N*s/mm, fast 1 N*s/mm }
      rebound { 100 mm/s: 300 N, 200 mm/s: 500 N }
      gas-force 90 N
      gas-rate 1 N/mm
      ratio corner 0.8`;
  const curves = curvesOf(
    carWith(`${corner}\n damper side-damper for corner {\n ${words}\n }`, byRatio),
    "front.left.side-damper",
  );

  it("shows its force over its speed, with knee and ends of the table", () => {
    const law = lawOf(curves);
    expect(curves.laws[0]?.against).toBe("speed");
    const [knee, end] = [markOf(law, "knee"), markOf(law, "table-end")];
    expect(knee).toEqual([{ what: "knee", x: 0.05, y: 100 }]);
    expect(end).toEqual([{ what: "table-end", x: -0.2, y: -500 }]);
    expect(at(law, 0.05)).toEqual([100]);
    expect(at(law, 0)).toEqual([0]);
  });

  it("lies higher by its gas, whose own force is drawn over the deflection", () => {
    const law = lawOf(curves);
    const [gas] = law.beside;
    expect(gas?.what).toBe("with-gas");
    const gasAtRest = gas?.points.find(({ x }) => x === 0)?.y ?? 0;
    expectClose(gasAtRest, 90, CLOSED_FORM);
    const own = curves.laws.find(({ part }) => part === "its gas");
    expect(own?.against).toBe("deflection");
    for (const { x, y } of data(own?.curve).points) expectClose(y, Math.max(0, 90 + 1e3 * x), CLOSED_FORM);
  });

  it("gives the wheel c r² at low speed", () => {
    const { gives, atWheels } = modeOf(curves);
    expect(gives).toBe("damping");
    for (const { y } of data(atWheels).points) expectClose(y, ((2000 + 3000) / 2) * 0.64, CLOSED_FORM);
  });

  it("shows its clickers closed and open beside", () => {
    const clicks = `bump { clicks 4 of 16, closed { 100 mm/s: 400 N }, open { 100 mm/s: 100 N } }
      rebound { clicks 6 of 16, per-click 5 %, measured-at 8, 100 mm/s: 300 N, 200 mm/s: 500 N }
      ratio corner 0.8`;
    const law = lawOf(
      curvesOf(
        carWith(`${corner}\n damper side-damper for corner {\n ${clicks}\n }`, byRatio),
        "front.left.side-damper",
      ),
    );
    expect(law.beside.map(({ what }) => what)).toEqual(["closed", "open"]);
    const force = (i: number, v: number) => law.beside[i]?.points.find(({ x }) => Math.abs(x - v) < 1e-12)?.y ?? 0;
    expectClose(force(0, 0.1), 400, CLOSED_FORM);
    expectClose(force(1, 0.1), 100, CLOSED_FORM);
    expectClose(force(0, -0.2), -500 * 1.4, CLOSED_FORM);
    expectClose(force(1, -0.2), -500 * 0.6, CLOSED_FORM);
    expectClose(at(law, 0.1)[0] ?? 0, 0.75 * 400 + 0.25 * 100, CLOSED_FORM);
  });
});

describe("what is not to be had says why", () => {
  it.each([
    [
      "inerter b for corner {\n inertance 40 kg\n ratio corner 0.8\n }",
      "front.left.b",
      /follows its acceleration/,
      "mass",
    ],
    ["actuator a for heave {\n hold { slow: 2 mm }\n ratio heave 0.8\n }", "front.a", /case by case/, "rate"],
    ["spring s for heave {\n rate 50 N/mm\n }", "front.s", /not connected|no connection/, "rate"],
    ["spring s for heave {\n ratio heave 0.8\n }", "front.s", /it has no rate/, "rate"],
  ])("%s", (words, path, why, gives) => {
    const curves = curvesOf(carWith(`${corner}\n ${words}`, byRatio), path);
    const [law] = curves.laws;
    expect(isAbsent(law?.curve) ? law.curve.reason : "a curve").toMatch(why);
    expect(modeOf(curves).gives).toBe(gives);
  });

  it("a trim that is not known leaves a trim element without a law", () => {
    const car = carWith(corner, byRatio);
    const axle = car.model.axles.front;
    if (axle === undefined) throw new Error("no axle");
    const trim = { kind: "absent" as const, reason: "the car has no mass" };
    const curves = curvesOnAxle(assembleAxle(axle, car.model), "front.left.side", { trim, figures: undefined });
    expect(curves?.laws[0]?.curve).toEqual(trim);
    expect(curves?.modes[0]?.atWheels).toEqual(trim);
    expect(data(curves?.modes[0]?.motionRatio).points.length).toBeGreaterThan(1);
  });
});

describe("on the check case's corner", () => {
  const car = carWith(
    "spring side for corner {\n rate 150 N/mm\n between rocker.side and chassis (-55, 88, 385) mm\n }",
  );
  const curves = curvesOf(car, "front.left.side");

  it("the rate at the wheel is the second difference of the energy along the travel", () => {
    const axle = car.model.axles.front;
    if (axle === undefined) throw new Error("no axle");
    const mechanism = assembleAxle(axle, car.model);
    const element = mechanism.elements.find(({ path }) => path === "front.left.side");
    const trim = car.analysis.axles.front?.rates.trim;
    const seat = trim === undefined || isAbsent(trim) ? 0 : (trim[0]?.seat ?? 0);
    const energy = (z: number): number => {
      const left = mechanism.corners.left.motion(z);
      const right = mechanism.corners.right.motion(0);
      if ("kind" in left || "kind" in right || element?.law?.kind !== "spring") throw new Error("unreachable");
      const d = element.connection?.deflection({ left, right });
      if (d === undefined || "kind" in d) throw new Error("no deflection");
      return element.law.energy(d.s + seat);
    };
    const h = 1e-3;
    for (const { x, y } of data(modeOf(curves).atWheels).points) {
      if (Math.abs(x) > 0.028) continue;
      const near = energy(x + h) - 2 * energy(x) + energy(x - h);
      const far = energy(x + 2 * h) - 2 * energy(x) + energy(x - 2 * h);
      expectClose((16 * near - far) / (12 * h * h), y, ENERGY_DIFFERENCE);
    }
  });

  it("the right side's curves are the left's", () => {
    const right = curvesOf(car, "front.right.side");
    expect(right.laws).toEqual(curves.laws);
    expect(right.modes).toEqual(curves.modes);
  });

  it("ends where the links bind, and says so", () => {
    const text = carText({ elements: cornerSpring }).replace("travel -30 .. 30 mm", "travel -30 .. 400 mm");
    const [wide] = contextOf({ "car.crank": text }, "car.crank").cars;
    if (wide === undefined) throw new Error("no car");
    const given = data(modeOf(curvesOf(wide, "front.left.side")).motionRatio);
    const [cut] = markOf(given, "link-binds");
    expect(cut?.x).toBeLessThan(0.4);
    expect(given.points.at(-1)?.x).toBe(cut?.x);
  });
});

describe("in every sample", () => {
  const cars = sampleNames.flatMap((name) => sampleContext(name).cars.map((car) => [name, car] as const));

  it.each(cars.map(([name, car]) => [`${name} ${car.model.setup ?? car.model.name}`, car] as const))("%s", (_, car) => {
    const { axles, elements } = car.analysis;
    for (const figures of [...(axles.front?.elements ?? []), ...(axles.rear?.elements ?? []), ...elements]) {
      const curves = curvesOf(car, figures.path);
      const all = [
        ...curves.laws.map(({ curve }) => curve),
        ...curves.modes.flatMap((m) => [m.motionRatio, m.atWheels]),
      ];
      for (const curve of all) if (!isAbsent(curve)) soundCurve(curve);
      const [first] = curves.modes;
      const isCarPitchOrRoll = elements.includes(figures) && first?.mode !== "heave" && first?.mode !== "warp";
      if (first === undefined || isAbsent(first.atWheels) || first.gives === "mass" || isCarPitchOrRoll) continue;
      const rest = markOf(first.atWheels, "static")[0]?.y;
      // Other volumes of its oil are in the figure as well.
      if (typeof figures.atWheels !== "number" || figures.measure === "volume") continue;
      expectClose(rest ?? Number.NaN, figures.atWheels, IDENTITY, 1e-9);
    }
  });
});

/** Finite, in rising order, marks on the curve within its ends. */
function soundCurve({ points, marks, beside }: CurveData): void {
  for (const { x, y } of [...points, ...marks, ...beside.flatMap((other) => other.points)]) {
    expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true);
  }
  expect(points.length).toBeGreaterThan(1);
  for (const [i, { x }] of points.entries()) expect(x).toBeGreaterThanOrEqual(points[i - 1]?.x ?? x);
  for (const [i, { x }] of marks.entries()) expect(x).toBeGreaterThanOrEqual(marks[i - 1]?.x ?? x);
}
