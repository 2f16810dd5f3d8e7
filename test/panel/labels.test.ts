import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { overlap, placeLabels } from "../../client/panel/page/labels.js";

const area = { x: 0, y: 0, width: 400, height: 300 };
const wanted = fc.array(
  fc.record({
    anchor: fc.tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 300 })),
    width: fc.integer({ min: 20, max: 120 }),
  }),
  { maxLength: 25 },
);

describe("names in the drawing", () => {
  it("never overlap, never leave the drawing, and cover nothing that is taken", () => {
    fc.assert(
      fc.property(wanted, (all) => {
        const taken = [{ x: 150, y: 100, width: 80, height: 60 }];
        const names = all.map((one, i) => ({ ...one, id: String(i), height: 15 }));
        const placed = placeLabels(names, area, taken);
        placed.forEach((one, i) => {
          for (const other of [...placed.slice(i + 1), ...taken]) expect(overlap(one, other)).toBe(false);
          expect(one.x).toBeGreaterThanOrEqual(0);
          expect(one.y).toBeGreaterThanOrEqual(0);
          expect(one.x + one.width).toBeLessThanOrEqual(400);
          expect(one.y + one.height).toBeLessThanOrEqual(300);
        });
      }),
    );
  });
  it("gives the first its nearest place, without a line that leads to it", () => {
    const [first] = placeLabels([{ id: "a", anchor: [200, 150], width: 40, height: 15 }], area);
    expect(first).toMatchObject({ x: 212, leader: undefined });
  });
  it("leads to a name that stands further off", () => {
    const names = Array.from({ length: 14 }, (_, i) => ({
      id: String(i),
      anchor: [200, 150] as const,
      width: 60,
      height: 15,
    }));
    const placed = placeLabels(names, area);
    expect(placed.length).toBeGreaterThan(8);
    expect(placed.at(-1)?.leader).toBeDefined();
  });
});
