/** Values that fixes propose: in the author's unit, on a grid that a maker works to. */
import { describe, expect, it } from "vitest";
import { onGrid } from "../../../server/findings/strength/line-edits.js";

describe("a proposed value", () => {
  it.each([
    [0.0123, "mm", 1e-4, "near", "12.3 mm"],
    [-0.028, "in", 1e-3, "up", "-1.1 in"],
    [0.0254, "in", 1e-4, "near", "1 in"],
    [0.01271, "in", 5e-4, "up", "0.51 in"],
    [121, "N", 10, "down", "120 N"],
  ] as const)("%d in %s stands on its grid", (si, unit, grid, round, text) => {
    expect(onGrid(si, unit, grid, round)).toBe(text);
  });
});
