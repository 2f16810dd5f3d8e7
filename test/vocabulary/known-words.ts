/**
 * Walks a file by the vocabulary alone and lists what it does not know: words, forms, units.
 * It looks up no names, so it needs no resolved car; an element in an override path is known by
 * the kind that any of the given files declares under its name.
 */
import type { Entry, Item, Row, Span, Statement } from "../../grammar/index.js";
import { parse, type Parsed } from "../../grammar/index.js";
import { conceptOf, findWord, opensAt, type Slot, type Word } from "../../grammar/vocabulary/index.js";
import { formsThatFit } from "../../server/model/forms.js";
import { matchesDimension, parseUnit } from "../../server/quantities/index.js";

export function unknownIn(text: string, others: readonly string[] = []): readonly string[] {
  const parsed = parse(text);
  const names = new Map<string, string>();
  for (const source of [text, ...others]) collectElements(parse(source).document.entries, names);
  return new Walk(parsed, names).run();
}

function collectElements(entries: readonly Entry[], names: Map<string, string>): void {
  for (const entry of entries) {
    if (entry.kind === "row") continue;
    const [word] = entry.head.segments;
    const [name] = entry.items;
    const isElement = findWord("axle", word?.text ?? "")?.role === "element";
    if (isElement && name?.kind === "path") names.set(name.segments[0]?.text ?? "", word?.text ?? "");
    collectElements(entry.block?.entries ?? [], names);
  }
}

class Walk {
  private readonly found: string[] = [];

  constructor(
    private readonly parsed: Parsed,
    private readonly elements: ReadonlyMap<string, string>,
  ) {}

  run(): readonly string[] {
    for (const problem of this.parsed.problems) this.tell(problem, problem.kind);
    this.entries(this.parsed.document.entries, "file");
    return this.found;
  }

  private tell(span: Span, what: string): void {
    this.found.push(`${what}: ${this.parsed.text.slice(span.start, span.end).split("\n")[0]}`);
  }

  private entries(entries: readonly Entry[], concept: string): void {
    for (const entry of entries) {
      if (entry.kind === "row") this.row(entry, concept);
      else this.statement(entry, concept);
    }
  }

  private row(row: Row, concept: string): void {
    const forms = conceptOf(concept)?.rows ?? [];
    const fits = forms.some(({ key, value }) => fitsDimension(key, row.key) && fitsDimension(value, row.value));
    if (!fits) this.tell(row, `no such row in ${concept}`);
  }

  private statement(statement: Statement, concept: string): void {
    const [head, ...more] = statement.head.segments.map(({ text }) => text);
    const word = more.length === 0 && head !== undefined ? findWord(concept, head) : undefined;
    if (word !== undefined) return this.form(statement, word);
    const start = conceptOf(concept)?.overrides;
    const target = start === undefined ? undefined : this.target(statement, start);
    if (target === undefined) return this.tell(statement.head, `unknown in ${concept}`);
    const first = statement.items[0];
    const adds = first?.kind === "path" && first.segments[0]?.text === "by";
    if (!adds) this.form(statement, target);
  }

  /** The word that an override path ends at. */
  private target(statement: Statement, start: string): Word | undefined {
    let inside = reachable([start]);
    let word: Word | undefined;
    for (const { text } of statement.head.segments) {
      if (text === "left" || text === "right") continue;
      const kind = this.elements.get(text);
      const axle = inside.includes("car") && (text === "front" || text === "rear");
      word = axle ? findWord("car", "axle") : inside.map((one) => findWord(one, text)).find((one) => one !== undefined);
      word ??= kind === undefined ? undefined : findWord("axle", kind);
      if (word === undefined) return undefined;
      const opened = [word.opens, ...(word.opensByForm ?? [])].filter((one) => one !== undefined);
      inside = reachable(opened);
    }
    return word;
  }

  private form(statement: Statement, word: Word): void {
    const fits = formsThatFit(word.takes, statement.items);
    if ("reached" in fits) return this.tell(statement, `no form of ${word.word}`);
    const fit = fits.find(({ form, starts }) =>
      form.every((slot, index) => {
        const item = statement.items[starts[index] ?? 0];
        return item === undefined || fitsDimension(slot, coveredBy(item, statement.items));
      }),
    );
    if (fit === undefined) return this.tell(statement, `wrong dimension for ${word.word}`);
    const opened = opensAt(word, fit.index);
    if (statement.block === undefined) {
      if (opened !== undefined && word.block === "required") this.tell(statement, `${word.word} needs a block`);
    } else if (opened === undefined) this.tell(statement, `${word.word} takes no block`);
    else this.entries(statement.block.entries, opened);
  }
}

/** An override path leaves `linkage` and `wheel` out. */
function reachable(opened: readonly string[]): readonly string[] {
  return opened.includes("axle") ? [...opened, "wheel", "linkage", "linkage-planar"] : opened;
}

/** In a pair (`8 x 30 mm`, `between 46 and 49 %`) the unit on the last number covers the first as well. */
function coveredBy(item: Item, items: readonly Item[]): Item {
  const last = items.at(-1);
  const bare = item.kind === "quantity" && item.unit === undefined;
  return bare && last?.kind === "quantity" && last.unit !== undefined ? { ...item, unit: last.unit } : item;
}

function fitsDimension(slot: Slot, item: Item): boolean {
  if (slot.kind !== "quantity" && slot.kind !== "range" && slot.kind !== "point") return true;
  const unit = item.kind === "range" ? unitOf(item.to) : unitOf(item);
  if (unit === undefined) return true;
  const info = parseUnit(unit);
  return info !== undefined && matchesDimension(info, slot.dimension);
}

/** The unit of a plain value; undefined for expressions and names, whose dimension is not known here. */
function unitOf(item: Item): string | undefined {
  if (item.kind !== "quantity" && item.kind !== "tuple") return undefined;
  return item.unit?.text ?? "";
}
