/** Reading on from the last version of a text has to give what reading it anew gives, node by node. */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse, type Parsed, reparse } from "../../grammar/index.js";
import { programArbitrary, soupArbitrary } from "./program-arbitrary.js";
import { programs } from "./programs.js";

const club = ["parts", "quill", "dry", "wet"]
  .map((name) => readFileSync(`samples/quill/${name}.crank`, "utf8"))
  .join("\n");
const small =
  'use "a.crank"\n\n# one\n## note\ncar a "A" { mass 1 kg }\n\n\n## of b\n## and more\ncar b {\n  mass (2 + 3) * 1 kg  # two\n  axle front { track 3 m }\n}\nlet x = 4 mm\nlet y = 5 mm\nsetup c from b { front.track 5 m }\n# end\n## left over\n';
const texts = fc.oneof(
  fc.constantFrom(small, club, ...programs.map(([, text]) => text), "\ufeff" + small, small.replaceAll("\n", "\r\n")),
  fc.array(programArbitrary, { minLength: 1, maxLength: 4 }).map((several) => several.join("\n")),
);

interface Edit {
  readonly at: number;
  readonly remove: number;
  readonly insert: string;
}

const shares = fc.double({ min: 0, max: 1, noNaN: true });
const pieces = [
  "",
  "1",
  " ",
  "\n",
  "{",
  "}",
  "(",
  ")",
  ",",
  "a",
  "#",
  "##",
  "# y\n",
  "## y\n",
  '"',
  "\r",
  "car z { mass 3 kg }\n",
  ".",
];
const edit: fc.Arbitrary<Edit> = fc.oneof(
  fc.record({ at: shares, remove: fc.nat(2), insert: fc.constantFrom(...pieces) }),
  fc.record({ at: shares, remove: fc.constant(1), insert: fc.constantFrom("7", "x", "\n", "#", "{", "}") }),
  fc.record({ at: shares, remove: fc.nat(40), insert: soupArbitrary }),
);

const applied = (text: string, { at, remove, insert }: Edit): string => {
  const place = Math.floor(at * text.length);
  return text.slice(0, place) + insert + text.slice(place + remove);
};

const shown = ({ document, comments, problems, text }: Parsed): string =>
  JSON.stringify({ document, comments, problems, text });

describe("reading on", () => {
  it("gives what reading anew gives", () => {
    fc.assert(
      fc.property(texts, fc.array(edit, { minLength: 1, maxLength: 10 }), (text, edits) => {
        let parsed = parse(text);
        for (const one of edits) {
          const next = applied(parsed.text, one);
          parsed = reparse(next, parsed);
          expect(shown(parsed)).toBe(shown(parse(next)));
        }
      }),
      { numRuns: 600 },
    );
  });

  it("keeps the nodes before the change, and behind it where nothing moved", () => {
    const before = parse(small);
    const typed = reparse(small.replace("mass (2", "mass (7"), before);
    const names = typed.document.entries.map((entry, i) => entry === before.document.entries[i]);
    expect(names).toEqual([true, true, false, true, true, true]);
    const longer = reparse(small.replace("mass (2", "mass (22"), before);
    expect(longer.document.entries.map((entry, i) => entry === before.document.entries[i])).toEqual([
      true,
      true,
      false,
      false,
      false,
      false,
    ]);
  });
});
