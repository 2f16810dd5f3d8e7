import { describe, expect, it } from "vitest";
import { solve, type SolveQuestion } from "../../server/analyses/solve.js";

const free = { start: 1, low: -1e9, high: 1e9, size: 0.1 };
const one = (f: (x: number) => number | undefined, low: number, high: number, more: Partial<typeof free> = {}) => {
  let calls = 0;
  const question: SolveQuestion = {
    unknowns: [{ ...free, ...more }],
    bands: [{ low, high }],
    evaluate: ([x = 0]) => {
      calls++;
      const value = f(x);
      return value === undefined ? undefined : [value];
    },
  };
  return { found: solve(question), calls: () => calls };
};

describe("one unknown", () => {
  it("meets the middle of a band, and a single limit from just inside", () => {
    expect(one((x) => 3 * x + 2, 10, 12).found).toMatchObject({ isMet: true });
    expect(one((x) => 3 * x + 2, 10, 12).found?.x[0]).toBeCloseTo(3, 9);
    const above = one((x) => x * x, 49, Infinity).found;
    expect(above?.isMet).toBe(true);
    expect(above?.x[0]).toBeGreaterThanOrEqual(7);
    expect(above?.x[0]).toBeCloseTo(7, 5);
  });

  it("takes few evaluations where the figure is smooth", () => {
    const { found, calls } = one((x) => Math.exp(x / 40), 20, 20);
    expect(found?.x[0]).toBeCloseTo(40 * Math.log(20), 7);
    expect(calls()).toBeLessThan(40);
  });

  it("finds it across a kink and on a falling figure", () => {
    expect(one((x) => (x < 5 ? 0 : x - 5), 2, 2).found?.x[0]).toBeCloseTo(7, 9);
    expect(one((x) => 100 / x, 4, 4, { low: 0.01, high: 1000 }).found?.x[0]).toBeCloseTo(25, 8);
  });

  it("comes as near as it can: to a bound, or to where the figure turns round", () => {
    const bound = one((x) => x, 30, 40, { low: 0, high: 10 }).found;
    expect(bound).toMatchObject({ isMet: false, x: [10], values: [10] });
    const turn = one((x) => 5 - (x - 3) ** 2, 6, 7).found;
    expect(turn?.isMet).toBe(false);
    expect(turn?.values[0]).toBeCloseTo(5, 6);
  });

  it("stops where there is no car any more, and is nothing where there never was one", () => {
    const found = one((x) => (x > 4 ? undefined : x), 8, 9).found;
    expect(found?.isMet).toBe(false);
    expect(found?.values[0]).toBeGreaterThan(3);
    expect(one(() => undefined, 1, 2).found).toBeUndefined();
    expect(one(() => Number.NaN, 1, 2).found).toBeUndefined();
  });
});

describe("several unknowns", () => {
  const two = (high = 1e6): SolveQuestion => ({
    unknowns: [
      { start: 10, low: 0, high, size: 1 },
      { start: 10, low: 0, high, size: 1 },
    ],
    // Two springs of a car: their sum, and the front's share.
    bands: [
      { low: 49, high: 51 },
      { low: 0.4, high: 0.42 },
    ],
    evaluate: ([a = 0, b = 0]) => (a + b === 0 ? undefined : [a + b, a / (a + b)]),
  });

  it("meet as many targets", () => {
    const found = solve(two());
    expect(found?.isMet).toBe(true);
    expect(found?.x[0]).toBeCloseTo(20.5, 6);
    expect(found?.x[1]).toBeCloseTo(29.5, 6);
  });

  it("come near where bounds keep them from it, and stay inside them", () => {
    const found = solve(two(15));
    expect(found?.isMet).toBe(false);
    for (const x of found?.x ?? [Infinity]) expect(x).toBeLessThanOrEqual(15);
  });

  it("may be more or fewer than the targets", () => {
    const { bands, unknowns, evaluate } = two();
    const more = solve({ unknowns, bands: bands.slice(0, 1), evaluate: (x) => evaluate(x)?.slice(0, 1) });
    expect(more?.isMet).toBe(true);
    const fewer = solve({ unknowns: unknowns.slice(0, 1), bands, evaluate: ([a = 0]) => evaluate([a, 29.5]) });
    expect(fewer?.isMet).toBe(true);
    expect(fewer?.x[0]).toBeCloseTo(20.5, 0);
  });
});
