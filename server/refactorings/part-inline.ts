/**
 * A fitted part's figures are written into the element, and the part stays on its shelf: for a car that leaves the club's
 * catalogue behind. What the element says itself over the part holds as before.
 */
import { type Entry, format, type Parsed, type Statement } from "../../grammar/index.js";
import { findWord, opensAt } from "../../grammar/vocabulary/index.js";
import type { Concept, Word } from "../../grammar/vocabulary/word.js";
import type { TextEdit } from "../findings/finding.js";
import { statementAt } from "../findings/tree.js";
import { holds } from "../views/place.js";
import { type ElementAt, elementAt, isFit, isKnown, partWordsFor, plainHead } from "./part-of.js";
import { proven } from "./proof.js";
import type { Offered, Refactored } from "./refactoring.js";
import { removedStatement, sliceOf, wholeOf } from "./slices.js";

export function inlinePart(on: Refactored): readonly Offered[] {
  const { file, offset } = on;
  const element = elementAt(file.parsed, offset);
  const fit = element?.entries.find(isFit);
  const part = fit && holds(fit, offset) ? partOf(on, fit) : undefined;
  if (element === undefined || fit === undefined || part === undefined) return [];
  const edits = writtenOut(on, element, fit, part);
  if (edits === undefined) return [];
  const title = `Write the figures of ${part.name} into ${element.name}`;
  return [proven({ title, kind: "inline", edits }, on) ?? []].flat();
}

interface PartText {
  readonly name: string;
  readonly parsed: Parsed;
  readonly word: string;
  readonly entries: readonly Entry[];
}

/** As the catalogue says it. */
function partOf({ file }: Refactored, fit: Statement): PartText | undefined {
  const symbol = file.symbols.find(
    ({ target, references }) =>
      target === "part" && references.some(({ uri, start }) => uri === file.uri && holds(fit, start)),
  );
  const parsed = symbol && file.parsedOf(symbol.declaration.uri);
  const statement = parsed && statementAt(parsed.document, symbol.declaration);
  const word = statement && plainHead(statement);
  if (symbol === undefined || parsed === undefined || statement?.block === undefined || word === undefined)
    return undefined;
  return { name: symbol.name, parsed, word, entries: statement.block.entries };
}

function writtenOut(
  on: Refactored,
  element: ElementAt,
  fit: Statement,
  part: PartText,
): readonly TextEdit[] | undefined {
  const word = partWordsFor(element.concept).find((one) => one.word === part.word);
  if (word === undefined) return undefined;
  return word.fits?.as === "contents" ? contents(on, element, fit, part) : block(on, element, fit, part);
}

function contents(
  { file }: Refactored,
  { concept, entries }: ElementAt,
  fit: Statement,
  part: PartText,
): readonly TextEdit[] {
  const lines = linesFor(part, concept, entries);
  if (lines.length === 0) return [removedStatement(file.uri, file.parsed, fit)];
  return [
    { uri: file.uri, span: { start: fit.start, end: fit.end }, newText: laidOutAt(file.text, fit, lines.join("\n")) },
  ];
}

function block(
  { file }: Refactored,
  { concept, entries }: ElementAt,
  fit: Statement,
  part: PartText,
): readonly TextEdit[] | undefined {
  const word = findWord(concept, part.word);
  const inside = word && conceptOf(word);
  if (inside === undefined) return undefined;
  const own = entries.find((entry) => plainHead(entry) === part.word);
  const { uri, parsed } = file;
  if (own === undefined) {
    const newText = laidOutAt(file.text, fit, `${part.word} {\n${linesFor(part, inside, []).join("\n")}\n}`);
    return [{ uri, span: { start: fit.start, end: fit.end }, newText }];
  }
  if (own.kind !== "statement" || own.block?.closed !== true) return undefined;
  const { start, entries: said } = own.block;
  const lines = linesFor(part, inside, said);
  const added: TextEdit = { uri, span: { start: start + 1, end: start + 1 }, newText: `\n${lines.join("\n")}\n` };
  return [removedStatement(uri, parsed, fit), ...(lines.length === 0 ? [] : [added])];
}

/** As the formatter would have it there; what a text around it is like stays its author's. */
function laidOutAt(text: string, { start }: Statement, lines: string): string {
  const indent = /^[ \t]*/.exec(text.slice(text.lastIndexOf("\n", start - 1) + 1))?.[0] ?? "";
  return format(`${lines}\n`).trimEnd().replaceAll("\n", `\n${indent}`);
}

const conceptOf = (word: Word): Concept | undefined => opensAt(word, 0);

/** The part's lines that mean something here and are not said here already; what is for the shelf stays there. */
function linesFor({ parsed, entries }: PartText, concept: Concept, said: readonly Entry[]): readonly string[] {
  const own = new Set(said.map(plainHead));
  return entries
    .filter((entry) => entry.kind === "row" || (isKnown(concept, entry) && !own.has(plainHead(entry))))
    .map((entry) => sliceOf(parsed, wholeOf(parsed, entry)));
}
