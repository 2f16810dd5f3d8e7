/**
 * The files of one resolution: contexts by URI, made anew where a text or one that it rests on
 * has changed, kept where nothing has.
 */
import type { Parsed } from "../../grammar/index.js";
import { adopt } from "./adopt.js";
import { FileContext } from "./file-context.js";
import type { Missing, ReadText, ResolvedFile, Source } from "./resolved-file.js";
import { closureOf } from "./use-graph.js";

/** Everything that a kept context rests on, as it was. */
interface Kept {
  readonly context: FileContext;
  /** Files in use, by URI; of one that could not be read, why. */
  readonly rests: ReadonlyMap<string, Parsed | Missing | undefined>;
  resolved: ResolvedFile | undefined;
}

/**
 * Remembers what was last resolved of each file. Passed in by whoever wants to keep it. Whether it
 * still holds is told by the identity of the syntax trees, so there is nothing to invalidate.
 */
export class ResolveCache {
  readonly #kept = new Map<string, Kept>();

  get(context: { readonly uri: string; readonly parsed: Parsed }): Kept | undefined {
    const kept = this.#kept.get(context.uri);
    return kept?.context.parsed === context.parsed ? kept : undefined;
  }

  /** As it was last built, whatever its text was. */
  latest(uri: string): FileContext | undefined {
    return this.#kept.get(uri)?.context;
  }

  set(kept: Kept): void {
    this.#kept.set(kept.context.uri, kept);
  }

  /** The file is gone. */
  forget(uri: string): void {
    this.#kept.delete(uri);
  }
}

export class Files {
  readonly #source: (uri: string) => Source;
  readonly #readText: ReadText;
  readonly #cache: ResolveCache;
  readonly #contexts = new Map<string, FileContext | undefined>();
  readonly #missing = new Map<string, Missing>();

  constructor(source: (uri: string) => Source, readText: ReadText, cache: ResolveCache) {
    this.#source = source;
    this.#readText = readText;
    this.#cache = cache;
  }

  missing(uri: string): Missing | undefined {
    this.at(uri);
    return this.#missing.get(uri);
  }

  /** The context with everything that it uses; undefined where there is no such text. */
  at(uri: string): FileContext | undefined {
    const known = this.#contexts.get(uri);
    if (known !== undefined || this.#contexts.has(uri)) return known;
    const kept = this.#valid(uri);
    if (kept !== undefined) {
      this.#contexts.set(uri, kept.context);
      for (const other of kept.context.used) this.#contexts.set(other.uri, other);
      return kept.context;
    }
    return this.#make(uri);
  }

  keptFor(context: FileContext): Kept | undefined {
    return this.#cache.get(context);
  }

  #valid(uri: string): Kept | undefined {
    const parsed = this.#parsed(uri);
    const kept = parsed && this.#cache.get({ uri, parsed });
    if (kept === undefined) return undefined;
    for (const [other, before] of kept.rests)
      if ((this.#parsed(other) ?? this.#missing.get(other)) !== before) return undefined;
    for (const context of [kept.context, ...kept.context.used]) {
      for (const [table, text] of context.tables.texts) if (this.#text(table) !== text) return undefined;
    }
    return kept;
  }

  #parsed(uri: string): Parsed | undefined {
    const source = this.#source(uri);
    if ("parsed" in source) return source.parsed;
    this.#missing.set(uri, source.missing);
    return undefined;
  }

  #text(uri: string): string | undefined {
    const read = this.#readText(uri);
    return "text" in read ? read.text : undefined;
  }

  /** New contexts for the file and for all that it uses and that are new too; then each learns what it uses. */
  #make(uri: string): FileContext | undefined {
    const made: FileContext[] = [];
    const open = [uri];
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      if (this.#contexts.has(next)) continue;
      const kept = this.#valid(next);
      const context = kept?.context ?? this.#fresh(next);
      this.#contexts.set(next, context);
      if (context === undefined || kept !== undefined) continue;
      made.push(context);
      for (const use of context.uses) if (use.uri !== undefined) open.push(use.uri);
    }
    for (const context of made) this.#complete(context);
    return this.#contexts.get(uri);
  }

  #fresh(uri: string): FileContext | undefined {
    const parsed = this.#parsed(uri);
    return parsed && new FileContext(uri, parsed, this.#readText);
  }

  #complete(context: FileContext): void {
    context.used = closureOf(context, (uri) => this.at(uri));
    const before = this.#cache.latest(context.uri);
    if (before !== undefined) adopt(context, before, this.#readText);
    const rests = new Map<string, Parsed | Missing | undefined>();
    for (const one of [context, ...context.used]) {
      rests.set(one.uri, one.parsed);
      for (const { uri } of one.uses)
        if (uri !== undefined) rests.set(uri, this.#contexts.get(uri)?.parsed ?? this.#missing.get(uri));
    }
    this.#cache.set({ context, rests, resolved: undefined });
  }
}
