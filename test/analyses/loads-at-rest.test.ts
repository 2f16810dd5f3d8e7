/** What each wheel carries at rest with the centre of gravity beside the centre plane: balances, mirror, hand figures. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CornerLoads, cornerLoads, type Standing } from "../../server/elements/corner-loads.js";
import { twoAxles } from "../support/two-axles.js";
import { analysisOf, carOf, cornerSpring, number, reason } from "../support/written-car.js";

const standing = (changes: Partial<Standing>): Standing => ({
  total: 600,
  frontShare: 0.45,
  left: 0,
  tracks: { front: 1.5, rear: 1.4 },
  crossWeight: 0.5,
  hasSeatEachSide: { front: true, rear: true },
  ...changes,
});

const loads = (changes: Partial<Standing>): CornerLoads => {
  const found = cornerLoads(standing(changes));
  if (typeof found === "string") throw new Error(found);
  return found;
};

describe("the loads at rest", () => {
  it("are those of a hand calculation", () => {
    // 600 kg, 45 % front, 20 mm left: Δ = 2·600·0.02/(1.5 + 1.4) = 8.27586 kg more on the left of each axle.
    const more = (2 * 600 * 0.02) / 2.9;
    expect(loads({ left: 0.02 })).toEqual([(270 + more) / 2, (270 - more) / 2, (330 + more) / 2, (330 - more) / 2]);
    expect(loads({})).toEqual([135, 135, 165, 165]);
  });

  it("keep all balances, and the cross weight where both axles have a seat each side", () => {
    const share = fc.double({ min: 0.3, max: 0.7, noNaN: true });
    const left = fc.double({ min: -0.1, max: 0.1, noNaN: true });
    const track = fc.double({ min: 0.9, max: 2, noNaN: true });
    fc.assert(
      fc.property(share, left, track, track, share, fc.boolean(), (frontShare, y, front, rear, crossWeight, both) => {
        const [fl, fr, rl, rr] = loads({
          frontShare,
          left: y,
          tracks: { front, rear },
          crossWeight,
          hasSeatEachSide: { front: true, rear: both },
        });
        expect(Math.abs(fl + fr + rl + rr - 600)).toBeLessThan(1e-9);
        expect(Math.abs(fl + fr - 600 * frontShare)).toBeLessThan(1e-9);
        expect(Math.abs(((fl - fr) * front + (rl - rr) * rear) / 2 - 600 * y)).toBeLessThan(1e-9);
        if (both) expect(Math.abs((fr + rl) / 600 - crossWeight)).toBeLessThan(1e-9);
        else expect(rl).toBe(rr);
      }),
    );
  });

  it("are mirrored with the car", () => {
    const [fl, fr, rl, rr] = loads({ left: 0.03, crossWeight: 0.52 });
    const mirrored = loads({ left: -0.03, crossWeight: 0.48 });
    for (const [i, load] of [fr, fl, rr, rl].entries()) expect(mirrored[i]).toBeCloseTo(load, 12);
  });

  it("are not told where no seat can hold the body level", () => {
    expect(cornerLoads(standing({ left: 0.01, hasSeatEachSide: { front: false, rear: false } }))).toMatch(
      /neither axle/,
    );
    expect(cornerLoads(standing({ left: 0.01, tracks: { front: 1.5, rear: undefined } }))).toMatch(
      /rear axle has no track/,
    );
  });
});

describe("an axle under a centre of gravity beside the centre plane", () => {
  const text = (car: string): string => twoAxles(car);

  it("carries what the seats on each side are set for", () => {
    const { axles } = analysisOf(carOf(text("cg-left 20 mm")));
    const front = axles.front;
    if (front === undefined) throw new Error("no front axle");
    const half = (560 * 9.80665) / 4;
    const more = (560 * 0.02 * 9.80665) / (2 * 1.571171173495033);
    expect(number(front.atRest.left.load)).toBeCloseTo(half + more, 9);
    expect(number(front.atRest.right.load)).toBeCloseTo(half - more, 9);
    const [left, right] = ["front.left.side", "front.right.side"].map((path) =>
      number(front.elements.find((one) => one.path === path)?.staticLoad),
    );
    // The springs' difference, over their motion ratio, is the tyres' difference: virtual work at design.
    const ratio = number(front.elements[0]?.motionRatio);
    expect(((left ?? 0) - (right ?? 0)) * ratio).toBeCloseTo(2 * more * 1.002456111, 4);
  });

  it("gives the figures of the other side when the car is mirrored", () => {
    const one = analysisOf(carOf(text("cg-left 20 mm"))).axles.rear?.atRest;
    const other = analysisOf(carOf(text("cg-left -20 mm"))).axles.rear?.atRest;
    expect(number(other?.right.load)).toBe(number(one?.left.load));
    expect(number(other?.left.load)).toBe(number(one?.right.load));
  });

  it("says why a single seat cannot", () => {
    const third = "spring third for heave { rate 90 N/mm, between left.rocker.third and right.rocker.third }";
    const whole = twoAxles(
      "cg-left 20 mm",
      `${cornerSpring.replace("rate 150", "preload 900 N\n rate 150")}\n${third}`,
    );
    const car = carOf(whole.replaceAll("ride-height 30 mm", "ride-height 30 mm\n trim by third"));
    expect(reason(analysisOf(car).axles.front?.rates.trim)).toMatch(/neither axle is trimmed on each side/);
  });
});
