/** The quarter car against published and closed values: QC, INR and RND of the check values. */
import { describe, expect, it } from "vitest";
import type { Driven } from "../../../server/analyses/whole-car/channels.js";
import { partOf } from "../../../server/analyses/whole-car/parts.js";
import { type QuarterCar, quarterCar } from "../../../server/analyses/whole-car/quarter-car.js";
import { roughnessOf, velocityDensity } from "../../../server/analyses/whole-car/road-profile.js";
import { meanSquares } from "../../../server/analyses/whole-car/road-variances.js";
import { operated, type Operator, responderOf, transferAt } from "../../../server/analyses/whole-car/transfer.js";
import { undampedSpectrum } from "../../../server/maths/eigen.js";
import { expectClose } from "../../support/approx.js";
import { BOOK_ROUNDING, CLOSED_FORM, ROAD_BAND } from "../../support/tolerances.js";

function frequencies(car: Partial<QuarterCar> & Pick<QuarterCar, "stiffness" | "tyreRate">): number[] {
  const { mass, stiffness } = quarterCar({ sprungMass: 0, unsprungMass: 0, damping: 0, ...car });
  return undampedSpectrum(mass, stiffness)!.squares.map((square) => Math.sqrt(square) / (2 * Math.PI));
}

describe("undamped frequencies", () => {
  it("are the published ones of Barton & Fieldhouse 2018, p. 209 (QC-1)", () => {
    const car = { sprungMass: 317.5, unsprungMass: 45.4, stiffness: 22e3, tyreRate: 192e3 };
    const [first, second] = frequencies(car);
    expectClose(first!, 1.25392352766, CLOSED_FORM);
    expectClose(second!, 10.9353169601, CLOSED_FORM);
    expectClose(2 * Math.PI * first!, 7.87, BOOK_ROUNDING);
    expectClose(2 * Math.PI * second!, 68.73, BOOK_ROUNDING);
    const { mass, stiffness } = quarterCar({ ...car, damping: 0 });
    const { shapes } = undampedSpectrum(mass, stiffness)!;
    expectClose(shapes[1]![0]! / shapes[0]![0]!, 0.10417559873, CLOSED_FORM);
    expectClose(shapes[1]![1]! / shapes[0]![1]!, -67.1308075571, CLOSED_FORM);
  });

  it("are those of Wong's example (QC-3; inputs from memory)", () => {
    const found = frequencies({
      sprungMass: 11120 / 9.81,
      unsprungMass: 890 / 9.81,
      stiffness: 45.53e3,
      tyreRate: 525.35e3,
    });
    expectClose(found[0]!, 0.967368296172, CLOSED_FORM);
    expectClose(found[1]!, 12.628251342, CLOSED_FORM);
  });

  it.each([
    [0, 1.58840298637, 11.4362014986],
    [30, 1.52582954864, 8.46676386418],
    [60, 1.46861633513, 7.19627733263],
  ])("fall with an inerter of %d kg (INR-2; car data of Smith & Wang 2004, from memory)", (inertance, body, hop) => {
    const found = frequencies({ sprungMass: 250, unsprungMass: 35, stiffness: 30e3, tyreRate: 150e3, inertance });
    expectClose(found[0]!, body, CLOSED_FORM);
    expectClose(found[1]!, hop, CLOSED_FORM);
  });

  it("of a mass on spring and inerter, and its anti-resonance (INR-1)", () => {
    // The wheel held by a tyre ten million times as stiff.
    const car = { sprungMass: 300, unsprungMass: 1e-3, stiffness: 30e3, tyreRate: 1e12, damping: 0, inertance: 60 };
    const part = partOf(quarterCar({ ...car, damping: 1e-6 }), undefined)!;
    const body = [{ motion: [1, 0], road: [0] }];
    const size = (frequency: number): number => {
      const [[[re, im]]] = transferAt(
        responderOf(part, body),
        { displacements: 1, inputs: 1 },
        2 * Math.PI * frequency,
      ) as [[[number, number]]];
      return Math.hypot(re, im);
    };
    expect(size(3.55881271709)).toBeLessThan(1e-6);
    expect(size(1.45287920783)).toBeGreaterThan(1e6);
    expect(size(1.59154943092)).toBeLessThan(1e3);
  });
});

