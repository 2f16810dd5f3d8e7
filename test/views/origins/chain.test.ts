/** Where values come from: every line that had a say, the one in force first. */
import { describe, expect, it } from "vitest";
import { chainOf } from "../../../server/views/origins/chain.js";
import { choicesOf } from "../../../server/views/origins/choices.js";
import { clubFiles, stepsIn } from "./club-files.js";

const storm = `use "wet.crank"
let soft = 40 N/mm
let softer = soft - 2 N/mm
setup storm from quarrow-wet {
  front.third.rate softer  # softest that the club has
  front.ride-height by +1 mm
  front.push-rod by -1 turn
  rear.ride-height front.ride-height + 18 mm
  front.left.side.fit V-24
  front.corner-bar { torsion-bar { diameter 10.8 mm } }
  front.right.rocker.side (-45, -210, 463) mm
  front.third.gap 2 mm

}
setup flood from storm { front.ride-height by -3 mm }
`;

describe("where a value comes from", () => {
  const club = clubFiles({ "storm.crank": storm });
  const steps = (name: string, marker: string, part?: string) => stepsIn(club.chain(name, marker, part));

  it("a set-up's value over the car's", () => {
    expect(club.chain("wet.crank", "front.third.rate 45", "45")).toMatchObject({
      of: "quarrow-wet",
      path: "front.third.rate",
      value: "45 N/mm",
    });
    expect(steps("wet.crank", "front.third.rate 45", "rate")).toEqual([
      "replaced · set-up quarrow-wet · front.third.rate 45 N/mm = 45 N/mm",
      "written · car quill · rate 55 N/mm = 55 N/mm",
    ]);
  });

  it("set-up over set-up, each `by` with what it comes to", () => {
    expect(steps("storm.crank", "flood from storm { front.ride-height", "ride-height")).toEqual([
      "adjusted · set-up flood · front.ride-height by -3 mm = 32 mm",
      "adjusted · set-up storm · front.ride-height by +1 mm = 35 mm",
      "adjusted · set-up quarrow-wet · front.ride-height by +2 mm = 34 mm",
      "written · car quill · ride-height 32 mm = 32 mm",
    ]);
  });

  it("the `let`s behind a line stand below it, nearest first", () => {
    expect(steps("storm.crank", "front.third.rate softer", "softer").slice(0, 3)).toEqual([
      "replaced · set-up storm · front.third.rate softer = 38 N/mm",
      "let · let softer · let softer = soft - 2 N/mm",
      "let · let soft · let soft = 40 N/mm",
    ]);
    expect(steps("storm.crank", "let softer", "softer")).toHaveLength(2);
  });

  it("a figure of a part: its line, who fits it, and the part before it", () => {
    expect(steps("storm.crank", "diameter 10.8", "10.8")).toEqual([
      "replaced · set-up storm · diameter 10.8 mm = 10.8 mm",
      "part · part TB-105 · diameter 10.5 mm = 10.5 mm",
      "fitted · set-up quarrow-wet · front.corner-bar.fit TB-105",
      "part · part TB-110 · diameter 11 mm = 11 mm",
      "fitted · car quill · fit TB-110",
    ]);
  });

  it("what is not written is the language's own", () => {
    expect(steps("storm.crank", "front.third.gap", "gap")).toEqual([
      "written · set-up storm · front.third.gap 2 mm = 2 mm",
      'default · the language · When "gap" is absent: none; it is engaged at design position = none; it is engaged at design position',
    ]);
    const [car] = club.fileOf("quill.crank").cars;
    const chain = car && chainOf(car, ["front", "third", "gap"], club.fileOf);
    expect(chain?.value).toBe("none; it is engaged at design position");
    expect(chain?.steps.map(({ kind, origin }) => [kind, origin])).toEqual([["default", undefined]]);
    expect(car && chainOf(car, ["front", "third", "colour"], club.fileOf)).toBeUndefined();
    expect(car && chainOf(car, ["nowhere", "at", "all"], club.fileOf)).toBeUndefined();
  });

  it("`push-rod by` speaks of the rod's length, from as long as it is drawn", () => {
    const chain = club.chain("storm.crank", "front.push-rod by", "push-rod");
    expect(chain).toMatchObject({ path: "front.push-rod.longer", value: "-1.25 mm" });
    expect(chain?.steps.map(({ kind }) => kind)).toEqual(["written", "default"]);
  });

  it("what a formula reads, and a formula of the car that follows a set-up", () => {
    expect(steps("storm.crank", "rear.ride-height", "rear").slice(0, 2)).toEqual([
      "replaced · set-up storm · rear.ride-height front.ride-height + 18 mm = 53 mm",
      "reads · front.ride-height · front.ride-height by +1 mm = 35 mm",
    ]);
    const own = clubFiles();
    const text = own.fileOf("quill.crank").text.replace("ride-height 50 mm", "ride-height front.ride-height + 18 mm");
    const wet = own.fileOf("wet.crank").text.replace("rear.ride-height by +2 mm", "");
    const follows = clubFiles({ "quill.crank": text, "wet.crank": wet });
    const [car] = follows.fileOf("wet.crank").cars;
    const chain = car && chainOf(car, ["rear", "ride-height"], follows.fileOf);
    expect(stepsIn(chain)).toEqual([
      "follows · car quill · ride-height front.ride-height + 18 mm = 52 mm",
      "reads · front.ride-height · front.ride-height by +2 mm = 34 mm",
      "written · car quill · ride-height front.ride-height + 18 mm = 50 mm",
    ]);
  });

  it("a right side tells the left's line with its own coordinates", () => {
    expect(steps("storm.crank", "front.right.rocker.side", "rocker")).toEqual([
      "replaced · set-up storm · front.right.rocker.side (-45, -210, 463) mm = (-45, -210, 463) mm",
      "written · car quill · eye side (-45, 208, 463) mm = (-45, -208, 463) mm",
    ]);
  });

  it("an element that is taken out", () => {
    const chain = club.chain("wet.crank", "remove rear.roll-damper", "roll-damper");
    expect(chain?.value).toBeUndefined();
    expect(chain?.steps.map(({ kind, by }) => [kind, by])).toEqual([
      ["removed", "set-up quarrow-wet"],
      ["written", "car quill"],
    ]);
  });

  it("a figure that goes with a block that is said anew", () => {
    const own = clubFiles({
      "anew.crank":
        'use "quill.crank"\nsetup anew from quill {\n  front.corner-bar { torsion-bar { diameter 10.8 mm } }\n}\n',
    });
    const [car] = own.fileOf("anew.crank").cars;
    const chain = car && chainOf(car, ["front", "corner-bar", "torsion-bar", "length"], own.fileOf);
    expect(stepsIn(chain)[0]).toBe("removed · set-up anew · front.corner-bar { torsion-bar { diameter 10.8 mm } }");
  });

  it("an expectation goes back to the one that it replaced, among several of one word", () => {
    expect(club.chain("wet.crank", "expect front.heave-rate", "heave")?.path).toBe("expect");
    expect(steps("wet.crank", "expect front.heave-rate", "heave")).toEqual([
      expect.stringMatching(/^replaced · set-up quarrow-wet · expect front\.heave-rate between 130 and 160 N\/mm = /),
      "written · car quill · expect front.heave-rate between 150 and 190 N/mm",
    ]);
  });

  it("each of several measured figures and motion ratios is told by itself", () => {
    expect(steps("dry.crank", "figure rear.camber", "camber")).toEqual([
      expect.stringMatching(/^written · set-up quarrow-dry · figure rear\.camber -1\.75 deg/),
    ]);
    const car = `car finch "Finch" {
  axle front {
    linkage ratio { }
    spring coil for heave and roll {
      rate 40 N/mm
      ratio heave 0.8
      ratio roll 0.5
    }
  }
}
setup soft from finch { front.coil.ratio roll 0.6 }
`;
    const own = clubFiles({ "finch.crank": car });
    expect(stepsIn(own.chain("finch.crank", "ratio roll 0.6", "roll"))).toEqual([
      "replaced · set-up soft · front.coil.ratio roll 0.6 = roll 0.6",
      "written · car finch · ratio roll 0.5",
    ]);
  });

  it("a part's own figure belongs to no car", () => {
    expect(club.chain("parts.crank", "TB-105 { diameter 10.5", "10.5")).toMatchObject({
      of: undefined,
      path: "part TB-105",
    });
    expect(steps("parts.crank", "TB-105 { diameter 10.5", "10.5")).toEqual(["part · part TB-105 · diameter 10.5 mm"]);
  });
});

