/**
 * A written value gets a name: a `let` at the top of its car, set-up or catalogue, and the name in its place; here, or wherever
 * the same value stands there. Numbers keep the unit that they were written in.
 *
 * Invariant: the name is new to the file, so it can hide no property and no other name.
 */
import type { Statement } from "../../grammar/index.js";
import type { TextEdit } from "../findings/finding.js";
import { holds } from "../views/place.js";
import { freshName } from "./fresh-name.js";
import { isScope, type ValuePlace, valuePlaces } from "./places.js";
import { proven } from "./proof.js";
import type { Offered, Refactored } from "./refactoring.js";

export function extractLet(on: Refactored): readonly Offered[] {
  const { file, offset } = on;
  const declaration = file.parsed.document.entries.find((entry) => holds(entry, offset));
  if (declaration?.kind !== "statement" || !isScope(declaration)) return [];
  // The name is seen in its own block alone, and what rests on this file reads the values that are compared here.
  const alone: Refactored = { ...on, resting: () => [file] };
  const places = valuePlaces(declaration);
  const here = places.find((place) => holds(place, offset));
  if (here === undefined) return [];
  return choicesOf(here, places).flatMap(({ title, of }) => {
    const name = nameFor(of, here, file.text);
    const edits = [declared(on, declaration, name, here), ...of.map((place) => replaced(file.uri, place, name))];
    return proven({ title, kind: "extract", edits, named: { uri: file.uri, name } }, alone) ?? [];
  });
}

interface Choice {
  readonly title: string;
  readonly of: readonly ValuePlace[];
}

function choicesOf(here: ValuePlace, places: readonly ValuePlace[]): readonly Choice[] {
  const shown = `${here.digits} ${here.unit}`;
  const same = places.filter((place) => isSame(place, here));
  const alike = same.filter(({ word }) => word === here.word);
  const choices: Choice[] = [];
  if (same.length > 1) choices.push({ title: `Name ${shown} in all ${same.length} places where it stands`, of: same });
  if (alike.length > 1 && alike.length < same.length)
    choices.push({ title: `Name ${shown} in the ${alike.length} places of \`${here.word}\``, of: alike });
  choices.push({ title: same.length > 1 ? `Name ${shown} here alone` : `Give ${shown} a name`, of: [here] });
  return choices;
}

/** In the same unit: another one would be shown back in this one. */
const isSame = (a: ValuePlace, b: ValuePlace): boolean => a.unit === b.unit && Number(a.digits) === Number(b.digits);

function replaced(uri: string, { start, end }: ValuePlace, name: string): TextEdit {
  return { uri, span: { start, end }, newText: name };
}

/** Behind the `let`s that stand at the top already. */
function declared({ file }: Refactored, { block }: Statement, name: string, here: ValuePlace): TextEdit {
  const line = `let ${name} = ${here.digits} ${here.unit}`;
  const entries = block?.entries ?? [];
  const first = entries.findIndex((entry) => entry.kind !== "statement" || entry.head.segments[0]?.text !== "let");
  const last = entries[(first === -1 ? entries.length : first) - 1];
  const { text } = file;
  const start = block?.start ?? 0;
  if (last === undefined && !text.slice(start, block?.end).includes("\n"))
    return inserted(file.uri, start + 1, ` ${line},`);
  const at = endOfLine(text, last?.end ?? start + 1);
  const indent = last === undefined ? indentOf(text, start) + STEP : indentOf(text, last.start);
  return inserted(file.uri, at, `\n${indent}${line}`);
}

const STEP = "  ";

const inserted = (uri: string, at: number, newText: string): TextEdit => ({
  uri,
  span: { start: at, end: at },
  newText,
});

/** Behind a comment on the same line, and only where nothing else follows on it. */
function endOfLine(text: string, place: number): number {
  const rest = /^[ \t]*(?:#[^\r\n]*)?(?=\r|\n|$)/.exec(text.slice(place));
  return place + (rest?.[0].length ?? 0);
}

function indentOf(text: string, place: number): string {
  return /^[ \t]*/.exec(text.slice(text.lastIndexOf("\n", place - 1) + 1))?.[0] ?? "";
}

/** From whose value it is: `third-rate`; `shared-rate` where it is that of several. */
function nameFor(places: readonly ValuePlace[], here: ValuePlace, text: string): string {
  const word = places.every((place) => place.word === here.word) ? here.word : lastPart(here.word);
  const { owner } = here;
  const isOwn = owner !== undefined && places.every((place) => place.owner === owner);
  return freshName(isOwn ? `${owner}-${word}` : places.length > 1 ? `shared-${word}` : `own-${word}`, text);
}

const lastPart = (word: string): string => word.split("-").at(-1) ?? word;
