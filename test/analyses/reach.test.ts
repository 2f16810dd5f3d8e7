/** Reach: what binds inside the envelope, and where; drop links by their own wheel. */
import { describe, expect, it } from "vitest";
import { carText, cornerSpring, elementIn, frontOf, reason } from "../support/written-car.js";

const bar = (lever: string): string => `${cornerSpring}
    anti-roll-bar arb for roll {
      rate 800 N*m/rad
      ${lever}
      drop-link rocker.bar
    }`;

describe("reach", () => {
  it("is free over the check case's envelope, with an angle from the toggle for every link", () => {
    const { reach } = frontOf(
      carText({ elements: bar("lever { pivot (-110, 346, 300) mm, axis (0, 1, 0), end (-25, 346, 295) mm }") }),
    );
    expect(reach.map(({ side }) => side)).toEqual(["left", "right"]);
    for (const { binds, toggles } of reach) {
      expect(binds).toEqual([]);
      expect(toggles.map(({ link }) => link)).toEqual([
        "lower-wishbone",
        "upper-wishbone",
        "track-rod",
        "push-rod",
        "drop-link",
      ]);
      for (const { angle } of toggles) expect(angle).toBeGreaterThan(0.3);
    }
  });

  it("names the link that binds, where, and how far the envelope goes", () => {
    const { reach, elements } = frontOf(carText({ axle: "" }).replace("travel -30 .. 30 mm", "travel -500 .. 400 mm"));
    const [left] = reach;
    expect(left?.binds.length).toBe(2);
    const [low, high] = left?.binds ?? [];
    expect(low?.travel).toBe(-0.5);
    expect(low?.limit).toBeGreaterThan(-0.5);
    expect(high?.limit).toBeLessThan(0.4);
    expect(reason(elementIn({ elements }, "front.left.side").travel)).toMatch(
      /binds at -?[\d.]+ mm of travel, short of -?[\d.]+ mm/,
    );
  });

  it("finds the travel at which a drop link does not reach, with the bar that it belongs to", () => {
    // A lever of 6 mm cannot follow an eye that rises and falls by more.
    const { reach, elements } = frontOf(
      carText({ elements: bar("lever { pivot (-24, 341, 295) mm, axis (0, 1, 0), end (-18, 341, 295) mm }") }),
    );
    const [left, right] = reach;
    const [bind] = left?.binds ?? [];
    expect(bind).toMatchObject({ link: "drop-link", element: "front.arb" });
    expect(Math.abs(bind?.limit ?? 1)).toBeLessThan(0.03);
    expect(right?.binds).toEqual(left?.binds);
    expect(reason(elementIn({ elements }, "front.arb").travel)).toMatch(
      /^the drop link of front\.arb does not reach on the (left|right) side$/,
    );
    // Just short of the limit it reaches, just beyond it does not.
    const limit = bind?.limit ?? 0;
    const within = carText({
      elements: bar("lever { pivot (-24, 341, 295) mm, axis (0, 1, 0), end (-18, 341, 295) mm }"),
    });
    const narrowed = (end: number): string =>
      within.replace(
        "travel -30 .. 30 mm",
        `travel ${(Math.min(end, 0) * 1000).toFixed(4)} .. ${(Math.max(end, 0) * 1000).toFixed(4)} mm`,
      );
    expect(frontOf(narrowed(limit * 0.9995)).reach[0]?.binds).toEqual([]);
    expect(frontOf(narrowed(limit * 1.0005)).reach[0]?.binds).toHaveLength(1);
  });

  it("a linkage that cannot stand is said once, and everything that rests on it is absent for that reason", () => {
    const broken = carText({}).replace("outer (8, 722, 150) mm", "outer (150, 250, 150) mm");
    const { problems, rates, reach, elements } = frontOf(broken);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ kind: "linkage", side: "left" });
    expect(reach).toEqual([]);
    const why = problems[0]?.reason ?? "";
    expect(reason(elementIn({ elements }, "front.left.side").sensitivity)).toBe(why);
    expect(reason(rates.heaveRate)).toContain(why);
  });
});
