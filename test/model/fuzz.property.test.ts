/**
 * Whatever is done to a text, the resolver answers: with numbers that are finite, with problems and names that lie in
 * the text, and in time that does not run away. fast-check prints the seed of a text that it fails on.
 */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { ResolvedFile } from "../../server/model/resolved-file.js";
import { Folder, root } from "./resolved.js";

const textsIn = (folder: string): Readonly<Record<string, string>> =>
  Object.fromEntries(
    readdirSync(new URL(`../../samples/${folder}/`, import.meta.url))
      .filter((name) => name.endsWith(".crank"))
      .map((name) => [
        name,
        readFileSync(new URL(`../../samples/${folder}/${name}`, import.meta.url)).toString("utf8"),
      ]),
  );
const folders = ["quill", "broken", "systems"].map(textsIn);
const samples = folders.flatMap((texts) => Object.keys(texts).map((name) => ({ texts, name })));

const pieces = [
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
  "*",
  "/",
  "%",
  ":",
  "\n",
  "\r",
  "	",
  "\0",
  " by ",
  " from ",
  " for ",
  " of ",
  " and ",
  "left ",
  "right.",
  "front.",
  "rear.",
  "remove ",
  "let a = ",
  "use ",
  "setup s from ",
  "1e308 ",
  "-1e308 mm",
  "0",
  "1e-320 N/mm",
  "9".repeat(400),
  "0 mm / 0",
  " mm",
  " N*s/mm",
  " kg*m^2",
  "�",
  "\ud800",
  "é",
  "fit ",
  'curve from csv "x.csv"',
  "ratio ",
  "expect ",
  "case c { speed 1 km/h }",
  "longer 5 mm",
  "push-rod by 1 turn",
  "trim by push-rod",
];

interface Cut {
  readonly at: number;
  readonly length: number;
  readonly insert: string;
}

const cut = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.oneof({ weight: 4, arbitrary: fc.nat(8) }, { weight: 1, arbitrary: fc.nat(400) }),
  insert: fc.oneof(
    { weight: 4, arbitrary: fc.constantFrom(...pieces) },
    { weight: 1, arbitrary: fc.string({ unit: "binary", maxLength: 12 }) },
  ),
});

const mutated = (text: string, cuts: readonly Cut[]): string =>
  cuts.reduce((now, { at, length, insert }) => {
    const from = Math.floor(at * now.length);
    return now.slice(0, from) + insert + now.slice(from + length);
  }, text);

/** Every number in what is published; places and texts aside. */
function unfit(value: unknown, path = "", seen = new Set<unknown>()): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [path];
  if (typeof value !== "object" || value === null || seen.has(value)) return [];
  seen.add(value);
  const entries = value instanceof Map ? [...value] : Object.entries(value);
  return entries.flatMap(([key, inner]) => unfit(inner, `${path}.${String(key)}`, seen));
}

/** What is wrong with an answer: numbers that are none, places that lie outside of the text, files named twice. */
function unsound(file: ResolvedFile, text: string): readonly string[] {
  const places = [...file.problems, ...file.symbols.flatMap(({ references }) => references)];
  const lost = places.filter(
    ({ uri, start, end }) => uri !== file.uri || !(start >= 0 && start <= end && end <= text.length),
  );
  const twice = file.uses.filter((uri, index) => file.uses.indexOf(uri) !== index && index < 100);
  return [...unfit(file.cars), ...lost.map((place) => `${place.uri} ${place.start} ${place.end}`), ...twice];
}

