/**
 * Load cases against hand calculation (check values ROLL-1, LONG-1, AERO-1 and AERO-2). ROLL-1 is linear in the roll angle;
 * the equilibrium turns the body exactly, so that it is held to it where angles are small, and near it at 1 g.
 */
import { describe, expect, it } from "vitest";
import { isoDensity } from "../../../server/elements/air.js";
import type { CaseFigures } from "../../../server/analyses/equilibrium/results.js";
import { expectClose } from "../../support/approx.js";
import { plainCar, resultOf, solvedCase, STILL_AIR } from "../../support/loaded-car.js";
import { CLOSED_FORM, PRINTED_FOUR, SMALL_ANGLE, TURNED } from "../../support/tolerances.js";
import { number } from "../../support/written-car.js";

const G = 9.80665;

/** ROLL-1: invented numbers, formulas of Milliken ch. 18 and Gillespie ch. 6 (from memory). Unsprung masses are by axle. */
const roll1 = (tyreRates: readonly [number, number]) =>
  plainCar({
    mass: 1050,
    // Sprung mass 1.25 m ahead of the rear axle.
    massFront: (880 * (1.25 / 2.7) + 80) / 1050,
    cgHeight: (880 * 0.49 + 80 * 0.31 + 90 * 0.32) / 1050,
    front: {
      track: 1.56,
      x: 0,
      wheelRate: 38e3,
      bar: 22_000,
      tyreRate: tyreRates[0],
      unsprung: 40,
      wheelHeight: 0.31,
      rollCentre: 0.03,
      rideHeight: 0.05,
    },
    rear: {
      track: 1.52,
      x: -2.7,
      wheelRate: 36e3,
      bar: 8000,
      tyreRate: tyreRates[1],
      unsprung: 45,
      wheelHeight: 0.32,
      rollCentre: 0.08,
      rideHeight: 0.05,
    },
  });

const transfer = ({ wheels }: CaseFigures, axle: 0 | 2): number => (wheels[axle + 1]!.load - wheels[axle]!.load) / 2;

/** The table's own g is 9.81 m/s²: its gradients hold for m_s g H with standard gravity up to that. */
function rigid(lateral: number) {
  const H = 0.433148148148148;
  const [kF, kR] = [68_238.4, 49_587.2];
  const angle = (880 * lateral * H) / (kF + kR - 880 * G * H);
  const front = (880 * (1.25 / 2.7) * lateral * 0.03 + kF * angle + 80 * lateral * 0.31) / 1.56;
  const rear = (880 * (1.45 / 2.7) * lateral * 0.08 + kR * angle + 90 * lateral * 0.32) / 1.52;
  return { angle, front, rear };
}

describe("ROLL-1: load transfer in a steady turn", () => {
  it("the closed form itself is the table's at its own gravity", () => {
    // 1.87792051944 deg at 9.81 m/s²; standard gravity is 0.03 % less and stands in m_s g H as well.
    expectClose((rigid(9.81).angle * 180) / Math.PI, 1.87792051944, 2e-5);
    expectClose(rigid(9.81).front, 1666.5145591, 2e-5);
    expectClose(rigid(9.81).rear, 1499.13393716, 2e-5);
  });

  it("rigid tyres, a hundredth of a g: angle and both transfers", () => {
    const found = solvedCase(roll1([1e9, 1e9]), { lateral: 0.01 * G });
    const wanted = rigid(0.01 * G);
    expectClose(found.roll, wanted.angle, SMALL_ANGLE);
    expectClose(transfer(found, 0), wanted.front, SMALL_ANGLE);
    expectClose(transfer(found, 2), wanted.rear, SMALL_ANGLE);
    expectClose(number(found.loadTransferFront), 0.526437019481, SMALL_ANGLE);
    // Each wheel's spring has a bend under its static load here, so that this share is a little off that of the rates.
    expectClose(number(found.rollStiffnessFront), 0.579147485776, TURNED);
  });

  it("rigid tyres at 1 g: the exact turn differs by the square of the angle", () => {
    const found = solvedCase(roll1([1e9, 1e9]), { lateral: 9.81 });
    expectClose((found.roll * 180) / Math.PI, 1.87792051944, TURNED);
    expectClose(transfer(found, 0), 1666.5145591, TURNED);
    expectClose(transfer(found, 2), 1499.13393716, TURNED);
  });

  it("moments about the road balance: Σ t ΔN = Σ m a_y h + m_s g (shift of the sprung mass)", () => {
    const found = solvedCase(roll1([1e9, 1e9]), { lateral: 0.01 * G });
    const moment = 1.56 * transfer(found, 0) + 1.52 * transfer(found, 2);
    const a = 0.01 * G;
    expectClose(
      moment,
      880 * a * 0.49 + 880 * G * 0.433148148148 * found.roll + a * (80 * 0.31 + 90 * 0.32),
      SMALL_ANGLE,
    );
  });

  it("tyres in series: angle and share", () => {
    // On its tyres the whole car rolls about the road, not about the roll axis: gravity takes off some per cent more.
    const found = solvedCase(roll1([230e3, 250e3]), { lateral: 9.81 });
    const more = (found.roll * 180) / Math.PI / 2.292786866 - 1;
    expect(more).toBeGreaterThan(0.02);
    expect(more).toBeLessThan(0.05);
    expectClose(number(found.loadTransferFront), 0.515084153042, TURNED);
  });
});

