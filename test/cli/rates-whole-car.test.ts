import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { twoAxles } from "../support/two-axles.js";
import { openWorkshop, type Workshop } from "./run-cli.js";
import { problemsAgainst } from "./schema.js";

const joining = `hydraulic-link pitch-line for pitch {
    cylinder nose { between front.left.rocker.third and front.right.rocker.third, area 314 mm^2 }
    cylinder tail { between rear.left.rocker.third and rear.right.rocker.third, area 314 mm^2 }
    line nose to tail crossed { resistance 40 bar*s/l }
    accumulator { pressure 20 bar, volume 80 ml, exponent 1.3 }
  }`;

describe("bellcrank rates of a car with elements between its axles", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
    shop.write("joined.crank", twoAxles(joining));
  });
  afterAll(() => shop.remove());

  it("gives the whole car as its schema describes it", () => {
    const { out, code } = shop.run("rates", "joined.crank", "--format", "json");
    expect(code).toBe(0);
    expect(problemsAgainst("rates", out)).toEqual([]);
    const { modal, axles, elements } = JSON.parse(out);
    expect(modal.springs.patterns).toHaveLength(4);
    expect(modal.springs.body.heavePitch.unit).toBe("N/rad");
    const sum = axles.front.heaveRate.value + axles.rear.heaveRate.value;
    const line = modal.shares.find(({ path }: { path: string }) => path === "pitch-line");
    expect(modal.springs.patterns[0][0].value).toBeCloseTo(sum + line.heave.value, 6);
    const link = elements.find(({ path }: { path: string }) => path === "pitch-line");
    expect(link).toMatchObject({
      sensitivityUnit: "m^2",
      rate: { unit: "bar/ml" },
      staticLoad: { value: 20, unit: "bar" },
    });
    expect(link.fluid.gasSwept).toBeGreaterThan(0);
  });

  it("gives it as text and as rows", () => {
    expect(shop.run("rates", "joined.crank").out).toContain("The whole car, about its centre of gravity");
    expect(shop.run("rates", "joined.crank", "--format", "csv").out).toMatch(/^car,"?pitch stiffness, springs"?,\d/m);
  });

  it("gives reasons in place of figures where an axle is missing", () => {
    const { out } = shop.run("rates", "quill/quill.crank", "--format", "json");
    expect(problemsAgainst("rates", out)).toEqual([]);
    shop.write("one.crank", 'car one "One axle" {\n  axle front {\n    track 1480 mm\n  }\n}\n');
    const one = JSON.parse(shop.run("rates", "one.crank", "--format", "json").out);
    expect(one.modal.wheels.absent).toBe("the car has one axle only");
  });
});
