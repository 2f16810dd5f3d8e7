/** From words to a mechanism: the check case written down gives the figures of the one put together by hand. */
import { describe, expect, it } from "vitest";
import { analyseAxle } from "../../server/analyses/analyse-axle.js";
import { expectClose } from "../support/approx.js";
import { antiRollBar, axle, damping, heaveSpring, rollDamper, sideSprings, spring } from "../support/mechanisms.js";
import { CLOSED_FORM, INVARIANCE } from "../support/tolerances.js";
import { carText, cornerSpring, elementIn, frontOf, mechanismOf, number, reason } from "../support/written-car.js";

const written = frontOf(
  carText({
    elements: `${cornerSpring}
    spring third for heave {
      rate 120 N/mm
      between left.rocker.third and right.rocker.third
    }
    damper diagonal for roll {
      damping 5 N*s/mm
      between left.rocker.high and right.rocker.low
    }
    anti-roll-bar arb for roll {
      rate 800 N*m/rad
      lever { pivot (-110, 346, 300) mm, axis (0, -1, 0), end (-25, 346, 295) mm }
      drop-link rocker.bar
    }`,
  }),
);

describe("the check case as text", () => {
  const byHand = analyseAxle(
    axle([
      ...sideSprings(spring(150e3)),
      heaveSpring(spring(120e3)),
      rollDamper(damping(5000)),
      antiRollBar(spring(800)),
    ]),
  );

  it("has the rates of the same axle put together by hand", () => {
    for (const figure of ["heaveRate", "rollStiffness", "heaveFrequency", "heaveDamping", "rollDamping"] as const) {
      expectClose(number(written.rates[figure]), number(byHand.rates[figure]), INVARIANCE);
    }
    expectClose(number(written.rates.rideRate.single), number(byHand.rates.rideRate.single), INVARIANCE);
  });

  it("has its elements' figures, on both sides", () => {
    for (const path of ["front.left.side", "front.right.side", "front.third", "front.diagonal", "front.arb"]) {
      const [a, b] = [elementIn(written, path), elementIn(byHand, path)];
      if ("kind" in a.sensitivity || "kind" in b.sensitivity) throw new Error("no sensitivity");
      expectClose(a.sensitivity.heave, b.sensitivity.heave, CLOSED_FORM, 1e-10);
      expectClose(a.sensitivity.roll, b.sensitivity.roll, CLOSED_FORM, 1e-10);
      expectClose(number(a.atWheels), number(b.atWheels), INVARIANCE, 1e-6);
      expectClose(number(a.staticLoad), number(b.staticLoad), INVARIANCE, 1e-9);
    }
  });

  it("solves one corner for both sides, since the right one mirrors the left", () => {
    const { corners } = mechanismOf(carText({}));
    expect(corners.right).toBe(corners.left);
  });

  it("solves two where a side says something else", () => {
    const text = carText({ axle: "left { camber -1.5 deg }" });
    const { corners } = mechanismOf(text);
    expect(corners.right).not.toBe(corners.left);
  });
});

