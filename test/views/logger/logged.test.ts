/** Logged channels: constant ratios in closed form, round trips over the samples, and measured pairs with known faults. */
import { describe, expect, it } from "vitest";
import { kinematics } from "../../../server/analyses/kinematics.js";
import { isAbsent } from "../../../server/views/figures.js";
import { checkPairs, type CheckedPairs } from "../../../server/views/logger/check-pairs.js";
import { channelsOf, loggedChannel, type LoggedCurve, type LoggerAsked } from "../../../server/views/logger/logged.js";
import { polynomialAt } from "../../../server/maths/polynomial.js";
import { contextOf } from "../../support/context.js";
import { expectClose } from "../../support/approx.js";
import { sampleCar, sampleContext, sampleNames } from "../../support/samples.js";
import { CLOSED_FORM, LOGGED_BACK } from "../../support/tolerances.js";

const ASKED: LoggerAsked = {
  axle: "front",
  channel: "side",
  zero: "drawn",
  reads: "compression",
  points: 11,
  within: 5e-5,
};

type Car = ReturnType<typeof sampleCar>;

function curvesOf(car: Car, asked: Partial<LoggerAsked> = {}): readonly LoggedCurve[] {
  const logged = loggedChannel(car, { ...ASKED, ...asked });
  if (isAbsent(logged)) throw new Error(logged.reason);
  return logged.curves.map((curve) => {
    if (isAbsent(curve)) throw new Error(curve.reason);
    return curve;
  });
}

const RATIOS = `car cart "Cart" {
  axle front {
    track 1400 mm
    travel -30 .. 30 mm
    linkage ratio
    spring coil for corner { rate 50 N/mm, ratio corner 0.8 }
    damper third for heave { bump { 50 mm/s: 100 N }, rebound { 50 mm/s: 100 N }, ratio heave 1.25 }
    anti-roll-bar bar for roll { rate 500 N*m/deg, ratio roll 12 deg/in, ratio heave 0 deg/in }
  }
}
`;

describe("a logged channel", () => {
  it("of a constant ratio is a straight line with its inverse", () => {
    const car = contextOf({ "cart.crank": RATIOS }, "cart.crank").cars[0];
    if (car === undefined) throw new Error("the cart is a car");
    const [left, right] = curvesOf(car, { channel: "coil" });
    for (const curve of [left, right]) {
      const { polynomial, rows } = curve!;
      if (isAbsent(polynomial)) throw new Error(polynomial.reason);
      expect(polynomial.degree).toBe(1);
      expectClose(polynomial.coefficients[1]!, 1 / 0.8, CLOSED_FORM);
      expectClose(rows.at(-1)!.channel, 24, CLOSED_FORM);
      expectClose(rows.at(-1)!.motion, 30, CLOSED_FORM);
    }
    const [third] = curvesOf(car, { channel: "third" });
    expect(third?.gives).toBe("heave");
    expectClose(third!.rows[0]!.channel, -37.5, CLOSED_FORM);
    const [pulled] = curvesOf(car, { channel: "coil", reads: "extension" });
    expectClose(pulled!.rows[0]!.channel, -24, CLOSED_FORM);
    expectClose(pulled!.rows[0]!.motion, 30, CLOSED_FORM);
  });

  it("turns into motion and back, on every axle of the samples", () => {
    let told = 0;
    for (const name of sampleNames) {
      for (const car of sampleContext(name).cars) {
        for (const axle of ["front", "rear"] as const) {
          for (const channel of channelsOf(car, axle)) {
            const logged = loggedChannel(car, { ...ASKED, axle, channel, zero: "rest" });
            if (isAbsent(logged)) continue;
            for (const curve of logged.curves) {
              if (isAbsent(curve)) {
                expect(curve.reason.length).toBeGreaterThan(10);
                continue;
              }
              told++;
              const { samples, channelAt, motionAt } = curve.curve;
              const [low, high] = [samples[0]!.channel, samples.at(-1)!.channel];
              for (let i = 0; i <= 10; i++) {
                const channelValue = low + ((high - low) * i) / 10;
                expectClose(channelAt(motionAt(channelValue)), channelValue, 0, LOGGED_BACK * Math.max(1, high - low));
              }
              if (isAbsent(curve.polynomial)) continue;
              for (const { channel: at, motion } of curve.rows)
                expectClose(
                  polynomialAt(curve.polynomial.coefficients, at),
                  motion,
                  0,
                  curve.polynomial.largestError * 1.2 + 1e-9,
                );
            }
          }
        }
      }
    }
    expect(told).toBeGreaterThan(100);
  });

  it("reads nought where it was set to nought", () => {
    const [wet] = curvesOf(sampleCar("quill/wet.crank"), { zero: "rest" });
    // The car stands 2 mm higher than it is drawn: its wheels are 2 mm in droop there.
    expectClose(wet!.curve.motionAt(0), -0.002, 1e-9);
    const [drawn] = curvesOf(sampleCar("quill/wet.crank"), { zero: "drawn" });
    expectClose(drawn!.curve.motionAt(0), 0, 0, 1e-12);
  });

  it("knows what an axle has, and says what it has not", () => {
    const car = sampleCar("quill/quill.crank");
    expect(channelsOf(car, "front").slice(0, 2)).toEqual(["rocker", "corner-bar"]);
    expect(loggedChannel(car, { ...ASKED, channel: "nothing" })).toMatchObject({ kind: "absent" });
    const tern = sampleCar("tern/tern.crank");
    expect(channelsOf(tern, "rear")).not.toContain("rocker");
  });
});

