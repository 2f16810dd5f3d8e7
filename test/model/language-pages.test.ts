/** The texts of the language's own description, kept as fixtures, with a rear axle added. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { elementAt, Folder, numberAt, onlyCar, statementIn } from "./resolved.js";

const names = ["quill.crank", "parts.crank", "oxlea-wet.crank", "rare.crank"];
const texts = Object.fromEntries(
  names.map((name) => [name, readFileSync(new URL(`./fixtures/${name}`, import.meta.url), "utf8")]),
);
const folder = new Folder(texts);

describe("the example car", () => {
  const car = onlyCar(folder.resolve("quill.crank"));
  const front = car.axles.front;

  it.each(names)("has no problem in %s", (name) => {
    expect(folder.resolve(name).problems).toEqual([]);
  });

  it("has its masses and dimensions in SI", () => {
    expect([car.name, car.title, car.setup]).toEqual(["quill", "Quill 7, hill-climb single-seater", undefined]);
    expect(car.wheelbase).toMatchObject({ value: 2.54, unit: "mm", chain: [] });
    expect(car.massFront).toMatchObject({ value: 0.44, unit: "%" });
    expect(car.rollInertia).toMatchObject({ value: 62, unit: "kg*m^2" });
    expect(car.brakes).toMatchObject({ mounting: "outboard", front: { value: 0.58 } });
    expect(car.drive).toBe("rear");
    expect(numberAt(car.block, "aero", "height-slopes", "front-by-front")).toBeCloseTo(-6, 12);
    expect(car.leakLimits).toEqual({ information: 0.02, warning: 0.05 });
  });

  it("has its wheel, travel and trim", () => {
    expect(front?.travel).toMatchObject({ from: -0.03, to: 0.025 });
    expect(front?.trim).toMatchObject({ by: "element", element: "corner-bar" });
    expect(front?.wheel.left.centre?.value).toEqual([0, 0.74, 0.262]);
    expect(front?.wheel.right.centre?.value).toEqual([0, -0.74, 0.262]);
    expect(front?.wheel.right.camber?.value).toBeCloseTo((-2.5 * Math.PI) / 180, 15);
    expect(front?.wheel.left.tyreDamping?.value).toBe(250);
  });

  it("has the left corner as written and the right one mirrored", () => {
    const { left, right } = front?.corner ?? {};
    if (left?.kind !== "hardpoints" || right?.kind !== "hardpoints") throw new Error("no hardpoints");
    expect(left.lower.fore.value).toEqual([0.135, 0.19, 0.118]);
    expect(right.lower.fore.value).toEqual([0.135, -0.19, 0.118]);
    expect(left.rod).toMatchObject({ kind: "push-rod", on: "lower-wishbone" });
    expect(left.rod?.thread?.value).toBeCloseTo(0.00125, 15);
    expect([...(right.rocker?.eyes.keys() ?? [])]).toEqual(["side", "third", "roll-high", "roll-low", "bar"]);
    expect(right.rocker?.eyes.get("roll-low")?.value).toEqual([0.01, -0.238, 0.366]);
  });

  it("has corner elements once a side, others once", () => {
    expect(front?.elements.map(({ path, side }) => [path, side])).toEqual([
      ["front.left.corner-bar", "left"],
      ["front.right.corner-bar", "right"],
      ["front.left.side", "left"],
      ["front.right.side", "right"],
      ["front.third", undefined],
      ["front.roll-damper", undefined],
      ["front.bar", undefined],
    ]);
  });

  it("mirrors the chassis point of a corner element, and keeps the side of each end", () => {
    const ends = (path: string) => {
      const { connection } = elementAt(car, path);
      return connection?.kind === "between"
        ? connection.ends.map((end) => ("point" in end ? end.point.value : end))
        : [];
    };
    expect(ends("front.left.side")).toEqual([
      [0.01, 0.172, 0.47],
      [0.01, 0.04, 0.36],
    ]);
    expect(ends("front.right.side")).toEqual([
      [0.01, -0.172, 0.47],
      [0.01, -0.04, 0.36],
    ]);
    expect(elementAt(car, "front.roll-damper").connection).toMatchObject({
      ends: [
        { kind: "eye", side: "left", eye: "roll-high", axle: "front" },
        { kind: "eye", side: "right", eye: "roll-low", axle: "front" },
      ],
    });
  });

  it("brings the fitted part's figures into the element", () => {
    const bar = elementAt(car, "front.left.corner-bar");
    expect(bar.part).toMatchObject({ name: "TB-195" });
    expect(numberAt(bar.block, "torsion-bar", "diameter")).toBeCloseTo(0.0195, 15);
    expect(statementIn(bar.block, "torsion-bar", "diameter")?.origin.uri).toMatch(/parts\.crank$/);
    expect(statementIn(bar.block, "torsion-bar", "stock")).toBeUndefined();
    const rows = statementIn(elementAt(car, "front.left.side").block, "bump")?.block?.rows;
    expect(rows?.map(({ key, value }) => [key, value])).toMatchObject([
      [{ value: 0.05 }, { value: 320 }],
      [{ value: 0.1 }, { value: 470 }],
    ]);
  });

  it("has the bar's levers and links on both sides", () => {
    const { connection } = elementAt(car, "front.bar");
    if (connection?.kind !== "bar") throw new Error("no bar");
    expect(connection.levers.left.end.value).toEqual([0.03, 0.21, 0.42]);
    expect(connection.levers.right.end.value).toEqual([0.03, -0.21, 0.42]);
    expect(connection.links).toMatchObject({
      left: { side: "left", eye: "bar" },
      right: { side: "right", eye: "bar" },
    });
  });

  it("spreads the last unit of a pair over both numbers", () => {
    const section = statementIn(elementAt(car, "front.bar").block, "blade", "section");
    expect(section?.values).toMatchObject([{ value: 0.008, unit: "mm" }, { value: 0.03 }]);
  });

  it("follows a property that a value is worked out from", () => {
    expect(car.axles.rear?.rideHeight?.value).toBeCloseTo(0.046, 15);
    expect(car.axles.rear?.rideHeight?.unit).toBe("mm");
  });

  it("has cases and expectations", () => {
    expect(car.cases.map(({ name }) => name)).toEqual(["top-speed", "hairpin", "braking"]);
    expect(car.cases[1]?.lateral?.value).toBeCloseTo(1.55 * 9.80665, 12);
    expect(car.expectations.map(({ figure, at, wants }) => [figure, at, wants.kind])).toEqual([
      ["front.heave-rate", undefined, "between"],
      ["load-transfer-front", "hairpin", "between"],
      ["front.ride-height", "top-speed", "above"],
      ["front.roll-damper.heave-leak", undefined, "below"],
    ]);
    expect(car.expectations[0]?.wants).toMatchObject({
      from: { value: 150_000, unit: "N/mm" },
      to: { value: 190_000 },
    });
  });
});

describe("the example set-up", () => {
  const car = onlyCar(folder.resolve("oxlea-wet.crank"));
  const { front } = car.axles;

  it("says what it derives from", () => {
    expect([car.name, car.setup, car.base, car.bases]).toEqual(["quill", "oxlea-wet", "quill", ["quill"]]);
    expect(car.baseModel?.setup).toBeUndefined();
    expect(car.title).toBe("Quill 7, hill-climb single-seater");
  });

  it("replaces, adds to, fits and removes", () => {
    expect(numberAt(elementAt(car, "front.third").block, "rate")).toBe(95_000);
    expect(elementAt(car, "front.left.corner-bar").part?.name).toBe("TB-185");
    expect(numberAt(elementAt(car, "front.right.corner-bar").block, "torsion-bar", "diameter")).toBeCloseTo(0.0185, 15);
    expect(front?.rideHeight?.value).toBeCloseTo(0.034, 15);
    expect(elementAt(car, "front.left.side").part?.name).toBe("V-22");
    expect(elementAt(car, "front.right.side").part?.name).toBe("V-14");
    expect(numberAt(elementAt(car, "rear.bar").block, "blade", "position")).toBe(2);
    expect(car.axles.rear?.elements.map(({ name }) => name)).not.toContain("roll-damper");
    expect(car.cases.find(({ name }) => name === "hairpin")?.speed?.unit).toBe("km/h");
    expect(numberAt(car.cases.find(({ name }) => name === "hairpin")?.block, "speed")).toBeCloseTo(64 / 3.6, 12);
  });

  it("lets what is worked out from a changed value follow", () => {
    expect(car.axles.rear?.rideHeight?.value).toBeCloseTo(0.048, 15);
  });

  it("keeps the note of a line", () => {
    const rate = statementIn(elementAt(car, "front.third").block, "rate");
    expect(rate?.notes).toEqual(["Standing water above the quarry hairpin; softer front in heave."]);
  });

  it("tells where a value came from", () => {
    const rate = statementIn(elementAt(car, "front.third").block, "rate")?.values[0];
    if (rate?.kind !== "number") throw new Error("no rate");
    expect(rate.origin.uri).toMatch(/oxlea-wet\.crank$/);
    const [before, more] = rate.chain;
    expect(more).toBeUndefined();
    expect(texts["quill.crank"]?.slice(before?.start, before?.end)).toBe("120 N/mm");
    expect(front?.rideHeight?.chain).toHaveLength(1);
    expect(front?.rideHeight?.unit).toBe("mm");
  });
});

describe("the rarer connections", () => {
  const car = onlyCar(folder.resolve("rare.crank"));

  it("ties bars of both rockers", () => {
    expect(elementAt(car, "front.tied-bars").connection).toMatchObject({
      kind: "twists",
      of: { side: "left" },
      against: { body: "rocker", side: "right" },
      tie: { value: [0.01, 0.195, 0.52] },
    });
  });

  it("joins a spring to the lever of a bar", () => {
    expect(elementAt(car, "front.roll-coil").connection).toMatchObject({
      ends: [
        { kind: "lever-end", bar: "bar", side: "left", axle: "front" },
        { kind: "chassis", point: { value: [0.03, 0.12, 0.38] } },
      ],
    });
  });

  it("keeps the lines of a hydraulic link and the rows of an actuator", () => {
    const link = elementAt(car, "pitch-line");
    expect([link.axle, link.for]).toEqual([undefined, ["pitch"]]);
    expect(numberAt(link.block, "line", "bulk-modulus")).toBe(1.4e9);
    expect(statementIn(elementAt(car, "front.platform").block, "hold")?.block?.rows).toMatchObject([
      { key: { segments: ["top-speed"] }, value: { value: 0.004 } },
      { key: { segments: ["braking"] }, value: { value: -0.002 } },
    ]);
  });
});
