import { describe, expect, it } from "vitest";
import { figureAt, figureNames, figures } from "../../grammar/vocabulary/index.js";
import { unitsOf } from "../../server/quantities/index.js";

const read = (path: string): unknown => {
  const found = figureAt(path);
  if (found === undefined) return undefined;
  const { figure, axle, side, element, mode } = found;
  return [figure.figure, axle, side, element, mode];
};

describe("figures after expect", () => {
  it("are told by the shape of their path", () => {
    expect(read("front.heave-rate")).toEqual(["heave-rate", "front", undefined, undefined, undefined]);
    expect(read("rear.left.wheel-load")).toEqual(["wheel-load", "rear", "left", undefined, undefined]);
    expect(read("rear.wheel-load")).toEqual(["wheel-load", "rear", undefined, undefined, undefined]);
    expect(read("load-transfer-front")).toEqual(["load-transfer-front", undefined, undefined, undefined, undefined]);
    expect(read("front.roll-damper.heave-leak")).toEqual(["<mode>-leak", "front", undefined, "roll-damper", "heave"]);
    expect(read("front.left.side.motion-ratio")).toEqual(["motion-ratio", "front", "left", "side", undefined]);
    expect(read("pitch-line.rate")).toEqual(["rate", undefined, undefined, "pitch-line", undefined]);
    expect(read("front.side.other-wheel-leak")).toEqual(["<mode>-leak", "front", undefined, "side", "other-wheel"]);
    expect(read("front.third.roll-rate-leak")).toEqual(["<mode>-rate-leak", "front", undefined, "third", "roll"]);
  });

  it.each([
    "",
    "front",
    "heave-rate",
    "front.left.heave-rate",
    "left.wheel-load",
    "front.a.b.rate",
    "front.side.colour",
  ])("%s is none", (path) => {
    expect(figureAt(path)).toBeUndefined();
  });

  it("mean one thing a path", () => {
    const seen = figures.flatMap(({ figure, scope }) => `${scope === "wheel" ? "axle" : scope} ${figure}`);
    expect(seen.length).toBe(new Set(seen).size);
    expect(figureNames.every((name) => !name.includes("<"))).toBe(true);
  });

  it("have units to be written in", () => {
    for (const { dimensions } of figures)
      for (const name of dimensions) expect(unitsOf(name).length).toBeGreaterThan(0);
  });
});
