import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse } from "../../grammar/index.js";
import { applyEdits } from "../../server/findings/edits.js";
import { convertUnits, type UnitTarget } from "../../server/views/convert-units.js";

function converted(text: string, target: UnitTarget, within?: { start: number; end: number }): string {
  return applyEdits(text, convertUnits("a.crank", parse(text), target, within));
}

describe("converting units", () => {
  it.each([
    ["a single value", "track 1270 mm", "track 50 in"],
    ["a point, whose unit covers all of it", "fore (25.4, -50.8, 0) mm", "fore (1, -2, 0) in"],
    ["a range", "travel -25.4 .. 50.8 mm", "travel -1 .. 2 in"],
    ["a range with a unit on each end", "travel -2.54 cm .. 50.8 mm", "travel -1 in .. 2 in"],
    ["a pair joined by x", "section 25.4 x 50.8 mm", "section 1 x 2 in"],
    ["a pair joined by and", "expect a between 25.4 and 50.8 mm", "expect a between 1 and 2 in"],
    ["a row of a table", "bump { 25.4 mm/s: 0 N }", "bump { 1 in/s: 0 lbf }"],
    ["each value of a sum by itself", "let a = 25.4 mm + b * 2", "let a = 1 in + b * 2"],
    ["an adjustment with its sign", "front.ride-height by +25.4 mm", "front.ride-height by +1 in"],
    ["blocks inside blocks", "a {\n  b { c 25.4 mm }  # mm\n}\n", "a {\n  b { c 1 in }  # mm\n}\n"],
  ])("does %s", (_, si, inch) => {
    expect(converted(si, "inch")).toBe(inch);
  });

  it("goes the other way too", () => {
    expect(converted("rate 100 lbf/in\nspeed 100 mph\nfore (1, 2, 3) in", "si")).toBe(
      "rate 17.5127 N/mm\nspeed 160.934 km/h\nfore (25.4, 50.8, 76.2) mm",
    );
  });

  it("leaves alone what belongs to both systems, what is there already, and what it cannot tell", () => {
    for (const text of [
      "toe 0.1 deg",
      "lateral 1.5 g",
      "share 44 %",
      "track 50 in",
      "gap (a + 2) mm",
      "x 3 cubits",
      "at (a, 1, 2 + 1) mm",
    ]) {
      expect(converted(text, "inch")).toBe(text);
    }
  });

  it("converts only what the selection touches", () => {
    const text = "a 25.4 mm\nb 25.4 mm\n";
    const at = text.indexOf("b 25");
    expect(converted(text, "inch", { start: at, end: at + 4 })).toBe("a 25.4 mm\nb 1 in\n");
  });

  it("comes back to the same text", () => {
    const value = fc.integer({ min: -9999, max: 9999 }).map((digits) => `${digits / 10}`);
    const line = fc
      .tuple(value, value, value)
      .map(([a, b, c]) => `p (${a}, ${b}, ${c}) mm\nq ${a} .. ${b} kg\nr ${c} N/mm`);
    fc.assert(
      fc.property(line, (text) => {
        expect(converted(converted(text, "inch"), "si")).toBe(text);
      }),
    );
  });

  it("does not recurse into a sum of ten thousand terms", () => {
    const text = `let a = ${Array.from({ length: 10_000 }, () => "25.4 mm").join(" + ")}`;
    expect(converted(text, "inch")).toContain("1 in + 1 in");
  });
});
