/**
 * Kerb strikes of a car whose ends do not feel each other (pitch inertia = m a b, sources: any text on ride), so that its
 * front end is two quarter cars: against the closed form of modal superposition, SciPy (test/oracle/kerb_strike.py), the
 * energy that the road puts in, free fall, the mirror image and longer steps.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { strike, type Kerb, type Pass } from "../../../server/analyses/kerb/strike.js";
import { equilibrium } from "../../../server/analyses/equilibrium/solve.js";
import { byRatios, constantRatio } from "../../../server/elements/connections/ratio.js";
import type { DamperLaw, Law } from "../../../server/elements/element.js";
import { inner } from "../../../server/maths/rows.js";
import { caseOf, plainCar, readyFor } from "../../support/loaded-car.js";
import { damping, element } from "../../support/mechanisms.js";
import {
  KERB_CLOSED_M,
  KERB_ENERGY,
  KERB_MIRROR_M,
  KERB_ORACLE_LOAD,
  KERB_ORACLE_M,
  KERB_STEPS,
} from "../../support/tolerances.js";

interface Oracle {
  readonly car: Record<"sprung" | "unsprung" | "rate" | "tyreRate" | "tyreDamping", number>;
  readonly damper: Record<"slow" | "fast" | "knee", number>;
  readonly passes: readonly {
    readonly height: number;
    readonly length: number;
    readonly speed: number;
    readonly rows: readonly (readonly number[])[];
  }[];
}
const oracle = JSON.parse(readFileSync(new URL("../../data/kerb-strike.json", import.meta.url), "utf8")) as Oracle;
const { sprung, unsprung, rate, tyreRate } = oracle.car;

/** Half of the wheelbase. */
const ARM = 1.25;
/** All heights are next to nothing, so that gravity has no arm on a body that turns. */
const LOW = 1e-4;

function endsApart(law: Law | undefined, tyreDamping: number) {
  const dampers = (["left", "right"] as const).map((side) =>
    element("damper", byRatios({ corner: constantRatio(1) }, false, side), law, {
      side,
      for: ["corner"],
    }),
  );
  const end = {
    track: 1.6,
    wheelRate: rate,
    tyreRate,
    unsprung,
    wheelHeight: LOW,
    rideHeight: LOW,
    elements: law === undefined ? [] : dampers,
  };
  const mass = 4 * (sprung + unsprung);
  const under = plainCar({
    front: { ...end, x: ARM },
    rear: { ...end, x: -ARM },
    mass,
    massFront: 0.5,
    cgHeight: LOW,
  });
  const ready = readyFor(under);
  const solution = equilibrium(ready, caseOf({}));
  if (solution.kind !== "solved") throw new Error(solution.kind);
  const numbers = {
    rollInertia: 4 * sprung * 0.8 ** 2,
    pitchInertia: 4 * sprung * ARM ** 2,
    tyreDamping: [tyreDamping, tyreDamping, tyreDamping, tyreDamping],
  };
  return { ready, solution, numbers };
}

const HALF_SINE: Kerb = {
  shape: "half-sine",
  height: 0.01,
  length: 1,
  contact: 1e-6,
  speed: 20,
  wheels: "both",
  axle: "front",
  after: 0.35,
};

function passed(car: ReturnType<typeof endsApart>, kerb: Partial<Kerb>, accuracy = {}): Pass {
  const found = strike(car.ready, car.solution, car.numbers, { ...HALF_SINE, ...kerb }, accuracy);
  if (found.kind !== "solved") throw new Error(JSON.stringify(found.kind));
  return found;
}

/** Of the front left corner: rise of the body over the axle and of the wheel, and the tyre's load, at each moment. */
const corner = ({ moments }: Pass) =>
  moments.map(({ t, x, state }) => {
    const still = moments[0]!.x;
    const body = x[0]! - still[0]! - ARM * (x[2]! - still[2]!);
    return { t, body, wheel: body + x[3]! - still[3]!, tyre: state.balance.wheels[0]!.load };
  });