describe("values to choose from", () => {
  const club = clubFiles({ "storm.crank": storm });
  const paths = (name: string, marker: string, part?: string) =>
    choicesOf(club.asked(name, marker, part), club.fileOf)?.map(({ path }) => path);

  it("`fit` offers itself and the figures that the part brings", () => {
    expect(paths("wet.crank", "front.corner-bar.fit TB-105", "fit")).toEqual([
      "front.corner-bar.fit",
      "front.corner-bar.torsion-bar.diameter",
      "front.corner-bar.torsion-bar.length",
    ]);
  });

  it("a value that differs from side to side is asked about by side", () => {
    expect(paths("storm.crank", "front.left.side.fit V-24", "fit")?.[0]).toBe("front.left.side.fit");
    const left = clubFiles({
      "one.crank":
        'use "quill.crank"\nsetup one from quill {\n  front.left.camber -2.5 deg\n  front.camber by 0.1 deg\n}\n',
    });
    const asked = left.asked("one.crank", "front.camber", "camber");
    expect(choicesOf(asked, left.fileOf)?.map(({ path, value }) => [path, value])).toEqual([
      ["front.left.camber", "-2.4 deg"],
      ["front.right.camber", "-1.9 deg"],
    ]);
  });

  it("a set-up offers what it says itself first and what nobody says last; an empty line in it does too", () => {
    const all = choicesOf(club.asked("wet.crank", "setup quarrow-wet", "setup"), club.fileOf) ?? [];
    expect(all[0]?.by).toBe("set-up quarrow-wet");
    expect(all.at(-1)?.by).toBe("the language");
    expect(all.find(({ path }) => path === "front.third.rate")?.value).toBe("45 N/mm");
    expect(new Set(all.map(({ path }) => path)).size).toBe(all.length);
    expect(paths("storm.crank", "gap 2 mm\n\n}", "\n\n")?.length).toBe(
      choicesOf(club.asked("storm.crank", "setup storm", "setup"), club.fileOf)?.length,
    );
  });

  it("one value is asked about at once", () => {
    expect(paths("wet.crank", "front.third.rate 45", "45")).toBeUndefined();
  });
});

