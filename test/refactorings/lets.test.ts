/** Values that get a name, and names that are written out again. */
import { describe, expect, it } from "vitest";
import { extractLet } from "../../server/refactorings/extract-let.js";
import { inlineLet } from "../../server/refactorings/inline-let.js";
import { samples } from "../support/samples.js";
import { commentsOf, cursorAt, cursorIn, faultsOf, outcomeOf } from "./refactored.js";

const crankSamples = Object.entries(samples).filter(([name]) => name.endsWith(".crank"));

const extracted = (files: Record<string, string>, name: string, marker: string, part?: string) =>
  extractLet(cursorAt(files, name, marker, part)).map((one) => outcomeOf(files, one));
const inlined = (files: Record<string, string>, name: string, marker: string, part?: string) =>
  inlineLet(cursorAt(files, name, marker, part)).map((one) => outcomeOf(files, one));

describe("naming a value", () => {
  it("offers all places, those of one word, and the one alone", () => {
    const found = extracted(samples, "tern/tern.crank", "loaded-radius 8.9 in", "8.9");
    expect(found.map(({ title, named }) => [title, named])).toEqual([
      ["Name 8.9 in in all 2 places where it stands", "shared-loaded-radius"],
      ["Name 8.9 in here alone", "front-loaded-radius"],
    ]);
  });

  it("names a coordinate by its point and axis", () => {
    const found = extracted(samples, "quill/quill.crank", "fore (145, 190, 101) mm", "190");
    expect(found.at(-1)?.named).toBe("lower-wishbone-fore-y");
    expect(found[0]?.named).toBe("shared-y");
    expect(found[0]?.files["quill/quill.crank"]).toContain("fore (145, shared-y, 101) mm");
    expect(found[0]?.files["quill/quill.crank"]).toContain("let shared-y = 190 mm\n");
  });

  it("names the force in a row of a table, and an override of a set-up", () => {
    expect(extracted(samples, "quill/parts.crank", "25 mm/s: 38 N", "38")[0]?.files["quill/parts.crank"]).toContain(
      "let V-18-bump = 38 N\n",
    );
    const wet = extracted(samples, "quill/dry.crank", "front.third.rate 60 N/mm", "60")[0];
    expect(wet?.named).toBe("third-rate");
    expect(wet?.files["quill/dry.crank"]).toContain("from quill {\n  let third-rate = 60 N/mm\n");
  });

  it("leaves every car what it is, and the text laid out, wherever the cursor is in a sample", () => {
    let offered = 0;
    for (const [name, text] of crankSamples) {
      const marks = [...text.matchAll(/\d+(?=(?:, [^()]*)?\)? [a-zN%])/g)];
      for (const { index } of marks.filter((_, each) => each % 41 === 0)) {
        for (const one of extractLet(cursorIn(samples, name, index))) {
          const outcome = outcomeOf(samples, one);
          expect(faultsOf(samples, outcome), `${name} ${index} ${one.title}`).toEqual([]);
          expect(commentsOf(outcome.files)).toEqual(commentsOf(samples));
          offered++;
        }
      }
    }
    expect(offered).toBeGreaterThan(50);
  }, 120_000);

  it("is not offered where no name can stand, nor in a text that cannot be read to its end", () => {
    expect(extracted(samples, "quill/quill.crank", "travel -30 .. 25 mm", "25")).toEqual([]);
    expect(extracted(samples, "quill/quill.crank", "section 8 x 20 mm", "20")).toEqual([]);
    expect(extracted({ "a.crank": "car c {\n  mass 540 kg\n" }, "a.crank", "540")).toEqual([]);
    expect(extracted({ "a.crank": "let a = 540 kg\ncar c {\n  mass a\n}\n" }, "a.crank", "540")).toEqual([]);
  });
});

const setting = (lines: string): Record<string, string> => ({
  ...samples,
  "quill/try.crank": `use "quill.crank"\n\nlet stiff = 60 N/mm  # as bought\n\nsetup try from quill {\n${lines}\n}\n`,
});

describe("writing a name out", () => {
  it("puts its value wherever it stood and keeps the comments of its line", () => {
    const files = setting("  front.third.rate stiff\n  rear.third.rate stiff * 1.5");
    const [all, here] = inlined(files, "quill/try.crank", "rate stiff", "stiff");
    expect(all?.title).toBe("Write out `stiff` in all 2 places and take the `let` away");
    expect(all?.files["quill/try.crank"]).toBe(
      'use "quill.crank"\n\n# as bought\n\nsetup try from quill {\n  front.third.rate 60 N/mm\n  rear.third.rate 60 N/mm * 1.5\n}\n',
    );
    expect(all && faultsOf(files, all)).toEqual([]);
    expect(here?.title).toBe("Write out `stiff` here alone");
    expect(here?.files["quill/try.crank"]).toContain("let stiff = 60 N/mm  # as bought");
    expect(here?.files["quill/try.crank"]).toContain("front.third.rate 60 N/mm\n  rear.third.rate stiff * 1.5");
  });

  it("puts brackets round a sum, and notes into comments", () => {
    const files = {
      ...samples,
      "quill/try.crank":
        'use "quill.crank"\n\n## Two of them in a row.\nlet pair = 20 N/mm + 10 N/mm\n\nsetup try from quill {\n  front.third.rate pair * 2\n}\n',
    };
    const [all] = inlined(files, "quill/try.crank", "let pair", "pair");
    expect(all?.files["quill/try.crank"]).toContain("# Two of them in a row.\n");
    expect(all?.files["quill/try.crank"]).not.toContain("## Two");
    expect(all?.files["quill/try.crank"]).toContain("front.third.rate (20 N/mm + 10 N/mm) * 2");
    expect(all && faultsOf(files, all)).toEqual([]);
  });

  it("follows the name into files that use it", () => {
    const files = {
      ...samples,
      "quill/lets.crank": "let stiff = 60 N/mm\nlet soft = stiff / 2\n",
      "quill/try.crank": 'use "quill.crank"\nuse "lets.crank"\n\nsetup try from quill {\n  front.third.rate stiff\n}\n',
    };
    const [all] = inlined(files, "quill/lets.crank", "let stiff", "stiff");
    expect(all?.files["quill/lets.crank"]).toBe("let soft = 60 N/mm / 2\n");
    expect(all?.files["quill/try.crank"]).toContain("front.third.rate 60 N/mm\n");
    expect(all && faultsOf(files, all)).toEqual([]);
  });

  it("undoes what naming does", () => {
    for (const [name, text] of crankSamples) {
      const marks = [...text.matchAll(/\d+(?= [a-zN%])/g)];
      for (const { index } of marks.filter((_, each) => each % 97 === 0)) {
        const last = extractLet(cursorIn(samples, name, index)).at(-1);
        if (last === undefined) continue;
        const named = outcomeOf(samples, last);
        const [back] = inlined({ ...named.files }, name, `let ${named.named ?? ""}`, named.named);
        expect(back?.files[name], `${name} ${index}`).toBe(text);
        expect(back && faultsOf(samples, back)).toEqual([]);
      }
    }
  }, 120_000);

  it("is not offered where a name stands for something else at the place", () => {
    const files = setting("  let base = front.track\n  rear.track base");
    for (const one of inlined(files, "quill/try.crank", "rear.track base", "base"))
      expect(faultsOf(files, one)).toEqual([]);
    expect(inlined(files, "quill/try.crank", "front.track", "track")).toEqual([]);
  });
});
