/**
 * Programs that mean something to the grammar, written in every layout that it allows: blanks or
 * none, commas or newlines, comments and notes wherever they may stand, points over several lines.
 */
import fc from "fast-check";

const word = fc.constantFrom(
  "rate",
  "rocker",
  "axle",
  "wheel",
  "spring",
  "front",
  "gap",
  "linkage",
  "case",
  "a",
  "é-2",
  "x",
);
const connective = fc.constantFrom("and", "of", "x", "for", "between");
const path = fc.array(word, { minLength: 1, maxLength: 3 }).map((words) => words.join("."));
const digits = fc.oneof(
  fc.integer({ min: -9999, max: 9999 }).map(String),
  fc.tuple(fc.integer({ min: -99, max: 99 }), fc.nat(999)).map(([whole, part]) => `${whole}.${part}`),
  fc.constantFrom("+2", ".5", "1e3", "-2.5e-3", "0", "-0", "007"),
);
const unit = fc.constantFrom("", "mm", " mm", " N*s/mm", "  kg*m^2", " %", "%/mm", " 1/mm", " m²", " °C");
const quantity = fc.tuple(digits, unit).map(([number, of]) => number + of);
/** Blanks where the language asks for one. */
const gap = fc.constantFrom(" ", "  ", "\t");
/** Blanks where it asks for none. */
const space = fc.constantFrom("", " ", "  ");
/** Inside round brackets a newline is nothing, and a comment may stand before it. */
const inner = fc.oneof(
  { weight: 6, arbitrary: space },
  { weight: 1, arbitrary: fc.constantFrom("\n", "\n  ", " # why\n ", "  ## no note\n") },
);
const text = fc.constantFrom('"parts.crank"', '"a, {b} # c"', '""');

const { expression } = fc.letrec<{ expression: string; operand: string }>((tie) => ({
  operand: fc.oneof(
    { maxDepth: 3, depthIdentifier: "value" },
    quantity,
    path,
    fc
      .tuple(inner, tie("expression"), inner, unit)
      .map(([before, value, after, of]) => `(${before}${value}${after})${of}`),
    tie("operand").map((value) => (/^[-+\d.]/.test(value) ? value : `-${value}`)),
  ),
  expression: fc
    .tuple(
      tie("operand"),
      fc.array(fc.tuple(fc.constantFrom(" + ", " - ", " * ", " / "), tie("operand")), { maxLength: 2 }),
    )
    .map(([first, rest]) => first + rest.map((pair) => pair.join("")).join("")),
}));

const tuple = fc
  .tuple(fc.array(fc.tuple(inner, expression, inner), { minLength: 2, maxLength: 3 }), fc.boolean(), inner, unit)
  .map(([members, trailing, last, of]) => {
    const list = members.map((member) => member.join("")).join(",");
    return `(${list}${trailing ? "," : ""}${last})${of}`;
  });
const range = fc.tuple(quantity, fc.constantFrom("..", " .. "), quantity).map((parts) => parts.join(""));
const item = fc.oneof(path, quantity, tuple, range, text, expression, connective);

const header = fc
  .tuple(path, fc.array(fc.tuple(gap, item), { maxLength: 4 }))
  .map(([head, items]) => head + items.map((pair) => pair.join("")).join(""));
const binding = fc
  .tuple(word, space, space, expression)
  .map(([name, before, after, value]) => `let ${name}${before}=${after}${value}`);
const row = fc
  .tuple(fc.oneof(quantity, path), space, space, expression)
  .map(([key, before, after, value]) => `${key}${before}:${after}${value}`);

const comment = fc.constantFrom("# why", "#", "#: x", "### heading");
const blankLines = fc.constantFrom("", "\n", "\n\n\n");
/** What may stand on lines of its own before an entry. */
const above = fc
  .array(fc.oneof(comment, fc.constantFrom("## note", "##bare", "##", "##  far  ")), { maxLength: 2 })
  .chain((lines) =>
    fc.tuple(blankLines, space).map(([empty, indent]) => lines.map((line) => `${indent}${line}\n${empty}`).join("")),
  );
const trailing = fc.oneof(
  { weight: 4, arbitrary: space },
  { weight: 1, arbitrary: fc.constantFrom("  # why", " ## trailing", "#x") },
);

/** Ends of entries: a line's end with what stands below it, or, inside braces, a comma. */
const lineEnd = fc.tuple(trailing, blankLines, above).map(([behind, empty, lines]) => `${behind}\n${empty}${lines}`);
const commaEnd = fc.oneof(fc.constantFrom(",", ", ", " , "), fc.constantFrom(",\n", ",  # why\n", ",\n\n  ## note\n"));

const { entries } = fc.letrec<{ entry: string; block: string; entries: string }>((tie) => ({
  entry: fc.oneof(
    { maxDepth: 3, depthIdentifier: "block" },
    header,
    row,
    binding,
    fc.tuple(header, fc.constantFrom(" ", "", "\n", " # why\n"), tie("block")).map((parts) => parts.join("")),
  ),
  block: fc
    .tuple(
      fc.oneof(space, lineEnd),
      fc.array(fc.tuple(tie("entry"), fc.oneof(lineEnd, commaEnd)), { maxLength: 4 }),
      space,
    )
    .map(([first, rest, last]) => `{${first}${joined(rest)}${last}}`),
  entries: fc
    .tuple(above, fc.array(fc.tuple(tie("entry"), lineEnd), { maxLength: 5 }))
    .map(([first, rest]) => first + joined(rest)),
}));

/** A comma ends digits glued to digits no better than a decimal point would: keep them apart. */
function joined(parts: readonly (readonly [string, string])[]): string {
  return parts
    .map(([entry, end]) => entry + end)
    .join("")
    .replaceAll(/(\d),(?=\d)/g, "$1, ");
}

export const programArbitrary: fc.Arbitrary<string> = entries;

const marks = '{ } ( ) , : = .. . + - * / " # ## \n \r\n \t'.split(" ");
const words = "a let rate x of mm % 1 -2 3.5 1.2.3 1e999 12,5 kg*m^2 é ² @ a- a.b 𝒜".split(" ");
const oddities = [" ", "  ", "\0", "\ud800", "\ufeff", "\ufffd", "\u2212", "\u201c", "\u00a0", "\u2028"];
const soup = fc.constantFrom(...marks, ...words, ...oddities);

/** Anything at all, made of the pieces that mean something. */
export const soupArbitrary: fc.Arbitrary<string> = fc.array(soup, { maxLength: 60 }).map((pieces) => pieces.join(""));