const OPERATORS: Readonly<Record<string, readonly [readonly number[], readonly number[], Operator]>> = {
  acceleration: [[1, 0], [0], [0, 0, 1]],
  travel: [[1, -1], [0], [1, 0, 0]],
  tyre: [[0, 1], [-1], [1, 0, 0]],
  velocity: [[1, 0], [0], [0, 1, 0]],
};

function rmsOf(car: QuarterCar, roughness: number, speed: number): Record<string, number> {
  const rows = Object.values(OPERATORS);
  const driven: Driven = {
    system: quarterCar(car),
    channels: [{ front: [1], rear: [0], sign: 1 }],
    of: [0, 1, 2, 3],
    shown: rows.map(([motion, road]) => ({ motion, road })),
  };
  const road = { roughness, speed, band: { from: 1e-8, to: 1e7 }, contactLength: 0, sides: "same", track: 1 } as const;
  const operators = rows.map(([, , operator]) => operator);
  const found = meanSquares({ driven: [driven], operators, delay: 0 }, road, { relative: 1e-9 })!;
  return Object.fromEntries(Object.keys(OPERATORS).map((name, i) => [name, Math.sqrt(found.values[i]!)]));
}

/** Closed forms for a white velocity (derived, section RND of the check values; same in Chalasani 1986, from memory). */
function closedForm(
  { sprungMass: s, unsprungMass: u, stiffness: k, tyreRate: t, damping: c }: QuarterCar,
  density: number,
) {
  const m = s + u;
  return {
    acceleration: Math.sqrt((density / 4) * ((c * t) / s ** 2 + (k * k * m) / (c * s ** 2))),
    travel: Math.sqrt((density / 4) * (m / c)),
    tyre: Math.sqrt(
      (density / 4) *
        ((c * m * m) / (t * s * s) + u / c + (k * k * m ** 3) / (c * t * t * s * s) - (2 * k * u * m) / (c * t * s)),
    ),
    velocity: Math.sqrt((density / 4) * ((c * m) / s ** 2 + (k * k * m * m) / (c * t * s * s) + k / c)),
  };
}

const RND = [
  [
    "RND-1",
    { sprungMass: 300, unsprungMass: 40, stiffness: 20e3, tyreRate: 200e3, damping: 1500 },
    [64e-6, 25],
    { acceleration: 0.827926508031, travel: 5.98278908993e-3, tyre: 2.28856218139e-3, velocity: 0.0571909216586 },
  ],
  [
    "RND-2",
    { sprungMass: 280, unsprungMass: 38, stiffness: 45e3, tyreRate: 230e3, damping: 3200 },
    [16e-6, 40],
    { acceleration: 0.868972299991, travel: 2.50540783089e-3, tyre: 1.36389933342e-3, velocity: 0.0439578206918 },
  ],
] as const;

