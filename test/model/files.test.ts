/** Several files: what a file may use, chains and circles across files, and names that lead from one to another. */
import { describe, expect, it } from "vitest";
import type { ResolvedFile } from "../../server/model/resolved-file.js";
import { type Files, Folder, root } from "./resolved.js";

const car = "car linnet {\n  mass 480 kg\n  axle front { track 1400 mm }\n}\n";
const told = (file: ResolvedFile, kind: string) => file.problems.filter((problem) => problem.kind === kind);
const textAt = (
  files: Files,
  { uri, start, end }: { readonly uri: string; readonly start: number; readonly end: number },
) => (files[decodeURIComponent(uri.slice(root.length))] ?? "").slice(start, end);

describe("`use`", () => {
  it("brings in what the used file declares, and what that one uses in turn", () => {
    const files = {
      "a.crank": 'use "b.crank"\nsetup day from linnet {\n  mass 490 kg\n}\n',
      "b.crank": 'use "cars/c.crank"\n',
      "cars/c.crank": car,
    };
    const file = new Folder(files).resolve("a.crank");
    expect(file.problems).toEqual([]);
    expect(file.cars[0]?.mass?.value).toBe(490);
    expect(new Set(file.uses)).toEqual(new Set(Object.keys(files).map((name) => root + name)));
  });

  it("brings in nothing of files that are not used, wherever they lie", () => {
    const file = new Folder({ "a.crank": "setup day from linnet {\n}\n", "b.crank": car }).resolve("a.crank");
    expect(told(file, "unknown-name")).toHaveLength(1);
    expect(file.uses).toEqual([`${root}a.crank`]);
  });

  it("takes a path beside the file, with blanks and letters of any script in it", () => {
    const files = {
      "sub/a.crank": 'use "../größe eins/c.crank"\nsetup day from linnet {\n}\n',
      "größe eins/c.crank": car,
    };
    expect(new Folder(files).resolve("sub/a.crank").cars).toHaveLength(1);
  });

  it.each([
    ["../c.crank", "outside"],
    ["../../../../../../c.crank", "outside"],
    ["sub/../../c.crank", "outside"],
    ["/c.crank", "not-a-path"],
    ["file:///c.crank", "not-a-path"],
    ["https://example.org/c.crank", "not-a-path"],
    ["sub\\c.crank", "not-a-path"],
    ["", "not-a-path"],
    ["sub/", "not-a-path"],
    ["%2e%2e/c.crank", "missing"],
    ["c.crank\u0000", "not-a-path"],
    ["nowhere.crank", "missing"],
  ])("of %j is told at its line: %s", (path, reason) => {
    const file = new Folder({ "a.crank": `use "${path}"\n${car}` }).resolve("a.crank");
    expect(told(file, "file-not-found")).toMatchObject([{ reason }]);
    expect(file.cars).toHaveLength(1);
  });

  it("of a file that is not text is told with that reason", () => {
    const folder = new Folder({ "a.crank": 'use "b.crank"\n' });
    const source = folder.source.bind(folder);
    folder.source = (uri) => (uri.endsWith("b.crank") ? { missing: "not-text" } : source(uri));
    expect(told(folder.resolve("a.crank"), "file-not-found")).toMatchObject([{ reason: "not-text" }]);
  });

  it("round in a circle is told in every file of it, and the names still resolve", () => {
    const files = {
      "a.crank": 'use "b.crank"\nsetup day from linnet {\n}\n',
      "b.crank": 'use "c.crank"\n',
      "c.crank": `use "a.crank"\n${car}`,
      "beside.crank": 'use "a.crank"\n',
    };
    const folder = new Folder(files);
    for (const name of ["a.crank", "b.crank", "c.crank"]) {
      expect(told(folder.resolve(name), "cycle")).toMatchObject([{ what: "use", uri: root + name }]);
    }
    expect(folder.resolve("a.crank").cars).toHaveLength(1);
    expect(told(folder.resolve("beside.crank"), "cycle")).toEqual([]);
  });

  it("of a file by itself is a circle of one", () => {
    const file = new Folder({ "a.crank": `use "a.crank"\n${car}` }).resolve("a.crank");
    expect(told(file, "cycle")).toHaveLength(1);
    expect(file.cars).toHaveLength(1);
  });

  it("of a thousand files in a row takes no stack", () => {
    const files = Object.fromEntries(
      Array.from({ length: 1000 }, (_, i) => [`f${i}.crank`, i === 999 ? car : `use "f${i + 1}.crank"\n`]),
    );
    files["a.crank"] = 'use "f0.crank"\nsetup day from linnet {\n}\n';
    expect(new Folder(files).resolve("a.crank").cars).toHaveLength(1);
  });
});

