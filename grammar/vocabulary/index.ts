/**
 * The one table of what the language can say, with look-ups.
 *
 * Invariant: a word stands once in a concept; every concept that a word opens is described. Both
 * are tests.
 */
import { aeroGroup } from "./aero.js";
import { axleGroup } from "./axle.js";
import { barGroup } from "./bars.js";
import { carGroup } from "./car.js";
import { caseGroup } from "./cases.js";
import { catalogueGroup } from "./catalogue.js";
import { damperGroup } from "./dampers.js";
import { figures } from "./figures.js";
import { elementGroup } from "./elements.js";
import { fileGroup } from "./file.js";
import { fluidGroup } from "./fluids.js";
import { kerbGroup } from "./kerbs.js";
import { linkageGroup } from "./linkage.js";
import { massGroup } from "./masses.js";
import { measuredGroup } from "./measured.js";
import { roadGroup } from "./road.js";
import { setupGroup } from "./setup.js";
import { springGroup } from "./springs.js";
import type { Concept, ConceptEntry, DimensionName, Form, Limits, Slot, UsualRange, Word, WordGroup } from "./word.js";

export { connectives } from "../connectives.js";
export { joiningWords } from "./joining-words.js";
export { axleModes, carModes, modeHelp, modesIn } from "./modes.js";
export * from "./figures.js";
export type * from "./word.js";

/** In the order of the reference page. */
export const groups: readonly WordGroup[] = [
  fileGroup,
  carGroup,
  massGroup,
  aeroGroup,
  axleGroup,
  linkageGroup,
  elementGroup,
  springGroup,
  damperGroup,
  barGroup,
  fluidGroup,
  caseGroup,
  roadGroup,
  kerbGroup,
  measuredGroup,
  catalogueGroup,
  setupGroup,
];

export const words: readonly Word[] = groups.flatMap((group) => group.words);
export const concepts: readonly ConceptEntry[] = groups.flatMap((group) => group.concepts);

const conceptIndex = new Map(concepts.map((entry) => [entry.concept, entry]));
const wordIndex = new Map<Concept, Map<string, Word>>(concepts.map(({ concept }) => [concept, new Map()]));
for (const word of words) for (const concept of word.in) wordIndex.get(concept)?.set(word.word, word);
const wordLists = new Map([...wordIndex].map(([concept, byName]) => [concept, [...byName.values()]]));

/** The words that may stand in a block of this kind, in the table's order. */
export function wordsIn(concept: Concept): readonly Word[] {
  return wordLists.get(concept) ?? [];
}

export function findWord(concept: Concept, word: string): Word | undefined {
  return wordIndex.get(concept)?.get(word);
}

export function conceptOf(concept: Concept): ConceptEntry | undefined {
  return conceptIndex.get(concept);
}

/** The kind of block that this form of the word opens; undefined where it opens none. */
export function opensAt(word: Word, form: number): Concept | undefined {
  return word.opensByForm === undefined ? word.opens : word.opensByForm[form];
}

/**
 * The kind of block that a half-read statement opens, told by the plain words after its head:
 * of the forms whose keywords all stand there, the one with the most of them that opens a block.
 */
export function opensFor(word: Word, plainWords: readonly string[]): Concept | undefined {
  if (word.opensByForm === undefined) return word.opens;
  let found: Concept | undefined;
  let most = -1;
  word.takes.forEach((form, index) => {
    const keywords = form.flatMap((slot) => (slot.kind === "keyword" ? [slot.word] : []));
    if (keywords.length <= most || !keywords.every((needed) => plainWords.includes(needed))) return;
    most = keywords.length;
    found = opensAt(word, index);
  });
  return found;
}

/** Hard limits of a value in this slot, SI. */
export function limitsOf(word: Word, slot: Slot): Limits | undefined {
  return (slot.kind === "quantity" ? slot.limits : undefined) ?? word.limits;
}

/** The range seen in practice for a value in this slot, SI; the word's own holds for its first dimension only. */
export function usualOf(word: Word, slot: Slot): UsualRange | undefined {
  const own = slot.kind === "quantity" ? slot.usual : undefined;
  return own ?? (dimensionOfSlot(slot) === firstDimension(word) ? word.usual : undefined);
}

export function dimensionOfSlot(slot: Slot): DimensionName | undefined {
  return slot.kind === "quantity" || slot.kind === "range" || slot.kind === "point" ? slot.dimension : undefined;
}

function firstDimension(word: Word): DimensionName | undefined {
  const first: Form | undefined = word.takes.find((form) => form.some((slot) => dimensionOfSlot(slot) !== undefined));
  return first === undefined ? undefined : first.map(dimensionOfSlot).find((dimension) => dimension !== undefined);
}

/** What holds the platform is called so by right: a figure of it is a step longer (`front.platform.static-load`). */
const alsoNames: ReadonlySet<string> = new Set(["platform"]);

/**
 * What an element may not be called: the words that an override path may begin with or go through
 * beside it, the bodies, and the figures of its axle, since a path could then mean two things.
 */
export const reservedNames: ReadonlySet<string> = new Set([
  ...["car", "axle", "side", "wheel", "linkage", "linkage-planar"].flatMap((concept) =>
    wordsIn(concept).map(({ word }) => word),
  ),
  ...figures
    .filter(({ scope, figure }) => (scope === "axle" || scope === "wheel") && !alsoNames.has(figure))
    .map(({ figure }) => figure),
  "left",
  "right",
  "chassis",
  "front",
  "rear",
  "rocker",
  "upright",
]);
