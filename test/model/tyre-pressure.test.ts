/** A tyre's stiffness at its pressure: straight between measured pressures and beyond them, changed by a set-up. */
import { describe, expect, it } from "vitest";
import { applyEdits } from "../../server/findings/edits.js";
import { fixesOf, runRules } from "../../server/findings/run.js";
import type { CarModel } from "../../server/model/car.js";
import { contextOf } from "../support/context.js";
import { expectClose } from "../support/approx.js";
import { CLOSED_FORM } from "../support/tolerances.js";
import { carOf, carText } from "../support/written-car.js";

const wheel = (lines: string): string => carText({}).replace("tyre-rate 200 N/mm", lines);
const rateOf = (car: CarModel): number | undefined => car.axles.front?.wheel.left.tyreRate?.value;
const TABLE = "tyre-rates { 1.2 bar: 150 N/mm, 1.6 bar: 170 N/mm, 2 bar: 200 N/mm }";

describe("tyre-rates", () => {
  it.each([
    [1.2, 150e3],
    [1.3, 155e3],
    [1.6, 170e3],
    [1.8, 185e3],
    [1, 140e3],
    [2.2, 215e3],
  ])("at %f bar", (pressure, rate) => {
    expectClose(rateOf(carOf(wheel(`${TABLE}\n      pressure ${pressure} bar`))) ?? 0, rate, CLOSED_FORM);
  });

  it("without a pressure, or with one measured point, the stated rate holds", () => {
    expect(rateOf(carOf(wheel(`${TABLE}\n      tyre-rate 180 N/mm`)))).toBe(180e3);
    expect(rateOf(carOf(wheel("tyre-rates { 1.2 bar: 150 N/mm }\n      pressure 1.4 bar")))).toBeUndefined();
  });

  it("without a pressure is told once, and one is added", () => {
    const context = contextOf({ "car.crank": wheel(`${TABLE}\n      tyre-rate 180 N/mm`) }, "car.crank");
    const [finding, ...more] = runRules(context).filter(({ message }) => message.includes("pressure"));
    expect([finding?.rule, more]).toEqual(["missing-property", []]);
    const [fix] = fixesOf(finding!, context);
    const mended = applyEdits(context.text, fix?.edits ?? []);
    expectClose(rateOf(carOf(mended)) ?? 0, 160e3, CLOSED_FORM);
    expect(contextOf({ "car.crank": mended }, "car.crank").problems).toEqual([]);
  });

  it("with one row is told", () => {
    const text = wheel("tyre-rates { 1.2 bar: 150 N/mm }\n      pressure 1.4 bar\n      tyre-rate 180 N/mm");
    const found = runRules(contextOf({ "car.crank": text }, "car.crank")).filter(({ rule }) => rule === "wrong-form");
    expect(found.map(({ message }) => message)).toEqual([expect.stringContaining("rows at two pressures or more")]);
  });

  it("follows a set-up's pressure, at the set-up's line", () => {
    const car = wheel(`${TABLE}\n      pressure 1.2 bar`);
    const text = 'use "car.crank"\n\nsetup soft from tried {\n  front.pressure 1.6 bar\n}\n';
    const context = contextOf({ "car.crank": car, "set.crank": text }, "set.crank");
    const given = context.cars[0]?.model.axles.front?.wheel.right.tyreRate;
    expectClose(given?.value ?? 0, 170e3, CLOSED_FORM);
    expect(given?.unit).toBe("N/mm");
    expect(text.slice(given?.origin.start, given?.origin.end)).toBe("1.6 bar");
    expect(context.problems).toEqual([]);
  });
});
