/** Merging by property: against small cases worked out by hand, and by laws that hold for any texts. */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { format, parse } from "../../../grammar/index.js";
import { mergeSetups, type SetupMerge } from "../../../server/views/merging/merge.js";

const samples = ["quill/quill", "quill/parts", "quill/wet", "tern/tern", "tern/parts", "dunlin/dunlin"].map((name) =>
  readFileSync(`samples/${name}.crank`, "utf8"),
);
const wet = samples[2] ?? "";

function merged(base: string, ours: string, theirs: string): SetupMerge {
  const merge = mergeSetups(base, ours, theirs);
  if ("unreadable" in merge) throw new Error(`${merge.unreadable} is not read`);
  return merge;
}

const clean = (base: string, ours: string, theirs: string): string => {
  const merge = merged(base, ours, theirs);
  expect(merge.conflicts.map(({ path }) => path)).toEqual([]);
  return merge.settled(() => "ours");
};

const setup = (...lines: readonly string[]): string => format(`setup s from quill {\n${lines.join("\n")}\n}\n`);
const conflictPaths = (base: string, ours: string, theirs: string): readonly string[] =>
  merged(base, ours, theirs).conflicts.map(({ path }) => path.join(" > "));

describe("a merge by property", () => {
  it.each(samples)("gives one side back where the other changed nothing", (text) => {
    const changed = text.replace(/\d+ (mm|in)\b/, "17 $1");
    expect(clean(text, changed, text)).toBe(changed);
    expect(clean(text, text, changed)).toBe(changed);
    expect(clean(text, changed, changed)).toBe(changed);
  });

  it("puts different properties of one block together, on neighbouring lines and on one", () => {
    expect(
      clean(
        setup("a.rate 1 N/mm", "a.gap 1 mm"),
        setup("a.rate 2 N/mm", "a.gap 1 mm"),
        setup("a.rate 1 N/mm", "a.gap 3 mm"),
      ),
    ).toBe(setup("a.rate 2 N/mm", "a.gap 3 mm"));
    const brakes = (front: number, mounting: string): string =>
      format(`car c {\n  brakes { front ${front} %, mounting ${mounting} }\n}\n`);
    expect(clean(brakes(58, "outboard"), brakes(60, "outboard"), brakes(58, "inboard"))).toBe(brakes(60, "inboard"));
  });

  it("takes what each side added, beside its neighbours, and what one took out", () => {
    expect(
      clean(
        setup("a.rate 1 N/mm", "d.rate 4 N/mm"),
        setup("a.rate 1 N/mm", "b.rate 2 N/mm", "d.rate 4 N/mm"),
        setup("a.rate 1 N/mm", "c.rate 3 N/mm"),
      ),
    ).toBe(setup("a.rate 1 N/mm", "b.rate 2 N/mm", "c.rate 3 N/mm"));
  });

  it("takes a move from the side that moved", () => {
    const [ab, ba] = [setup("a.rate 1 N/mm", "b.rate 2 N/mm"), setup("b.rate 2 N/mm", "a.rate 1 N/mm")];
    expect(clean(ab, ab.replace("1 N", "5 N"), ba)).toBe(ba.replace("1 N", "5 N"));
  });

  it("does not call another layout a change", () => {
    const text = setup("a.rate 1 N/mm");
    expect(clean(text, text.replace("a.rate 1", "a.rate    1"), text.replace("1 N", "2 N"))).toBe(
      setup("a.rate 2 N/mm"),
    );
  });

  it("does not call another unit a change", () => {
    const of = (value: string): string => setup(`a.gap ${value}`, "b.rate 1 N/mm");
    expect(clean(of("25.4 mm"), of("1 in"), of("26 mm"))).toBe(of("26 mm"));
    expect(clean(of("25.4 mm"), of("25.4 mm"), of("1 in"))).toBe(of("1 in"));
    expect(clean(of("25 mm"), of("1 in"), of("25.4 mm"))).toBe(of("1 in"));
    const point = (value: string): string => setup(`front.rocker.third ${value}`);
    expect(clean(point("(10, 20, 30) mm"), point("(1, 2, 3) cm"), point("(10, 20, 31) mm"))).toBe(
      point("(10, 20, 31) mm"),
    );
    const wish = (value: string): string => setup(`expect front.heave-rate between ${value}`);
    expect(conflictPaths(wish("1 and 2 N/mm"), wish("1 and 3 N/mm"), wish("1 and 2 kN/m"))).toEqual([]);
    // The same figure in another dimension is something else.
    expect(conflictPaths(of("2 mm"), of("3 mm"), of("3 deg"))).toEqual(["setup s > a.gap"]);
    expect(conflictPaths(setup("a.gap by +2 mm"), setup("a.gap 2 mm"), setup("a.gap by +3 mm"))).toEqual([
      "setup s > a.gap",
    ]);
  });

  it("tells expectations apart by figure and case, parts and table rows by name and key", () => {
    const text = (a: number, b: number): string =>
      setup(`expect front.heave-rate above ${a} N/mm`, `expect front.heave-rate at hairpin above ${b} N/mm`);
    expect(clean(text(1, 2), text(3, 2), text(1, 4))).toBe(text(3, 4));
    const parts = (slow: number, fast: number, other: number): string =>
      format(
        `catalogue {\n  valving A { bump { 50 mm/s: ${slow} N, 100 mm/s: ${fast} N } }\n  valving B { bump { 50 mm/s: ${other} N } }\n}\n`,
      );
    expect(clean(parts(1, 2, 3), parts(9, 2, 3), parts(1, 8, 7))).toBe(parts(9, 8, 7));
  });

  it("is a conflict where both changed the same property, or one took out what the other changed", () => {
    const one = setup("a.rate 1 N/mm", "b.rate 1 N/mm");
    expect(conflictPaths(one, one.replace("a.rate 1", "a.rate 2"), one.replace("a.rate 1", "a.rate 3"))).toEqual([
      "setup s > a.rate",
    ]);
    expect(conflictPaths(one, setup("b.rate 1 N/mm"), one.replace("a.rate 1", "a.rate 3"))).toEqual([
      "setup s > a.rate",
    ]);
    expect(conflictPaths(setup(), setup("a.rate 1 N/mm"), setup("a.rate 2 N/mm"))).toEqual(["setup s > a.rate"]);
    expect(conflictPaths(setup(), setup("a.rate 2 N/mm"), setup("a.rate 2 N/mm"))).toEqual([]);
  });

  it("marks both ways of a conflict in place, and every way of settling it can be read", () => {
    const one = setup("# before", "a.rate 1 N/mm  # why", "b.rate 1 N/mm");
    const merge = merged(
      one,
      one.replace("a.rate 1", "a.rate 2"),
      one.replace("a.rate 1", "a.rate 3").replace("b.rate 1", "b.rate 9"),
    );
    expect(merge.marked(() => ({ size: 7, ours: "ours: +1", theirs: "theirs: +2" }))).toBe(
      [
        "setup s from quill {",
        "  # before",
        "<<<<<<< ours: +1",
        "  a.rate 2 N/mm  # why",
        "=======",
        "  a.rate 3 N/mm  # why",
        ">>>>>>> theirs: +2",
        "  b.rate 9 N/mm",
        "}",
        "",
      ].join("\n"),
    );
    expect(merge.settled(() => "theirs")).toBe(setup("# before", "a.rate 3 N/mm  # why", "b.rate 9 N/mm"));
  });

  it("keeps the comments of both sides", () => {
    const text = clean(
      setup("# old", "a.rate 1 N/mm  # x"),
      setup("# ours", "a.rate 1 N/mm  # y"),
      setup("# theirs", "a.rate 2 N/mm  # z", "# foot"),
    );
    for (const part of ["# ours", "# theirs", "# y", "# z", "# foot", "a.rate 2 N/mm"]) expect(text).toContain(part);
  });

  it("keeps line ends and byte-order mark of ours", () => {
    const text = setup("a.rate 1 N/mm", "b.rate 1 N/mm");
    const ours = `\ufeff${text.replace("a.rate 1", "a.rate 2").replaceAll("\n", "\r\n")}`;
    expect(clean(text, ours, text.replace("b.rate 1", "b.rate 3"))).toBe(ours.replace("b.rate 1", "b.rate 3"));
  });

  it("says which version cannot be read whole", () => {
    expect(mergeSetups(wet, wet, `${wet}\n}`)).toEqual({ unreadable: "theirs" });
    expect(mergeSetups(wet, wet.replace("{", "{ ((("), wet)).toEqual({ unreadable: "ours" });
  });

  it("says what it took over", () => {
    const merge = merged(
      setup("a.rate 1 N/mm", "b.rate 1 N/mm"),
      setup("a.rate 1 N/mm", "b.rate 1 N/mm"),
      setup("a.rate 2 N/mm"),
    );
    expect(merge.taken).toEqual(["setup s > a.rate", "setup s > b.rate (removed)"]);
  });

  it("puts any two changes of a car together that are of two statements", () => {
    const [car = ""] = samples;
    const numbers = [...car.matchAll(/(?<=[ (])\d+(?= (?:mm|N\/mm|kg)\b)/g)].map(({ index }) => index);
    const changed = (text: string, at: number): string => {
      const digits = /^\d+/.exec(text.slice(at))?.[0] ?? "";
      return `${text.slice(0, at)}${Number(digits) + 1}${text.slice(at + digits.length)}`;
    };
    const pick = fc.integer({ min: 0, max: numbers.length - 1 });
    fc.assert(
      fc.property(pick, pick, (i, j) => {
        const [one = 0, other = 0] = [numbers[Math.min(i, j)], numbers[Math.max(i, j)]];
        const both = changed(changed(car, other), one);
        fc.pre(one !== other && both.length === car.length);
        const merge = merged(car, changed(car, one), changed(car, other));
        // Two figures of one statement are the same property.
        if (merge.conflicts.length === 0) expect(merge.settled(() => "ours")).toBe(both);
        else expect(Math.abs(one - other)).toBeLessThan(120);
      }),
      { numRuns: 40 },
    );
  });

  it("takes a set-up of ten thousand lines", () => {
    const lines = (of: (i: number) => number): string =>
      `setup s from quill {\n${Array.from({ length: 10_000 }, (_, i) => `  a${i}.rate ${of(i)} N/mm`).join("\n")}\n}\n`;
    const [base, ours, theirs] = [
      lines(() => 1),
      lines((i) => (i % 2 === 0 ? 2 : 1)),
      lines((i) => (i % 2 === 0 ? 1 : 3)),
    ];
    expect(clean(base, ours, theirs)).toBe(lines((i) => (i % 2 === 0 ? 2 : 3)));
  });

  /** Lines of a set-up by key; a version gives each its own figure, or leaves it out. */
  const version = fc.dictionary(fc.constantFrom("a", "b", "c", "d", "e"), fc.integer({ min: 1, max: 4 }));
  const written = (figures: Readonly<Record<string, number>>): string =>
    setup(
      ...Object.keys(figures)
        .sort()
        .map((key) => `${key}.rate ${figures[key] ?? 0} N/mm`),
    );

  it("loses nothing, whatever both sides did: each property is as one side has it, or a conflict", () => {
    fc.assert(
      fc.property(version, version, version, (base, ours, theirs) => {
        const merge = merged(written(base), written(ours), written(theirs));
        const inConflict = new Set(merge.conflicts.map(({ path }) => path.at(-1)?.charAt(0)));
        const text = merge.settled(() => "ours");
        expect(parse(text).problems).toEqual([]);
        for (const key of ["a", "b", "c", "d", "e"]) {
          const [was, own, other] = [base[key], ours[key], theirs[key]];
          expect(inConflict.has(key)).toBe(own !== other && own !== was && other !== was);
          const due = inConflict.has(key) || other === was ? own : other;
          expect(/(\d) N/.exec(new RegExp(`${key}\\.rate (\\d) N`).exec(text)?.[0] ?? "")?.[1]).toBe(due?.toString());
        }
      }),
    );
  });
});
