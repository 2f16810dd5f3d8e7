/** What a set-up does to the car that it derives from: values, sums, parts, sides, and where each came from. */
import { describe, expect, it } from "vitest";
import type { CarModel, ElementModel } from "../../server/model/car.js";
import { contextOf } from "../support/context.js";
import { brokenSamples } from "../support/shared-car.js";

const resolved = (...lines: readonly string[]) => {
  const text = `use "shared.crank"\n\nsetup trial from wren {\n${lines.map((line) => `  ${line}\n`).join("")}}\n`;
  return contextOf({ ...brokenSamples, "trial.crank": text }, "trial.crank");
};
const trial = (...lines: readonly string[]): CarModel => resolved(...lines).cars[0]?.model as CarModel;
const element = (car: CarModel, path: string): ElementModel | undefined =>
  car.axles.front?.elements.find((one) => one.path === path);
const numbersOf = (model: ElementModel | undefined, word: string): readonly number[] =>
  model?.block.statements
    .find((statement) => statement.word === word)
    ?.values.flatMap((value) => (value.kind === "number" ? [value.value] : [])) ?? [];

describe("an override", () => {
  it("replaces a value, keeps the author's unit and says what it replaced", () => {
    const track = trial("front.track 58 in").axles.front?.track;
    expect(track?.value).toBeCloseTo(1.4732, 12);
    expect(track?.unit).toBe("in");
    expect(track?.chain).toHaveLength(1);
    expect(track?.chain[0]?.uri).toMatch(/shared\.crank$/);
  });

  it("adds with `by`, in either unit", () => {
    expect(trial("front.ride-height by +2 mm").axles.front?.rideHeight?.value).toBeCloseTo(0.034, 12);
    expect(trial("front.ride-height by -0.1 in").axles.front?.rideHeight?.value).toBeCloseTo(0.032 - 0.00254, 12);
  });

  it("means both sides without a side, and one side with it", () => {
    const both = trial("front.side.fit V-22");
    expect(["left", "right"].map((side) => element(both, `front.${side}.side`)?.part?.name)).toEqual(["V-22", "V-22"]);
    const one = trial("front.left.side.fit V-22");
    expect(["left", "right"].map((side) => element(one, `front.${side}.side`)?.part?.name)).toEqual(["V-22", "V-14"]);
  });

  it("takes an element out, and only that", () => {
    const paths = trial("remove front.roll-damper").axles.front?.elements.map(({ path }) => path) ?? [];
    expect(paths).not.toContain("front.roll-damper");
    expect(paths).toContain("front.third");
  });

  it("mirrors a point on the other side", () => {
    const car = trial("front.rocker.third (0, 193, 456) mm");
    const eyes = (side: "left" | "right") => {
      const corner = car.axles.front?.corner[side];
      return corner?.kind === "hardpoints" ? corner.rocker?.eyes.get("third")?.value : undefined;
    };
    expect(eyes("left")?.[1]).toBeCloseTo(0.193, 12);
    expect(eyes("right")?.[1]).toBeCloseTo(-0.193, 12);
  });

  it("in a shorter form keeps what it does not speak of: `position 4` of `3 of 5`", () => {
    const blade = (car: CarModel) =>
      element(car, "front.bar")?.block.statements.find(({ word }) => word === "blade")?.block?.statements;
    const withBlade = (brokenSamples["shared.crank"] as string).replace(
      "      drop-link rocker.bar\n",
      "      drop-link rocker.bar\n      blade { position 3 of 5, section 6 x 18 mm, length 70 mm }\n",
    );
    const text = 'use "shared.crank"\n\nsetup trial from wren {\n  front.bar.blade.position 4\n}\n';
    const context = contextOf({ ...brokenSamples, "shared.crank": withBlade, "trial.crank": text }, "trial.crank");
    const position = blade(context.cars[0]?.model as CarModel)?.find(({ word }) => word === "position");
    expect(position?.values.flatMap((value) => (value.kind === "number" ? [value.value] : []))).toEqual([4, 5]);
    expect(context.problems).toEqual([]);
  });

  it("goes through a chain of set-ups, and the nearest wins", () => {
    const text =
      'use "shared.crank"\n\nsetup a from wren {\n  front.third.rate 50 N/mm\n  mass 545 kg\n}\n\nsetup b from a {\n  front.third.rate 45 N/mm\n}\n';
    const context = contextOf({ ...brokenSamples, "trial.crank": text }, "trial.crank");
    const b = context.cars.find(({ model }) => model.setup === "b")?.model as CarModel;
    expect(numbersOf(element(b, "front.third"), "rate")).toEqual([45_000]);
    expect(b.mass?.value).toBe(545);
    expect(b.bases).toEqual(["a", "wren"]);
  });

  it("replaces a case of the same name and keeps the others", () => {
    const car = (brokenSamples["shared.crank"] as string).replace(
      /\}\n$/,
      "\n  case hairpin { speed 70 km/h, lateral 1.5 g }\n  case top-speed { speed 200 km/h }\n}\n",
    );
    const text = 'use "shared.crank"\n\nsetup trial from wren {\n  case hairpin { speed 60 km/h, lateral 1 g }\n}\n';
    const { cars } = contextOf({ ...brokenSamples, "shared.crank": car, "trial.crank": text }, "trial.crank");
    expect(cars[0]?.model.cases.map(({ name }) => name).sort()).toEqual(["hairpin", "top-speed"]);
    const hairpin = cars[0]?.model.cases.find(({ name }) => name === "hairpin");
    expect(hairpin?.lateral?.value).toBeCloseTo(9.80665, 12);
  });

  it("of a circle of set-ups is told, and nothing hangs", () => {
    const text = "setup a from b {\n}\n\nsetup b from a {\n}\n";
    const { problems } = contextOf({ "trial.crank": text }, "trial.crank");
    expect(problems.filter(({ kind }) => kind === "cycle").length).toBeGreaterThan(0);
  });
});

describe("a value", () => {
  it("is the same in either unit", () => {
    expect(trial("front.track 25.4 mm").axles.front?.track?.value).toBe(
      trial("front.track 1 in").axles.front?.track?.value,
    );
  });

  it("can be calculated with names, checked for dimension", () => {
    const context = resolved("let step = 5 N/mm", "front.third.rate 40 N/mm + 2 * step");
    expect(numbersOf(element(context.cars[0]?.model as CarModel, "front.third"), "rate")).toEqual([50_000]);
    expect(context.problems).toEqual([]);
    const wrong = resolved("let step = 5 mm", "front.third.rate 40 N/mm + step");
    expect(wrong.problems.map(({ kind }) => kind)).toContain("dimension");
  });

  it("in brackets is covered by the unit behind them, sums too", () => {
    const eye = (text: string) => {
      const corner = trial(`front.rocker.third ${text}`).axles.front?.corner.left;
      return corner?.kind === "hardpoints" ? corner.rocker?.eyes.get("third")?.value : undefined;
    };
    expect(eye("(0, 180 + 13, 456) mm")?.[1]).toBeCloseTo(0.193, 12);
  });
});
