/** Rods and drop links made longer or shorter by a set-up: in turns of their thread, or as a length. */
import { describe, expect, it } from "vitest";
import { axleKey } from "../../server/assemble/assemble.js";
import type { CarModel } from "../../server/model/car.js";
import { runRules } from "../../server/findings/run.js";
import { contextOf } from "../support/context.js";
import { afterFix } from "../support/check-fixes.js";
import { Folder } from "./resolved.js";
import { contextOfSetup, setupWith, sharedCar } from "../support/shared-car.js";

const carOf = (...lines: readonly string[]): CarModel => {
  const { cars, problems } = contextOfSetup(...lines);
  expect(problems).toEqual([]);
  return cars[0]?.model as CarModel;
};
const rodOf = (car: CarModel, side: "left" | "right") => {
  const corner = car.axles.front?.corner[side];
  if (corner?.kind !== "hardpoints" || corner.rod === undefined) throw new Error("no rod");
  return corner.rod;
};
const longer = (...lines: readonly string[]) => {
  const car = carOf(...lines);
  return (["left", "right"] as const).map((side) => rodOf(car, side).longer?.value);
};
const keyOf = (car: CarModel): string => (car.axles.front === undefined ? "" : axleKey(car.axles.front, car));

describe("a push rod's length", () => {
  it("is set by turns of its thread, on both sides or on one", () => {
    expect(longer()).toEqual([undefined, undefined]);
    const [both, one] = [longer("front.push-rod by -1 turn"), longer("front.left.push-rod by +0.5 turn")];
    expect(both[0]).toBeCloseTo(-0.00125, 15);
    expect(both[1]).toBeCloseTo(-0.00125, 15);
    expect(one[0]).toBeCloseTo(0.000625, 15);
    expect(one[1]).toBeUndefined();
    expect(longer("front.right.push-rod by -2 turn")[1]).toBeCloseTo(-0.0025, 15);
  });

  it("is set by a length as well, in either unit, or calculated", () => {
    expect(longer("front.push-rod by +1.25 mm")[0]).toBeCloseTo(0.00125, 15);
    expect(longer("front.push-rod by 0.05 in")[0]).toBeCloseTo(0.00127, 15);
    expect(longer("let up = 0.5 mm", "front.push-rod by 2 * up")[0]).toBeCloseTo(0.001, 15);
    expect(longer("front.push-rod by front.ride-height / 16")[1]).toBeCloseTo(0.002, 15);
  });

  it("adds up over lines, blocks and set-ups, and can be set outright", () => {
    expect(longer("front.push-rod by 1 turn", "front.push-rod by -3 turn")[0]).toBeCloseTo(-0.0025, 15);
    expect(longer("front { left { push-rod by 1 turn } }")[0]).toBeCloseTo(0.00125, 15);
    expect(longer("front.push-rod.longer 2 mm", "front.push-rod by 1 turn")[0]).toBeCloseTo(0.00325, 15);
    expect(longer("front.push-rod by 1 turn", "front.left.push-rod by 1 turn")).toEqual([0.0025, 0.00125]);
    const text = `${setupWith("front.push-rod by 1 turn")}\nsetup drier from wet {\n  front.push-rod by 1 turn\n}\n`;
    const { cars } = contextOf({ ...sharedCar, "wet.crank": text }, "wet.crank");
    const drier = cars.find(({ model }) => model.setup === "drier")?.model as CarModel;
    expect(rodOf(drier, "left").longer?.value).toBeCloseTo(0.0025, 15);
    expect(rodOf(drier, "left").longer?.chain).toHaveLength(1);
  });

  it("is kept in the unit it was written in, and replaces nothing where nothing was written", () => {
    const units = (line: string) => rodOf(carOf(line), "left").longer;
    expect(units("front.push-rod by -1 turn")).toMatchObject({ unit: "mm", chain: [] });
    expect(units("front.push-rod by 0.05 in")).toMatchObject({ unit: "in", chain: [] });
  });

  it("is the same axle whether it is told in turns or in mm, and another one than as drawn", () => {
    expect(keyOf(carOf("front.push-rod by 1 turn"))).toBe(keyOf(carOf("front.push-rod by 1.25 mm")));
    expect(keyOf(carOf("front.push-rod by 1 turn"))).not.toBe(keyOf(carOf()));
    expect(keyOf(carOf("front.left.push-rod by 1 turn"))).not.toBe(keyOf(carOf("front.right.push-rod by 1 turn")));
  });

  it("takes a new thread into account", () => {
    expect(longer("front.push-rod.thread 2 mm/turn", "front.push-rod by 1 turn")[0]).toBeCloseTo(0.002, 15);
  });

  it("that does not change is reported as needless", () => {
    const { problems } = contextOfSetup("front.push-rod by 0 mm");
    expect(problems.map(({ kind }) => kind)).toEqual(["needless-override"]);
  });

  it("is told where it differs between the sides", () => {
    const told = runRules(contextOfSetup("front.left.push-rod by +0.5 turn")).filter(
      ({ rule }) => rule === "asymmetry",
    );
    expect(told.map(({ message }) => message)).toEqual([
      "front push-rod is 0.625 mm longer than drawn on the left and as long as drawn on the right. " +
        "If that is not meant, give both sides the same.",
    ]);
  });
});