describe("a measured pair", () => {
  const car = sampleCar("quill/quill.crank");
  const mechanism = car.mechanism("front");
  if (mechanism === undefined) throw new Error("the sample has a front axle");
  const travels = [-25, -15, -5, 0, 5, 15, 22];
  const exact = kinematics(
    mechanism,
    travels.map((z) => z / 1000),
    [0],
  ).map(({ elements }) => {
    const found = elements.find(({ path }) => path === "front.left.side")?.deflection;
    return typeof found === "number" ? found * 1000 : Number.NaN;
  });
  const csv = (of: (value: number, i: number) => number, units = ["mm", "mm"]): string =>
    [`travel [${units[0]}]; side [${units[1]}]`, ...travels.map((z, i) => `${z}; ${of(exact[i]!, i).toFixed(4)}`)].join(
      "\n",
    );
  const checked = (text: string): CheckedPairs => {
    const found = checkPairs(car, ASKED, text);
    if ("why" in found) throw new Error(found.why);
    return found.pairs[0]!;
  };

  it("that is the linkage's agrees", () => {
    const { rms, likely, scale } = checked(csv((value) => value));
    expect(rms).toBeLessThan(1e-3);
    expect(likely).toBe("it agrees");
    expectClose(scale, 1, 1e-4);
  });

  it.each([
    ["an offset", (value: number) => value + 1.5, /offset of 1.5 mm/],
    ["a sign", (value: number) => -value, /sign is turned round/],
    ["a scale", (value: number) => 1.08 * value, /scale of 1.08/],
    [
      "rows mixed up",
      (value: number, i: number) => (i % 2 === 0 ? value : -value / 2),
      /neither an offset nor a scale/,
    ],
  ] as const)("with %s is told so", (_, of, words) => {
    expect(checked(csv(of)).likely).toMatch(words);
  });

  it("names the worst row by its line in the file", () => {
    const { worst } = checked(csv((value, i) => (i === 5 ? value + 0.8 : value)));
    expect(worst.line).toBe(7);
    expectClose(worst.measured - worst.predicted, 0.8, 1e-3);
  });

  it("may be in inches", () => {
    const text = ["travel [in], side [in]", ...travels.map((z, i) => `${z / 25.4}, ${exact[i]! / 25.4}`)].join("\n");
    expect(checked(text).likely).toBe("it agrees");
  });

  it.each([
    ["", "it is empty"],
    ["travel [mm], side [mm]\n1, 2\n2, 3", "three rows or more"],
    ["travel [mm], side [deg]\n1, 2\n2, 3\n3, 4", "unit of length"],
    ["travel [mm], side [mm]\n1, 2\nx, 3\n3, 4", "line 3"],
    ["travel, side\n1, 2", "line 1"],
  ])("that is none is told with its line: %j", (text, words) => {
    const found = checkPairs(car, ASKED, text);
    expect("why" in found && found.why).toContain(words);
  });
});