/** At a time, by a cubic through four moments around it. */
function at(rows: ReturnType<typeof corner>, t: number, of: "body" | "wheel" | "tyre"): number {
  const found = rows.findIndex((row) => row.t >= t - 1e-12);
  const next = found < 0 ? rows.length - 1 : found;
  if (Math.abs(rows[next]!.t - t) < 1e-12) return rows[next]![of];
  const near = rows.slice(Math.max(0, next - 2), next + 2);
  return near.reduce(
    (sum, one) =>
      sum +
      one[of] *
        near.reduce((product, other) => (other === one ? product : (product * (t - other.t)) / (one.t - other.t)), 1),
    0,
  );
}

const digressive: DamperLaw = (() => {
  const { slow, fast, knee } = oracle.damper;
  const isSlow = (v: number) => Math.abs(v) < knee;
  return {
    kind: "damper",
    force: (v) => (isSlow(v) ? slow * v : Math.sign(v) * (slow * knee + fast * (Math.abs(v) - knee))),
    damping: (v) => (isSlow(v) ? slow : fast),
    lowSpeed: slow,
    gasForce: 0,
  };
})();

describe("the quarter-car limit", () => {
  it("without damping is the closed form of modal superposition, on half a sine and after it", () => {
    // M q̈ + K q = (0, k_t y): modes by hand; Duhamel's integral of sin pt is closed (W. T. Thomson, Theory of Vibration, from memory).
    const [a, b, c] = [rate / sprung, -rate / sprung, -rate / unsprung];
    const d = (rate + tyreRate) / unsprung;
    const modes = [-1, 1].map((sign) => {
      const square = (a + d) / 2 + sign * Math.sqrt(((a - d) / 2) ** 2 + b * c);
      const shape = [1, (square - a) / b] as const;
      return { w: Math.sqrt(square), shape, mass: sprung + unsprung * shape[1] ** 2 };
    });
    const p = (Math.PI * HALF_SINE.speed) / HALF_SINE.length;
    const after = Math.PI / p;
    const half = (w: number, t: number) =>
      t <= 0 ? 0 : (Math.sin(p * t) - (p / w) * Math.sin(w * t)) / (w * w - p * p);
    // Low enough that no tyre lifts.
    const height = 0.002;
    const rows = corner(passed(endsApart(undefined, 0), { height }, { relative: 1e-9 }));
    expect(rows.length).toBeGreaterThan(300);
    for (const { t, body, wheel } of rows) {
      const [z, u] = [0, 1].map((dof) =>
        modes.reduce((sum, { w, shape, mass }) => {
          const push = (tyreRate * height * shape[1]) / mass;
          return sum + push * shape[dof]! * (half(w, t) + half(w, t - after));
        }, 0),
      );
      expect(Math.abs(body - z!)).toBeLessThan(KERB_CLOSED_M);
      expect(Math.abs(wheel - u!)).toBeLessThan(KERB_CLOSED_M);
    }
  });

  it.each(oracle.passes)("with a digressive damper and a tyre that lifts is SciPy's: $height m", (one) => {
    const { height, length, speed, rows } = one;
    const kerb = { height, length, speed, after: 0.42 - length / speed };
    const found = corner(
      passed(endsApart(digressive, oracle.car.tyreDamping), kerb, { longest: 5e-4, relative: 1e-9 }),
    );
    // Not at the ends of the kerb, where the tyre's damping jumps.
    const smooth = rows.filter(([t]) => Math.abs(t! - length / speed) > 2e-3 && t! > 2e-3);
    for (const [t, body, wheel, , , tyre] of smooth) {
      expect(Math.abs(at(found, t!, "body") - body!)).toBeLessThan(KERB_ORACLE_M);
      expect(Math.abs(at(found, t!, "wheel") - wheel!)).toBeLessThan(KERB_ORACLE_M);
      expect(Math.abs(at(found, t!, "tyre") - tyre!)).toBeLessThan(KERB_ORACLE_LOAD);
    }
  });
});

