/** Set-ups that change a value, whether somebody has them open or not. */
import { describe, expect, it } from "vitest";
import { changersOf, effectOf } from "../../../server/views/origins/changers.js";
import { changeLabel } from "../../../server/views/origins/words.js";
import { clubFiles } from "./club-files.js";

describe("set-ups that change a value", () => {
  const club = clubFiles({
    "storm.crank": `use "wet.crank"
setup storm from quarrow-wet {
  front.third.rate by -5 N/mm
  front.left.side.fit V-24
  front.corner-bar.torsion-bar.diameter 10.8 mm
  remove front.heave-damper
}
`,
    "ring.crank": "setup one from two {\n  front.third.rate 40 N/mm\n}\nsetup two from one { }\n",
    "tern.crank": `car tern { }\nsetup tern-wet from tern { mass 500 kg }\n`,
  });
  const changers = (name: string, marker: string, part?: string) =>
    changersOf(club.asked(name, marker, part), club.every, club.fileOf);
  const told = (name: string, marker: string, part?: string) =>
    changers(name, marker, part).map((one) => `${one.setup} · ${one.path} · ${changeLabel(one)}`);

  it("of a car's value all of them, with what it was in each one's base", () => {
    expect(told("quill.crank", "spring third for heave {\n      rate 55", "55")).toEqual([
      "quarrow-wet · front.third.rate · 55 N/mm → 45 N/mm (-10 N/mm, -18.2 %)",
      "quarrow-dry · front.third.rate · 55 N/mm → 60 N/mm (+5 N/mm, +9.09 %)",
      "storm · front.third.rate · 45 N/mm → 40 N/mm (-5 N/mm, -11.1 %)",
    ]);
  });

  it("the same from a set-up's line", () => {
    expect(told("dry.crank", "front.third.rate 60", "60")).toEqual(
      told("quill.crank", "spring third for heave {\n      rate 55", "55"),
    );
  });

  it("one side alone is told with its side, another part with its figures", () => {
    expect(told("quill.crank", "fit V-24", "V-24")).toEqual([
      expect.stringMatching(/^quarrow-wet · front\.side\.fit · V-24 → V-18/),
      expect.stringMatching(/^storm · front\.left\.side\.fit · V-18 → V-24/),
    ]);
    expect(told("quill.crank", "fit TB-110", "fit")).toEqual([
      "quarrow-wet · front.corner-bar.fit · TB-110 → TB-105 (torsion-bar.diameter -0.5 mm)",
    ]);
  });

  it("of a figure on the shelf: another part in its place, and a figure over it", () => {
    expect(told("parts.crank", "TB-110 { diameter 11 mm", "11 mm")).toEqual([
      "quarrow-wet · front.corner-bar.torsion-bar.diameter · 11 mm → 10.5 mm (-0.5 mm)",
    ]);
    expect(told("parts.crank", "TB-105 { diameter 10.5", "10.5")).toEqual([
      "storm · front.corner-bar.torsion-bar.diameter · 10.5 mm → 10.8 mm (+0.3 mm)",
    ]);
    const [line] = changers("parts.crank", "TB-110 { diameter 11 mm", "11 mm");
    expect(line?.text).toBe("front.corner-bar.fit TB-105");
    expect(told("parts.crank", "torsion-bar TB-110", "TB-110")).toEqual([
      "quarrow-wet · front.corner-bar.fit · TB-110 → TB-105 (torsion-bar.diameter -0.5 mm)",
    ]);
  });

  it("of a part that two cars fit, the set-ups of both, each against its own base", () => {
    const carOf = (name: string): string => club.fileOf("quill.crank").text.replace("car quill", `car ${name}`);
    const both = clubFiles({
      "rook.crank": carOf("rook"),
      "rook-wet.crank": 'use "rook.crank"\nsetup rook-wet from rook {\n  front.corner-bar.fit TB-100\n}\n',
    });
    const asked = both.asked("parts.crank", "TB-110 { diameter 11 mm", "11 mm");
    const found = changersOf(asked, both.every, both.fileOf);
    expect(found.map((one) => `${one.setup} · ${changeLabel(one)}`)).toEqual([
      "quarrow-wet · 11 mm → 10.5 mm (-0.5 mm)",
      "rook-wet · 11 mm → 10 mm (-1 mm)",
    ]);
  });

  it("an element that is taken out, and all that a set-up changes below an element", () => {
    expect(told("quill.crank", "damper heave-damper for heave", "heave-damper")).toContain(
      "storm · front.heave-damper · taken out (for heave)",
    );
    expect(told("quill.crank", "spring third for heave", "third")).toHaveLength(3);
  });

  it("of an expectation, the ones that replace it", () => {
    expect(told("quill.crank", "expect front.heave-rate", "heave")).toEqual([
      expect.stringMatching(/^quarrow-wet · expect · .*150.*190 N\/mm → .*130.*160 N\/mm$/),
      expect.stringMatching(/^quarrow-dry · expect · .*150.*190 N\/mm → .*170.*190 N\/mm$/),
    ]);
    expect(changers("quill.crank", "expect front.heave-rate", "heave").map(effectOf)).toEqual([undefined, undefined]);
  });

  it("no set-up changes the rear wheel's mass; another car's set-ups are never among them", () => {
    expect(told("quill.crank", "unsprung-mass 19", "19")).toEqual([]);
    expect(told("quill.crank", "mass 540", "540")).toEqual([]);
    expect(told("tern.crank", "setup tern-wet from tern { mass 500", "500")).toEqual([
      "tern-wet · mass · 500 kg, not there before",
    ]);
  });

  it("tells which way the line alone moves the car", () => {
    const [wet, dry, storm] = changers("quill.crank", "spring third for heave {\n      rate 55", "55").map(effectOf);
    expect(wet).toMatch(/^front heave rate -\d/);
    expect(dry).toMatch(/^front heave rate \+\d/);
    expect(storm).toMatch(/^front heave rate -\d/);
    const [out] = changers("wet.crank", "remove rear.roll-damper", "roll-damper").map(effectOf);
    expect(out).toBeUndefined();
  });
});