describe("LONG-1: load transfer along the car", () => {
  /** Next to no pitch, which would take the centre of gravity along. */
  const STIFF = 1e7;
  const car = (h: number) =>
    plainCar({
      mass: 1050,
      massFront: 0.5,
      cgHeight: h,
      front: { track: 1.5, x: 0, wheelRate: STIFF, tyreRate: 1e9, unsprung: 0, wheelHeight: 0.3, rideHeight: 0.05 },
      rear: { track: 1.5, x: -2.7, wheelRate: STIFF, tyreRate: 1e9, unsprung: 0, wheelHeight: 0.3, rideHeight: 0.05 },
    });

  it("m a h/L", () => {
    const found = solvedCase(car(0.46), { longitudinal: -0.8 * 9.81 });
    const front = (found.wheels[0]!.load + found.wheels[1]!.load) / 2;
    expectClose(2 * front - 1050 * 0.5 * G, 1403.92, SMALL_ANGLE);
    expect(found.pitch).toBeGreaterThan(0);
  });

  it("brakes by bias, drive at the driven axle, both balancing the mass", () => {
    const braking = solvedCase(car(0.46), { longitudinal: -5 });
    expectClose(braking.wheels[0]!.longitudinal, (-0.6 * 1050 * 5) / 2, CLOSED_FORM);
    expectClose(braking.wheels[2]!.longitudinal, (-0.4 * 1050 * 5) / 2, CLOSED_FORM);
    const driving = solvedCase(car(0.46), { longitudinal: 3 });
    expect(driving.wheels[0]!.longitudinal).toBe(0);
    expectClose(driving.wheels[3]!.longitudinal, (1050 * 3) / 2, CLOSED_FORM);
  });

  it("anti-dive by the contact point's path: the share of the transfer that the springs do not carry", () => {
    // dx/dz = 0.2 at the front, outboard brakes: 60 % · 0.2 · L/h of the transfer goes by the links (Gillespie ch. 7, from memory).
    const sprung = (slope: number) => {
      const plain = {
        track: 1.5,
        wheelRate: STIFF,
        tyreRate: 1e9,
        unsprung: 0,
        wheelHeight: 0.3,
        rideHeight: 0.05,
        rollCentre: 0,
      };
      const loaded = plainCar({
        mass: 1050,
        massFront: 0.5,
        cgHeight: 0.46,
        front: { ...plain, x: 0, contactSlope: slope },
        rear: { ...plain, x: -2.7 },
      });
      return solvedCase(loaded, { longitudinal: -1 }).wheels[0]!.travel;
    };
    expectClose(1 - sprung(0.2) / sprung(0), (0.6 * 0.2 * 2.7) / 0.46, SMALL_ANGLE);
  });
});