describe("a sample that somebody cuts about", () => {
  it("is resolved, whatever is left of it", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...samples),
        fc.array(cut, { minLength: 1, maxLength: 8 }),
        ({ texts, name }, cuts) => {
          const text = mutated(texts[name] ?? "", cuts);
          const folder = new Folder({ ...texts, [name]: text, "x.csv": "travel [mm],force [N]\n0,0\n1,1\n" });
          expect(unsound(folder.resolve(name), text)).toEqual([]);
        },
      ),
      { numRuns: 400 },
    );
  });

  it("does not spoil the files that use it", () => {
    fc.assert(
      fc.property(fc.array(cut, { minLength: 1, maxLength: 8 }), (cuts) => {
        const [quill = {}] = folders;
        const car = mutated(quill["quill.crank"] ?? "", cuts);
        const folder = new Folder({ ...quill, "quill.crank": car });
        for (const name of ["wet.crank", "dry.crank"])
          expect(unsound(folder.resolve(name), quill[name] ?? "")).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it("is resolved with its lines in any order, and any of them twice", () => {
    fc.assert(
      fc.property(fc.constantFrom(...samples), fc.infiniteStream(fc.nat()), ({ texts, name }, picks) => {
        const lines = (texts[name] ?? "").split("\n");
        const text = lines.map(() => lines[(picks.next().value ?? 0) % lines.length]).join("\n");
        expect(unsound(new Folder({ ...texts, [name]: text }).resolve(name), text)).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });
});

describe("what no set-up holds and some text will", () => {
  const resolve = (text: string) => {
    const file = new Folder({ "a.crank": text }).resolve("a.crank");
    expect(unsound(file, text)).toEqual([]);
    return file;
  };
  const lines = (count: number, line: (i: number) => string) =>
    Array.from({ length: count }, (_, i) => line(i)).join("\n");
  const inCar = (inside: string) => `car a {\n${inside}\n}\n`;
  const inAxle = (inside: string) => inCar(`axle front {\n${inside}\n}`);

  it.each([
    ["words that nobody knows", lines(10_000, (i) => `blurb${i} 3 kg`)],
    ["properties over and over", inCar(lines(10_000, () => "mass 3 kg"))],
    [
      "elements joined to nothing",
      inAxle(lines(10_000, (i) => `spring s${i} for heave { rate 3 N, between x.y and z }`)),
    ],
    ["eyes", inAxle(`linkage { rocker {\n${lines(10_000, (i) => `eye e${i} (1, 2, ${i}) mm`)}\n} }`)],
    [
      "override lines that miss",
      `${inCar("axle front { }")}setup b from a {\n${lines(10_000, (i) => `front.x${i}.rate 3 N`)}\n}`,
    ],
    ["override lines that add up", `${inCar("mass 3 kg")}setup b from a {\n${lines(10_000, () => "mass by +1 kg")}\n}`],
    [
      "values that need each other",
      `${lines(10_000, (i) => `let v${i} = v${i + 1} + 1 kg`)}\nlet v10000 = 1 kg\n${inCar("mass v0")}`,
    ],
    ["a circle of values", `${lines(1000, (i) => `let v${i} = v${(i + 1) % 1000}`)}\n${inCar("mass v0")}`],
    ["parts", `catalogue {\n${lines(10_000, (i) => `torsion-bar T${i} { diametre 3 mn }`)}\n}`],
    ["expectations", inCar(lines(10_000, (i) => `expect front.x${i} above 3 N`))],
    ["files that are not there", lines(10_000, (i) => `use "f${i}.crank"`)],
    ["rows", inAxle(`spring s for heave { curve {\n${lines(10_000, (i) => `${i} mm: ${i} N`)}\n} }`)],
    ["set-ups without a car", lines(3000, (i) => `setup s${i} from s${i - 1} { mass 3 kg }`)],
  ])("10,000 lines of %s", (_, text) => {
    expect(resolve(text).problems.length).toBeGreaterThan(0);
  });

  it("blocks 200 deep are read, and deeper ones are nothing to fall over", () => {
    for (const depth of [200, 201, 20_000]) {
      const texts = [
        `${"car a {\n".repeat(depth)}mass 3 kg\n${"}\n".repeat(depth)}`,
        inAxle("left {\n".repeat(depth) + "}\n".repeat(depth)),
        `${inCar("axle front { }")}setup b from a {\n${"front {\n".repeat(depth)}${"}\n".repeat(depth)}}`,
      ];
      for (const text of texts) expect(resolve(text).cars[0]?.name).toBe("a");
    }
  });

  it("a name of 10,000 characters is a name", () => {
    const name = "n".repeat(10_000);
    const { cars, symbols } = resolve(`car ${name} {\n mass 3 kg\n}\nsetup s from ${name} {\n}\n`);
    expect(cars.map((car) => [car.name, car.setup])).toEqual([
      [name, undefined],
      [name, "s"],
    ]);
    expect(symbols.find(({ target }) => target === "car")?.references).toHaveLength(1);
    const missed = resolve(`${inCar("mass 3 kg")}setup s from a {\n${`${name}.`.repeat(50)}rate 3 N\n}\n`);
    expect(missed.problems.map(({ kind }) => kind)).toContain("override-without-target");
  });

  it("bytes that are not UTF-8 leave the rest as it is", () => {
    const text = Buffer.concat([
      Buffer.from("car a {\n  mass 3 kg  # M"),
      Buffer.from([0xfc]),
      Buffer.from("ller\n}\n"),
    ]);
    expect(resolve(text.toString("utf8")).cars[0]?.mass?.value).toBe(3);
    const word = Buffer.concat([Buffer.from("car a {\n  m"), Buffer.from([0xff, 0xfe]), Buffer.from("ss 3 kg\n}\n")]);
    expect(resolve(word.toString("utf8")).cars).toHaveLength(1);
    expect(resolve("\0".repeat(10_000)).cars).toEqual([]);
  });

  it("an expression of 100,000 terms, and one as deep", () => {
    const texts = [
      inCar(`mass ${"1 kg + ".repeat(100_000)}1 kg`),
      inCar(`mass ${"(".repeat(20_000)}1 kg${")".repeat(20_000)}`),
      `${inCar("mass 3 kg")}setup s from a {\n mass ${"mass + ".repeat(20_000)} 1 kg\n}\n`,
    ];
    for (const text of texts) expect(resolve(text).cars[0]?.name).toBe("a");
  });

  it("numbers beyond all numbers are told and not computed with", () => {
    for (const number of [
      "1e999",
      "9".repeat(400),
      "1e308 * 1e308",
      "1e308 + 1e308",
      "1 / 0",
      "0 / 0",
      "-1e308 - 1e308",
    ]) {
      const { cars, problems } = resolve(inCar(`mass (${number}) kg\nwheelbase ${number} mm`));
      expect(cars[0]?.mass).toBeUndefined();
      expect(problems.length).toBeGreaterThan(0);
    }
  });

  it("adding up past all numbers leaves no value", () => {
    const { cars } = resolve(`${inCar("mass 1e308 kg")}setup s from a {\n mass by 1e308 kg\n mass by 1e308 kg\n}\n`);
    expect(cars[1]?.mass === undefined || Number.isFinite(cars[1].mass.value)).toBe(true);
  });

  it("a file that is not there has nothing in it", () => {
    expect(new Folder({}).resolve("a.crank")).toMatchObject({
      uri: `${root}a.crank`,
      cars: [],
      problems: [],
      symbols: [],
    });
  });
});
