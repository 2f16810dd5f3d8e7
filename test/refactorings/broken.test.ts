/** Texts that are being typed: no refactoring throws, and none that is offered changes a car or loses a comment. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { extractLet } from "../../server/refactorings/extract-let.js";
import { inlineLet } from "../../server/refactorings/inline-let.js";
import { inlinePart } from "../../server/refactorings/part-inline.js";
import { partToCatalogue } from "../../server/refactorings/part-to-catalogue.js";
import { areSameCars } from "../../server/refactorings/same-cars.js";
import type { Refactored } from "../../server/refactorings/refactoring.js";
import { contextOf } from "../support/context.js";
import { sampleNames, samples } from "../support/samples.js";
import { commentsOf, cursorIn, faultsOf, outcomeOf } from "./refactored.js";

const all = (on: Refactored) => [extractLet, inlineLet, inlinePart, partToCatalogue].flatMap((each) => each(on));

/** Away with a stretch, or some signs more. */
const spoiled = fc.record({
  name: fc.constantFrom(...sampleNames),
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  takes: fc.nat(40),
  puts: fc.constantFrom(
    "",
    "{",
    "}",
    "(",
    ")",
    ",",
    "\n",
    "#",
    '"',
    " let x = 5 mm\n",
    "1.5 mm",
    " by +2 mm",
    "\r\n",
    "🏁",
  ),
  cursor: fc.double({ min: 0, max: 1, noNaN: true }),
});

describe("refactorings of a text that is being typed", () => {
  it("neither throw nor change a car nor lose a comment", () => {
    fc.assert(
      fc.property(spoiled, ({ name, at, takes, puts, cursor }) => {
        const text = samples[name] ?? "";
        const from = Math.floor(at * text.length);
        const files = { ...samples, [name]: text.slice(0, from) + puts + text.slice(from + takes) };
        const offset = Math.floor(cursor * (files[name]?.length ?? 0));
        for (const one of all(cursorIn(files, name, offset))) {
          const outcome = outcomeOf(files, one);
          expect({ of: one.title, faults: faultsOf(files, outcome) }).toEqual({ of: one.title, faults: [] });
          expect(commentsOf(outcome.files)).toEqual(expect.arrayContaining([...commentsOf(files)]));
        }
      }),
      { numRuns: 400, seed: 7 },
    );
  }, 120_000);

  it("offer nothing where the text ends in the middle", () => {
    const text = samples["quill/quill.crank"] ?? "";
    for (let end = 0; end < text.length; end += 97) {
      const files = { ...samples, "quill/quill.crank": text.slice(0, end) };
      for (const one of all(cursorIn(files, "quill/quill.crank", end)))
        expect(faultsOf(files, outcomeOf(files, one))).toEqual([]);
    }
  }, 120_000);
});

describe("the proof", () => {
  const cars = (text: string) => contextOf({ ...samples, "quill/quill.crank": text }, "quill/quill.crank").cars;
  const text = samples["quill/quill.crank"] ?? "";

  it.each([
    ["a number", "mass 540 kg", "mass 541 kg"],
    ["a coordinate", "fore (145, 190, 101) mm", "fore (145, 190, 101.001) mm"],
    ["one side", "anti-roll-bar bar for roll {", "right { wheel { camber -1 deg } }\n    anti-roll-bar bar for roll {"],
    ["the part that is fitted", "fit TB-110", "fit TB-115"],
    ["a load case", "lateral 1.5", "lateral 1.6"],
  ])("sees that %s is another", (_, from, to) => {
    expect(text).toContain(from);
    expect(areSameCars(cars(text), cars(text.replace(from, to)))).toBe(false);
    expect(areSameCars(cars(text), cars(`# a comment\n${text}`))).toBe(true);
  });
});
