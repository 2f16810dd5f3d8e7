/**
 * What an element says of its own part (its coil, its valving, its blades) becomes a part of a catalogue, and the element fits it.
 * The lines go as they are written, comments included.
 */
import { format, type Parsed, type Span } from "../../grammar/index.js";
import type { Word } from "../../grammar/vocabulary/word.js";
import type { TextEdit } from "../findings/finding.js";
import { freshName } from "./fresh-name.js";
import { type ElementAt, elementAt, isFit, isKnown, partWordsFor, plainHead } from "./part-of.js";
import { proven } from "./proof.js";
import type { Offered, Refactored } from "./refactoring.js";
import { type Shelf, shelvesOf } from "./shelves.js";
import { removedRun, runsOf, sliceOf } from "./slices.js";

export function partToCatalogue(on: Refactored): readonly Offered[] {
  const { parsed } = on.file;
  const element = elementAt(parsed, on.offset);
  if (element === undefined || element.entries.some(isFit)) return [];
  const movable = partWordsFor(element.concept).flatMap((word) => movableOf(parsed, element, word) ?? []);
  return movable.flatMap((one) => shelvesOf(on).flatMap((shelf) => moved(on, element, one, shelf) ?? []));
}

interface Movable {
  readonly word: Word;
  /** What leaves the element. */
  readonly runs: readonly Span[];
  /** What stands in the part's block. */
  readonly lines: string;
}

function movableOf(parsed: Parsed, { entries }: ElementAt, word: Word): Movable | undefined {
  if (word.fits?.as === "contents") {
    const runs = runsOf(parsed, entries, (entry) => isKnown(word.opens, entry));
    return runs.length === 0
      ? undefined
      : { word, runs, lines: `{\n${runs.map((run) => sliceOf(parsed, run)).join("\n")}\n}` };
  }
  const own = entries.find((entry) => plainHead(entry) === word.word);
  if (own?.kind !== "statement" || own.block?.closed !== true || own.items.length > 0) return undefined;
  return { word, runs: [{ start: own.start, end: own.end }], lines: sliceOf(parsed, own.block) };
}

function moved(on: Refactored, element: ElementAt, { word, runs, lines }: Movable, shelf: Shelf): Offered | undefined {
  const { uri, text, parsed } = on.file;
  const name = freshName(nameFor(element, word), text, shelf.text);
  const { edits, ...made } = shelf.put(format(`${word.word} ${name} ${lines}\n`).trimEnd());
  const [first, ...others] = runs;
  if (first === undefined) return undefined;
  const fitted: TextEdit = { uri, span: first, newText: `fit ${name}` };
  const removed = others.map((run) => removedRun(uri, parsed, run));
  const title = `Move the ${word.word} of ${element.name} to the catalogue in ${shelf.called}`;
  return proven({ title, kind: "move", edits: [fitted, ...removed, ...edits], ...made, named: { uri, name } }, on);
}

/** `third-coil`; an element that is such a part itself is not called so twice. */
const nameFor = ({ name, concept }: ElementAt, word: Word): string =>
  name.includes(word.word) || concept === word.word ? `${name}-part` : `${name}-${word.word}`;