describe("AERO: downforce, its slopes, and where there is none", () => {
  /** AERO-2: front axle on 300 kN/m with both ride rates in it. A rear axle without downforce stays where it is. */
  const car = (k: number, c0: number, c1: number) =>
    plainCar(
      {
        mass: 600,
        massFront: 0.5,
        // On the road, so that no pitch moves it against the wheels.
        cgHeight: 0,
        front: {
          track: 1.5,
          x: 0,
          wheelRate: 1 / (2 / k - 1e-7),
          tyreRate: 1e7,
          unsprung: 0,
          wheelHeight: 0.3,
          rideHeight: 0.05,
        },
        rear: { track: 1.5, x: -2.7, wheelRate: 150e3, tyreRate: 1e7, unsprung: 0, wheelHeight: 0.3, rideHeight: 0.05 },
      },
      {
        air: {
          front: { kind: "slopes", area: c0, byFront: -c1, byRear: 0, at: [0.05, 0.05] },
          rear: { kind: "slopes", area: 0, byFront: 0, byRear: 0, at: [0.05, 0.05] },
          drag: undefined,
          lag: undefined,
        },
      },
    );
  const rows = [
    [40, 5.55319450347, 1665.95835104],
    [60, 13.553071338, 4065.92140141],
    [80, 27.3361227336, 8200.83682008],
  ] as const;

  it.each(rows)("AERO-2 at %f m/s", (speed, drop, downforce) => {
    const found = solvedCase(car(300e3, 1.6, 18), { speed });
    expect(found.air.density).toBe(STILL_AIR);
    expectClose(1000 * (0.05 - number(found.front.rideHeight)), drop, SMALL_ANGLE);
    expectClose(found.air.front, downforce, SMALL_ANGLE);
    expectClose(number(found.downforceFront), 1, CLOSED_FORM);
  });

  it("ends at the speed of divergence: v = √(2k/(ρ c₁)), with so little downforce at design that it stays off the road", () => {
    const critical = 164.957219768;
    expect(resultOf(car(300e3, 1e-4, 18), { speed: 0.999 * critical }).kind).toBe("equilibrium");
    const beyond = resultOf(car(300e3, 1e-4, 18), { speed: 1.001 * critical });
    if (beyond.kind !== "no-equilibrium") throw new Error(beyond.kind);
    expect(beyond.why.kind).toBe("aero-stiffness");
    // Half of the squared speed was the way: reached² of it.
    expect(beyond.reached).toBeGreaterThan(0.98);
  });

  it("says that the body would stand on the road where the root lies below it (AERO-2, second test)", () => {
    const found = resultOf(car(190e3, 1.6, 28), { speed: 80 });
    if (found.kind !== "no-equilibrium") throw new Error(found.kind);
    expect(found.why).toEqual({ kind: "aground", axle: "front" });
    expect(found.words).toMatch(/front axle line/);
  });

  it("AERO-1 and the standard atmosphere (ISO 2533)", () => {
    expectClose(isoDensity(0), 1.22500001812, 1e-10);
    // Its table at 1000 m and 3000 m of geopotential altitude: 1.1116 and 0.9091 kg/m³ (values from memory).
    expectClose(isoDensity(1000), 1.1116, PRINTED_FOUR);
    expectClose(isoDensity(3000), 0.9091, PRINTED_FOUR);
    expectClose(isoDensity(0, 303.15), 101_325 / (287.05287 * 303.15), 1e-12);
  });
});

describe("roads that are not level", () => {
  const car = () =>
    plainCar({
      mass: 600,
      massFront: 0.45,
      cgHeight: 0.3,
      front: { track: 1.5, x: 0, wheelRate: 40e3, tyreRate: 200e3, unsprung: 15, wheelHeight: 0.3, rideHeight: 0.05 },
      rear: { track: 1.5, x: -2.6, wheelRate: 40e3, tyreRate: 200e3, unsprung: 15, wheelHeight: 0.3, rideHeight: 0.05 },
    });
  const total = ({ wheels }: CaseFigures): number => wheels.reduce((sum, { load }) => sum + load, 0);

  it("a crest takes weight away, a dip adds it", () => {
    expectClose(total(solvedCase(car(), { vertical: -3 })), 600 * (G - 3), CLOSED_FORM);
    expectClose(total(solvedCase(car(), { vertical: 3 })), 600 * (G + 3), CLOSED_FORM);
  });

  it("banked so that the turn needs no grip: tan β = a/g, no roll and no transfer", () => {
    const banking = Math.atan(4 / G);
    const found = solvedCase(car(), { lateral: 4, banking });
    expectClose(total(found), 600 * Math.hypot(G, 4), CLOSED_FORM);
    expect(Math.abs(found.roll)).toBeLessThan(1e-12);
    expect(found.loadTransferFront).toMatchObject({ kind: "absent" });
    for (const { lateral } of found.wheels) expect(Math.abs(lateral)).toBeLessThan(1e-6);
  });

  it("uphill at a steady speed: the driven wheels push m g sin γ, and load moves to the rear by h/L of it", () => {
    const gradient = Math.atan(0.12);
    const found = solvedCase(car(), { gradient });
    expectClose(found.wheels[2]!.longitudinal, (600 * G * Math.sin(gradient)) / 2, CLOSED_FORM);
    const front = found.wheels[0]!.load + found.wheels[1]!.load;
    const wanted = 600 * G * (0.45 * Math.cos(gradient) - (Math.sin(gradient) * 0.3) / 2.6);
    expectClose(front, wanted, TURNED);
  });
});
