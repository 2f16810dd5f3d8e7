/**
 * Which of a word's forms a statement is written in, by the shape of its items alone: what kind of
 * thing stands where. Units and dimensions decide afterwards between forms of one shape.
 */
import type { Item, Path } from "../../grammar/index.js";
import { connectives } from "../../grammar/vocabulary/index.js";
import { formText, type ShowDimension } from "../../grammar/vocabulary/form-text.js";
import type { Form, Slot, Word } from "../../grammar/vocabulary/word.js";
import { unitsOf } from "../quantities/index.js";

export interface FormFit {
  readonly index: number;
  readonly form: Form;
  /** For each slot, the item that it begins at. */
  readonly starts: readonly number[];
}

/** How far the best form got: the first item that no form takes, or the number of items. */
export interface NoFit {
  readonly reached: number;
}

export const plainWord = (item: Item | undefined): string | undefined =>
  item?.kind === "path" && item.segments.length === 1 ? item.segments[0]?.text : undefined;

/**
 * Whether a word joins the parts of this form, so that what should stand before it is missing
 * (`between and chassis`). Elsewhere it may be a name like any other: a car may be called `x`.
 */
function joins(item: Path, form: Form): boolean {
  const word = plainWord(item);
  if (word === undefined || !connectives.has(word)) return false;
  return form.some((slot) => slot.kind === "keyword" && slot.word === word);
}

/** How many items from `index` on the slot takes; 0 where it does not fit. */
function taken(slot: Slot, items: readonly Item[], index: number, form: Form): number {
  const item = items[index];
  if (item === undefined || (item.kind === "path" && slot.kind !== "keyword" && joins(item, form))) return 0;
  switch (slot.kind) {
    case "keyword":
      return plainWord(item) === slot.word ? 1 : 0;
    case "choice":
      return slot.words.includes(plainWord(item) ?? "") ? 1 : 0;
    case "quantity":
      return isNumeric(item) ? 1 : 0;
    case "point":
      return item.kind === "tuple" ? 1 : 0;
    case "range":
      return item.kind === "range" ? 1 : 0;
    case "text":
      return item.kind === "text" ? 1 : 0;
    case "name":
      return item.kind === "path" && item.segments.length === 1 ? 1 : 0;
    case "attachment":
      if (item.kind !== "path") return 0;
      return items[index + 1]?.kind === "tuple" ? 2 : 1;
    case "modes":
      return takenByModes(items, index);
    default:
      return item.kind === "path" ? 1 : 0;
  }
}

function isNumeric(item: Item): boolean {
  switch (item.kind) {
    case "quantity":
    case "binary":
    case "negation":
    case "group":
    case "path":
      return true;
    default:
      return false;
  }
}

function takenByModes(items: readonly Item[], index: number): number {
  let end = index;
  for (;;) {
    const mode = items[end];
    if (mode?.kind !== "path" || connectives.has(plainWord(mode) ?? "")) return end === index ? 0 : end - index - 1;
    end++;
    if (plainWord(items[end]) !== "and") return end - index;
    end++;
  }
}

/** Where each slot of the form last tried begins; copied where it is not one item a slot. */
const scratch: number[] = [];
/** One item a slot, the common case: shared. */
const inStep = [0, 1, 2, 3, 4, 5, 6, 7].map((length) => Array.from({ length }, (_, index) => index));

/** Returns how many items the form takes, or −1 − the one at which it does not fit. */
function fit(form: Form, items: readonly Item[]): number {
  let index = 0;
  for (let slot = 0; slot < form.length; slot++) {
    const count = taken(form[slot] as Slot, items, index, form);
    if (count === 0) return -1 - index;
    scratch[slot] = index;
    index += count;
  }
  return index;
}

function startsOf(form: Form, end: number): readonly number[] {
  const shared = end === form.length ? inStep[end] : undefined;
  return shared ?? scratch.slice(0, form.length);
}

/** Forms that none of the items fits in full, those first that get furthest with them. */
export function formsByReach(forms: readonly Form[], items: readonly Item[]): readonly Form[] {
  const reach = new Map(forms.map((form) => [form, reachedAsMeant(form, items)]));
  return [...forms].sort((a, b) => (reach.get(b) ?? 0) - (reach.get(a) ?? 0));
}

/** `at` where the form knows no `at` is hardly a value of that name: what is taken goes no further than there. */
function reachedAsMeant(form: Form, items: readonly Item[]): number {
  const reached = reachOf(fit(form, items));
  const stray = items.slice(0, reached).findIndex((item) => isStray(item, form));
  return stray < 0 ? reached : stray;
}

function isStray(item: Item, form: Form): boolean {
  return item.kind === "path" && connectives.has(plainWord(item) ?? "") && !joins(item, form) && !isOfModes(form);
}

/** `heave and roll`: there `and` is part of a slot. */
const isOfModes = (form: Form): boolean => form.some(({ kind }) => kind === "modes");

/** How many items a form takes before it ends or fails, from what `fit` returns. */
const reachOf = (end: number): number => (end < 0 ? -1 - end : end);

/**
 * The forms that take all of the items, most telling first (a form with more fixed words in it
 * is more telling: `trim by push-rod` is not an element of that name).
 */
export function formsThatFit(forms: readonly Form[], items: readonly Item[]): readonly FormFit[] | NoFit {
  let fits: FormFit[] | undefined;
  let reached = 0;
  for (let index = 0; index < forms.length; index++) {
    const form = forms[index] as Form;
    const end = fit(form, items);
    if (end !== items.length) reached = Math.max(reached, reachOf(end));
    else if (fits === undefined) fits = [{ index, form, starts: startsOf(form, end) }];
    else fits.push({ index, form, starts: startsOf(form, end) });
  }
  if (fits === undefined) return { reached };
  return fits.length === 1 ? fits : fits.sort((a, b) => fixedWords(b.form) - fixedWords(a.form) || a.index - b.index);
}

const fixedWords = (form: Form): number =>
  form.reduce((count, slot) => count + (slot.kind === "keyword" || slot.kind === "choice" ? 1 : 0), 0);

const withoutNames = new WeakMap<Word, readonly Form[]>();

/** The forms of a word where the name is already said by the path of an override. */
export function formsWithoutName(word: Word): readonly Form[] {
  const known = withoutNames.get(word);
  if (known !== undefined) return known;
  const forms = word.takes.map((form) => form.filter((slot) => slot.kind !== "name"));
  withoutNames.set(word, forms);
  return forms;
}

/** `VALUE N/mm`, and `mm` alone behind a point or a range. */
export const valueText: ShowDimension = (dimension, as) =>
  (as === "unit" ? (unitsOf(dimension)[0] ?? "") : `VALUE ${unitsOf(dimension)[0] ?? ""}`).trim();

/** A form for a message: `by ELEMENT`, `(x, y, z)`, `between A and B`. */
export function describeForm(word: string, form: Form): string {
  return [word, formText(form, valueText)].join(" ").trim();
}
