/**
 * Which slots of a statement's forms can come next after the items that are already there: a
 * loose match, since the line is half typed.
 */
import type { Item } from "../../../grammar/index.js";
import { connectives } from "../../../grammar/vocabulary/index.js";
import type { Form, Slot, Word } from "../../../grammar/vocabulary/word.js";

export function nextSlots(word: Word, items: readonly Item[]): readonly Slot[] {
  const slots = word.takes.flatMap((form) => {
    const next = after(form, items);
    return next === undefined ? [] : [next];
  });
  return slots.filter((slot, index) => slots.findIndex((other) => same(other, slot)) === index);
}

/** The slot that the last of the items stands in, over all forms that fit so far. */
export function slotsOfLast(word: Word, items: readonly Item[]): readonly Slot[] {
  return nextSlots(word, items.slice(0, -1));
}

function after(form: Form, items: readonly Item[]): Slot | undefined {
  const consumed = slotsFilled(form, items);
  return consumed === undefined ? undefined : form[consumed];
}

/** How many slots the items fill, all of them in order; undefined where one does not fit. */
export function slotsFilled(form: Form, items: readonly Item[]): number | undefined {
  let slot = 0;
  for (let index = 0; index < items.length; index += 1) {
    const wanted = form[slot];
    const item = items[index];
    if (wanted === undefined || item === undefined || !fits(wanted, item)) return undefined;
    if (wanted.kind === "modes") {
      index = endOfModes(items, index);
      // `heave and`: one more mode is due.
      if (wordOf(items[index + 1]) === "and" && items.length === index + 2) return slot;
    }
    if (wanted.kind === "attachment" && items[index + 1]?.kind === "tuple") index += 1;
    slot += 1;
  }
  return slot;
}

/** `heave and roll`: words joined by `and` are one slot. */
function endOfModes(items: readonly Item[], start: number): number {
  let last = start;
  while (wordOf(items[last + 1]) === "and" && items[last + 2] !== undefined) last += 2;
  return last;
}

const wordOf = (item: Item | undefined): string | undefined =>
  item?.kind === "path" ? item.segments[0]?.text : undefined;

function fits(slot: Slot, item: Item): boolean {
  switch (slot.kind) {
    case "keyword":
      return wordOf(item) === slot.word;
    case "choice":
      return slot.words.includes(wordOf(item) ?? "");
    case "text":
      return item.kind === "text";
    case "point":
      return item.kind === "tuple" || item.kind === "path";
    case "name":
    case "reference":
    case "attachment":
    case "body":
    case "modes":
    case "figure":
      return item.kind === "path";
    case "quantity":
    case "range":
      return item.kind !== "text" && item.kind !== "tuple" && !connectives.has(wordOf(item) ?? "");
  }
}

const same = (a: Slot, b: Slot): boolean => JSON.stringify(a) === JSON.stringify(b);
