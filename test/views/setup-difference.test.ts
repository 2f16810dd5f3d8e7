/** The few words above a set-up that say how it differs from what it derives from. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { lensesOf } from "../../server/views/lens.js";
import { createWorkspace } from "../../server/snapshot/create.js";
import type { FileView } from "../../server/snapshot/workspace.js";
import { quillParts, quillText } from "../support/quill.js";
import { uriOf } from "../support/context.js";

const wet = readFileSync(new URL("../../samples/quill/wet.crank", import.meta.url), "utf8");
const all: Readonly<Record<string, string>> = { ...quillParts, "quill.crank": quillText, "wet.crank": wet };

function viewOf(name: string, more: Readonly<Record<string, string>> = {}): FileView {
  const workspace = createWorkspace({ read: () => ({ missing: "missing" }) });
  for (const [own, text] of Object.entries({ ...all, ...more })) workspace.set(uriOf(own), text);
  return workspace.file(uriOf(name));
}

const setup = (lines: string, from = "quill"): string =>
  `use "quill.crank"\nuse "wet.crank"\nsetup oxlea from ${from} {\n${lines}\n}\n`;

/** The lens of differences of the file's set-up, if it has one. */
const told = (text: string): string | undefined =>
  lensesOf(viewOf("oxlea.crank", { "oxlea.crank": text })).find(({ against }) => against !== undefined)?.title;

describe("the lens of differences", () => {
  it("counts the sample's changes and tells what it says first, first", () => {
    const [lens] = lensesOf(viewOf("wet.crank"));
    expect(lens?.title).toBe("12 changes: front third rate 55 → 45 N/mm, front corner-bar TB-110 → TB-105 and 10 more");
    expect(lens?.against).toEqual({ uri: uriOf("quill.crank"), name: "quill" });
    expect(lens?.car).toBe("quarrow-wet");
  });

  it("stands above set-ups alone, before the figures", () => {
    const lenses = lensesOf(viewOf("quill.crank"));
    expect(lenses.every(({ against }) => against === undefined)).toBe(true);
    expect(lensesOf(viewOf("wet.crank")).map(({ against }) => against !== undefined)).toEqual([
      true,
      false,
      false,
      false,
    ]);
  });

  it("tells what a set-up adds and takes away, and one side by itself", () => {
    expect(told(setup("  remove rear.roll-damper\n  front.left.side.fit V-18"))).toBe(
      "2 changes: front left side V-24 → V-18, without rear roll-damper",
    );
    expect(told(setup("  front.third.gap 2 mm"))).toBe("1 change: with front third gap 2 mm");
    expect(told(setup("  front.rocker.third (0, 192, 468) mm"))).toBe(
      "1 change: front rocker third (0, 192, 456) → (0, 192, 468) mm",
    );
  });

  it("tells the first in any case, and three where they are short", () => {
    const short = "  mass 541 kg\n  cg-height 286 mm\n  drive front\n  wheelbase 2541 mm";
    expect(told(setup(short))).toBe(
      "4 changes: mass 540 → 541 kg, cg-height 285 → 286 mm, drive rear → front and 1 more",
    );
    const long = "  front.roll-damper.between left.rocker.roll-high and chassis (45, 175, 348) mm\n  mass 541 kg";
    expect(told(setup(long))).toMatch(/^2 changes: front roll-damper between left\.rocker\.roll-high .* and 1 more$/);
  });

  it("keeps both units where they differ", () => {
    expect(told(setup("  front.third.rate 400 lbf/in"))).toBe("1 change: front third rate 55 N/mm → 400 lbf/in");
    expect(told(setup("  front.bar.blade.position 4 of 5"))).toBe("1 change: front bar blade position 3 of 5 → 4 of 5");
  });

  it("holds a set-up of a set-up against that one, not against the car", () => {
    expect(told(setup("  front.third.rate 40 N/mm", "quarrow-wet"))).toBe("1 change: front third rate 45 → 40 N/mm");
    expect(lensesOf(viewOf("o.crank", { "o.crank": setup("", "quarrow-wet") }))[0]?.against).toEqual({
      uri: uriOf("wet.crank"),
      name: "quarrow-wet",
    });
  });

  it("says so where nothing is changed: by nothing, by notes, by what was measured, by the same value", () => {
    expect(told(setup(""))).toBe("no changes from quill");
    expect(told(setup("  front.third.rate 55 N/mm"))).toBe("no changes from quill");
    expect(told(setup("  measured { figure front.ride-height 32.5 mm }"))).toBe("no changes from quill");
  });

  it("tells expectations and cases behind the car", () => {
    expect(
      told(
        setup(
          "  expect front.heave-rate between 100 and 190 N/mm\n  case hairpin { speed 62 km/h }\n  front.third.rate 50 N/mm",
        ),
      ),
    ).toMatch(/^\d changes: front third rate 55 → 50 N\/mm, /);
  });

  it("goes by what can be read of a broken set-up, and has none where its base is missing or it derives from itself", () => {
    expect(told(setup("  front.third.rate\n  front.ride-height by +2 mm\n  front.thrid.rate 3 N/mm"))).toBe(
      "1 change: front ride-height 32 → 34 mm",
    );
    expect(told(setup("  front.third.rate 50 N/mm", "nobody"))).toBeUndefined();
    expect(told(setup("  front.third.rate 50 N/mm", "oxlea"))).toBeUndefined();
    expect(told('use "away.crank"\nsetup oxlea from quill { front.third.rate 50 N/mm }\n')).toBeUndefined();
  });

  it("takes a value behind a let for what it comes to", () => {
    const text = `use "quill.crank"\nlet soft = 22 N/mm\nsetup oxlea from quill {\n  front.third.rate 2 * soft\n}\n`;
    expect(told(text)).toBe("1 change: front third rate 55 → 44 N/mm");
  });
});
