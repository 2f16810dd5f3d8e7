import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gridWeights, numberAt, vectorAt, weightsOn } from "../../client/panel/page/tables.js";

const axis = [-3, -1, 0, 2, 5];

describe("reading a table between its entries", () => {
  it("meets every entry", () => {
    for (const [i, at] of axis.entries()) expect(numberAt([10, 11, 12, 13, 14], weightsOn(axis, at))).toBe(10 + i);
  });
  it("is exact for what is linear, and keeps to the ends", () => {
    fc.assert(
      fc.property(fc.double({ min: -10, max: 10, noNaN: true }), (at) => {
        const inside = Math.min(5, Math.max(-3, at));
        const value = numberAt(
          axis.map((x) => 2 * x + 1),
          weightsOn(axis, at),
        );
        expect(value).toBeCloseTo(2 * inside + 1, 12);
      }),
    );
  });
  it("reads rows by the left wheel and columns by the right one", () => {
    const [left, right] = [
      [0, 1],
      [0, 1, 2],
    ];
    const table = left.flatMap((l) => right.map((r) => 10 * l + r));
    expect(numberAt(table, gridWeights(left, right, 0.5, 1.5))).toBeCloseTo(6.5, 12);
  });
  it("has no value beside a place that is not reached", () => {
    expect(numberAt([1, null], weightsOn([0, 1], 0.5))).toBeUndefined();
    expect(numberAt([1, null], weightsOn([0, 1], 0))).toBe(1);
    expect(vectorAt([0, 0, 0, null, null, null], weightsOn([0, 1], 0.2))).toBeUndefined();
  });
  it("has none in an empty table", () => {
    expect(numberAt([], weightsOn([], 0))).toBeUndefined();
  });
});
