/** Modes against SciPy (test/oracle/whole_car.py), the check values CAR7, QC and INR, and closed-form limits. */
import { describe, expect, it } from "vitest";
import type { WholeCar } from "../../../server/analyses/whole-car/car-data.js";
import { carDynamics, mirroredAxle, mirroredMatrix } from "../../../server/analyses/whole-car/dynamics.js";
import { type Mode, type Modes, modesOf } from "../../../server/analyses/whole-car/modes.js";
import { partOf, partsOf } from "../../../server/analyses/whole-car/parts.js";
import { pureModes } from "../../../server/analyses/whole-car/pure-modes.js";
import { expectClose } from "../../support/approx.js";
import { CLOSED_FORM, EIGENVALUE } from "../../support/tolerances.js";
import { car7, crookedCar } from "../../support/whole-car.js";
import { wholeCarData } from "../../support/whole-car-data.js";

function modes(car: WholeCar): Modes {
  const found = modesOf(car);
  if (found.kind !== "modes") throw new Error("no modes");
  return found;
}

/** Every root as [re, im], pairs twice. */
const rootsOf = (found: readonly Mode[]): [number, number][] =>
  found.flatMap(({ root }): [number, number][] =>
    root.kind === "oscillation"
      ? [
          [root.re, root.im],
          [root.re, -root.im],
        ]
      : [[root.re, 0]],
  );

/** Both ways: each root has its like in the other. */
function expectSameRoots(actual: readonly (readonly [number, number])[], expected: typeof actual): void {
  expect(actual.length).toBe(expected.length);
  const largest = Math.max(...expected.map(([re, im]) => Math.hypot(re, im)));
  for (const [one, others] of [
    [actual, expected],
    [expected, actual],
  ] as const) {
    for (const [re, im] of one) {
      const off = Math.min(...others.map((other) => Math.hypot(re - other[0], im - other[1])));
      expect(off).toBeLessThanOrEqual(EIGENVALUE * largest);
    }
  }
}

describe("modes of the whole car", () => {
  it.each(wholeCarData.cars.map((entry, i) => [i, entry] as const))(
    "of car %d are SciPy's",
    (_, { car, eigenvalues }) => {
      expectSameRoots(rootsOf(modes(car).modes), eigenvalues);
    },
  );

  it("of CAR7 (check values) are named, with frequencies and damping ratios", () => {
    const told = modes(car7).modes.map(({ name, root }) => [name, root] as const);
    const expected = [
      ["heave", 1.5196552837, 0.33206078634],
      ["pitch", 1.7501414718, 0.38237282402],
      ["roll", 2.2754239047, 0.32785849937],
      ["rear-parallel-hop", 11.378770534, 0.41690103904],
      ["rear-tramp", 11.722466265, 0.41098952235],
      ["front-parallel-hop", 12.181908349, 0.4014136878],
      ["front-tramp", 12.81685446, 0.37576813947],
    ] as const;
    expect(told.map(([name]) => name)).toEqual(expected.map(([name]) => name));
    for (const [i, [, frequency, ratio]] of expected.entries()) {
      const root = told[i]![1];
      if (root.kind !== "oscillation") throw new Error("not an oscillation");
      expectClose(root.frequency, frequency, EIGENVALUE);
      expectClose(root.dampingRatio, ratio, EIGENVALUE);
      expectClose(root.dampedFrequency, frequency * Math.sqrt(1 - ratio * ratio), EIGENVALUE);
    }
  });

  it("of a mirrored car are those of its halves: the half car CAR4 is in CAR7", () => {
    const parts = partsOf(carDynamics(car7))!;
    const whole = partOf(carDynamics(car7), undefined)!;
    expect(parts.map(({ space }) => space.freedoms)).toEqual([4, 3]);
    const pairs = parts.flatMap(({ spectrum: { re, im } }) => re.map((value, k) => [value, im[k]!] as const));
    expectSameRoots(
      pairs,
      whole.spectrum.re.map((re, k) => [re, whole.spectrum.im[k]!] as const),
    );
  });

  it("of a crooked car satisfy the equations of motion, the air's lag with them", () => {
    const { mass, damping, stiffness, air } = carDynamics(crookedCar);
    const found = modes(crookedCar).modes;
    expect(found.reduce((count, { root }) => count + (root.kind === "oscillation" ? 2 : 1), 0)).toBe(16);
    for (const { root, shape } of found) {
      const [a, b] = [root.re, root.kind === "oscillation" ? root.im : 0];
      const lag = [1 + air!.lag * a, air!.lag * b] as const;
      const by = (rows: readonly (readonly number[])[], i: number, part: readonly number[]): number =>
        rows[i]!.reduce((total, value, j) => total + value * part[j]!, 0);
      const pulls = air!.slopes.map((row) => row.map((slope) => slope));
      const heights = air!.heights.map((row) => [
        row.reduce((total, value, j) => total + value * shape.re[j]!, 0),
        row.reduce((total, value, j) => total + value * shape.im[j]!, 0),
      ]);
      const felt = heights.map(([re, im]) => {
        const square = lag[0] ** 2 + lag[1] ** 2;
        return [(re! * lag[0] + im! * lag[1]) / square, (im! * lag[0] - re! * lag[1]) / square];
      });
      for (let i = 0; i < 7; i++) {
        const [mRe, mIm] = [by(mass, i, shape.re), by(mass, i, shape.im)];
        const [cRe, cIm] = [by(damping, i, shape.re), by(damping, i, shape.im)];
        const pull = (part: 0 | 1): number =>
          air!.heights.reduce(
            (total, row, h) => total + row[i]! * pulls[h]!.reduce((sum, s, g) => sum + s * felt[g]![part]!, 0),
            0,
          );
        const real = (a * a - b * b) * mRe - 2 * a * b * mIm + a * cRe - b * cIm + by(stiffness, i, shape.re) + pull(0);
        const imaginary =
          (a * a - b * b) * mIm + 2 * a * b * mRe + a * cIm + b * cRe + by(stiffness, i, shape.im) + pull(1);
        expect(Math.hypot(real, imaginary)).toBeLessThan(1e-8 * 250e3);
      }
    }
  });

  it("are the undamped ones where nothing damps", () => {
    const none = [
      [0, 0],
      [0, 0],
    ];
    const car = { ...car7, front: { ...car7.front, damping: none }, rear: { ...car7.rear, damping: none } };
    const found = modes(car);
    const { undamped } = wholeCarData.cars[0]!;
    for (const [i, { root }] of found.modes.entries()) {
      if (root.kind !== "oscillation") throw new Error("not an oscillation");
      expectClose(root.frequency, undamped![i]!, EIGENVALUE);
      expect(Math.abs(root.dampingRatio)).toBeLessThan(1e-10);
    }
    expect(found.stability.kind).toBe("stable");
  });

  it("go over into those of the body on its springs as tyres become rigid", () => {
    const rigid = (axle: WholeCar["front"]): WholeCar["front"] => {
      const wheel = { ...axle.left, tyreRate: 1e12 };
      return { ...axle, left: wheel, right: wheel };
    };
    const found = modes({ ...car7, front: rigid(car7.front), rear: rigid(car7.rear) });
    const { heave, roll } = pureModes(car7);
    // Roll is alone, since the car is mirrored: its frequency is the closed form √(K/I)/2π.
    const mode = found.modes.find(({ name }) => name === "roll")!;
    if (mode.root.kind !== "oscillation") throw new Error("not an oscillation");
    expectClose(mode.root.frequency, Math.sqrt((55449.6 + 45000) / 450) / (2 * Math.PI), 1e-6);
    expectClose(roll.frequency as number, mode.root.frequency, 1e-6);
    expectClose(roll.dampingRatio as number, mode.root.dampingRatio, 1e-6);
    expectClose(heave.stiffness, 124e3, CLOSED_FORM);
    expectClose(heave.dampingRatio as number, 10e3 / (2 * Math.sqrt(124e3 * 1200)), CLOSED_FORM);
  });

  it("tell an overdamped pair as two real roots", () => {
    const damped = {
      ...car7.front,
      damping: [
        [60e3, 0],
        [0, 60e3],
      ],
    };
    const found = modes({ ...car7, front: damped });
    expect(found.modes.filter(({ root }) => root.kind === "decay").length).toBeGreaterThanOrEqual(2);
    expect(found.stability.kind).toBe("stable");
  });

  it("are refused for masses and numbers that are none", () => {
    expect(modesOf({ ...car7, sprung: { ...car7.sprung, mass: 0 } }).kind).toBe("no-modes");
    expect(modesOf({ ...car7, wheelbase: Number.NaN }).kind).toBe("no-modes");
    expect(modesOf({ ...car7, front: { ...car7.front, track: Infinity } }).kind).toBe("no-modes");
  });
});

