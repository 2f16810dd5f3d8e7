/**
 * Rename over all samples: whatever has a name is called otherwise in every file that speaks of it. The second method beside the
 * symbols: the new texts are resolved from nothing, and have to say the same car; and naming back gives the old texts.
 */
import { dirname } from "node:path/posix";
import { describe, expect, it } from "vitest";
import { applyEdits } from "../../server/findings/run.js";
import type { ModelSymbol } from "../../server/model/resolved-file.js";
import { createWorkspace } from "../../server/snapshot/create.js";
import type { FileView } from "../../server/snapshot/workspace.js";
import { rename } from "../../server/views/rename.js";
import { uriOf } from "../support/context.js";
import { sampleNames, samples } from "../support/samples.js";

type Texts = Readonly<Record<string, string>>;

const NEW = "other-name";

function viewsOf(texts: Texts): readonly FileView[] {
  const byUri = new Map(Object.entries(texts).map(([name, text]) => [uriOf(name), text]));
  const workspace = createWorkspace({
    read(uri) {
      const text = byUri.get(uri);
      return text === undefined ? { missing: "missing" } : { text };
    },
  });
  return [...byUri.keys()].filter((uri) => uri.endsWith(".crank")).map((uri) => workspace.file(uri));
}

function renamed(texts: Texts, symbol: ModelSymbol, to: string, files: readonly FileView[]): Texts {
  const result = rename(symbol, to, files);
  if ("refused" in result) throw new Error(result.refused);
  const of = (name: string) => result.edits.filter(({ uri }) => uri === uriOf(name));
  return Object.fromEntries(Object.entries(texts).map(([name, text]) => [name, applyEdits(text, of(name))]));
}

const problemsOf = (files: readonly FileView[]): readonly string[] =>
  files.flatMap(({ uri, problems, parsed }) => [...problems, ...parsed.problems].map(({ kind }) => `${uri} ${kind}`));

/** The models as plain data without places and without the way that they were read. */
function carsOf(files: readonly FileView[], name?: string): unknown {
  const plain = (key: string, value: unknown): unknown => {
    const isPlace = (key === "start" || key === "end") && typeof value === "number";
    if (isPlace || /origin|statement$|chain|^root$|formula|^baseModel$/i.test(key)) return undefined;
    if (value instanceof Map) return [...value.entries()];
    return typeof value === "string" && name !== undefined ? value.replaceAll(NEW, name) : value;
  };
  return files.flatMap(({ cars }) => cars.map(({ model }): unknown => JSON.parse(JSON.stringify(model, plain))));
}

const calledNew = (files: readonly FileView[], uri: string): ModelSymbol | undefined =>
  files.flatMap(({ symbols }) => symbols).find(({ name, declaration }) => name === NEW && declaration.uri === uri);

/** Cars with their catalogues and set-ups; the short ones, which stand alone, one by one. */
const sets: readonly (readonly [title: string, texts: Texts])[] = [
  ...["quill", "tern", "dunlin"].map((folder) => [folder, textsOf((name) => dirname(name) === folder)] as const),
  ...sampleNames
    .filter((name) => name.startsWith("systems/"))
    .map((name) => [name, textsOf((other) => other === name || other.endsWith(".csv"))] as const),
];

function textsOf(isIn: (name: string) => boolean): Texts {
  return Object.fromEntries(Object.entries(samples).filter(([name]) => isIn(name)));
}

describe.each(sets)("renaming in %s", (_set, texts) => {
  const files = viewsOf(texts);
  const problems = problemsOf(files);
  const cars = carsOf(files);
  const declared = files.flatMap((file) => file.symbols.filter(({ declaration }) => declaration.uri === file.uri));

  it.each(declared.map((symbol) => [symbol.target, symbol.path, symbol] as const))(
    "%s %s",
    (_target, _path, symbol) => {
      const now = renamed(texts, symbol, NEW, files);
      const after = viewsOf(now);
      expect(problemsOf(after)).toEqual(problems);
      expect(carsOf(after, symbol.name)).toEqual(cars);
      const back = calledNew(after, symbol.declaration.uri);
      expect(back && renamed(now, back, symbol.name, after)).toEqual(texts);
    },
  );
});