describe("a pass over a high kerb", () => {
  const car = endsApart(damping(1500), 0);
  const high = { height: 0.06, length: 0.5, axle: "both", wheels: "left", contact: 0.1 } as const;
  const pass = passed(car, high);
  const fine = passed(car, high, { longest: 2e-4, relative: 1e-8 });

  it("takes from the road what it stores and what its dampers turn into heat", () => {
    const { moments, mass } = fine;
    const trapezes = (of: (one: (typeof moments)[number]) => number) =>
      moments.slice(1).reduce((sum, one, i) => sum + ((of(one) + of(moments[i]!)) / 2) * (one.t - moments[i]!.t), 0);
    const work = trapezes(({ state, road }) =>
      state.balance.wheels.reduce((sum, { load }, i) => sum + load * road.speeds[i]!, 0),
    );
    const heat = trapezes(({ state }) => state.dampers.reduce((sum, { force, speed }) => sum + force * speed, 0));
    const [first, last] = [moments[0]!, moments.at(-1)!];
    const stored = ({ v, x, state: { balance } }: typeof first) => {
      const springs = balance.carriers.reduce((sum, { carrier, deflection }) => {
        const { law } = carrier.element;
        return sum + (law?.kind === "spring" ? law.energy(deflection + carrier.seat) : 0);
      }, 0);
      const tyres = balance.wheels.reduce((sum, { load }) => sum + load ** 2 / (2 * tyreRate), 0);
      const wheels = x.slice(3, 7).reduce((sum, travel) => sum + unsprung * travel, 0);
      const weight = 9.80665 * (4 * (sprung + unsprung) * x[0]! + wheels);
      return (
        inner(
          v,
          mass.map((row) => inner(row, v)),
        ) /
          2 +
        springs +
        tyres +
        weight
      );
    };
    expect(heat).toBeGreaterThan(10);
    expect(Math.abs(work - heat - (stored(last) - stored(first)))).toBeLessThan(KERB_ENERGY * heat);
  });

  it("is the mirror image on the other side", () => {
    const other = passed(car, { ...high, wheels: "right" });
    expect(other.moments.length).toBe(pass.moments.length);
    const swap = [0, 1, 2, 4, 3, 6, 5];
    for (const [i, { x }] of pass.moments.entries()) {
      const mirrored = swap.map((j) => other.moments[i]!.x[j]! * (j === 1 ? -1 : 1));
      for (const [j, value] of x.entries()) expect(Math.abs(value - mirrored[j]!)).toBeLessThan(KERB_MIRROR_M);
    }
  });

  it("does not depend on its steps", () => {
    const peak = ({ moments }: Pass) => Math.max(...moments.map(({ state }) => state.balance.wheels[0]!.load));
    expect(peak(pass)).toBeGreaterThan(5000);
    expect(Math.abs(peak(pass) / peak(fine) - 1)).toBeLessThan(KERB_STEPS);
    const end = ({ moments }: Pass) => moments.at(-1)!.x;
    for (const [j, value] of end(pass).entries()) expect(Math.abs(value - end(fine)[j]!)).toBeLessThan(1e-5);
  });

  it("lets a car fly: with no wheel on the ground its centre falls with g", () => {
    const { moments } = passed(endsApart(undefined, 0), {
      height: 0.3,
      length: 0.6,
      shape: "versed-sine",
      axle: "both",
      speed: 400,
      after: 0.25,
    });
    const inAir = moments.filter(({ state }) => state.balance.wheels.every(({ load }) => load === 0));
    expect(inAir.length).toBeGreaterThan(5);
    for (const { state } of inAir) {
      const [up, , , ...travels] = state.acceleration;
      // Of all masses: the sprung one rises with the body, each wheel by its travel as well.
      const total = 4 * (sprung + unsprung) * up! + travels.reduce((sum, a) => sum + unsprung * a, 0);
      expect(total / (4 * (sprung + unsprung))).toBeCloseTo(-9.80665, 6);
    }
  });
});

it("is absent, not NaN, for a kerb without length or speed", () => {
  const car = endsApart(undefined, 0);
  for (const wrong of [{ length: 0 }, { speed: 0 }, { contact: -1 }, { height: Number.NaN }])
    expect(strike(car.ready, car.solution, car.numbers, { ...HALF_SINE, ...wrong }).kind).toBe("absent");
});
