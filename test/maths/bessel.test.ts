import { describe, expect, it } from "vitest";
import { timesK1 } from "../../server/maths/bessel.js";
import { expectClose } from "../support/approx.js";
import { CLOSED_FORM } from "../support/tolerances.js";
import { wholeCarData } from "../support/whole-car-data.js";

describe("x K₁(x)", () => {
  it.each(wholeCarData.timesK1)("at %d is what SciPy says", (x, expected) => {
    expectClose(timesK1(x), expected, CLOSED_FORM, 0);
  });

  it("is 1 at nothing, and never more", () => {
    expect(timesK1(0)).toBe(1);
    expect(timesK1(-1)).toBe(1);
    expect(timesK1(1e-12)).toBeLessThanOrEqual(1);
    expect(timesK1(1e6)).toBe(0);
  });
});
