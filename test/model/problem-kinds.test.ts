/** One text a kind of problem that the resolver can tell; a kind without one fails here. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { ModelProblem } from "../../server/model/problem.js";
import { type Files, Folder } from "./resolved.js";

type Kind = ModelProblem["kind"];

interface Case {
  readonly files: Files;
  /** What it is told at. */
  readonly at: string;
  readonly told: object;
}

const car = (lines: string): string => `car linnet {\n${lines}\n}\n`;
const front = (lines: string): string => car(`axle front {\n${lines}\n}`);
const linkage = `linkage {
  push-rod on upright { outer (0, 600, 150) mm, inner (0, 260, 400) mm }
  rocker { pivot (0, 200, 400) mm, axis (1, 0, 0), eye side (0, 200, 450) mm }
}`;
const of = (text: string): Files => ({ "a.crank": text });
const setup = (line: string, base = front("track 1400 mm\nride-height 30 mm")): Files => ({
  "a.crank": `${base}setup day from linnet {\n${line}\n}\n`,
});

const cases: { readonly [K in Kind]: readonly Case[] } = {
  "unknown-word": [
    { files: of("blurb 3 kg\n"), at: "blurb", told: { concept: "file" } },
    { files: of(car("rubish 3 kg")), at: "rubish", told: { concept: "car" } },
    { files: setup("rubish 3 kg"), at: "rubish", told: { concept: "setup" } },
    { files: of(front("spring a for wobble { rate 3 N/mm, ratio 1 }")), at: "wobble", told: { concept: "for" } },
  ],
  "unknown-name": [
    { files: of("setup day from nobody {\n}\n"), at: "nobody", told: { target: "car-or-setup", candidates: [] } },
    { files: of(front("spring a for heave { fit TB, ratio 1 }")), at: "TB", told: { target: "part" } },
    { files: of(front("trim by nothing-here")), at: "nothing-here", told: { target: "element" } },
    {
      files: of(
        front(`${linkage}\nspring a for heave { rate 3 N/mm, between left.rocker.sied and chassis (1, 2, 3) mm }`),
      ),
      at: "sied",
      told: { target: "eye", candidates: ["side"] },
    },
    { files: of(car("mass two + 3 kg")), at: "two", told: { target: "let" } },
    { files: of(car("expect front.wobble above 3 mm")), at: "wobble", told: { target: "figure" } },
  ],
  "unknown-unit": [{ files: of(car("mass 3 kgg")), at: "kgg", told: { unit: "kgg", dimension: "mass" } }],
  "missing-unit": [{ files: of(car("mass 3")), at: "3", told: { digits: "3", dimension: "mass" } }],
  dimension: [
    { files: of(car("mass 3 mm")), at: "3 mm", told: { expected: "mass", due: "mass", found: "length" } },
    { files: of(car("mass 3 kg + 2 mm")), at: "2 mm", told: { expected: "mass", found: "length" } },
    { files: of(car("mass 3 kg * 2 mm")), at: "3 kg * 2 mm", told: { found: "length*mass" } },
  ],
  "missing-property": [
    {
      files: of("catalogue {\n  torsion-bar TB { length 3 mm }\n}\n"),
      at: "torsion-bar TB",
      told: { word: "diameter" },
    },
    { files: of("car linnet {\n}\n"), at: "car linnet", told: { word: "mass", owner: "car linnet" } },
  ],
  duplicate: [
    { files: of(car("mass 3 kg\nmass 4 kg")), at: "mass 4 kg", told: { what: "property" } },
    { files: of(`${car("mass 3 kg")}car linnet {\n}\n`), at: "linnet", told: { what: "name" } },
    { files: setup("front.track 1401 mm\nfront.track 1402 mm"), at: "front.track 1402 mm", told: { what: "property" } },
  ],
  rivals: [
    {
      files: of(front("spring a for heave { rate 3 N/mm, ratio 1, between left.rocker.b and right.rocker.b }")),
      at: "between left.rocker.b and right.rocker.b",
      told: { word: "between", other: "ratio" },
    },
  ],
  "wrong-form": [
    { files: of(car("mass (3, 4) kg")), at: "(3, 4) kg", told: { word: "mass" } },
    { files: of(car("wheelbase 3 mm { step 1 mm }")), at: "{ step 1 mm }", told: { word: "wheelbase" } },
    { files: setup("front 3 mm"), at: "front", told: { word: "front" } },
    { files: of("3 mm: 4 N\n"), at: "3 mm: 4 N", told: { word: "row" } },
  ],
  "no-thread": [{ files: setup("front.push-rod by 1 turn", front(linkage)), at: "1 turn", told: { word: "longer" } }],
  "unused-part": [
    {
      files: {
        "a.crank": `${setup("front.track 1401 mm")["a.crank"]}catalogue {\n  valving V { damping 3 N*s/mm }\n}\n`,
      },
      at: "V",
      told: { name: "V" },
    },
  ],
  "unused-let": [{ files: of(`let spare = 3 kg\n${car("mass 3 kg")}`), at: "spare", told: { name: "spare" } }],
  "needless-override": [
    { files: setup("front.track 140 cm"), at: "front.track 140 cm", told: { path: "front.track", why: "same-value" } },
    {
      files: of(front("wheel { camber -1 deg }\nright { camber -1 deg }")),
      at: "camber -1 deg",
      told: { why: "mirror-image" },
    },
  ],
  "override-without-target": [
    { files: setup("front.thrid.rate 3 N/mm"), at: "thrid", told: { path: "front.thrid.rate", failing: "thrid" } },
    { files: setup("remove front.third"), at: "third", told: { failing: "third" } },
  ],
  "no-sides": [{ files: setup("front.left.track 1401 mm"), at: "left", told: { side: "left", thing: "track" } }],
  cycle: [
    {
      files: { "a.crank": 'use "b.crank"\n', "b.crank": 'use "a.crank"\n' },
      at: '"b.crank"',
      told: { what: "use" },
    },
    { files: of("setup a from b {\n}\nsetup b from a {\n}\n"), at: "b", told: { what: "from", path: ["a", "b", "a"] } },
    { files: of("let a = b\nlet b = a\ncar c { mass a }\n"), at: "a", told: { what: "let" } },
    {
      files: of(car("mass front.track / 1 m * 1 kg\naxle front { track mass / 1 kg * 1 m }")),
      at: "mass front.track / 1 m * 1 kg",
      told: { what: "let" },
    },
  ],
  "file-not-found": [
    { files: of('use "b.crank"\n'), at: '"b.crank"', told: { reason: "missing" } },
    { files: of('use "../b.crank"\n'), at: '"../b.crank"', told: { reason: "outside" } },
    { files: of('use "/b.crank"\n'), at: '"/b.crank"', told: { reason: "not-a-path" } },
    { files: of('use "file:///b.crank"\n'), at: '"file:///b.crank"', told: { reason: "not-a-path" } },
  ],
  csv: [
    {
      files: {
        "a.crank": front('spring a for heave { curve from csv "m.csv", ratio 1 }'),
        "m.csv": "travel [mm],force [N]\n0,0\nx,1\n",
      },
      at: '"m.csv"',
      told: { path: "m.csv", line: 3 },
    },
  ],
  "range-violated": [
    { files: of(car("mass -3 kg")), at: "-3 kg", told: { word: "mass", value: -3, unit: "kg" } },
    { files: of(car("mass-front 120 %")), at: "120 %", told: { word: "mass-front" } },
    { files: setup("front.track by -2000 mm"), at: "-2000 mm", told: { word: "track" } },
  ],
  "implausible-value": [{ files: of(car("mass 30 kg")), at: "30 kg", told: { word: "mass", dimension: "mass" } }],
  "reserved-name": [
    { files: of(front("spring track for heave { rate 3 N/mm, ratio 1 }")), at: "track", told: { name: "track" } },
    { files: of(front("spring left for heave { rate 3 N/mm, ratio 1 }")), at: "left", told: { name: "left" } },
  ],
  "table-order": [
    {
      files: of(front("spring a for heave { curve { 0 mm: 0 N, 5 mm: 9 N, 2 mm: 10 N }, ratio 1 }")),
      at: "2 mm",
      told: { word: "curve" },
    },
  ],
};

const all = Object.entries(cases).flatMap(([kind, some]) =>
  some.map((one): readonly [string, string, Case] => [kind, one.at, one]),
);

describe("the resolver tells", () => {
  it.each(all)("%s: %s", (kind, place, { files, told }) => {
    const text = files["a.crank"] ?? "";
    const { problems } = new Folder(files).resolve("a.crank");
    const shown = problems.map((problem) => [text.slice(problem.start, problem.end), problem] as const);
    const here = shown.filter(([at, problem]) => problem.kind === kind && at === place).map(([, problem]) => problem);
    // The one that is meant stands first, so that a miss shows what was told instead.
    expect(here.length > 0 ? here : shown).toContainEqual(expect.objectContaining(told));
    expect(new Set(here.map((problem) => JSON.stringify(problem))).size).toBe(here.length);
  });

  it("no kind that has no text here", () => {
    const source = readFileSync(new URL("../../server/model/problem.ts", import.meta.url), "utf8");
    const kinds = new Set([...source.matchAll(/readonly kind: "([a-z-]+)"/g)].map(([, kind]) => kind));
    expect(kinds).toEqual(new Set(Object.keys(cases)));
    expect(Object.values(cases).every((some) => some.length > 0)).toBe(true);
  });
});
