/**
 * One statement against the forms of its word: name, typed values, block.
 *
 * Invariant: what could not be read is told and left out; a statement that opens a block is kept
 * for the sake of what is inside, whatever is wrong with its head.
 */
import type { Item, Statement } from "../../grammar/index.js";
import { modesIn, opensAt } from "../../grammar/vocabulary/index.js";
import type { Form, Slot, Word } from "../../grammar/vocabulary/word.js";
import type { ResolvedValue } from "./car.js";
import { describeForm, formsByReach, formsThatFit, plainWord, type FormFit } from "./forms.js";
import type { Origin } from "./origin.js";
import { pairUnit, type Reader } from "./reader.js";
import { at } from "./sink.js";
import { readNumber, readPoint, readRange } from "./values.js";

export interface Read {
  /** −1 where no form fits. */
  readonly form: number;
  readonly values: readonly ResolvedValue[];
  readonly name: { readonly text: string; readonly origin: Origin } | undefined;
  /** False where the form does not fit or a value in it could not be read. */
  readonly whole: boolean;
  /** True where it has to be read again once the car's properties are known. */
  readonly deferred: boolean;
}

/** `concept` is the block that the statement stands in. The reader has been turned to it. */
export function readItems(
  word: Word,
  forms: readonly Form[],
  raw: Statement,
  items: readonly Item[],
  reader: Reader,
  concept: string,
): Read {
  const fits = formsThatFit(forms, items);
  if ("reached" in fits) return readNothing(word, forms, raw, items, fits.reached, reader);
  const fit = reader.choose(fits, items) as FormFit;
  const { form, index } = fit;
  const wanted = valuesIn(form);
  const values: ResolvedValue[] = [];
  values.length = wanted;
  let count = 0;
  let name: Read["name"];
  for (let slot = 0; slot < form.length; slot++) {
    const { kind } = form[slot] as Slot;
    if (kind === "keyword") continue;
    const value = readSlot(form[slot] as Slot, slot, fit, items, reader, concept);
    if (value !== undefined) values[count++] = value;
    if (kind === "name" || (word.word === "axle" && name === undefined)) name = nameOf(value);
  }
  values.length = count;
  return {
    form: index,
    values: count === 0 ? noValues : values,
    name,
    whole: count === wanted,
    deferred: reader.deferred,
  };
}

const noValues: readonly ResolvedValue[] = [];

function valuesIn(form: Form): number {
  let count = 0;
  for (const slot of form) if (slot.kind !== "keyword") count++;
  return count;
}

function nameOf(value: ResolvedValue | undefined): Read["name"] {
  return value?.kind === "word" ? { text: value.text, origin: value.origin } : undefined;
}

/** Tells what is expected, and keeps the name if there is one, for the sake of the block. */
function readNothing(
  word: Word,
  forms: readonly Form[],
  raw: Statement,
  items: readonly Item[],
  reached: number,
  reader: Reader,
): Read {
  const blockOf = (form: Form): string =>
    word.block === "required" && opensAt(word, forms.indexOf(form)) !== undefined ? " { … }" : "";
  const likely = formsByReach(forms, items);
  const expected = [...new Set(likely.map((form) => describeForm(word.word, form) + blockOf(form)))];
  const place = items[reached] ?? raw.head;
  const detail = reached < items.length ? undefined : "Something is missing at the end of the line.";
  reader.report({ ...at(reader.uri, place), kind: "wrong-form", word: word.word, expected, detail });
  const [first] = items;
  const named = forms[0]?.[0]?.kind === "name" ? plainWord(first) : undefined;
  const name =
    named !== undefined && first !== undefined && reached > 0
      ? { text: named, origin: at(reader.uri, first) }
      : undefined;
  return { form: -1, values: [], name, whole: false, deferred: false };
}

export function readSlot(
  slot: Slot,
  index: number,
  fit: Pick<FormFit, "form" | "starts">,
  items: readonly Item[],
  reader: Reader,
  concept: string,
): ResolvedValue | undefined {
  const start = fit.starts[index] ?? 0;
  const item = items[start];
  if (item === undefined) return undefined;
  switch (slot.kind) {
    case "quantity":
      return readNumber(item, slot, reader, pairUnit(fit.form, fit.starts, items, index));
    case "point":
      return item.kind === "tuple" ? readPoint(item, slot, reader) : undefined;
    case "range":
      return item.kind === "range" ? readRange(item, slot, reader) : undefined;
    case "text":
      return item.kind === "text" ? { kind: "text", text: item.value, origin: at(reader.uri, item) } : undefined;
    case "modes":
      return readModes(items.slice(start, fit.starts[index + 1] ?? items.length), reader, concept);
    case "attachment":
      return readAttachment(item, items[start + 1], reader);
    case "choice":
    case "name":
      return readWord(item, reader);
    default:
      return readPath(item, reader);
  }
}

function readWord(item: Item, reader: Reader): ResolvedValue | undefined {
  const text = plainWord(item);
  return text === undefined ? undefined : { kind: "word", text, origin: at(reader.uri, item) };
}

function readPath(item: Item, reader: Reader): Extract<ResolvedValue, { kind: "path" }> | undefined {
  if (item.kind !== "path") return undefined;
  const segments = item.segments.map((segment) => segment.text);
  const segmentOrigins = item.segments.map((segment) => at(reader.uri, segment));
  return { kind: "path", segments, segmentOrigins, origin: at(reader.uri, item) };
}

const spacePoint = { kind: "point", size: 3, dimension: "length" } as const;
const planarPoint = { kind: "point", size: 2, dimension: "length" } as const;

/** A point behind a body has two coordinates in a planar linkage, three in space; which is due is seen later. */
function readAttachment(item: Item, behind: Item | undefined, reader: Reader): ResolvedValue | undefined {
  const path = readPath(item, reader);
  if (path === undefined) return undefined;
  const { segments, segmentOrigins } = path;
  if (behind?.kind !== "tuple") {
    return { kind: "attachment", segments, segmentOrigins, point: undefined, origin: path.origin };
  }
  const point = readPoint(behind, behind.members.length === 2 ? planarPoint : spacePoint, reader);
  if (point?.kind !== "point") return undefined;
  const origin = { uri: reader.uri, start: item.start, end: behind.end };
  return { kind: "attachment", segments, segmentOrigins, point, origin };
}

function readModes(items: readonly Item[], reader: Reader, concept: string): ResolvedValue | undefined {
  const allowed = modesIn(concept);
  const modes: { text: string; origin: Origin }[] = [];
  for (const item of items) {
    const text = plainWord(item);
    if (text === undefined || text === "and") continue;
    const origin = at(reader.uri, item);
    const first = modes.find((mode) => mode.text === text);
    if (!allowed.includes(text)) {
      reader.report({ ...origin, kind: "unknown-word", word: text, concept: "for", candidates: allowed });
    } else if (first !== undefined) {
      reader.report({ ...origin, kind: "duplicate", word: text, what: "property", first: first.origin });
    } else modes.push({ text, origin });
  }
  const [first] = items;
  const last = items.at(-1);
  if (first === undefined || last === undefined || modes.length === 0) return undefined;
  return { kind: "modes", modes, origin: { uri: reader.uri, start: first.start, end: last.end } };
}
