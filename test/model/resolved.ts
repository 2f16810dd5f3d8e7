/** Resolves texts by name, as if they lay in one folder. */
import { parse, type Parsed } from "../../grammar/index.js";
import type { CarModel, ElementModel, ResolvedBlock, ResolvedStatement } from "../../server/model/car.js";
import { resolveFile, type ResolveCache } from "../../server/model/resolve.js";
import type { Missing, ResolvedCar, ResolvedFile } from "../../server/model/resolved-file.js";

export type Files = Readonly<Record<string, string>>;

export const root = "memory:///club/";

/** A folder whose trees are made once a text, as a workspace does it. */
export class Folder {
  readonly #files: Map<string, string>;
  readonly #parsed = new Map<string, { readonly text: string; readonly parsed: Parsed }>();
  /** How often each file was asked for its tree anew. */
  parses = 0;

  constructor(files: Files) {
    this.#files = new Map(Object.entries(files));
  }

  write(name: string, text: string): void {
    this.#files.set(name, text);
  }

  delete(name: string): void {
    this.#files.delete(name);
  }

  #text(uri: string): { readonly text: string } | { readonly missing: Missing } {
    if (!uri.startsWith(root)) return { missing: "outside" };
    const text = this.#files.get(decodeURIComponent(uri.slice(root.length)));
    return text === undefined ? { missing: "missing" } : { text };
  }

  source(uri: string): { readonly parsed: Parsed } | { readonly missing: Missing } {
    const read = this.#text(uri);
    if ("missing" in read) return read;
    const kept = this.#parsed.get(uri);
    if (kept?.text === read.text) return kept;
    this.parses++;
    const made = { text: read.text, parsed: parse(read.text) };
    this.#parsed.set(uri, made);
    return made;
  }

  resolve(name: string, cache?: ResolveCache): ResolvedFile {
    return resolveFile(
      root + name,
      (uri) => this.source(uri),
      (uri) => this.#text(uri),
      cache,
    );
  }
}

export function onlyCar(file: ResolvedFile): ResolvedCar {
  const [car, more] = file.cars;
  if (car === undefined || more !== undefined) throw new Error(`${file.cars.length} cars, expected one`);
  return car;
}

export function elementAt(car: CarModel, path: string): ElementModel {
  const all = [...(car.axles.front?.elements ?? []), ...(car.axles.rear?.elements ?? []), ...car.elements];
  const found = all.find((element) => element.path === path);
  if (found === undefined) throw new Error(`no element ${path} among ${all.map((one) => one.path).join(", ")}`);
  return found;
}

export function statementIn(
  block: ResolvedBlock | undefined,
  ...words: readonly string[]
): ResolvedStatement | undefined {
  const [word, ...rest] = words;
  const found = block?.statements.find((statement) => statement.word === word);
  return rest.length === 0 ? found : statementIn(found?.block, ...rest);
}

export function numberAt(block: ResolvedBlock | undefined, ...words: readonly string[]): number | undefined {
  const value = statementIn(block, ...words)?.values.find((one) => one.kind === "number");
  return value?.kind === "number" ? value.value : undefined;
}
