/** The TextMate grammar on real text: scopes of a sample, and agreement with the parser on any text. */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { type Node, parse } from "../../grammar/index.js";
import { words } from "../../grammar/vocabulary/index.js";
import { everyUnit } from "./every-unit.js";
import { tokeniser, type Piece } from "./tokenise.js";

let tokenise: (text: string) => Piece[];
beforeAll(async () => {
  tokenise = await tokeniser();
});

const scopesOf = (text: string): string[] =>
  tokenise(text)
    .filter((piece) => piece.text.trim() !== "")
    .map((piece) => `${piece.text.trim()} ${piece.scope}`);

describe("scopes", () => {
  it("of an element on one line", () => {
    expect(
      scopesOf("  damper roll-damper for roll { fit V-22, between left.rocker.roll-high and rocker.x }  # why"),
    ).toEqual([
      "damper storage.type.element",
      "roll-damper entity.name.type.element",
      "for keyword.operator.word",
      "roll constant.language.mode",
      "{ punctuation.section.block",
      "fit keyword.control",
      "V-22 variable.other",
      ", punctuation.separator",
      "between keyword.other.connection",
      "left variable.language.side",
      ". punctuation.accessor",
      "rocker variable.other.path",
      ". punctuation.accessor",
      "roll-high variable.other.path",
      "and keyword.operator.word",
      "rocker variable.other.path",
      ". punctuation.accessor",
      "x variable.other.path",
      "} punctuation.section.block",
      "# why comment.line.number-sign",
    ]);
  });

  it("of numbers, pairs, points, ranges and their units", () => {
    expect(scopesOf("section 8x30 mm\nend (-4, 640.5, 150) mm\ntravel -30 .. 25 mm\nposition 3 of 5")).toEqual([
      "section support.type.property-name",
      "8 constant.numeric",
      "x keyword.operator.word",
      "30 constant.numeric",
      "mm keyword.other.unit",
      "end support.type.property-name",
      "( punctuation.section.parens.begin",
      "-4 constant.numeric",
      ", punctuation.separator",
      "640.5 constant.numeric",
      ", punctuation.separator",
      "150 constant.numeric",
      ") punctuation.section.parens.end",
      "mm keyword.other.unit",
      "travel support.type.property-name",
      "-30 constant.numeric",
      ".. keyword.operator.range",
      "25 constant.numeric",
      "mm keyword.other.unit",
      "position support.type.property-name",
      "3 constant.numeric",
      "of keyword.operator.word",
      "5 constant.numeric",
    ]);
  });

  it("of notes, declarations, overrides and rows", () => {
    expect(scopesOf("## softer\nsetup wet from dry {\nfront.side.rate by +2 N/mm\nbump { 50 mm/s: 320 N }\n}")).toEqual(
      [
        "## softer comment.block.documentation",
        "setup keyword.control",
        "wet entity.name.type.setup",
        "from keyword.operator.word",
        "dry variable.other",
        "{ punctuation.section.block",
        "front variable.language.side",
        ". punctuation.accessor",
        "side variable.other.path",
        ". punctuation.accessor",
        "rate variable.other.path",
        "by keyword.operator.word",
        "+2 constant.numeric",
        "N/mm keyword.other.unit",
        "bump support.type.property-name",
        "{ punctuation.section.block",
        "50 constant.numeric",
        "mm/s keyword.other.unit",
        ": punctuation.separator.key-value",
        "320 constant.numeric",
        "N keyword.other.unit",
        "} punctuation.section.block",
        "} punctuation.section.block",
      ],
    );
  });

  it("of every word of the vocabulary, at the start of its statement", () => {
    const bare = words.filter(({ word }) => {
      const first = tokenise(`{ ${word} }`).find((piece) => piece.text === word);
      return !/^(keyword|storage|support)\./.test(first?.scope ?? "");
    });
    expect(bare.map(({ word }) => word)).toEqual([]);
  });

  it("come back to themselves after a half-typed line", () => {
    const pieces = tokenise('pivot (10, 20\n  axis (1, 0, 0)\nuse "parts\nmass 5 kg');
    const scopeOf = (text: string): string | undefined => pieces.find((piece) => piece.text === text)?.scope;
    expect(scopeOf("axis")).toBe("support.type.property-name");
    expect(scopeOf("mass")).toBe("support.type.property-name");
    expect(scopeOf("kg")).toBe("keyword.other.unit");
  });
});