describe("places that cannot be answered", () => {
  const odd = clubFiles({
    "ring.crank": "setup one from two {\n  front.third.rate 40 N/mm\n}\nsetup two from one { }\n",
    "lost.crank": 'use "gone.crank"\nsetup lost from nobody {\n  front.third.rate 40 N/mm\n}\n',
    "half.crank": 'use "quill.crank"\nsetup half from quill {\n  front.third.rate\n  front.third.preload 4',
    "word.crank":
      'use "quill.crank"\nsetup word from quill {\n  front.third.colour 3 mm\n  front.third.rate 40 mm\n}\n',
  });
  const why = (name: string, marker: string, part?: string) => {
    const asked = odd.asked(name, marker, part);
    return asked.kind === "none" ? asked.why : asked.kind;
  };

  it("a circle of set-ups and a base that is not there say so", () => {
    expect(why("ring.crank", "rate 40", "40")).toMatch(/^one cannot be worked out.*findings/);
    expect(why("lost.crank", "rate 40", "40")).toMatch(/^lost cannot be worked out.*findings/);
  });

  it("comments between declarations and `use` are no values", () => {
    expect(why("quill.crank", "# quill.crank: the car", "car")).toMatch(/^Put the cursor on/);
    expect(why("wet.crank", 'use "quill', "quill")).toMatch(/^Put the cursor on/);
  });

  it("a half-typed or wrong line tells what is in force all the same", () => {
    expect(stepsIn(odd.chain("half.crank", "front.third.rate\n", "rate"))).toEqual([
      "written · car quill · rate 55 N/mm = 55 N/mm",
    ]);
    expect(stepsIn(odd.chain("word.crank", "rate 40 mm", "40"))).toEqual([
      "written · car quill · rate 55 N/mm = 55 N/mm",
    ]);
    expect(odd.chain("word.crank", "front.third.colour", "colour")).toBeUndefined();
  });
});
