/** What the formatter promises for every text: twice is once, nothing said is lost, and edits lead to the same. */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { format, formatEdits, formatRange, parse, type Parsed, type TextEdit } from "../../grammar/index.js";
import { programArbitrary, soupArbitrary } from "./program-arbitrary.js";
import { programs } from "./programs.js";
import { showDocument } from "./s-expression.js";

/** Text without what the formatter may change. */
const ink = (text: string) => text.replace(/[\s,]/g, "");
const commentsOf = ({ comments }: Parsed) => comments.map(({ text }) => text);

function apply(text: string, edits: readonly TextEdit[]): string {
  return [...edits]
    .reverse()
    .reduce((old, { span, newText }) => old.slice(0, span.start) + newText + old.slice(span.end), text);
}

/** For every text, whether it can be read or not. */
function checkText(text: string): void {
  const formatted = format(text);
  expect(ink(formatted)).toBe(ink(text));
  expect(format(formatted)).toBe(formatted);
  expect(apply(text, formatEdits(text))).toBe(formatted);
}

function checkPromises(text: string): void {
  checkText(text);
  const before = parse(text);
  const after = parse(format(text));
  expect(showDocument(after.document)).toBe(showDocument(before.document));
  expect(commentsOf(after)).toEqual(commentsOf(before));
}

/** Every `.crank` file of the samples. */
function samples(folder = new URL("../../samples/", import.meta.url)): [string, string][] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".crank"))
    .sort()
    .map((name) => [name, readFileSync(new URL(name, folder), "utf8")]);
}

const fixtures = readdirSync(new URL("./fixtures/", import.meta.url)).flatMap((file) =>
  readFileSync(new URL(`./fixtures/${file}`, import.meta.url), "utf8")
    .split(/^=== /m)
    .slice(1)
    .map((part): [string, string] => [
      part.split("\n", 1)[0] ?? "",
      part.slice(part.indexOf("\n") + 1).split(/^---$/m)[0] ?? "",
    ]),
);

describe("formatting", () => {
  it.each(programs)("keeps what %s says", (_, text) => checkPromises(text));
  it.each(samples())("keeps what samples/%s says", (_, text) => checkPromises(text));
  it.each(fixtures)("keeps what the fixture says: %s", (_, text) => checkPromises(text));

  it("keeps what any program says, however it is laid out", () => {
    fc.assert(fc.property(programArbitrary, checkPromises), { numRuns: 1500 });
  });

  it("keeps all of a program in which a piece is broken", () => {
    const broken = fc.tuple(programArbitrary, fc.nat(), soupArbitrary).map(([text, at, rubbish]) => {
      const place = at % (text.length + 1);
      return text.slice(0, place) + rubbish + text.slice(place);
    });
    fc.assert(fc.property(fc.oneof(broken, soupArbitrary), checkText), { numRuns: 2500 });
  });

  it("gives one layout, whatever the blanks and empty lines were", () => {
    for (const [, text] of programs) {
      const squeezed = text
        .split("\n")
        .map((line) => (/[#"]/.test(line) ? line : line.replace(/ +(?=[{}:])/g, "").replace(/([{:,]) +/g, "$1")).trim())
        .join("\n");
      expect(format(squeezed)).toBe(text);
      expect(squeezed).not.toBe(text);
    }
  });

  it("of a range, and then of the rest, ends in the same layout", () => {
    fc.assert(
      fc.property(programArbitrary, fc.nat(), fc.nat(), (text, a, b) => {
        const [start = 0, end = 0] = [a % (text.length + 1), b % (text.length + 1)].sort((x, y) => x - y);
        const edit = formatRange(text, { start, end });
        const partly = edit === undefined ? text : apply(text, [edit]);
        expect(showDocument(parse(partly).document)).toBe(showDocument(parse(text).document));
        expect(format(partly)).toBe(format(text));
      }),
      { numRuns: 1000 },
    );
  });
});
