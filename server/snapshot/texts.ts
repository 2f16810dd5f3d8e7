/**
 * The texts of a workspace and their syntax trees: open documents first, else what the host reads.
 * A tree is made once a text; equal text keeps its tree, so that identity tells what changed.
 */
import { parse, type Parsed, reparse } from "../../grammar/index.js";
import type { Host } from "./workspace.js";

export type Read = ReturnType<Host["read"]>;
export type Source = { readonly parsed: Parsed } | Exclude<Read, { readonly text: string }>;

export interface Texts {
  read(uri: string): Read;
  source(uri: string): Source;
}

export class DocumentTexts implements Texts {
  readonly #host: Host;
  readonly #documents = new Map<string, Read>();
  readonly #onDisk = new Map<string, Read>();
  readonly #parsed = new Map<string, { readonly text: string; readonly source: Source }>();

  constructor(host: Host) {
    this.#host = host;
  }

  set(uri: string, text: string): void {
    this.#documents.set(uri, { text });
  }

  unset(uri: string): void {
    this.#documents.delete(uri);
    this.forget(uri);
  }

  forget(uri: string): void {
    this.#onDisk.delete(uri);
    if (!this.#documents.has(uri)) this.#parsed.delete(uri);
  }

  open(): readonly string[] {
    return [...this.#documents.keys()];
  }

  isOpen(uri: string): boolean {
    return this.#documents.has(uri);
  }

  read(uri: string): Read {
    const open = this.#documents.get(uri);
    if (open !== undefined) return open;
    const known = this.#onDisk.get(uri);
    if (known !== undefined) return known;
    const read = this.#host.read(uri);
    this.#onDisk.set(uri, read);
    return read;
  }

  source(uri: string): Source {
    const read = this.read(uri);
    if (!("text" in read)) return read;
    const kept = this.#parsed.get(uri);
    if (kept?.text === read.text) return kept.source;
    const before = kept !== undefined && "parsed" in kept.source ? kept.source.parsed : undefined;
    const source = { parsed: before === undefined ? parse(read.text) : reparse(read.text, before) };
    this.#parsed.set(uri, { text: read.text, source });
    return source;
  }
}

/** The same texts with a few of them changed: where a fix proves itself before it is offered. */
export class ChangedTexts implements Texts {
  readonly #under: Texts;
  readonly #changed: ReadonlyMap<string, string>;
  readonly #parsed = new Map<string, Source>();

  constructor(under: Texts, changed: ReadonlyMap<string, string>) {
    this.#under = under;
    this.#changed = changed;
  }

  read(uri: string): Read {
    const text = this.#changed.get(uri);
    return text === undefined ? this.#under.read(uri) : { text };
  }

  source(uri: string): Source {
    const text = this.#changed.get(uri);
    if (text === undefined) return this.#under.source(uri);
    const kept = this.#parsed.get(uri);
    if (kept !== undefined) return kept;
    const source = { parsed: parse(text) };
    this.#parsed.set(uri, source);
    return source;
  }
}
