/** Expectations: every figure that the language names has an answer, and limits are judged with their margin. */
import { describe, expect, it } from "vitest";
import { figures } from "../../grammar/vocabulary/figures.js";
import { judge } from "../../server/analyses/expectations.js";
import { figureAtPath } from "../../server/analyses/figure-paths.js";
import type { CarAnalysis, Figure } from "../../server/analyses/results.js";
import { expectClose } from "../support/approx.js";
import { CLOSED_FORM } from "../support/tolerances.js";
import { analysisOf, carOf, carText, cornerSpring, elementIn, number, reason } from "../support/written-car.js";

const analysis: CarAnalysis = analysisOf(
  carOf(
    carText({
      elements: `${cornerSpring}
    damper diagonal for roll {
      damping 5 N*s/mm
      between left.rocker.high and right.rocker.low
    }`,
    }),
  ),
);

const at = (path: string): Figure => figureAtPath(analysis, path);

describe("figures by path", () => {
  it("answers to every name that the vocabulary has", () => {
    for (const { figure, scope, modes } of figures) {
      for (const name of modes === undefined ? [figure] : modes.map((mode) => figure.replace("<mode>", mode))) {
        const path = {
          car: name,
          axle: `front.${name}`,
          wheel: `front.left.${name}`,
          element: `front.diagonal.${name}`,
          point: `nose.${name}`,
        }[scope];
        const value = at(path);
        const answer = typeof value === "number" ? "a number" : value.reason;
        expect(`${path}: ${answer}`).not.toMatch(/no figure that is computed/);
      }
    }
  });

  it("reads rates, wheels and elements", () => {
    const front = analysis.axles.front;
    expect(at("front.heave-rate")).toBe(front?.rates.heaveRate);
    expect(at("front.left.wheel-load")).toBe(front?.atRest.left.load);
    expectClose(number(at("front.wheel-load")), (560 * 0.5 * 9.80665) / 2, CLOSED_FORM);
    expectClose(number(at("front.camber")), (-1 * Math.PI) / 180, CLOSED_FORM);
    expectClose(number(at("front.ride-height")), 0.03, CLOSED_FORM);
    expectClose(number(at("front.left.side.motion-ratio")), 0.6103364665095219, CLOSED_FORM);
    expectClose(number(at("front.side.motion-ratio")), 0.6103364665095219, CLOSED_FORM);
    const leak = elementIn(front ?? { elements: [] }, "front.diagonal").leak;
    if (leak === undefined || "kind" in leak) throw new Error("no leak");
    expect(at("front.diagonal.heave-leak")).toBe(leak.firstOrder);
    expect(at("front.diagonal.heave-finite-leak")).toBe(leak.finite);
  });

  it("says why there is none", () => {
    expect(reason(at("rear.heave-rate"))).toBe("the car has no rear axle");
    expect(reason(at("roll-angle"))).toBe("roll-angle exists in a load case only");
    expect(reason(at("roll-stiffness-front"))).toBe("the car has one axle only");
    expect(reason(at("front.diagonal.roll-leak"))).toBe(
      "front.diagonal is for roll, so that nothing of it leaks there",
    );
    expect(reason(at("front.diagonal.motion-ratio"))).toBe("front.diagonal is not a corner element");
    for (const path of [
      "front",
      "",
      "front.",
      "front.constructor",
      "front.left.toString",
      "nonsense.rate",
      "front.nothing.rate",
    ]) {
      expect(reason(at(path))).toMatch(/no figure that is computed/);
    }
  });
});

describe("judging", () => {
  const limit = (value: number) => ({ value, unit: "N/mm" });
  const one = (wants: Parameters<typeof judge>[0][number]["wants"], figure = "front.heave-rate", when?: string) => {
    const [judged] = judge([{ figure, at: when, wants }], analysis, {
      names: [],
      at: () => undefined,
      sweep: () => ({ kind: "absent", reason: "no sweep" }),
    });
    if (judged === undefined) throw new Error("not judged");
    return judged;
  };
  const rate = number(at("front.heave-rate"));

  it("between, above, below, within: met with the distance to the nearest limit", () => {
    expect(one({ kind: "between", from: limit(rate - 5), to: limit(rate + 9) })).toMatchObject({ met: true });
    expectClose(number(one({ kind: "between", from: limit(rate - 5), to: limit(rate + 9) }).margin), 5, 1e-6);
    expectClose(number(one({ kind: "above", limit: limit(rate + 7) }).margin), -7, 1e-6);
    expect(one({ kind: "above", limit: limit(rate + 7) }).met).toBe(false);
    expect(one({ kind: "below", limit: limit(rate + 7) }).met).toBe(true);
    expectClose(number(one({ kind: "within", target: limit(rate + 3), tolerance: limit(4) }).margin), 1, 1e-6);
  });

  it("a figure on its limit meets it", () => {
    expect(one({ kind: "above", limit: limit(rate * (1 + 1e-12)) }).met).toBe(true);
  });

  it("in a case that the car does not have it is neither met nor missed", () => {
    const judged = one({ kind: "above", limit: limit(1) }, "front.heave-rate", "hairpin");
    expect(judged.met).toBeUndefined();
    expect(reason(judged.value)).toBe("the car has no case hairpin");
  });
});
