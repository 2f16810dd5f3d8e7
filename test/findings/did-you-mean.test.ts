import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { didYouMean, editDistance } from "../../server/findings/did-you-mean.js";

describe("did you mean", () => {
  const words = ["track", "track-rod", "travel", "trim", "ride-height", "rate", "rocker", "anti-roll-bar", "heave"];

  it.each([
    ["trakc", "track"],
    ["tyre", undefined],
    ["ride_height", "ride-height"],
    ["rideHeight", "ride-height"],
    ["RATE", "rate"],
    ["height-ride", "ride-height"],
    ["roll-bar", "anti-roll-bar"],
    ["tie-rod", "track-rod"],
    ["bellcrank", "rocker"],
    ["bounce", "heave"],
    ["trav", "travel"],
    ["xyz", undefined],
  ])("finds for %s the word %s", (written, meant) => {
    expect(didYouMean(written, words)[0]).toBe(meant);
  });

  it("puts the nearer word first and never the word itself", () => {
    expect(didYouMean("track", words)).not.toContain("track");
    expect(didYouMean("travle", ["trim", "travel", "trave"])).toEqual(["travel", "trave"]);
  });

  it("is quick and silent for a name of ten thousand letters", () => {
    expect(didYouMean("a".repeat(10_000), words)).toEqual([]);
  });

  it("returns only candidates", () => {
    fc.assert(
      fc.property(fc.string(), fc.array(fc.string()), (word, candidates) => {
        for (const found of didYouMean(word, candidates)) expect(candidates).toContain(found);
      }),
    );
  });
});

describe("edit distance", () => {
  // Worked by hand: one replacement, one swap of neighbours, three changes (the textbook pair).
  it.each([
    ["rate", "rare", 1],
    ["trakc", "track", 1],
    ["kitten", "sitting", 3],
    ["", "abc", 3],
  ])("%s to %s is %i", (a, b, distance) => {
    expect(editDistance(a, b)).toBe(distance);
  });

  it("is symmetric, zero only for equal words, and never more than the longer word", () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 12 }), fc.string({ maxLength: 12 }), (a, b) => {
        const distance = editDistance(a, b);
        expect(distance).toBe(editDistance(b, a));
        expect(distance === 0).toBe(a === b);
        expect(distance).toBeLessThanOrEqual(Math.max(a.length, b.length));
      }),
    );
  });
});
