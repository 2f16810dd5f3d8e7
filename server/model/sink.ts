/**
 * Where problems and mentions of names go while one file is resolved.
 *
 * Invariant: only what stands in this file is kept, and nothing is told twice, so that a
 * statement may safely be read again (for the other side, in another set-up).
 */
import type { Span } from "../../grammar/index.js";
import type { NameTarget } from "../../grammar/vocabulary/word.js";
import type { Origin } from "./origin.js";
import type { ModelProblem } from "./problem.js";
import type { ModelSymbol } from "./resolved-file.js";
import { pathOf, type Place } from "./place.js";

export interface Named {
  readonly target: NameTarget;
  readonly name: string;
  /** The block in its car that it was declared in. */
  readonly place: Place | undefined;
  readonly declaration: Origin;
}

interface Mentions {
  readonly named: Named;
  references: Origin[] | undefined;
}

/** A name as it was declared (without `place`) or spoken of. */
export interface Said {
  readonly named: Named;
  readonly place: Origin | undefined;
}

/** A moment while something is read. */
export interface Mark {
  readonly said: number;
  readonly troubles: number;
}

/** Of a file, or of one car or set-up in it. */
export class Sink {
  readonly uri: string;
  readonly #problems: ModelProblem[] = [];
  readonly #said: Said[] = [];
  #troubles = 0;
  readonly #byPlace = new Map<number, ModelProblem[]>();
  readonly #symbols = new Map<string, Map<number, Mentions>>();
  /** Problems that stand in other files; they are this file's only if the other does not have them by itself. */
  readonly foreign: ModelProblem[] = [];

  constructor(uri: string) {
    this.uri = uri;
  }

  mark(): Mark {
    return { said: this.#said.length, troubles: this.#troubles };
  }

  /** What was said of names since then; undefined where it would not do to say it again. */
  since({ said, troubles }: Mark): readonly Said[] | undefined {
    return troubles === this.#troubles ? this.#said.slice(said) : undefined;
  }

  repeat(said: readonly Said[]): void {
    for (const { named, place } of said) {
      if (place === undefined) this.declare(named);
      else this.refer(named, place);
    }
  }

  /** What is being read rests on more than its own text, or does more than say names. */
  cannotRepeat(): void {
    this.#troubles++;
  }

  report(problem: ModelProblem): void {
    this.#troubles++;
    if (problem.uri !== this.uri) {
      this.foreign.push(problem);
      return;
    }
    if (this.has(problem)) return;
    const here = this.#byPlace.get(problem.start);
    if (here === undefined) this.#byPlace.set(problem.start, [problem]);
    else here.push(problem);
    this.#problems.push(problem);
  }

  has(problem: ModelProblem): boolean {
    return this.#byPlace.get(problem.start)?.some((known) => isSame(known, problem)) === true;
  }

  declare(named: Named): void {
    this.#said.push({ named, place: undefined });
    this.#mentions(named);
  }

  /** `place` speaks of what was declared as `named`; outside of this file nothing is noted. */
  refer(named: Named, place: Origin): void {
    if (place.uri !== this.uri) return;
    this.#said.push({ named, place });
    const mentions = this.#mentions(named);
    if (mentions.references === undefined) mentions.references = [place];
    else mentions.references.push(place);
  }

  /** Whether anything in this file speaks of the name that was declared there. */
  isMentioned(declaration: Origin): boolean {
    return this.#symbols.get(declaration.uri)?.get(declaration.start)?.references !== undefined;
  }

  #mentions(named: Named): Mentions {
    const { uri, start } = named.declaration;
    let inFile = this.#symbols.get(uri);
    if (inFile === undefined) this.#symbols.set(uri, (inFile = new Map()));
    let found = inFile.get(start);
    if (found === undefined) inFile.set(start, (found = { named, references: undefined }));
    return found;
  }

  get problems(): readonly ModelProblem[] {
    return this.#problems;
  }

  *mentions(): Generator<Mentions> {
    for (const inFile of this.#symbols.values()) yield* inFile.values();
  }
}

/** Each told once, in the order of the text. */
export function allProblems([own, ...others]: readonly Sink[]): readonly ModelProblem[] {
  if (own === undefined) return [];
  const whole = new Sink(own.uri);
  for (const sink of [own, ...others]) for (const problem of sink.problems) whole.report(problem);
  return [...whole.problems].sort((a, b) => a.start - b.start || a.end - b.end);
}

export function allSymbols(sinks: readonly Sink[]): readonly ModelSymbol[] {
  const byPlace = new Map<string, { readonly named: Named; readonly references: Origin[] }>();
  for (const sink of sinks) {
    for (const { named, references } of sink.mentions()) {
      const key = `${named.declaration.start} ${named.declaration.uri}`;
      let found = byPlace.get(key);
      if (found === undefined) byPlace.set(key, (found = { named, references: [] }));
      for (const place of references ?? []) found.references.push(place);
    }
  }
  return [...byPlace.values()].map(symbolOf);
}

function symbolOf({
  named,
  references,
}: {
  readonly named: Named;
  readonly references: readonly Origin[];
}): ModelSymbol {
  const { target, name, declaration } = named;
  const path = [...pathOf(named.place).filter((step) => !passedOver.has(step)), name].join(".");
  return { target, name, path, declaration, references: inOrder(references) };
}

/** Left out of paths as authors leave them out. */
const passedOver: ReadonlySet<string> = new Set(["linkage", "wheel"]);

/** Each place once: a line may have been read more than once. */
function inOrder(places: readonly Origin[]): readonly Origin[] {
  return [...new Map(places.map((place) => [place.start, place])).values()].sort((a, b) => a.start - b.start);
}

/** Two problems of one place and kind say the same if all their plain fields do. */
function isSame(a: ModelProblem, b: ModelProblem): boolean {
  if (a.kind !== b.kind) return false;
  const other = new Map<string, unknown>(Object.entries(b));
  return Object.entries(a).every(([field, value]) => typeof value === "object" || other.get(field) === value);
}

export const at = (uri: string, { start, end }: Span): Origin => ({ uri, start, end });