describe("other forms of an axle", () => {
  it("by ratios: figures rest on them, leaks are not known", () => {
    const analysis = frontOf(
      carText({
        linkage: "linkage ratio",
        elements: `spring side for corner {\n rate 80 N/mm\n ratio 0.72\n }
        anti-roll-bar bar for roll {\n rate 500 N*m/rad\n ratio roll 0.7 deg/mm\n }
        damper heave-damper for heave {\n damping 4 N*s/mm\n ratio heave { -30 mm: -26 mm, 0 mm: 0 mm, 30 mm: 29 mm }\n }`,
      }),
    );
    expectClose(
      number(analysis.rates.wheelRate.left) - (analysis.rates.shares.at(-1)?.single ?? 0),
      41472,
      CLOSED_FORM,
    );
    const bar = elementIn(analysis, "front.bar");
    expect(bar.basis).toBe("ratio");
    expect(reason(bar.leak)).toBe("its ratio is for roll and says nothing of heave");
    // K_φ = k (ds/dφ)² with s = r·φt/2.
    const perRoll = ((0.7 * Math.PI) / 180) * 1000 * (1.571171173495033 / 2);
    expectClose(number(bar.atWheels), 500 * perRoll ** 2, CLOSED_FORM);
    expect(number(elementIn(analysis, "front.heave-damper").atWheels)).toBeGreaterThan(0);
    expect(analysis.reach.every(({ binds }) => binds.length === 0)).toBe(true);
  });

  it("planar: a rocker in the plane of the wheel centre", () => {
    const analysis = frontOf(
      carText({
        linkage: `linkage planar {
      lower-wishbone { inner (250, 150) mm, outer (722, 150) mm }
      upper-wishbone { inner (300, 390) mm, outer (700, 440) mm }
      push-rod on lower-wishbone { outer (640, 175) mm, inner (333, 519) mm }
      rocker {
        pivot (283, 473) mm
        eye side (238, 523) mm
        eye third (283, 540) mm
      }
    }`,
        elements: `spring side for corner {\n rate 150 N/mm\n between rocker.side and chassis (0, 88, 385) mm\n }
        spring third for heave {\n rate 50 N/mm\n between left.rocker.third and right.rocker.third\n }`,
      }),
    );
    const third = elementIn(analysis, "front.third");
    expect(third.basis).toBe("planar");
    if ("kind" in third.sensitivity) throw new Error(third.sensitivity.reason);
    expect(Math.abs(third.sensitivity.roll)).toBeLessThan(1e-12);
    expect(third.sensitivity.heave).toBeGreaterThan(0.5);
    expect(number(analysis.rates.heaveRate)).toBeGreaterThan(0);
  });

  it("tied torsion bars twist in heave and not in roll", () => {
    const analysis = frontOf(
      carText({
        elements: `${cornerSpring}
        spring tied-bars for heave {
      torsion-bar { diameter 20 mm, length 300 mm }
      twists left.rocker against right.rocker
      tie { arm (-10, 283, 560) mm }
    }`,
      }),
    );
    const tied = elementIn(analysis, "front.tied-bars");
    if ("kind" in tied.sensitivity) throw new Error(tied.sensitivity.reason);
    expect(Math.abs(tied.sensitivity.heave)).toBeGreaterThan(10);
    expect(Math.abs(tied.sensitivity.roll)).toBeLessThan(1e-9);
    // Two bars end to end: half the rate of one.
    expectClose(number(tied.rate), (79.3e9 * Math.PI * 0.02 ** 4) / 32 / 0.3 / 2, CLOSED_FORM);
  });

  it("a spring on a bar's lever follows it", () => {
    const analysis = frontOf(
      carText({
        elements: `${cornerSpring}
        anti-roll-bar bar for roll {
      rate 800 N*m/rad
      lever { pivot (-110, 346, 300) mm, axis (0, 1, 0), end (-25, 346, 295) mm }
      drop-link rocker.bar
    }
    spring lever-spring for heave {
      rate 40 N/mm
      between left.bar.lever.end and chassis (-25, 346, 150) mm
    }`,
      }),
    );
    const on = elementIn(analysis, "front.lever-spring");
    if ("kind" in on.sensitivity) throw new Error(on.sensitivity.reason);
    expect(Math.abs(on.sensitivity.heave)).toBeGreaterThan(0.1);
  });
});

describe("elements that join the axles", () => {
  it("are moved in the car's own modes", async () => {
    const { analysisOf, carOf } = await import("../support/written-car.js");
    const rear = carText({})
      .slice(carText({}).indexOf("axle front"), carText({}).lastIndexOf("}"))
      .replace("axle front", "axle rear");
    const text = carText({
      car: `${rear}
  spring rocking for pitch {
    rate 30 N/mm
    between front.left.rocker.third and rear.left.rocker.low
  }
  hydraulic-link line for pitch {
    cylinder nose { between front.left.rocker.third and front.right.rocker.third, area 314 mm^2 }
    cylinder tail { between rear.left.rocker.third and rear.right.rocker.third, area 314 mm^2 }
    line nose to tail crossed
  }`,
    });
    const analysis = analysisOf(carOf(text));
    const rocking = elementIn(analysis, "rocking");
    if ("kind" in rocking.sensitivity) throw new Error(rocking.sensitivity.reason);
    // Moved by both left wheels: heave and roll alike, pitch and warp alike, up to sign.
    expectClose(Math.abs(rocking.sensitivity.heave), Math.abs(rocking.sensitivity.roll), CLOSED_FORM);
    expectClose(Math.abs(rocking.sensitivity.pitch), Math.abs(rocking.sensitivity.warp), CLOSED_FORM);
    expect(rocking.rate).toBe(30e3);
    // Crossed and rigid: it moves in pitch, and has no law since nothing in it gives.
    const line = elementIn(analysis, "line");
    if ("kind" in line.sensitivity) throw new Error(line.sensitivity.reason);
    expect(Math.abs(line.sensitivity.pitch)).toBeGreaterThan(1e-4);
    expectClose(line.sensitivity.heave, 0, 0, 1e-12);
    expect(reason(line.rate)).toMatch(/nothing in it gives/);
    expect(reason(analysis.axles.front?.rates.rollStiffness)).toMatch(/line takes part and nothing in it gives/);
  });
});
