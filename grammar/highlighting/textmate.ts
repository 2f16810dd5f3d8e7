/**
 * The TextMate grammar, made from the vocabulary. It colours a file before the server has read it.
 *
 * Invariant: numbers, units, texts and comments begin and end where the lexer says they do; which
 * units exist is asked by neither.
 */
import { connectives } from "../connectives.js";
import { declaring, fixedWords, headsByScope, modes } from "./word-sets.js";

interface Pattern {
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly name?: string;
  readonly include?: string;
  readonly captures?: Captures;
  readonly beginCaptures?: Captures;
  readonly endCaptures?: Captures;
  readonly patterns?: readonly Pattern[];
}
type Captures = Readonly<Record<string, { readonly name?: string; readonly patterns?: readonly Pattern[] }>>;

const scope = (name: string): string => `${name}.crank`;

const nameStart = "[\\p{L}_]";
const nameRest = "[\\p{L}\\p{M}\\p{Nd}_-]";
const name = `${nameStart}${nameRest}*`;
/** No name goes on before or behind. */
const begins = "(?<![\\p{L}\\p{M}\\p{Nd}_.-])";
const ends = "(?![\\p{L}\\p{M}\\p{Nd}_-])";
const blanks = "[ \\t]*";

const oneOf = (words: Iterable<string>): string =>
  // The longest first, since the first that fits is taken.
  [...words].sort((a, b) => b.length - a.length || (a < b ? -1 : 1)).join("|");

const number = "\\d+(?:\\.\\d+)?(?:[eE][+-]?\\d+)?";
const unitStart = "[\\p{L}\\p{M}_%°]";
const unitRest = "[\\p{L}\\p{M}\\p{Nd}_%°]";
const factor = `${unitStart}${unitRest}*(?:\\^-?\\d+|[²³¹⁰-⁻]+)?`;
const unitGoesOn = "[\\p{L}\\p{M}\\p{Nd}_%°*/·⋅^²³¹⁰-⁻]";
/** As `Scanner.unit` reads it: whatever word stands there, unless it joins or is a name or a path. */
const unit =
  `(?!x\\d)(?!(?:${oneOf(connectives)})(?!${unitGoesOn}))` +
  `(?>(?:1/(?=${unitStart}))?${factor}(?:[*/·⋅](?=${unitStart})${factor})*)(?!-|\\.(?!\\.))`;

const headPlace = `(?:^|(?<=[{},]))${blanks}`;

const comments: readonly Pattern[] = [
  { match: `^${blanks}(##(?!#).*)$`, captures: { "1": { name: scope("comment.block.documentation") } } },
  { match: "#.*$", name: scope("comment.line.number-sign") },
];

/** A text ends on its line. */
const quoted: Pattern = { match: '"[^"]*(?:"|$)', name: scope("string.quoted.double") };

const numbers: readonly Pattern[] = [
  {
    match: `(?<![\\p{L}\\p{M}\\p{Nd}_])(\\d+(?:\\.\\d+)?)(x)(\\d+(?:\\.\\d+)?)(?:${blanks}(${unit}))?`,
    captures: {
      "1": { name: scope("constant.numeric") },
      "2": { name: scope("keyword.operator.word") },
      "3": { name: scope("constant.numeric") },
      "4": { name: scope("keyword.other.unit") },
    },
  },
  {
    match: `(?<![\\p{L}\\p{M}\\p{Nd}_])([+-]?${number})(?:${blanks}(${unit}))?`,
    captures: { "1": { name: scope("constant.numeric") }, "2": { name: scope("keyword.other.unit") } },
  },
];

/** Round brackets, over lines; a line that begins with a word ends one that was left open. */
const brackets: Pattern = {
  begin: "\\(",
  end: `(\\))(?:${blanks}(${unit}))?|(?=[{}])|^(?=${blanks}${nameStart})`,
  beginCaptures: { "0": { name: scope("punctuation.section.parens.begin") } },
  endCaptures: {
    "1": { name: scope("punctuation.section.parens.end") },
    "2": { name: scope("keyword.other.unit") },
  },
  patterns: [{ include: "#comments" }, { include: "#brackets" }, { include: "#values" }],
};

function declarations(): readonly Pattern[] {
  return declaring().map(({ words, headScope, nameScope }) => ({
    match: `${headPlace}(${oneOf(words)})[ \\t]+(${name})${ends}`,
    captures: { "1": { name: scope(headScope) }, "2": { name: scope(nameScope) } },
  }));
}

function heads(): readonly Pattern[] {
  return [...headsByScope()].map(([headScope, words]) => ({
    match: `${headPlace}(${oneOf(words)})${ends}(?!\\.|${blanks}:)`,
    captures: { "1": { name: scope(headScope) } },
  }));
}

const paths: readonly Pattern[] = [
  {
    match: `${name}(?:\\.${name})+`,
    name: scope("variable.other.path"),
    captures: {
      "0": {
        patterns: [
          { match: "\\.", name: scope("punctuation.accessor") },
          { match: "(?:left|right|front|rear)(?=\\.)", name: scope("variable.language.side") },
        ],
      },
    },
  },
  { match: name, name: scope("variable.other") },
];

const marks: readonly Pattern[] = [
  { match: "\\.\\.", name: scope("keyword.operator.range") },
  { match: "[-+*/=]", name: scope("keyword.operator") },
  { match: ":", name: scope("punctuation.separator.key-value") },
  { match: ",", name: scope("punctuation.separator") },
  { match: "[{}]", name: scope("punctuation.section.block") },
];

const word = (words: Iterable<string>, called: string): Pattern => ({
  match: `${begins}(?:${oneOf(words)})${ends}(?!\\.${nameStart})`,
  name: scope(called),
});

export function textMateGrammar(): object {
  return {
    name: "Bellcrank",
    scopeName: "source.crank",
    fileTypes: ["crank"],
    patterns: [
      { include: "#comments" },
      { include: "#quoted" },
      { include: "#brackets" },
      { include: "#statements" },
      { include: "#values" },
    ],
    repository: {
      comments: { patterns: comments },
      quoted,
      brackets,
      statements: { patterns: [...declarations(), ...heads()] },
      values: {
        patterns: [
          ...numbers,
          word(connectives, "keyword.operator.word"),
          word(modes, "constant.language.mode"),
          word(fixedWords, "constant.language"),
          ...paths,
          ...marks,
        ],
      },
    },
  };
}
