/**
 * Completion at an offset: the words that a line can begin with, then whatever the next slot of
 * the line takes, and units directly behind a number.
 */
import type { Block, Document, Item, Span, Statement } from "../../../grammar/index.js";
import type { Slot } from "../../../grammar/vocabulary/word.js";
import type { FileView } from "../../snapshot/workspace.js";
import { halfTypedAt } from "../half-typed.js";
import { type Place, wordOf } from "../place.js";
import { axleAt, carAt } from "../subject.js";
import { startHere, startHereTitle } from "../new-car/start-here.js";
import { type Candidate, candidate } from "./candidate.js";
import { nextSlots, slotsOfLast } from "./next-slots.js";
import { overrideCandidates, overriddenWord } from "./overrides.js";
import type { ValueScene } from "./scene.js";
import { unitCandidates, valueCandidates } from "./values.js";
import { wordCandidates } from "./words.js";

export function completeAt(file: FileView, offset: number): readonly Candidate[] {
  const found = halfTypedAt(file, offset);
  if (found === undefined) return [];
  const { place, block, line, typed } = found;
  return line === undefined ? lineStart(file, place, block, typed) : inLine(file, place, line, typed, offset);
}

function lineStart(file: FileView, place: Place, block: Block | Document, span: Span): readonly Candidate[] {
  const words = wordCandidates(place.concept ?? "file", block, span);
  return [...startCandidates(file, span), ...words, ...overrideCandidates(file, place, span)];
}

/** A whole car, while nothing but the word that is being typed stands in the file. */
function startCandidates(file: FileView, span: Span): readonly Candidate[] {
  const start = startHere(file.uri, file.text.slice(0, span.start) + file.text.slice(span.end));
  if (start === undefined) return [];
  return [
    candidate(startHereTitle, "word", span, {
      detail: `car ${start.name} and its parts`,
      documentation: "A whole car with invented figures that checks clean: put in your own, axle by axle.",
      insert: start.text,
      rank: -1,
    }),
  ];
}

function inLine(file: FileView, place: Place, line: Statement, typed: Span, offset: number): readonly Candidate[] {
  const word = wordOf(place.concept, line) ?? overriddenWord(file, place, line);
  if (word === undefined) return [];
  const items = line.items.filter((item) => item.start < typed.start);
  const last: Item | undefined = items.at(-1);
  if (last !== undefined && /[\d)]\s?$/.test(file.text.slice(0, typed.start))) {
    const units = unitCandidates(slotsOfLast(word, items), last, typed);
    if (units.length > 0)
      return [...units, ...nextSlots(word, items).flatMap((slot) => valuesIn(file, place, slot, typed, offset))];
  }
  return nextSlots(word, items).flatMap((slot) => valuesIn(file, place, slot, typed, offset));
}

function valuesIn(file: FileView, place: Place, slot: Slot, span: Span, offset: number): readonly Candidate[] {
  const car = carAt(file, offset);
  const axle = car === undefined ? undefined : axleAt(car, file.uri, offset)?.name;
  const scene: ValueScene = { file, car, axle: axle ?? axleAround(place), concept: place.concept ?? "file", span };
  return valueCandidates(slot, scene);
}

/** `axle front { … }` tells its name even while the model of it is broken. */
function axleAround(place: Place): "front" | "rear" | undefined {
  for (const statement of place.around) {
    const named = statement.items[0];
    const text = named?.kind === "path" ? named.segments[0]?.text : undefined;
    if (statement.head.segments[0]?.text === "axle" && (text === "front" || text === "rear")) return text;
  }
  return undefined;
}
