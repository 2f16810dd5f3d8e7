/** Rates against closed forms, second differences of energy, and identities. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyseAxle } from "../../server/analyses/analyse-axle.js";
import { inHeave, inRoll, inSeriesWith } from "../../server/analyses/form.js";
import type { AxleRates, Figure } from "../../server/analyses/results.js";
import { byRatios, constantRatio } from "../../server/elements/connections/ratio.js";
import type { Element, Law } from "../../server/elements/element.js";
import type { AxleMechanism } from "../../server/elements/mechanism.js";
import { ratioCorner } from "../../server/linkage/ratio.js";
import { expectClose } from "../support/approx.js";
import {
  antiRollBar,
  axle,
  damping,
  element,
  heaveSpring,
  rollDamper,
  sideSprings,
  spring,
  wishboneCorner,
} from "../support/mechanisms.js";
import { CLOSED_FORM, ENERGY_DIFFERENCE, IDENTITY } from "../support/tolerances.js";

const GRAVITY = 9.80665;

const number = (figure: Figure | undefined): number => {
  if (typeof figure !== "number") throw new Error(figure?.reason ?? "nothing");
  return figure;
};

const reason = (figure: unknown): string => (figure as { reason: string }).reason;

const corner = (law: Law, ratio: number): readonly Element[] =>
  (["left", "right"] as const).map((side) =>
    element("side", byRatios({ corner: constantRatio(ratio) }, false, side), law, { side, for: ["corner"] }),
  );

const ratios = (elements: readonly Element[], overrides: Partial<AxleMechanism> = {}): AxleMechanism =>
  axle(elements, { corners: { left: ratioCorner(), right: ratioCorner() }, ...overrides });

describe("classic factor traps (check-values.md, section 0; own numbers)", () => {
  it("motion ratio is spring travel over wheel travel: k_w = k MR²", () => {
    const { rates } = analyseAxle(ratios(corner(spring(80e3), 0.72)));
    expectClose(number(rates.wheelRate.left), 41472, CLOSED_FORM);
    expectClose(number(rates.heaveRate), 2 * 41472, CLOSED_FORM);
  });

  it("the geometric term, RATE-1: k_w = k MR² + F dMR/dz, a rising ratio stiffens (Milliken & Milliken ch. 16, from memory)", () => {
    const rising = (z: number) => ({ value: 0.72 * z + 0.45 * z * z, d: 0.72 + 0.9 * z, dd: 0.9 });
    const springs = (["left", "right"] as const).map((side) =>
      element("side", byRatios({ corner: rising }, false, side), spring(80e3), { side, for: ["corner"] }),
    );
    // A car whose weight puts 4000 N on each spring: 4000 · 0.72 N and the unsprung weight at each wheel.
    const carMass = (4 * (4000 * 0.72 + 18 * GRAVITY)) / GRAVITY;
    const { rates, elements } = analyseAxle(ratios(springs, { carMass }));
    expectClose(number(elements[0]?.staticLoad), 4000, CLOSED_FORM);
    expectClose(number(rates.wheelRate.left), 41472 + 3600, CLOSED_FORM);
    expectClose(number(rates.wheelRate.right), 45072, CLOSED_FORM);
  });

  it("tyre in series, RATE-1: k_w k_t / (k_w + k_t)", () => {
    // 45072 N/m with the geometric part; here as one plain rate at the wheel.
    const mechanism = ratios(corner(spring(45072), 1), {
      wheels: { left: { unsprungMass: 18, tyreRate: 220e3 }, right: { unsprungMass: 18, tyreRate: 220e3 } },
    });
    const { rideRate } = analyseAxle(mechanism).rates;
    expectClose(number(rideRate.single), 37408.1004406, CLOSED_FORM);
    expectClose(number(rideRate.heave), 2 * 37408.1004406, CLOSED_FORM);
    expectClose(number(rideRate.roll), (1 / 2) * 37408.1004406 * number(mechanism.track) ** 2, CLOSED_FORM);
  });

  it("a bar's rate: ARB-3, at both wheels k_tip MR², at one wheel alone half of it", () => {
    // Tips with k_tip = 250480.185822 N/m, MR 0.55 tip travel per wheel travel, track 1.56 m; lever 0.12 m.
    const arm = 0.12;
    const relative = (250480.185822 * arm ** 2) / 2;
    const bar = element("arb", byRatios({ roll: constantRatio((2 * 0.55) / arm) }, true, undefined), spring(relative), {
      kind: "anti-roll-bar",
      for: ["roll"],
    });
    const { rates } = analyseAxle(ratios([...corner(spring(20e3), 1), bar], { track: 1.56 }));
    const share = rates.shares.find(({ path }) => path === "front.arb");
    expectClose(share?.roll ?? 0, 92197.2477578, CLOSED_FORM);
    expectClose((share?.roll ?? 0) / 57.29577951308232, 1609.14553465, CLOSED_FORM);
    expectClose(share?.single ?? 0, 37885.1281056, CLOSED_FORM);
    expectClose(share?.heave ?? 1, 0, 0, 1e-6);
  });

  it("damper at the wheel: c MR² (DMP-1: 2500 N·s/m at 0.7 is 1225 N·s/m)", () => {
    const [left, right] = corner(damping(2500), 0.7).map((one) => ({ ...one, name: "damper" }));
    if (left === undefined || right === undefined) throw new Error("no dampers");
    const { rates } = analyseAxle(ratios([...corner(spring(20e3), 1), left, right]));
    expectClose(number(rates.heaveDamping), 2 * 1225, CLOSED_FORM);
  });
});

describe("trim", () => {
  it("carries the sprung weight through the motion ratio", () => {
    const { rates, elements } = analyseAxle(ratios(corner(spring(80e3), 0.72)));
    const wheel = (560 * 0.5 * GRAVITY) / 2 - 18 * GRAVITY;
    expectClose(number(elements[0]?.staticLoad), wheel / 0.72, CLOSED_FORM);
    if (!Array.isArray(rates.trim)) throw new Error("no trim");
    expectClose(rates.trim[0]?.seat ?? 0, wheel / 0.72 / 80e3, CLOSED_FORM);
  });

  it("leaves to the trim element what the others do not carry", () => {
    const third = element(
      "third",
      byRatios({ heave: constantRatio(1.1) }, false, undefined),
      spring(60e3, { preload: 500 }),
      {
        for: ["heave"],
      },
    );
    const { elements } = analyseAxle(ratios([...corner(spring(80e3), 0.72), third]));
    const wheel = (560 * 0.5 * GRAVITY) / 2 - 18 * GRAVITY;
    expectClose(number(elements[0]?.staticLoad), (wheel - (500 * 1.1) / 2) / 0.72, CLOSED_FORM);
    expectClose(number(elements[2]?.staticLoad), 500, CLOSED_FORM);
  });

  it("by a heave spring, both wheels at once", () => {
    const third = heaveSpring(spring(60e3));
    const { rates, elements } = analyseAxle(axle([third, antiRollBar(spring(800))]));
    expect(rates.trim).toHaveLength(1);
    const figures = elements[0];
    if (figures === undefined || "kind" in figures.sensitivity) throw new Error("no figures");
    const design = wishboneCorner.motion(0);
    if ("kind" in design || design.wheel === undefined) throw new Error("no design");
    const load = 560 * 0.5 * GRAVITY * design.wheel.contact.d[2] - 36 * GRAVITY;
    expectClose(number(figures.staticLoad) * figures.sensitivity.heave, load, CLOSED_FORM);
  });

  it("says why it is not to be had, and then gives no rate that rests on the load", () => {
    const springs = sideSprings(spring(150e3));
    const cases: readonly [Partial<AxleMechanism>, RegExp][] = [
      [{ carMass: undefined }, /has no mass,/],
      [{ massFront: undefined }, /no mass-front/],
      [{ trim: { by: "push-rod", element: undefined } }, /no rod whose length could be set/],
    ];
    for (const [change, expected] of cases) {
      const { rates, elements } = analyseAxle(axle(springs, change));
      expect(reason(rates.trim)).toMatch(expected);
      expect(reason(rates.heaveRate)).toMatch(expected);
      expect(reason(rates.stiffness)).toMatch(expected);
      expect(reason(elements[0]?.atWheels)).toMatch(expected);
      expect(rates.shares).toEqual([]);
      // What does not rest on the load stays.
      expect(elements[0]?.motionRatio).toBeCloseTo(0.61, 2);
      expect(elements[0]?.rate).toBe(150e3);
    }
  });

  it("does not matter to rates that no load can change", () => {
    const { rates } = analyseAxle(ratios(corner(spring(80e3), 0.72), { carMass: undefined }));
    expectClose(number(rates.heaveRate), 2 * 41472, CLOSED_FORM);
    expect(reason(rates.heaveFrequency)).toMatch(/no mass/);
  });

  it("refuses a spring that would have to pull but only pushes", () => {
    const pushed = spring(80e3, { acts: "in-compression" });
    const preloaded = element(
      "third",
      byRatios({ heave: constantRatio(1) }, false, undefined),
      spring(60e3, { preload: 9000 }),
      {
        for: ["heave"],
      },
    );
    const { rates } = analyseAxle(ratios([...corner(pushed, 0.72), preloaded]));
    expect(reason(rates.trim)).toMatch(/would have to carry -\d+ N, which its law cannot give/);
  });
});

describe("what is missing stays missing", () => {
  it("an element without a law takes the axle's sums with it", () => {
    const lost = element("third", byRatios({ heave: constantRatio(1) }, false, undefined), undefined, {
      for: ["heave"],
    });
    const { rates } = analyseAxle(ratios([...corner(spring(80e3), 0.72), lost]));
    expect(reason(rates.heaveRate)).toBe("front.third takes part and it has no law");
    expect(number(rates.heaveDamping)).toBe(0);
  });

  it("no track, no roll", () => {
    const { rates } = analyseAxle(ratios(corner(spring(80e3), 0.72), { track: undefined }));
    expect(reason(rates.rollStiffness)).toBe("the front axle has no track");
    expectClose(number(rates.heaveRate), 82944, CLOSED_FORM);
  });

  it("no tyre rate, no ride rate", () => {
    const bare = { unsprungMass: 18, tyreRate: undefined };
    const { rates } = analyseAxle(ratios(corner(spring(80e3), 0.72), { wheels: { left: bare, right: bare } }));
    expect(reason(rates.rideRate.heave)).toBe("the front wheels have no tyre-rate");
    expect(reason(rates.heaveFrequency)).toBe("the front wheels have no tyre-rate");
  });
});

/** An axle with everything on it; rates vary. */
const loaded = fc
  .record({
    side: fc.double({ min: 20e3, max: 300e3, noNaN: true }),
    third: fc.double({ min: 10e3, max: 200e3, noNaN: true }),
    preload: fc.double({ min: 0, max: 1500, noNaN: true }),
    bar: fc.double({ min: 100, max: 4000, noNaN: true }),
    mass: fc.double({ min: 400, max: 900, noNaN: true }),
  })
  .map(({ side, third, preload, bar, mass }) =>
    axle(
      [
        ...sideSprings(spring(side)),
        heaveSpring(spring(third, { preload })),
        antiRollBar(spring(bar)),
        rollDamper(damping(4000)),
      ],
      {
        carMass: mass,
      },
    ),
  );

