/**
 * One file while it is resolved: what it declares by name, which files it uses, its `let`s and
 * parts. Made from the syntax tree alone; cars are built from it on demand (`car-tree.ts`).
 */
import type { Name, Parsed, Statement, Text } from "../../grammar/index.js";
import type { View } from "./view.js";
import { Shelf } from "./catalogue.js";
import { plainWord } from "./forms.js";
import type { Origin } from "./origin.js";
import { relativeTo } from "./relative.js";
import type { ReadText } from "./resolved-file.js";
import { Readings } from "./readings.js";
import { blockScope, type Scope } from "./scope.js";
import { at, Sink } from "./sink.js";
import { CsvTables } from "./tables.js";
import type { CarTree } from "./tree.js";

export interface Use {
  readonly statement: Statement;
  readonly path: Text;
  /** Undefined where the text is no path that can be followed. */
  readonly uri: string | undefined;
  readonly bad: "not-a-path" | "outside" | undefined;
}

/** A car or a set-up, by name. */
export interface Declared {
  readonly kind: "car" | "setup";
  readonly name: string;
  readonly nameOrigin: Origin;
  readonly raw: Statement;
  readonly context: FileContext;
  /** What is told while it is built: kept with it. */
  sink: Sink;
  /** The name behind `from`. */
  readonly base: Name | undefined;
  /** Undefined until asked for; null where it cannot be built. */
  tree: CarTree | null | undefined;
  view: View | null | undefined;
}

export class FileContext {
  readonly uri: string;
  readonly parsed: Parsed;
  readonly sink: Sink;
  readonly scope: Scope;
  readonly tables: CsvTables;
  readonly shelf: Shelf;
  readonly uses: readonly Use[];
  readonly declared = new Map<string, Declared>();
  /** Of this version of the text and of those before it, as far as they may be taken over. */
  readings = new Readings();
  /** Every other file that this one rests on, nearest first. Set once all of them are known. */
  used: readonly FileContext[] = [];

  constructor(uri: string, parsed: Parsed, readText: ReadText) {
    this.uri = uri;
    this.parsed = parsed;
    this.sink = new Sink(uri);
    this.tables = new CsvTables(readText);
    const { entries } = parsed.document;
    this.scope = blockScope(this.#outermost(), entries, "file");
    const statements = entries.filter((entry) => entry.kind === "statement");
    this.uses = statements.flatMap((statement) => useOf(statement, uri) ?? []);
    for (const statement of statements) this.#declare(statement);
    this.shelf = new Shelf(this, statements);
  }

  #outermost(): Scope {
    const used = () => this.used.map((other) => other.scope);
    return { uri: this.uri, sink: this.sink, lets: undefined, outer: undefined, used, place: undefined, inCar: false };
  }

  #declare(raw: Statement): void {
    const kind = plainWord(raw.head);
    const [first] = raw.items;
    const name = plainWord(first);
    if ((kind !== "car" && kind !== "setup") || name === undefined || first === undefined) return;
    const nameOrigin = at(this.uri, first);
    const before = this.declared.get(name);
    if (before !== undefined) {
      this.sink.report({ ...nameOrigin, kind: "duplicate", word: name, what: "name", first: before.nameOrigin });
      return;
    }
    this.sink.declare({ target: kind, name, place: undefined, declaration: nameOrigin });
    const base = kind === "setup" ? baseOf(raw) : undefined;
    const unbuilt = { base, sink: new Sink(this.uri), tree: undefined, view: undefined };
    this.declared.set(name, { kind, name, nameOrigin, raw, context: this, ...unbuilt });
  }

  /** Its own, and those of its cars and set-ups. */
  sinks(): readonly Sink[] {
    return [this.sink, ...[...this.declared.values()].map(({ sink }) => sink)];
  }

  /** Own cars and set-ups first, then those of the used files in order. */
  findDeclared(name: string): Declared | undefined {
    const own = this.declared.get(name);
    if (own !== undefined) return own;
    for (const other of this.used) {
      const found = other.declared.get(name);
      if (found !== undefined) return found;
    }
    return undefined;
  }

  /** Names of every car and set-up that can be derived from here. */
  declaredNames(): readonly string[] {
    return [...new Set([this, ...this.used].flatMap((context) => [...context.declared.keys()]))];
  }
}

/** `setup NAME from BASE`. */
function baseOf(raw: Statement): Name | undefined {
  const [, from, base] = raw.items;
  if (plainWord(from) !== "from" || base?.kind !== "path" || base.segments.length !== 1) return undefined;
  return base.segments[0];
}

function useOf(statement: Statement, from: string): Use | undefined {
  const [path] = statement.items;
  if (plainWord(statement.head) !== "use" || path?.kind !== "text") return undefined;
  const target = relativeTo(from, path.value);
  return "uri" in target
    ? { statement, path, uri: target.uri, bad: undefined }
    : { statement, path, uri: undefined, bad: target.bad };
}
