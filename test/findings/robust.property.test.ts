/** Whatever is typed, the rules speak sense and their fixes can be applied. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fixesOf, runRules, safeEdits } from "../../server/findings/run.js";
import { contextOf } from "../support/context.js";
import { setupWith, sharedCar } from "../support/shared-car.js";

const wholes = [
  sharedCar["shared.crank"] ?? "",
  setupWith("front.third.rate 48 N/mm", "front.corner-bar.fit TB-120", "front.right.camber -2.1 deg", "mass by +4 kg"),
];

const signs = fc.constantFrom(
  "{",
  "}",
  "(",
  ")",
  ",",
  ".",
  "..",
  '"',
  "#",
  "##",
  "=",
  "-",
  "+",
  "%",
  "\n",
  " ",
  "mm",
  "N/mm",
  "left",
  "0",
  "x",
  "for",
  "\u2212",
  "\ufffd",
  "fit",
);

/** A text that was right, with a few cuts and insertions at random places. */
const broken = fc
  .tuple(
    fc.constantFrom(...wholes),
    fc.array(fc.tuple(fc.nat(), fc.nat({ max: 12 }), signs), { minLength: 1, maxLength: 4 }),
  )
  .map(([text, changes]) =>
    changes.reduce((now, [place, length, sign]) => {
      const at = place % (now.length + 1);
      return now.slice(0, at) + sign + now.slice(at + length);
    }, text),
  );

describe("a text in the making", () => {
  it("gets findings that lie in it and read as sentences, and fixes that apply", () => {
    fc.assert(
      fc.property(broken, (text) => {
        const context = contextOf({ ...sharedCar, "a.crank": text }, "a.crank");
        for (const finding of runRules(context)) {
          expect(finding.rule).not.toBe("internal-error");
          expect(finding.span.start).toBeGreaterThanOrEqual(0);
          expect(finding.span.end).toBeGreaterThanOrEqual(finding.span.start);
          expect(finding.span.end).toBeLessThanOrEqual(text.length);
          expect(finding.message).toMatch(/^\S.*[.?)]$/);
          expect(finding.message).not.toMatch(/undefined|NaN|Infinity|\[object/);
          for (const fix of fixesOf(finding, context)) context.retry(edits(fix.edits));
        }
        context.retry(edits(safeEdits(runRules(context), context)));
      }),
      { numRuns: 150 },
    );
  });
});

function edits(all: ReturnType<typeof safeEdits>) {
  return all.map(({ uri, span, newText }) => ({ uri, start: span.start, end: span.end, newText }));
}