function stiffnessOf(rates: AxleRates): readonly [readonly [number, number], readonly [number, number]] {
  if ("kind" in rates.stiffness) throw new Error(rates.stiffness.reason);
  return rates.stiffness;
}

describe("identities", () => {
  it("4·K_LL = heave rate + 4·K_φ/t² on a mirrored axle", () => {
    fc.assert(
      fc.property(loaded, (mechanism) => {
        const { rates } = analyseAxle(mechanism);
        const track = mechanism.track ?? 0;
        const sum = number(rates.heaveRate) + (4 * number(rates.rollStiffness)) / track ** 2;
        expectClose(4 * number(rates.wheelRate.left), sum, IDENTITY);
        expectClose(number(rates.wheelRate.left), number(rates.wheelRate.right), IDENTITY);
      }),
      { numRuns: 50 },
    );
  });

  it("the shares add up to the rates", () => {
    fc.assert(
      fc.property(loaded, (mechanism) => {
        const { rates } = analyseAxle(mechanism);
        const sum = (of: "heave" | "roll" | "single") => rates.shares.reduce((total, share) => total + share[of], 0);
        expectClose(sum("heave"), number(rates.heaveRate), IDENTITY);
        expectClose(sum("roll"), number(rates.rollStiffness), IDENTITY);
        expectClose(sum("single"), number(rates.wheelRate.left), IDENTITY);
      }),
      { numRuns: 50 },
    );
  });

  it("K is the second difference of the elements' energy about static trim", () => {
    fc.assert(
      fc.property(loaded, (mechanism) => {
        const { rates } = analyseAxle(mechanism);
        const energy = energyOf(mechanism, rates);
        const k = stiffnessOf(rates);
        const h = 2e-3;
        // Central difference of sixth order.
        const second = (f: (x: number) => number): number =>
          (270 * (f(h) + f(-h)) - 27 * (f(2 * h) + f(-2 * h)) + 2 * (f(3 * h) + f(-3 * h)) - 490 * f(0)) /
          (180 * h * h);
        const close = (actual: number, expected: number): void => expectClose(actual, expected, ENERGY_DIFFERENCE);
        close(
          second((x) => energy(x, 0)),
          k[0][0],
        );
        close(
          second((x) => energy(0, x)),
          k[1][1],
        );
        close(
          second((x) => energy(x, x)),
          k[0][0] + k[1][1] + 2 * k[0][1],
        );
        expect(k[0][1]).toBe(k[1][0]);
      }),
      { numRuns: 30 },
    );
  });

  it("its first difference is the load on the wheels: the trim is an equilibrium", () => {
    fc.assert(
      fc.property(loaded, (mechanism) => {
        const { rates } = analyseAxle(mechanism);
        const energy = energyOf(mechanism, rates);
        const h = 1e-3;
        const slope = (8 * (energy(h, 0) - energy(-h, 0)) - (energy(2 * h, 0) - energy(-2 * h, 0))) / (12 * h);
        const design = wishboneCorner.motion(0);
        if ("kind" in design || design.wheel === undefined) throw new Error("no design");
        const load = ((mechanism.carMass ?? 0) * 0.25 * design.wheel.contact.d[2] - 18) * GRAVITY;
        expectClose(slope, load, ENERGY_DIFFERENCE, 1e-3);
      }),
      { numRuns: 30 },
    );
  });
});