describe("root mean squares on a white-velocity road", () => {
  it.each(RND)("%s: integrated, they are the closed forms", (_, car, [roughness, speed], expected) => {
    const found = rmsOf(car, roughness, speed);
    const closed = closedForm(car, velocityDensity(roughness, speed));
    for (const name of ["acceleration", "travel", "tyre", "velocity"] as const) {
      expectClose(closed[name], expected[name], CLOSED_FORM);
      expectClose(found[name]!, expected[name], ROAD_BAND);
    }
  });

  it("are least at the dampers of RND-OPT, one for comfort and one for grip", () => {
    const [, car] = RND[0];
    const at = (damping: number) => rmsOf({ ...car, damping }, 64e-6, 25);
    for (const [name, optimum] of [
      ["acceleration", 824.621125124],
      ["tyre", 2344.48480408],
    ] as const) {
      const least = at(optimum)[name]!;
      expect(at(optimum * 1.02)[name]).toBeGreaterThan(least);
      expect(at(optimum / 1.02)[name]).toBeGreaterThan(least);
    }
  });

  it("with the best inerter are those of INR-3", () => {
    const density = 2 * (2 * Math.PI) ** 2 * 5e-7 * 25;
    const roughness = density / ((2 * Math.PI * 0.1) ** 2 * 25);
    for (const [stiffness, damping, inertance, expected] of [
      [30e3, 1307.66968306, 0, 1.24448459014],
      [30e3, 1202.58, 9.93604, 1.1934314],
      [60e3, 2328.81, 31.2661, 1.6607643],
      [120e3, 4142.89, 122.741, 2.215093],
    ] as const) {
      const car = { sprungMass: 250, unsprungMass: 35, stiffness, tyreRate: 150e3, damping, inertance };
      expectClose(rmsOf(car, roughness, 25)["acceleration"]!, expected, 2e-5);
    }
  });
});

describe("transfer functions", () => {
  it("by modes and solved directly are the same, and carry a road that hardly moves with them", () => {
    const [, car] = RND[0];
    const part = partOf(quarterCar({ ...car, tyreDamping: 200, inertance: 8 }), undefined)!;
    const shown = [
      { motion: [1, 0], road: [0] },
      { motion: [0, 1], road: [-1] },
    ];
    const shape = { displacements: 2, inputs: 1 };
    for (const omega of [1e-3, 3, 8, 70, 900]) {
      const [modal, direct] = (["modes", "direct"] as const).map((way) => {
        const responder = responderOf(part, shown, way);
        expect(responder.way).toBe(way);
        return transferAt(responder, shape, omega)!;
      });
      for (let d = 0; d < 2; d++) {
        for (let i = 0; i < 2; i++) expectClose(modal![d]![0]![i]!, direct![d]![0]![i]!, 1e-8, 1e-13);
      }
    }
    const still = transferAt(responderOf(part, shown), shape, 1e-6)![0]![0];
    expectClose(still![0], 1, CLOSED_FORM);
    expect(operated([2, 3, 4], 5, [1, 1])).toEqual([-113, -83]);
  });

  it("of twins whose roots fall together are solved directly", () => {
    // Critically damped on a rigid tyre: one double root.
    const [m, k] = [300, 30e3];
    const system = {
      mass: [[m]],
      damping: [[2 * Math.sqrt(k * m)]],
      stiffness: [[k]],
      roadStiffness: [[k]],
      roadDamping: [[2 * Math.sqrt(k * m)]],
      air: undefined,
    };
    const responder = responderOf(partOf(system, undefined)!, [{ motion: [1], road: [0] }]);
    expect(responder.way).toBe("direct");
    // s = jω₀: (k + jcω)/(k − ω²m + jcω) = (1 + 2j)/(2j).
    const [[[re, im]]] = transferAt(responder, { displacements: 1, inputs: 1 }, Math.sqrt(k / m)) as [
      [[number, number]],
    ];
    expectClose(re, 1, CLOSED_FORM);
    expectClose(im, -0.5, CLOSED_FORM);
  });

  it("has no answer at a frequency that nothing resists", () => {
    const system = quarterCar({ sprungMass: 1, unsprungMass: 1, stiffness: 0, damping: 0, tyreRate: 1 });
    const part = partOf(system, undefined)!;
    expect(
      transferAt(responderOf(part, [{ motion: [0, 1], road: [0] }], "direct"), { displacements: 1, inputs: 1 }, 0),
    ).toBeUndefined();
  });

  it("knows class A's roughness", () => {
    expect(roughnessOf("A")).toBe(16e-6);
  });
});