describe("what a name may become", () => {
  const car = (name: string, front: string): string => `car ${name} {
  axle front {
    spring coil for heave { rate 30 N/mm, ratio heave 1 }
${front}
  }
  case fast { speed 100 km/h }
}
`;
  const texts: Texts = {
    "one.crank": `use "shelf.crank"\n${car("wren", "    damper side for corner { fit V-1, ratio corner 1 }")}`,
    "two.crank": `use "shelf.crank"\n${car("finch", "    spring third for heave { rate 20 N/mm, ratio heave 1 }")}`,
    "shelf.crank":
      "catalogue {\n  valving V-1 { bump { 50 mm/s: 300 N }, rebound { 50 mm/s: 300 N } }\n  valving V-2 { bump { 50 mm/s: 300 N }, rebound { 50 mm/s: 300 N } }\n}\n",
    "wet.crank": `use "one.crank"\nsetup wet from wren {\n  front.coil.rate 20 N/mm\n  front { spring fourth for heave { rate 1 N/mm, ratio heave 1 } }\n}\n`,
    "dry.crank": `use "two.crank"\nsetup dry from finch {\n  front.coil.rate 20 N/mm\n}\n`,
    "lets.crank": `let soft = 20 N/mm\nlet mild = 30 N/mm\nuse "one.crank"\nsetup warm from wren {\n  front.coil.rate soft\n}\n`,
  };
  const files = viewsOf(texts);
  const symbol = (uri: string, name: string): ModelSymbol => {
    const found = files
      .flatMap(({ symbols }) => symbols)
      .find((one) => one.name === name && one.declaration.uri === uriOf(uri));
    if (found === undefined) throw new Error(`no ${name} in ${uri}`);
    return found;
  };
  const refusal = (uri: string, name: string, to: string): string | undefined => {
    const result = rename(symbol(uri, name), to, files);
    return "refused" in result ? result.refused : undefined;
  };

  it("is refused what no name looks like, and what is a word in its place", () => {
    expect(refusal("one.crank", "wren", "two words")).toMatch(/is not a name/);
    expect(refusal("one.crank", "wren", "-x")).toMatch(/is not a name/);
    expect(refusal("one.crank", "coil", "trim")).toBe('"trim" is a word of the language and cannot name an element.');
    expect(refusal("one.crank", "coil", "left")).toMatch(/is a word of the language/);
    expect(refusal("lets.crank", "soft", "rate")).toMatch(/cannot name a let/);
    expect(refusal("one.crank", "fast", "front")).toMatch(/cannot name a case/);
    expect(refusal("one.crank", "wren", "spring")).toBeUndefined();
    expect(refusal("shelf.crank", "V-1", "damper")).toBeUndefined();
  });

  it("is refused what has the name already where both are spoken of", () => {
    expect(refusal("one.crank", "coil", "side")).toBe('"side" already names an element.');
    expect(refusal("shelf.crank", "V-1", "V-2")).toBe('"V-2" already names a part.');
    expect(refusal("wet.crank", "wet", "wren")).toBe('"wren" already names a car in one.crank.');
    expect(refusal("one.crank", "wren", "wet")).toBe('"wet" already names a set-up in wet.crank.');
    expect(refusal("lets.crank", "soft", "mild")).toBe('"mild" already names a let.');
  });

  it("may be what another car calls its own", () => {
    expect(refusal("one.crank", "coil", "third")).toBeUndefined();
    expect(refusal("wet.crank", "wet", "dry")).toBeUndefined();
    expect(refusal("one.crank", "wren", "finch")).toBeUndefined();
  });

  it("is refused what a set-up of the car adds, and the other way round", () => {
    expect(refusal("one.crank", "coil", "fourth")).toBe('"fourth" already names an element in wet.crank.');
    expect(refusal("wet.crank", "fourth", "coil")).toBe('"coil" already names an element in one.crank.');
  });
});