/** Energy of all springs at the trim's seats, against both wheels' travel. */
function energyOf({ elements }: AxleMechanism, { trim }: AxleRates): (left: number, right: number) => number {
  if ("kind" in trim) throw new Error(trim.reason);
  const seats = new Map(trim.map(({ path, seat }) => [path, seat]));
  return (left, right) => {
    const l = wishboneCorner.motion(left);
    const r = wishboneCorner.motion(right);
    if ("kind" in l || "kind" in r) throw new Error("out of reach");
    let energy = 0;
    for (const { law, connection, path } of elements) {
      const d = connection?.deflection({ left: l, right: r });
      if (law?.kind !== "spring" || d === undefined || "kind" in d) continue;
      energy += law.energy(d.s + (seats.get(path) ?? 0));
    }
    return energy;
  };
}

describe("tyres in series", () => {
  it("agrees with inverting matrices: flexibilities add", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e4, max: 3e5, noNaN: true }),
        fc.double({ min: 1e4, max: 3e5, noNaN: true }),
        fc.double({ min: -0.9, max: 0.9, noNaN: true }),
        fc.double({ min: 1e5, max: 4e5, noNaN: true }),
        fc.double({ min: 1e5, max: 4e5, noNaN: true }),
        (LL, RR, coupling, left, right) => {
          const LR = coupling * Math.sqrt(LL * RR);
          const ride = inSeriesWith({ LL, LR, RR }, left, right);
          if (ride === undefined) throw new Error("singular");
          // (K⁻¹ + K_t⁻¹)⁻¹ by hand for two wheels.
          const det = LL * RR - LR * LR;
          const [a, b, c] = [RR / det + 1 / left, -LR / det, LL / det + 1 / right];
          const inverse = a * c - b * b;
          expectClose(ride.LL, c / inverse, IDENTITY * 100);
          expectClose(ride.LR, -b / inverse, IDENTITY * 100, 1e-6);
          expectClose(ride.RR, a / inverse, IDENTITY * 100);
        },
      ),
    );
  });

  it("heave and roll of a form are its patterns", () => {
    expect(inHeave({ LL: 3, LR: 1, RR: 5 })).toBe(10);
    expect(inRoll({ LL: 3, LR: 1, RR: 5 }, 2)).toBe(6);
  });
});
