/** What a change does: what is told, what is only counted, and that names do not matter. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { compare } from "../../../server/views/comparison/compare.js";
import type { Comparison } from "../../../server/views/comparison/comparison.js";
import { carIn } from "./versions.js";

const parts = { "parts.crank": readFileSync("samples/quill/parts.crank", "utf8") };
const quill = readFileSync("samples/quill/quill.crank", "utf8");

const compared = (now: string, threshold?: number, old = quill): Comparison =>
  compare(
    { ...carIn(old, undefined, parts), label: "old" },
    { ...carIn(now, undefined, parts), label: "new" },
    threshold,
  );

const effect = ({ effects }: Comparison, name: string, subject: string, at?: string) =>
  effects.find((one) => one.name === name && one.subject === subject && one.at === at);

describe("effects", () => {
  it("are told in the author's unit, old, new and difference", () => {
    const found = compared(quill.replace("rate 55 N/mm", "rate 70 N/mm"));
    const heave = effect(found, "heave rate (both wheels)", "front");
    expect(heave?.oldText).toBe("172.3 N/mm");
    expect(heave?.nowText).toMatch(/^197(\.\d+)? N\/mm$/);
    expect(heave?.difference).toMatch(/^\+24\.\d N\/mm, \+14\.\d %$/);
    // By hand: a spring of both wheels adds k·s² to the heave rate, s its stroke for each travel of both.
    const third = carIn(quill, undefined, parts).car.analysis.axles.front?.elements.find(
      ({ path }) => path === "front.third",
    );
    const stroke =
      third?.sensitivity !== undefined && "heave" in third.sensitivity ? third.sensitivity.heave : Number.NaN;
    expect(Number(heave?.change) / (15_000 * stroke ** 2)).toBeCloseTo(1, 3);
    expect(effect(found, "heave rate (both wheels)", "rear")).toBeUndefined();
    expect(found.headline).toBe("Front heave rate +14 %; one expectation newly missed.");
  });

  it("of the same car are none, and every figure is counted", () => {
    const found = compared(quill);
    expect(found).toMatchObject({ differs: false, changes: [], effects: [], headline: "Nothing differs." });
    expect(found.still).toBeGreaterThan(200);
  });

  it("are told or counted, each once", () => {
    const all = compared(quill.replace("rate 55 N/mm", "rate 56 N/mm"), 0);
    const few = compared(quill.replace("rate 55 N/mm", "rate 56 N/mm"));
    expect(few.effects.length).toBeLessThan(all.effects.length);
    expect(few.still).toBeGreaterThan(all.still);
  });

  it("of a ride height are told from one step of its adjuster on", () => {
    const stepped = quill.replace("ride-height 32 mm", "ride-height 32 mm { step 1 mm }");
    const half = compared(stepped.replace("32 mm {", "32.5 mm {"), undefined, stepped);
    expect(half.changes.map(({ difference }) => difference)).toEqual(["+0.5 mm, 0.5 steps"]);
    expect(effect(half, "ride height", "front")).toBeUndefined();
    const whole = compared(stepped.replace("32 mm {", "33 mm {"), undefined, stepped);
    expect(effect(whole, "ride height", "front")?.difference).toBe("+1 mm");
    expect(effect(compared(quill.replace("32 mm", "32.5 mm")), "ride height", "front")?.difference).toBe("+0.5 mm");
  });

  it("are found again under another name, as are expectations and cases", () => {
    const renamed = quill.replaceAll("third", "heave-spring").replaceAll("hairpin", "first-corner");
    const found = compared(renamed);
    expect(found.changes.every(({ kind }) => kind === "renamed")).toBe(true);
    expect(found.effects).toEqual([]);
    expect(found.still).toBe(compared(quill).still);
    expect(found.verdicts.every(({ status }) => status === "still-met")).toBe(true);
    expect(found.headline).toBe("Only names differ, and no figure moves noticeably.");
  });

  it("say where a figure is no longer to be had, and why", () => {
    const found = compared(
      quill.replaceAll(/tyre-rate 1[68]5 N\/mm/g, "tyre-rate 165 N/mm").replace("      tyre-rate 165 N/mm\n", ""),
    );
    const ride = effect(found, "with tyres: heave", "front");
    expect(ride).toMatchObject({ nowText: "none", difference: expect.stringMatching(/^no longer there: .*tyre-rate/) });
  });

  it("tell a load case that has no equilibrium any more", () => {
    const found = compared(
      quill
        .replace("downforce-front 0.85 m^2", "downforce-front 30 m^2")
        .replace("downforce-rear 1.2 m^2", "downforce-rear 40 m^2"),
    );
    expect(found.cases.map(({ name }) => name)).toContain("top-speed");
    expect(found.headline).toMatch(/no equilibrium any more in/i);
  });
});

describe("findings", () => {
  const eye = "eye roll-low (45, 175, 348) mm";

  it("that are new or gone are told, not those that only say another figure", () => {
    const off = quill.replace(eye, "eye roll-low (45, 175, 330) mm");
    const found = compared(off);
    expect(found.fresh.map(({ rule }) => rule)).toContain("coupling");
    expect(found.headline).toMatch(/new (warning|error)/);
    const back = compared(quill, undefined, off);
    expect(back.gone.map(({ rule }) => rule)).toContain("coupling");
    expect(back.fresh).toEqual([]);
    const further = compared(quill.replace(eye, "eye roll-low (45, 175, 331) mm"), undefined, off);
    expect(further.fresh).toEqual([]);
    expect(further.gone).toEqual([]);
  });
});