describe("a chain of set-ups", () => {
  it("over three files ends at the car, and each says what it derives from", () => {
    const files = {
      "car.crank": car,
      "damp.crank": 'use "car.crank"\nsetup damp from linnet {\n  front.track 1410 mm\n}\n',
      "wet.crank": 'use "damp.crank"\nsetup wet from damp {\n  front.track by +5 mm\n}\n',
    };
    const [wet] = new Folder(files).resolve("wet.crank").cars;
    expect(wet).toMatchObject({ name: "linnet", setup: "wet", base: "damp", bases: ["damp", "linnet"] });
    const track = wet?.axles.front?.track;
    expect(track?.value).toBeCloseTo(1.415, 12);
    expect(track?.chain.map((place) => textAt(files, place))).toEqual(["1400 mm", "1410 mm"]);
    expect(wet?.baseModel?.axles.front?.track?.value).toBeCloseTo(1.41, 12);
  });

  it("in a circle over files is told in each, with the way round", () => {
    const files = {
      "a.crank": 'use "b.crank"\nsetup a from b {\n}\n',
      "b.crank": 'use "c.crank"\nsetup b from c {\n}\n',
      "c.crank": 'use "a.crank"\nsetup c from a {\n}\n',
    };
    const folder = new Folder(files);
    for (const [name, path] of [
      ["a.crank", ["a", "b", "c", "a"]],
      ["b.crank", ["b", "c", "a", "b"]],
      ["c.crank", ["c", "a", "b", "c"]],
    ] as const) {
      const circles = told(folder.resolve(name), "cycle").filter((one) => one.kind === "cycle" && one.what === "from");
      expect(circles).toMatchObject([{ path, uri: root + name }]);
    }
  });

  it("that leads into a circle without being part of it has no car, and is not told to be a circle", () => {
    const file = new Folder({
      "a.crank": "setup a from b {\n}\nsetup b from c {\n}\nsetup c from b {\n}\n",
    }).resolve("a.crank");
    expect(file.cars).toEqual([]);
    const circles = told(file, "cycle").flatMap((one) => (one.kind === "cycle" ? [one.path[0]] : []));
    expect(circles).toEqual(["b", "c"]);
  });

  it("of a thousand set-ups takes no stack", () => {
    const setups = Array.from(
      { length: 1000 },
      (_, i) => `setup s${i} from ${i === 0 ? "linnet" : `s${i - 1}`} {\n  mass by +1 kg\n}\n`,
    );
    const { cars, problems } = new Folder({ "a.crank": car + setups.join("") }).resolve("a.crank");
    expect(cars.at(-1)?.mass?.value).toBe(1480);
    expect(problems.filter(({ kind }) => kind === "cycle" || kind === "unknown-name")).toEqual([]);
  });

  it("tells a mistake in the file where it stands, and not in those that use it", () => {
    const files = {
      "car.crank": car.replace("480 kg", "480 mm"),
      "wet.crank": 'use "car.crank"\nsetup wet from linnet {\n}\n',
    };
    const folder = new Folder(files);
    expect(told(folder.resolve("car.crank"), "dimension")).toHaveLength(1);
    expect(told(folder.resolve("wet.crank"), "dimension")).toEqual([]);
  });

  it("tells what only the set-up makes wrong at the set-up's name", () => {
    const base = car.replace(
      "axle front {",
      "axle front {\n    spring third for heave { rate 3 N/mm, ratio 1 }\n    trim by third\n",
    );
    const files = {
      "car.crank": base,
      "wet.crank": 'use "car.crank"\nsetup wet from linnet {\n  remove front.third\n}\n',
    };
    const folder = new Folder(files);
    expect(told(folder.resolve("car.crank"), "unknown-name")).toEqual([]);
    const [found] = told(folder.resolve("wet.crank"), "unknown-name");
    expect(found && textAt(files, found)).toBe("wet");
  });
});

describe("names", () => {
  const files: Files = {
    "parts.crank": "catalogue {\n  valving V-5 { damping 5 N*s/mm }\n}\n",
    "car.crank": `use "parts.crank"
let width = 1400 mm
car linnet {
  axle front {
    track width
    linkage {
      rocker { pivot (0, 200, 400) mm, axis (1, 0, 0), eye third (0, 200, 450) mm }
    }
    damper third for heave { fit V-5, between left.rocker.third and right.rocker.third }
    trim by third
  }
  case hairpin { speed 70 km/h }
  expect front.third.heave-sensitivity at hairpin above 0
}
`,
    "wet.crank": `use "car.crank"
setup wet from linnet {
  front.third.fit V-5
  front.track width + 10 mm
  front.linkage.rocker.eye.third (0, 201, 450) mm
  remove front.third
}
`,
  };
  const symbolsOf = (name: string) =>
    new Map(
      new Folder(files)
        .resolve(name)
        .symbols.map((symbol) => [
          `${symbol.target} ${symbol.path}`,
          { at: textAt(files, symbol.declaration), uri: symbol.declaration.uri, refs: symbol.references },
        ]),
    );

  it("are known with their place, and with every place that speaks of them", () => {
    const symbols = symbolsOf("car.crank");
    const count = (key: string) => symbols.get(key)?.refs.length;
    expect(symbols.get("element front.third")?.at).toBe("third");
    expect(count("element front.third")).toBe(2);
    expect(count("eye front.rocker.third")).toBe(2);
    expect(count("let width")).toBe(1);
    expect(count("case linnet.hairpin") ?? count("case hairpin")).toBe(1);
    expect(symbols.get("part V-5")).toMatchObject({ uri: `${root}parts.crank` });
    expect(count("part V-5")).toBe(1);
    expect(symbols.get("car linnet")?.refs).toEqual([]);
  });

  it("lead from a set-up's path to the car's declaration, each at its own segment", () => {
    const symbols = symbolsOf("wet.crank");
    const spoken = (key: string) => symbols.get(key)?.refs.map((place) => textAt(files, place));
    expect(symbols.get("element front.third")?.uri).toBe(`${root}car.crank`);
    expect(spoken("element front.third")).toEqual(["third", "third"]);
    expect(spoken("eye front.rocker.third")).toEqual(["third"]);
    expect(spoken("part V-5")).toEqual(["V-5"]);
    expect(spoken("car linnet")).toEqual(["linnet"]);
    expect(spoken("let width")).toEqual(["width"]);
  });

  it("are each told once a place, however often a line is read", () => {
    for (const name of Object.keys(files)) {
      for (const { refs } of symbolsOf(name).values()) {
        expect(new Set(refs.map(({ start }) => start)).size).toBe(refs.length);
        for (const { uri } of refs) expect(uri).toBe(root + name);
      }
    }
  });
});