describe("a pull rod", () => {
  it("is set like a push rod, in a planar linkage too", () => {
    const text = `car a {
  axle rear {
    linkage planar {
      lower-wishbone { inner (190, 120) mm, outer (672, 130) mm }
      upper-wishbone { inner (245, 283) mm, outer (648, 332) mm }
      pull-rod on upper-wishbone { outer (620, 320) mm, inner (262, 170) mm, thread 1 mm/turn }
      rocker { pivot (210, 150) mm }
    }
  }
}
setup b from a {
  rear.pull-rod by -2 turn
}
`;
    const corner = contextOf({ "a.crank": text }, "a.crank").cars[1]?.model.axles.rear?.corner.right;
    expect(corner?.kind === "planar" && corner.rod?.longer?.value).toBeCloseTo(-0.002, 15);
  });
});

describe("turns without a thread", () => {
  const bare = (sharedCar["shared.crank"] ?? "").replace(", thread 1.25 mm/turn", "");
  const check = (line: string) =>
    contextOf({ ...sharedCar, "shared.crank": bare, "wet.crank": setupWith(line) }, "wet.crank");

  it.each([
    ["front.push-rod by -1 turn", "front.push-rod.thread 1.25 mm/turn\n  front.push-rod by -1 turn\n"],
    ["front { push-rod by -1 turn }", "front { push-rod.thread 1.25 mm/turn, push-rod by -1 turn }"],
    ["front.push-rod.longer by 1 turn", "front.push-rod.thread 1.25 mm/turn\n  front.push-rod.longer by 1 turn\n"],
    ["front.bar.drop-link by 1 turn", "front.bar.drop-link.thread 1.25 mm/turn\n  front.bar.drop-link by 1 turn\n"],
  ])("are told, with the thread to say first: %s", (line, mended) => {
    const context = check(line);
    const [found, more] = runRules(context);
    expect(more).toBeUndefined();
    expect(found?.rule).toBe("missing-property");
    expect(found?.message).toMatch(/nothing says how far one turn goes/);
    const after = afterFix(context, "missing-property");
    expect(after.text).toContain(mended);
    expect(after.findings.filter(({ severity }) => severity === "error")).toEqual([]);
  });

  it("in mm are nothing special", () => {
    expect(check("front.push-rod by -1 mm").problems).toEqual([]);
  });

  it("of something that has no thread are a wrong dimension", () => {
    expect(check("front.ride-height by 1 turn").problems.map(({ kind }) => kind)).toEqual(["dimension"]);
  });
});

describe("a drop link", () => {
  it("is made longer by its own word, by turns or outright, once a side", () => {
    const links = (...lines: readonly string[]) => {
      const bar = carOf(...lines).axles.front?.elements.find(({ name }) => name === "bar")?.connection;
      return bar?.kind === "bar" ? [bar.longer.left?.value, bar.longer.right?.value] : [];
    };
    expect(links("front.bar.drop-link by 1 mm")).toEqual([0.001, 0.001]);
    expect(links("front.left.bar.drop-link by -1 mm")).toEqual([-0.001, undefined]);
    expect(links("front.bar.drop-link.thread 1 mm/turn", "front.bar.drop-link by 2 turn")).toEqual([0.002, 0.002]);
    expect(links("front.bar.drop-link.longer by 1 mm")).toEqual([0.001, 0.001]);
  });

  it("is still found by the names in the line", () => {
    const text = setupWith("front.bar.drop-link by 1 mm");
    const { symbols } = new Folder({ ...sharedCar, "wet.crank": text }).resolve("wet.crank");
    const bar = symbols.find(({ path }) => path === "front.bar");
    expect(bar?.references.map(({ start, end }) => [start, text.slice(start, end)])).toEqual([
      [text.indexOf("bar.drop"), "bar"],
    ]);
  });
});