/** Where the parser's tree has numbers, units, texts and comments: `start end kind`. */
function byParser(text: string): Set<string> {
  const found = new Set<string>();
  const { document, comments } = parse(text);
  visit(document, found);
  for (const comment of comments) visit(comment, found);
  return found;
}

const leaves: Readonly<Record<string, string>> = { unit: "unit", text: "text", note: "comment", comment: "comment" };

/** Every node below, whatever holds it. */
function visit(value: unknown, found: Set<string>): void {
  if (typeof value !== "object" || value === null) return;
  if ("kind" in value) {
    const node = value as Node;
    const leaf = leaves[node.kind];
    if (leaf !== undefined) found.add(`${node.start} ${node.end} ${leaf}`);
    if (node.kind === "quantity") found.add(`${node.start} ${node.start + node.digits.length} number`);
  }
  for (const inside of Object.values(value)) visit(inside, found);
}

const kinds: readonly (readonly [RegExp, string])[] = [
  [/^constant\.numeric/, "number"],
  [/^keyword\.other\.unit/, "unit"],
  [/^string/, "text"],
  [/^comment/, "comment"],
];

function byGrammar(text: string): Set<string> {
  const found = new Set<string>();
  for (const { start, end, scope, text: piece } of tokenise(text)) {
    const kind = kinds.find(([pattern]) => pattern.test(scope))?.[1];
    // The parser leaves blanks at the end of a line out of the comment.
    if (kind !== undefined) found.add(`${start} ${kind === "comment" ? start + piece.trimEnd().length : end} ${kind}`);
  }
  return found;
}

describe("the grammar and the parser see the same", () => {
  const folders = ["./fixtures/", "../../samples/quill/"].map((path) => new URL(path, import.meta.url));
  const files = folders.flatMap((folder) => readdirSync(folder).map((name) => new URL(name, folder)));

  it.each(
    files
      .filter(({ pathname }) => pathname.endsWith(".crank"))
      .map((file) => [file.pathname.split("/").at(-1), file] as const),
  )("in %s", (_, file) => {
    const text = readFileSync(file, "utf8");
    expect([...byGrammar(text)].sort()).toEqual([...byParser(text)].sort());
  });

  it("in statements of any words, numbers and units", () => {
    const number = fc.oneof(
      fc.integer({ min: -9999, max: 9999 }).map(String),
      fc.constantFrom("0.5", "-12.75", "+3", "1e5", "2.5e-3"),
    );
    const unit = fc.constantFrom("", ...everyUnit, "kg·m²", "1/mm", "m^-1", "furlong", "°", "lbs");
    const joint = fc.constantFrom("of", "and", "x", "for heave", "within", "against chassis", "above");
    const name = fc.constantFrom("roll-high", "TB-195", "front.third", "x", "_a", "größe", "l2", "for-ever", "offset");
    const value = fc.oneof(
      fc.tuple(number, unit).map(([digits, text]) => `${digits} ${text}`),
      fc
        .tuple(number, unit)
        .map(([digits, text]) => (text.startsWith("1") || /^[eE]/.test(text) ? digits : `${digits}${text}`)),
      fc.tuple(number, number, number, unit).map(([a, b, c, text]) => `(${a}, ${b}, ${c}) ${text}`),
      fc.tuple(number, joint, number, unit).map(([a, join, b, text]) => `${a} ${join} ${b} ${text}`),
      fc.tuple(number, number, unit).map(([a, b, text]) => `${a} .. ${b} ${text}`),
      fc.tuple(number, name).map(([a, text]) => `${a} ${text}`),
      name,
      fc.constantFrom('"some text"', '"# no comment"', '""', "let-name + 5 mm", "(a + 2 mm)", "8x30 mm", "8 x 30 mm"),
    );
    const statement = fc
      .tuple(fc.constantFrom(...words.map(({ word }) => word)), fc.array(value, { maxLength: 2 }))
      .map(([word, values]) => [word, ...values].join(" "));
    const line = fc.oneof(
      statement,
      fc.tuple(statement, statement).map(([a, b]) => `outside { ${a}, ${b} }  # trailing, 5 mm`),
      fc.constantFrom("# a comment with 5 mm", "## a note (1, 2", "### no note", "50 mm/s: 320 N", "}", "axle front {"),
    );
    fc.assert(
      fc.property(fc.array(line, { maxLength: 6 }), (lines) => {
        const text = lines.join("\n");
        // What a broken line loses from the tree cannot be compared.
        fc.pre(parse(text).problems.length === 0);
        expect([...byGrammar(text)].sort()).toEqual([...byParser(text)].sort());
      }),
      { numRuns: 300 },
    );
  });
});
