/**
 * What no set-up holds and some text will: very long, very deep, or not text at all. The answer is
 * clear and comes in time proportional to the text; that it is not quadratic is held by sizes at
 * which it would take minutes.
 */
import { describe, expect, it } from "vitest";
import { format, parse } from "../../grammar/index.js";
import { BellcrankParser } from "../../grammar/parser.js";
import { showDocument, showProblems } from "./s-expression.js";

const kinds = (text: string) => [...new Set(parse(text).problems.map(({ kind }) => kind))];

describe("the grammar", () => {
  it("is one that chevrotain finds no fault with", () => {
    expect(() => new BellcrankParser(true)).not.toThrow();
  });
});

describe("depth", () => {
  const nested = (depth: number) => `${"a {\n".repeat(depth)}b 1\n${"}\n".repeat(depth)}c 2\n`;

  it("of 200 blocks is read", () => {
    expect(parse(nested(200)).problems).toEqual([]);
    expect(format(format(nested(200)))).toBe(format(nested(200)));
  });

  it.each([201, 10_000, 100_000])("of %i blocks is told once, and what follows is read", (depth) => {
    const { document, problems } = parse(nested(depth));
    expect(problems).toEqual([{ kind: "too-deep", start: 200 * 4 + 2, end: 200 * 4 + 3, limit: 200 }]);
    expect(document.entries).toHaveLength(2);
    expect(format(nested(depth))).toContain("b 1");
  });

  it("of blocks that nobody closes is told", () => {
    expect(kinds("a {\n".repeat(50_000))).toEqual(["unclosed-block", "too-deep"]);
    expect(parse("}".repeat(50_000)).problems).toHaveLength(50_000);
  });

  it.each([
    ["brackets", `let a = ${"(".repeat(50_000)}1${")".repeat(50_000)}`, ["unexpected", "too-deep"]],
    ["brackets that nobody closes", `a ${"(".repeat(50_000)}\nb 1`, ["unclosed-bracket", "unexpected", "too-deep"]],
    ["operators", `let a = 1${" + 1".repeat(50_000)}`, ["too-deep"]],
    ["powers of products", `let a = 1${" * 1 + 1".repeat(50_000)}`, ["too-deep"]],
    ["minuses", `let a = ${"-".repeat(50_000)}b`, ["unexpected"]],
  ])("of %s is told", (_, text, expected) => {
    expect(kinds(text)).toEqual(expected);
    expect(parse(text).problems.length).toBeLessThan(10);
    expect(() => showDocument(parse(text).document)).not.toThrow();
    expect(format(text).replace(/\s/g, "")).toBe(text.replace(/\s/g, ""));
  });
});

describe("length", () => {
  it("of a name beyond 200 characters is told, and the name is kept", () => {
    const name = "n".repeat(10_000);
    const { document, problems } = parse(`fit ${name}\nmass 5 kg`);
    expect(problems).toEqual([{ kind: "too-long-name", start: 4, end: 10_004, limit: 200 }]);
    expect(showDocument(document)).toBe(`(fit ${name})\n(mass 5[kg])`);
    expect(parse(`fit ${"é".repeat(200)}`).problems).toEqual([]);
  });

  it("of 10,000 lines and more is read", () => {
    const text = `car a {\n${"  spring s for heave { rate 120 N/mm, between a.b and chassis (1, 2, 3) mm }  # why\n".repeat(20_000)}}\n`;
    expect(parse(text).problems).toEqual([]);
    expect(format(text).split("\n")).toHaveLength(20_000 * 4 + 3);
  });

  it("of lines that are all broken is answered", () => {
    for (const line of ["fore (1, 2,\n", "rate @ 3\n", 'use "a\n', "let a = \n", "a (\n# c\n", "12,5\n", "a }\n"]) {
      const text = line.repeat(20_000);
      expect(parse(text).problems.length).toBeGreaterThanOrEqual(20_000);
      expect(format(text).length).toBeGreaterThan(20_000);
    }
  });

  it.each(["1".repeat(100_000), `1.${"0".repeat(100_000)}1`, `1${".1".repeat(50_000)}`, "1,".repeat(50_000)])(
    "of a number is answered (%#)",
    (number) => {
      const { document } = parse(`a ${number} mm`);
      expect(document.entries.length).toBeGreaterThan(0);
      expect(showDocument(document)).not.toMatch(/NaN|Infinity/);
    },
  );
});

describe("text that is hardly text", () => {
  it("reads a byte order mark, Windows' line ends and letters of any script", () => {
    const { document, problems } = parse("\ufeffcar größe {\r\n  масса 545 kg\r\n  重量 1 %\r\n}\r\n");
    expect(problems).toEqual([]);
    expect(showDocument(document)).toBe("(car größe {\n  (масса 545[kg])\n  (重量 1[%])})");
  });

  it("reads blanks that word processors leave", () => {
    expect(showDocument(parse("rate\u00a0120\u00a0N/mm\u2003# c").document)).toBe("(rate 120[N/mm])");
  });

  it("tells bytes that were not UTF-8 once, and keeps the name around them whole", () => {
    const parsed = parse("fit M\ufffdller\n# \ufffd\n");
    expect(showProblems(parsed)).toBe('not-utf8 5:"\ufffd"');
    expect(showDocument(parsed.document)).toBe("(fit M\ufffdller)");
  });

  it("tells NUL bytes and lone surrogates, a run of them once", () => {
    expect(parse("mass\0\0\0 5 kg").problems).toEqual([{ kind: "bad-character", start: 4, end: 7, found: "\0\0\0" }]);
    expect(parse("mass \ud800 5 kg").problems).toEqual([{ kind: "bad-character", start: 5, end: 6, found: "\ud800" }]);
    expect(parse('"\ud800" # \0').problems.map(({ kind }) => kind)).toEqual(["unexpected"]);
    expect(parse("\0".repeat(1_000_000)).problems).toHaveLength(1);
  });

  it("reads each after the other without remembering anything", () => {
    parse("a { b (");
    expect(parse("c 1")).toMatchObject({ problems: [], comments: [] });
  });
});
