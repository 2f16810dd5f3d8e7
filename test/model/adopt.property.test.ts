/**
 * Typing into a file of several cars and set-ups, with what was built before at hand, has to end where building all
 * of it anew ends: the same cars, problems and names.
 */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse, type Parsed, reparse } from "../../grammar/index.js";
import { ResolveCache, resolveFile, type ResolvedFile } from "../../server/model/resolve.js";

const car = readFileSync("samples/quill/quill.crank", "utf8").replace(/^use .*$/m, "");
const parts = readFileSync("samples/quill/parts.crank", "utf8");
const setups = ["dry", "wet"].map((name) =>
  readFileSync(`samples/quill/${name}.crank`, "utf8").replace(/^use .*$/m, ""),
);
const short = `car two "Second" { wheelbase 2400 mm, mass 400 kg }\n\nsetup two-low from two { mass 390 kg }\n\nsetup two-lower from two-low {\n  ## lighter still\n  mass 380 kg\n}\n`;
const small = `use "parts.crank"\n\n${short}\n## of the third\ncar three "Third" {\n  let m = 300 kg\n  mass m\n  mass-front 120 %\n}\n\nsetup three-a from three { front.third.rate 3 N/mm }\nsetup lost from nowhere { mass 1 kg }\n`;
const whole = `${parts}\n${car}\n${setups.join("\n")}\n${short}`;

const main = "file:///club/main.crank";
const shelf = "file:///club/parts.crank";

type Texts = ReadonlyMap<string, string>;

/** With a memory it reads on from the last version of each text, as a workspace does. */
function resolver(cache?: ResolveCache): (texts: Texts) => ResolvedFile {
  const parsedOf = new Map<string, Parsed>();
  const latest = new Map<string, Parsed>();
  return (texts) =>
    resolveFile(
      main,
      (uri) => {
        const text = texts.get(uri);
        if (text === undefined) return { missing: "missing" };
        const kept = parsedOf.get(text);
        const before = cache && latest.get(uri);
        const parsed = kept ?? (before === undefined ? parse(text) : reparse(text, before));
        parsedOf.set(text, parsed);
        latest.set(uri, parsed);
        return { parsed };
      },
      () => ({ missing: "missing" }),
      cache,
    );
}

/** Everything that is published, bases as deep as they go. */
const told = ({ cars, problems, symbols, uses }: ResolvedFile): string =>
  JSON.stringify({ cars, problems, symbols: [...symbols].sort((a, b) => (key(a) < key(b) ? -1 : 1)), uses }, numbers);

const key = ({ declaration, path }: ResolvedFile["symbols"][number]): string =>
  `${declaration.uri} ${String(declaration.start).padStart(9, "0")} ${path}`;

const numbers = (_: string, value: unknown): unknown => (value instanceof Map ? [...value] : value);

/** Either anything anywhere, or one digit for another, which leaves everything behind it in place. */
interface Edit {
  readonly at: number;
  readonly remove: number;
  readonly insert: string;
  readonly isDigit: boolean;
  readonly inShelf: boolean;
}

const at = fc.double({ min: 0, max: 1, noNaN: true });
const inShelf = fc.integer({ min: 0, max: 9 }).map((n) => n === 0);
const odd = ["", " ", "\n", "{", "}", ",", "a", "## x\n", "# y\n", "let q = 2 mm\n", "remove ", '"', "by "];
const anything = fc.record({
  at,
  remove: fc.nat(3),
  insert: fc.constantFrom(...odd),
  isDigit: fc.constant(false),
  inShelf,
});
const digit = fc.record({
  at,
  remove: fc.constant(1),
  insert: fc.integer({ min: 0, max: 9 }).map(String),
  isDigit: fc.constant(true),
  inShelf,
});
const oneMore = digit.map((edit): Edit => ({ ...edit, remove: 0 }));
const edits = fc.array(fc.oneof({ arbitrary: digit, weight: 3 }, { arbitrary: oneMore, weight: 2 }, anything), {
  minLength: 1,
  maxLength: 12,
});

function edited(text: string, { at: share, remove, insert, isDigit }: Edit): string {
  const from = Math.floor(share * text.length);
  const digitAt = isDigit ? text.slice(from).search(/\d/) : 0;
  if (digitAt < 0) return text;
  return text.slice(0, from + digitAt) + insert + text.slice(from + digitAt + remove);
}

describe("a file that is typed into", () => {
  for (const [name, text, runs] of [
    ["small cars and set-ups", small, 150],
    ["a whole car with its parts and set-ups", whole, 12],
  ] as const) {
    it(`is resolved as if it were new: ${name}`, () => {
      fc.assert(
        fc.property(edits, (list) => {
          const withMemory = resolver(new ResolveCache());
          let texts: Texts = new Map([
            [main, text],
            [shelf, parts],
          ]);
          withMemory(texts);
          for (const edit of list) {
            const uri = edit.inShelf ? shelf : main;
            texts = new Map([...texts, [uri, edited(texts.get(uri) ?? "", edit)]]);
            expect(told(withMemory(texts))).toBe(told(resolver()(texts)));
          }
        }),
        { numRuns: runs },
      );
    });
  }

  it("keeps the very objects of the cars that were not touched", () => {
    const resolve = resolver(new ResolveCache());
    const before = resolve(
      new Map([
        [main, small],
        [shelf, parts],
      ]),
    );
    const after = resolve(
      new Map([
        [main, small.replace("mass-front 120 %", "mass-front 44 %")],
        [shelf, parts],
      ]),
    );
    const named = (file: ResolvedFile, wanted: string) =>
      file.cars.find(({ setup, name }) => (setup ?? name) === wanted);
    expect(named(before, "two-lower")).toBeDefined();
    expect(named(after, "two-lower")).toBe(named(before, "two-lower"));
    expect(named(after, "three")).not.toBe(named(before, "three"));
    expect(named(after, "three-a")).not.toBe(named(before, "three-a"));
  });
});
