import { describe, expect, it } from "vitest";
import { type AdjustedFigure, offDiagonals, stepEffects } from "../../server/analyses/adjustments.js";

const figures: readonly AdjustedFigure[] = [
  { name: "front.heave-rate", group: "rate", axle: "front", mode: "heave" },
  { name: "front.roll-stiffness", group: "rate", axle: "front", mode: "roll" },
  { name: "front.wheel-rate", group: "rate", axle: "front", mode: undefined },
  { name: "rear.heave-rate", group: "rate", axle: "rear", mode: "heave" },
  { name: "body.pitch-rate", group: "rate", axle: undefined, mode: "pitch" },
  { name: "front.ride-height", group: "height", axle: "front", mode: undefined },
];
const before = [100, 500, 40, 200, 900, 0.03];
const step = (modes: readonly string[], after: readonly number[], axle: "front" | "between" = "front") => ({
  path: "front.third.rate",
  for: modes,
  axle: axle === "between" ? undefined : axle,
  before,
  after,
});

describe("one step of an adjuster", () => {
  it("is independent where it changes its own mode only, whatever follows from that", () => {
    // The single wheel and the pitch of the body follow from heave: they are no leak.
    const [effect] = stepEffects(figures, [step(["heave"], [110, 500, 42.5, 200, 950, 0.03])]);
    expect(effect?.independence).toBe(0);
    expect(effect?.changes).toEqual([10, 0, 2.5, 0, 50, 0]);
    expect(effect?.relative.slice(0, 2)).toEqual([0.1, 0]);
  });

  it("tells what it does to another mode over what it does to its own", () => {
    const steps = [step(["heave"], [110, 525, 43, 202, 950, 0.03])];
    const effects = stepEffects(figures, steps);
    expect(effects[0]?.independence).toBeCloseTo(0.5, 12);
    const found = offDiagonals(figures, steps, effects);
    expect(found.map(({ figure }) => figure)).toEqual(["front.roll-stiffness", "rear.heave-rate"]);
    expect(found[0]).toMatchObject({ relative: 0.05, overTarget: expect.closeTo(0.5, 12) });
  });

  it("takes heave and roll of its axle for the target of a corner spring", () => {
    const [effect] = stepEffects(figures, [step(["corner"], [110, 550, 44, 200, 900, 0.03])]);
    expect(effect?.independence).toBe(0);
  });

  it("holds an element between the axles against the modes of the body", () => {
    const [effect] = stepEffects(figures, [step(["pitch"], [110, 500, 42, 220, 990, 0.03], "between")]);
    expect(effect?.independence).toBe(0);
  });

  it("has no independence where it is for nothing, changes nothing, or a figure is not known", () => {
    const of = (modes: readonly string[], after: readonly number[]) =>
      stepEffects(figures, [step(modes, after)])[0]?.independence;
    expect(of([], [110, 500, 40, 200, 900, 0.03])).toMatchObject({ kind: "absent" });
    expect(of(["heave"], before)).toMatchObject({ kind: "absent" });
    expect(of(["heave"], [100, 550, 40, 200, 900, 0.03])).toMatchObject({ kind: "absent" });
    const none = { kind: "absent", reason: "the front axle has no track" } as const;
    const [effect] = stepEffects(figures, [
      { ...step(["roll"], before), before: [none, none, none, none, none, none], after: before },
    ]);
    expect(effect?.independence).toMatchObject({ kind: "absent" });
    expect(effect?.changes[1]).toBe(none);
  });
});
