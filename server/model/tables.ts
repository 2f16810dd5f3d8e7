/**
 * Curves that stand in CSV files beside the text: read once a file, put in place as the rows that
 * could have been written inline.
 */
import { conceptOf, opensAt } from "../../grammar/vocabulary/index.js";
import type { Concept, DimensionName, Slot, Word } from "../../grammar/vocabulary/word.js";
import { matchesDimension, parseUnit, toSI, unitsOf } from "../quantities/index.js";
import type { ResolvedRow, ResolvedValue } from "./car.js";
import { readCsv, type CsvColumn, type CsvCurve } from "./csv.js";
import type { Origin } from "./origin.js";
import type { Read } from "./read-statement.js";
import { relativeTo } from "./relative.js";
import type { ReadText } from "./resolved-file.js";
import type { Scope } from "./scope.js";
import type { TreeBlock } from "./tree.js";

export interface Tables {
  /** The rows of a statement that takes them `from csv`; undefined for every other statement. */
  fromCsv(word: Word, read: Read, concept: Concept, scope: Scope): TreeBlock | undefined;
}

export class CsvTables implements Tables {
  readonly #readText: ReadText;
  /** What was read, so that whoever keeps the result can tell whether it still holds. */
  readonly texts = new Map<string, string | undefined>();

  constructor(readText: ReadText) {
    this.#readText = readText;
  }

  fromCsv(word: Word, read: Read, concept: Concept, scope: Scope): TreeBlock | undefined {
    const path = read.form === -1 ? undefined : csvPath(word, read);
    if (path === undefined) return undefined;
    const curve = this.#read(path.text, path.origin, scope);
    const table = tableConcept(word, concept);
    const rows = curve && rowsOf(curve, table, path, scope);
    return rows && { concept: table, origin: path.origin, statements: [], rows, broken: undefined };
  }

  #read(path: string, place: Origin, scope: Scope): CsvCurve | undefined {
    const target = relativeTo(place.uri, path);
    const found = "bad" in target ? { missing: target.bad } : this.#readText(target.uri);
    if ("uri" in target) this.texts.set(target.uri, "text" in found ? found.text : undefined);
    if ("missing" in found) {
      scope.sink.report({ ...place, kind: "file-not-found", path, reason: found.missing });
      return undefined;
    }
    const curve = readCsv(found.text);
    if (!("troubles" in curve)) return curve;
    for (const trouble of curve.troubles) scope.sink.report({ ...place, kind: "csv", path, ...trouble });
    return undefined;
  }
}

function csvPath(word: Word, read: Read): Extract<ResolvedValue, { kind: "text" }> | undefined {
  const isCsv = word.takes[read.form]?.some((slot) => slot.kind === "keyword" && slot.word === "csv");
  const last = isCsv === true ? read.values.at(-1) : undefined;
  return last?.kind === "text" ? last : undefined;
}

/** The block that the same word opens for inline rows; a damper's whole curve has that of its sides. */
function tableConcept(word: Word, concept: Concept): Concept {
  if (conceptOf(concept)?.rows !== undefined) return concept;
  for (let form = 0; form < word.takes.length; form++) {
    const opens = opensAt(word, form);
    if (opens !== undefined && conceptOf(opens)?.rows !== undefined) return opens;
  }
  return "damper-side";
}

function rowsOf(
  curve: CsvCurve,
  concept: Concept,
  path: { readonly text: string; readonly origin: Origin },
  scope: Scope,
): readonly ResolvedRow[] | undefined {
  const forms = conceptOf(concept)?.rows ?? [];
  const form = forms.find(({ key, value }) => measures(curve.keys, key) && measures(curve.values, value));
  const keyDimension = form && dimensionOf(form.key);
  const valueDimension = form && dimensionOf(form.value);
  if (keyDimension === undefined || valueDimension === undefined) {
    const wanted = forms.map(({ key, value }) => `${unitFor(key)} against ${unitFor(value)}`);
    const detail = `its columns are in ${curve.keys.unit} and ${curve.values.unit}, but ${wanted.join(" or ")} is due`;
    scope.sink.report({ ...path.origin, kind: "csv", path: path.text, line: curve.header, detail });
    return undefined;
  }
  const rows: ResolvedRow[] = [];
  for (const [index, line] of curve.lines.entries()) {
    const key = cell(curve.keys, index, keyDimension, path.origin);
    const value = cell(curve.values, index, valueDimension, path.origin);
    if (key === undefined || value === undefined) {
      const detail = "its numbers are too large for their units";
      scope.sink.report({ ...path.origin, kind: "csv", path: path.text, line, detail });
      return undefined;
    }
    rows.push({ key, value, origin: path.origin });
  }
  return rows;
}

/** The usual unit of a column, `mm/s`. */
function unitFor(slot: Slot): string {
  const dimension = dimensionOf(slot);
  return dimension === undefined ? "numbers" : (unitsOf(dimension)[0] ?? dimension);
}

const dimensionOf = (slot: Slot): DimensionName | undefined => (slot.kind === "quantity" ? slot.dimension : undefined);

function measures(column: CsvColumn, slot: Slot): boolean {
  const unit = parseUnit(column.unit);
  return slot.kind === "quantity" && unit !== undefined && matchesDimension(unit, slot.dimension);
}

function cell(
  { values, unit }: CsvColumn,
  index: number,
  dimension: DimensionName,
  origin: Origin,
): ResolvedValue | undefined {
  const value = toSI(values[index] ?? Number.NaN, unit);
  if (value === undefined || !Number.isFinite(value)) return undefined;
  return { kind: "number", dimension, value, unit, origin, statement: origin, chain: [] };
}
