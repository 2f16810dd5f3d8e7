/** Halving between a place where something holds and one where it does not. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { closedIn } from "../../server/maths/closing-in.js";

describe("closing in", () => {
  it("keeps the place between both ends, either way, and halves their distance each time", () => {
    const place = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(place, fc.integer({ min: 0, max: 40 }), fc.constantFrom(1, -1), (edge, halvings, way) => {
        const holds = (x: number): boolean => way * x <= way * edge;
        const { holding, failing } = closedIn(-2 * way, 2 * way, holds, halvings);
        expect(holds(holding)).toBe(true);
        expect(holds(failing)).toBe(false);
        expect(Math.abs(failing - holding)).toBe(4 / 2 ** halvings);
      }),
    );
  });
});
