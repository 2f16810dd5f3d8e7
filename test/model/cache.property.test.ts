/**
 * What the resolver remembers: the same object while nothing changed that a file rests on, another one as soon as
 * something did, and never anything but what resolving afresh would give, whatever is edited, deleted or put back.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ResolveCache, type ResolvedFile } from "../../server/model/resolve.js";
import { Folder } from "./resolved.js";

const start = {
  "parts.crank":
    "let step = 5 N/mm\ncatalogue {\n  valving V-5 { damping 5 N*s/mm }\n  torsion-bar TB { diameter 18 mm, length 290 mm }\n}\n",
  "car.crank": `use "parts.crank"
car linnet {
  mass 480 kg
  axle front {
    track 1400 mm
    spring third for heave { rate 40 N/mm + step, ratio 1 }
    damper side for corner { fit V-5, ratio 0.8 }
    spring stack for heave { curve from csv "stack.csv", ratio 0.5 }
    right { side.ratio 0.9 }
  }
}
`,
  "damp.crank": 'use "car.crank"\nsetup damp from linnet {\n  front.third.rate by +5 N/mm\n}\n',
  "wet.crank":
    'use "damp.crank"\nsetup wet from damp {\n  front.track front.track + 10 mm\n  mass 470 kg\n}\nsetup wetter from wet {\n  front.side.fit V-5\n}\n',
  "stack.csv": "travel [mm],force [N]\n0,0\n10,900\n",
} as const;
type Name = keyof typeof start;
const names = Object.keys(start) as Name[];
const cranks = names.filter((name) => name.endsWith(".crank"));

/** Everything that is published but the symbols' order, which nothing rests on. */
function told({ uri, cars, problems, uses, symbols }: ResolvedFile): string {
  const shown = symbols.map((symbol) => JSON.stringify(symbol)).sort((a, b) => (a < b ? -1 : 1));
  return JSON.stringify({ uri, cars, problems, uses, shown }, (_, value: unknown) =>
    value instanceof Map ? [...value] : value,
  );
}

interface Edit {
  readonly kind: "edit";
  readonly name: Name;
  readonly at: number;
  readonly cut: number;
  readonly insert: string;
}
type Change =
  | Edit
  | { readonly kind: "delete"; readonly name: Name }
  | { readonly kind: "restore"; readonly name: Name };

const change: fc.Arbitrary<Change> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({
      kind: fc.constant("edit" as const),
      name: fc.constantFrom(...names),
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      cut: fc.nat(4),
      insert: fc.constantFrom(
        "",
        "1",
        "0",
        "9",
        " ",
        "\n",
        "{",
        "}",
        "x",
        "by +",
        "let a = 1 mm\n",
        'use "wet.crank"\n',
        "V-5",
        "step",
      ),
    }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant("delete" as const), name: fc.constantFrom(...names) }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant("restore" as const), name: fc.constantFrom(...names) }) },
);

class Edited {
  readonly folder = new Folder(start);
  readonly #texts = new Map<Name, string>(names.map((name) => [name, start[name]]));

  apply(one: Change): void {
    if (one.kind === "delete") {
      this.#texts.delete(one.name);
      this.folder.delete(one.name);
      return;
    }
    const before = this.#texts.get(one.name) ?? "";
    this.#write(one.name, one.kind === "restore" ? start[one.name] : edited(before, one));
  }

  #write(name: Name, text: string): void {
    this.#texts.set(name, text);
    this.folder.write(name, text);
  }
}

function edited(text: string, { at, cut, insert }: Edit): string {
  const from = Math.floor(at * text.length);
  return text.slice(0, from) + insert + text.slice(from + cut);
}

describe("with a memory", () => {
  it("every file resolves to what it does without one, after any edits of any files", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(change, fc.subarray(cranks, { minLength: 1 })), { minLength: 1, maxLength: 12 }),
        (steps) => {
          const edits = new Edited();
          const cache = new ResolveCache();
          for (const name of cranks) edits.folder.resolve(name, cache);
          for (const [one, asked] of steps) {
            edits.apply(one);
            for (const name of asked) {
              const [kept, fresh] = [edits.folder.resolve(name, cache), edits.folder.resolve(name)];
              expect(told(kept)).toBe(told(fresh));
              // Tables are read when a car is built that holds them; one that was built before has read more.
              expect(new Set(kept.readsText)).toEqual(new Set([...kept.readsText, ...fresh.readsText]));
            }
          }
        },
      ),
      { numRuns: 150 },
    );
  });

  it("a file is the same object while nothing changed that it rests on", () => {
    const folder = new Folder(start);
    const cache = new ResolveCache();
    const first = cranks.map((name) => folder.resolve(name, cache));
    expect(cranks.map((name) => folder.resolve(name, cache))).toEqual(first);
    for (const [index, name] of cranks.entries()) expect(folder.resolve(name, cache)).toBe(first[index]);
    folder.write("parts.crank", start["parts.crank"]);
    expect(folder.resolve("wet.crank", cache)).toBe(first[cranks.indexOf("wet.crank")]);
  });

  it.each([
    ["parts.crank", ["parts.crank", "car.crank", "damp.crank", "wet.crank"]],
    ["car.crank", ["car.crank", "damp.crank", "wet.crank"]],
    ["stack.csv", ["car.crank", "damp.crank", "wet.crank"]],
    ["damp.crank", ["damp.crank", "wet.crank"]],
    ["wet.crank", ["wet.crank"]],
  ] as const)("a change in %s makes new what rests on it, and nothing else", (changed, affected) => {
    const folder = new Folder(start);
    const cache = new ResolveCache();
    const before = new Map(cranks.map((name) => [name, folder.resolve(name, cache)]));
    folder.write(changed, `${start[changed]}${changed.endsWith(".csv") ? "20,1900\n" : "# later\n"}`);
    const renewed = cranks.filter((name) => folder.resolve(name, cache) !== before.get(name));
    expect(new Set(renewed)).toEqual(new Set(affected));
  });

  it("a file that comes, goes, or turns out to be no text is told as what it is now", () => {
    const folder = new Folder(start);
    const cache = new ResolveCache();
    const reasons = () =>
      folder
        .resolve("damp.crank", cache)
        .problems.flatMap((one) => (one.kind === "file-not-found" ? [one.reason] : []));
    expect(reasons()).toEqual([]);
    folder.delete("car.crank");
    expect(reasons()).toEqual(["missing"]);
    const source = folder.source.bind(folder);
    folder.source = (uri) => (uri.endsWith("car.crank") ? { missing: "not-text" } : source(uri));
    expect(reasons()).toEqual(["not-text"]);
    folder.source = source;
    folder.write("car.crank", start["car.crank"]);
    expect(reasons()).toEqual([]);
  });
});