describe("stability", () => {
  const withAir = (slope: number, lag: number): Modes =>
    modes({
      ...car7,
      air: {
        slopes: [
          [slope, 0],
          [0, slope],
        ],
        ...(lag > 0 ? { lag } : {}),
      },
    });

  it("is lost without swinging where downforce grows faster than the springs, just where K is singular", () => {
    // Heave and pitch with wheels let go: K + slopes singular at the smallest eigenvalue of the condensed stiffness.
    let [calm, lost] = [0, -400e3];
    for (let i = 0; i < 60; i++) {
      const middle = (calm + lost) / 2;
      if (withAir(middle, 0).stability.kind === "stable") calm = middle;
      else lost = middle;
    }
    const { stability } = withAir(lost, 0);
    expect(stability.kind).toBe("static-divergence");
    // Each end on its own pair of ride rates: k kₜ/(k + kₜ) a wheel, twice at an axle; the softer end goes first.
    expectClose(-lost, (2 * 30e3 * 220e3) / 250e3, 1e-6);
  });

  it("is lost in a swing where late downforce falls as the car drops, at the slope that Routh's criterion gives", () => {
    // Heave alone, on rigid tyres: mτ s³ + (m + cτ) s² + (c + kτ) s + k + D.
    const [mass, rate, damping, lag] = [1200, 30e3, 2400, 0.05];
    const wheel = { unsprungMass: 40, tyreRate: 1e11, tyreDamping: 0 };
    const axle = mirroredAxle(1.5, wheel, { stiffness: mirroredMatrix(rate), damping: mirroredMatrix(damping) });
    const sprung = { mass, rollInertia: 450, pitchInertia: 600, behindFront: 1.35 };
    const at = (slope: number): Modes =>
      modes({
        wheelbase: 2.7,
        sprung,
        front: axle,
        rear: axle,
        air: {
          slopes: [
            [slope / 2, 0],
            [0, slope / 2],
          ],
          lag,
        },
      });
    const [k, c] = [4 * rate, 4 * damping];
    const limit = ((mass + c * lag) * (c + k * lag) - mass * lag * k) / (mass * lag);
    expect(at(0.99999 * limit).stability.kind).toBe("stable");
    const { stability } = at(1.00001 * limit);
    if (stability.kind !== "growing-oscillation") throw new Error(stability.kind);
    expect(stability.mode.name).toBe("heave");
  });
});
