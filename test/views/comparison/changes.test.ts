/** Resolved differences: what is no change, and what is exactly one. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { carIn, changesOf } from "./versions.js";

const plover = (lines = "", inside = ""): string => `car plover {
  wheelbase 100 in
  mass 500 kg
  axle front {
    track 1400 mm
    ride-height 30 mm { step 1 mm }
    linkage ratio
    spring coil for corner { rate 60 N/mm, ratio 0.8 }
    spring third for heave { rate 40 N/mm, ratio heave 0.9 }
    ${inside}
  }
  case bend { speed 100 km/h, lateral 1.2 g }
  expect front.heave-rate above 10 N/mm
  ${lines}
}
`;

const told = (old: string, now: string): readonly string[] =>
  changesOf(carIn(old), carIn(now)).map(({ kind, of, path, old: was, now: is, difference }) =>
    [kind, of, path, was?.text ?? "-", is?.text ?? "-", difference ?? ""].join(" | "),
  );

describe("what is no change", () => {
  it.each([
    ["another unit", plover().replace("100 in", "2540 mm")],
    [
      "other order and layout",
      plover().replace("mass 500 kg\n", "").replace("wheelbase 100 in", "mass 500 kg\nwheelbase   100 in"),
    ],
    ["a let", `let firm = 40 N/mm\n${plover().replace("rate 40 N/mm", "rate firm")}`],
    ["line ends of another system", plover().replaceAll("\n", "\r\n")],
    ["a comment", plover("# nothing")],
    ["a base", `${plover().replace("mass 500 kg", "mass 510 kg")}\nsetup plover-as-before from plover { mass 500 kg }`],
  ])("%s", (_, now) => {
    const name = now.includes("plover-as-before") ? "plover-as-before" : undefined;
    expect(changesOf(carIn(plover()), carIn(now, name))).toEqual([]);
  });
});

describe("one change", () => {
  it("of a value, in the author's units, with the adjuster's steps", () => {
    expect(told(plover(), plover().replace("ride-height 30 mm", "ride-height 32 mm"))).toEqual([
      "changed | property | front.ride-height | 30 mm | 32 mm | +2 mm, 2 steps",
    ]);
    expect(told(plover(), plover().replace("100 in", "2550 mm"))).toEqual([
      "changed | property | wheelbase | 100 in | 2550 mm | +10 mm",
    ]);
    expect(told(plover(), plover().replace("rate 40 N/mm", "rate 50 N/mm"))).toEqual([
      "changed | property | front.third.rate | 40 N/mm | 50 N/mm | +10 N/mm, +25 %",
    ]);
  });

  it("of an element that is new, or gone, with its lines under it", () => {
    const damper = "damper side for corner { bump { 50 mm/s: 300 N }, rebound { 50 mm/s: 400 N }, ratio 0.8 }";
    expect(told(plover(), plover("", damper))).toEqual(["added | element | front.side | - | damper for corner | "]);
    expect(told(plover("", damper), plover())).toEqual(["removed | element | front.side | damper for corner | - | "]);
    const [change] = changesOf(carIn(plover()), carIn(plover("", damper)));
    expect(change?.details.map(({ path }) => path)).toEqual([
      "front.side.bump",
      "front.side.rebound",
      "front.side.ratio",
    ]);
  });

  it("of an element, a case or a figure wanted, under another name", () => {
    const renamed = plover().replace("spring third", "spring heave-spring");
    expect(told(plover(), renamed)).toEqual([
      "renamed | element | front.heave-spring | third | heave-spring | the same under another name",
    ]);
    expect(told(plover(), plover().replace("case bend", "case curve"))).toEqual([
      "renamed | case | curve | bend | curve | the same under another name",
    ]);
  });

  it("of an element or an eye under another name where both were called alike", () => {
    const quill = readFileSync("samples/quill/quill.crank", "utf8");
    const parts = { "parts.crank": readFileSync("samples/quill/parts.crank", "utf8") };
    const car = carIn(quill, undefined, parts);
    const names = (now: string): readonly string[] =>
      changesOf(car, carIn(now, undefined, parts)).map(({ kind, of, path }) => `${kind} ${of} ${path}`);
    const element = quill.replace("spring third for", "spring middle for").replaceAll("front.third.", "front.middle.");
    expect(names(element)).toEqual(["renamed element front.middle"]);
    const [front = "", ...rest] = quill.split("  axle rear");
    const eye = front.replace("eye third", "eye middle").replaceAll("rocker.third", "rocker.middle");
    expect(names([eye, ...rest].join("  axle rear"))).toEqual(["renamed eye front.rocker.middle"]);
  });

  it("of a case, an expectation, a note", () => {
    expect(told(plover(), plover().replace("1.2 g", "1.3 g"))).toEqual([
      "changed | property | bend.lateral | 1.2 g | 1.3 g | +0.1 g, +8.33 %",
    ]);
    expect(told(plover(), plover("expect front.heave-frequency above 2 Hz"))).toEqual([
      "added | expectation | expect front.heave-frequency | - | above 2 Hz | ",
    ]);
    expect(told(plover(), plover().replace("above 10 N/mm", "above 12 N/mm"))).toEqual([
      "changed | expectation | expect front.heave-rate | above 10 N/mm | above 12 N/mm | ",
    ]);
    expect(told(plover(), plover().replace("  mass 500", "  ## With the small tank.\n  mass 500"))).toEqual([
      "added | note | mass | - | With the small tank. | ",
    ]);
  });

  it("of a table, row by row", () => {
    const damper =
      "damper side for corner { bump { 50 mm/s: 300 N, 100 mm/s: 400 N }, rebound { 50 mm/s: 400 N }, ratio 0.8 }";
    expect(told(plover("", damper), plover("", damper.replace("100 mm/s: 400 N", "100 mm/s: 440 N")))).toEqual([
      "changed | property | front.side.bump | 100 mm/s: 400 N | 100 mm/s: 440 N | up to +10 %",
    ]);
    const stiffer = damper.replace("300 N", "330 N").replace("100 mm/s: 400 N", "100 mm/s: 440 N");
    expect(told(plover("", damper), plover("", stiffer))).toEqual([
      "changed | property | front.side.bump | 50 mm/s: 300 N, 100 mm/s: 400 N | 50 mm/s: 330 N, 100 mm/s: 440 N | all +10 %",
    ]);
  });

  it("of another part, with its figures under it; of a part that two elements have, once", () => {
    const shelf = (rate: number): string => `catalogue {
  coil C-60 { rate ${rate} N/mm }
  coil C-70 { rate 70 N/mm }
}
`;
    const fitted = (part: string): string => plover().replace("rate 60 N/mm,", `fit ${part},`);
    const [fit, ...more] = changesOf(carIn(shelf(60) + fitted("C-60")), carIn(shelf(60) + fitted("C-70")));
    expect(more).toEqual([]);
    expect(fit).toMatchObject({ of: "part", path: "front.coil.fit", old: { text: "C-60" }, now: { text: "C-70" } });
    expect(fit?.details.length).toBeGreaterThan(0);
  });
});

describe("one side of an axle", () => {
  it("is told with its side, its points where they are", () => {
    const base = plover("", "wheel { centre (0, 700, 250) mm, camber -1 deg }");
    expect(told(base, `${base}\nsetup a from plover { front.left.camber -1.5 deg }`)).toEqual([]);
    const onLeft = changesOf(carIn(base), carIn(`${base}\nsetup a from plover { front.left.camber -1.5 deg }`, "a"));
    expect(onLeft.map(({ path }) => path)).toEqual(["front.left.camber"]);
    const onRight = changesOf(
      carIn(base),
      carIn(`${base}\nsetup a from plover { front.right.wheel.centre (0, -702, 250) mm }`, "a"),
    );
    expect(onRight).toMatchObject([
      {
        path: "front.right.centre",
        old: { text: "(0, -700, 250) mm" },
        now: { text: "(0, -702, 250) mm" },
        difference: "(0, -2, 0) mm",
      },
    ]);
    const onBoth = changesOf(carIn(base), carIn(`${base}\nsetup a from plover { front.camber -1.5 deg }`, "a"));
    expect(onBoth.map(({ path }) => path)).toEqual(["front.camber"]);
  });
});
