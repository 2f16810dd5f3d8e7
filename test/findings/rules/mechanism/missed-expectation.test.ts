/** Expectations that the figures miss: what is, what was wanted, and by how much. */
import { describe, expect, it } from "vitest";
import { runRules } from "../../../../server/findings/run.js";
import { axle, carAnd, carWith, checked, setup, underlined } from "../../../support/axle-car.js";
import { checkFindings } from "../../../support/check-findings.js";
import { brokenSamples } from "../../../support/shared-car.js";

const heaveRate = (text: string): number => {
  const rate = checked(text).cars[0]?.analysis.axles.front?.rates.heaveRate;
  if (typeof rate !== "number") throw new Error("no heave rate");
  return rate / 1000;
};
const said = (text: string, car: string = axle) =>
  runRules(checked(text, car)).map(({ rule, message }) => `${rule}: ${message}`);

describe("missed-expectation", () => {
  it("stands at the expectation and tells the figure, what was wanted and by how much it misses", () => {
    const rate = heaveRate(axle);
    checkFindings(
      `use "axle.crank"
setup trial from plover {
  expect front.heave-rate above 900 N/mm
# ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning missed-expectation: front.heave-rate of trial is ${rate.toFixed(1)} N/mm, which misses what is expected, above 900 N/mm, by ${(900 - rate).toFixed(0)} N/mm.
}
`,
      brokenSamples,
    );
  });

  it.each([
    ["below 20 N/mm", "below 20 N/mm"],
    ["between 200 and 300 N/mm", "between 200 N/mm and 300 N/mm"],
    ["60 N/mm within 5 N/mm", "60 N/mm within 5 N/mm"],
    ["above 5000 lbf/in", "above 5000 lbf/in"],
  ])("tells %s in the author's words", (wants, shown) => {
    expect(said(setup(`expect front.heave-rate ${wants}`))[0]).toContain(
      `which misses what is expected, ${shown}, by `,
    );
  });

  it("shows so many digits that a narrow miss is seen", () => {
    const limit = (heaveRate(axle) + 0.0004).toFixed(4);
    const [line] = said(setup(`expect front.heave-rate above ${limit} N/mm`));
    const [, shown = ""] = /trial is ([\d.]+) N\/mm/.exec(line ?? "") ?? [];
    expect(Number(shown)).toBeLessThan(Number(limit));
  });

  it("says nothing where it is met, on the limit too", () => {
    expect(said(setup("expect front.heave-rate between 50 and 900 N/mm"))).toEqual([]);
    expect(said(setup("expect front.roll-damper.heave-leak below 2 %"))).toEqual([]);
  });

  it("of the car is shown at the set-up's line that misses it, and only there", () => {
    const car = carAnd("expect front.heave-rate above 120 N/mm");
    expect(said(car)).toEqual([]);
    const context = checked(setup("mass 545 kg", "front.third.rate 5 N/mm"), car);
    const [finding, more] = runRules(context);
    expect(more).toBeUndefined();
    expect(finding && underlined(context, finding)).toBe("front.third.rate 5 N/mm");
    expect(finding?.message).toMatch(/^front\.heave-rate of trial is [\d.]+ N\/mm/);
    expect(finding?.related[0]?.origin.uri).toMatch(/axle\.crank$/);
  });

  it("that the car misses is not told again with the set-up", () => {
    const car = carAnd("expect front.heave-rate above 900 N/mm");
    expect(said(car)).toHaveLength(1);
    expect(said(setup("mass 545 kg"), car)).toEqual([]);
  });

  it("about an element that the set-up removes is dropped with it", () => {
    const car = carAnd("expect front.roll-damper.heave-leak below 2 %");
    expect(said(setup("remove front.roll-damper"), car)).toEqual([]);
  });

  it("says nothing where there is no figure to judge", () => {
    const open = carWith(["      tyre-rate 165 N/mm\n", ""]).replace(
      /\}\n$/,
      "  expect front.heave-ride-rate above 900 N/mm\n}\n",
    );
    expect(said(open).filter((line) => line.startsWith("missed-expectation"))).toEqual([]);
  });
});
