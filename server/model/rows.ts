/** Rows `key: value` of a table: typed, in rising order of their keys, each key once. */
import type { Row } from "../../grammar/index.js";
import { conceptOf, findWord } from "../../grammar/vocabulary/index.js";
import type { Concept, ConceptEntry } from "../../grammar/vocabulary/word.js";
import type { ResolvedRow, ResolvedValue } from "./car.js";
import { formsThatFit, plainWord } from "./forms.js";
import type { Reader } from "./reader.js";
import { readSlot } from "./read-statement.js";
import { at } from "./sink.js";

export function readRows(
  rows: readonly Row[],
  concept: Concept,
  owner: string,
  reader: Reader,
): readonly ResolvedRow[] {
  if (rows.length === 0) return none;
  const forms = conceptOf(concept)?.rows;
  if (forms === undefined) {
    for (const row of rows) reportRow(row, owner, isKnown(row, concept) ? withoutColon : "No rows stand here.", reader);
    return none;
  }
  const read = new RowReader(forms, owner, reader);
  return rows.flatMap((row) => read.row(row) ?? []);
}

/** `mass: 560 kg`, as other languages have it. */
const withoutColon = "A value follows its word without a colon.";

function isKnown({ key }: Row, concept: Concept): boolean {
  const word = plainWord(key);
  return word !== undefined && findWord(concept, word) !== undefined;
}

const none: readonly ResolvedRow[] = [];

function reportRow(row: Row, owner: string, detail: string, reader: Reader): void {
  reader.report({ ...at(reader.uri, row), kind: "wrong-form", word: owner, expected: [], detail });
}

type RowForm = NonNullable<ConceptEntry["rows"]>[number];

class RowReader {
  readonly #forms: readonly RowForm[];
  readonly #owner: string;
  readonly #reader: Reader;
  /** The first row decides what a measured table is of; what is said of names may differ from name to name. */
  #chosen: RowForm | undefined;
  #before: number | undefined;
  readonly #names = new Map<string, ResolvedValue>();

  constructor(forms: readonly RowForm[], owner: string, reader: Reader) {
    this.#forms = forms;
    this.#owner = owner;
    this.#reader = reader;
  }

  row(row: Row): ResolvedRow | undefined {
    const reader = this.#reader.on(at(this.#reader.uri, row), this.#owner, undefined);
    const items = [row.key, row.value];
    const forms = this.#chosen === undefined ? this.#forms : [this.#chosen];
    const fits = formsThatFit(
      forms.map(({ key, value }) => [key, value]),
      items,
    );
    const fit = "reached" in fits ? undefined : reader.choose(fits, items);
    if (fit === undefined) {
      reportRow(row, this.#owner, "A row is a key, a colon and a value.", reader);
      return undefined;
    }
    const [keySlot, valueSlot] = fit.form;
    if (keySlot === undefined || valueSlot === undefined) return undefined;
    const key = readSlot(keySlot, 0, fit, items, reader, "");
    if (key?.kind !== "path") this.#chosen ??= forms[fit.index];
    const value = readSlot(valueSlot, 1, fit, items, reader, "");
    if (reader.deferred) {
      reportRow(row, this.#owner, "In a table only numbers and `let` names can be calculated with.", reader);
    }
    if (key === undefined || value === undefined || !this.#isNext(key)) return undefined;
    return { key, value, origin: at(reader.uri, row) };
  }

  #isNext(key: ResolvedValue): boolean {
    if (key.kind === "path") return this.#isNew(key.segments.join("."), key);
    if (key.kind !== "number") return true;
    const rises = this.#before === undefined || key.value > this.#before;
    if (rises) this.#before = key.value;
    else this.#reader.report({ ...key.origin, kind: "table-order", word: this.#owner });
    return rises;
  }

  #isNew(name: string, key: ResolvedValue): boolean {
    const first = this.#names.get(name);
    if (first === undefined) {
      this.#names.set(name, key);
      return true;
    }
    this.#reader.report({ ...key.origin, kind: "duplicate", word: name, what: "property", first: first.origin });
    return false;
  }
}
