/**
 * Files that the server cannot read by itself, those of a workspace that is not on its disk: only the client can, and only in
 * its own time. Until a text has come it counts as missing, and what rests on it is not published; its coming starts that anew.
 *
 * Invariant: files on disk never pass through here; a text that is known is never asked for again.
 */
import type { WorkspaceFiles } from "../host/workspace-files.js";
import type { Host } from "../snapshot/workspace.js";
import type { ReadTextAnswer } from "./protocol.js";

type Read = ReturnType<Host["read"]>;

export interface ClientReader {
  ask(uri: string): Promise<ReadTextAnswer>;
  /** The text of this file came, or changed. */
  arrived(uri: string): void;
}

export class ClientFiles implements Host {
  readonly #disk: WorkspaceFiles;
  readonly #known = new Map<string, Read>();
  readonly #asked = new Map<string, Promise<void>>();
  #reader: ClientReader | undefined;
  #listed: readonly string[] = [];

  constructor(disk: WorkspaceFiles) {
    this.#disk = disk;
  }

  /** From now on the client is asked; before, and for clients that cannot answer, such files are missing. */
  connect(reader: ClientReader): void {
    this.#reader = reader;
  }

  /** The language's files, those on disk and those that the client has named. */
  list(): readonly string[] {
    return [...this.#disk.list(), ...this.#listed];
  }

  /** Asked for at once, so that who looks for a name in all of them need not wait for one after the other. */
  setListed(uris: readonly string[]): void {
    this.#listed = uris.filter((uri) => !this.#disk.reads(uri));
    for (const uri of this.#listed) this.read(uri);
  }

  read(uri: string): Read {
    if (this.#disk.reads(uri) || this.#reader === undefined) return this.#disk.read(uri);
    const known = this.#known.get(uri);
    if (known !== undefined) return known;
    this.#ask(uri, this.#reader);
    return { missing: "missing" };
  }

  /** The file changed, came or went: the old text holds until the new one is here. Whether this is ours to follow. */
  changed(uri: string): boolean {
    if (this.#disk.reads(uri) || this.#reader === undefined) return false;
    if (this.#known.has(uri)) this.#ask(uri, this.#reader);
    return true;
  }

  isAwaited(uris: readonly string[]): boolean {
    return this.#asked.size > 0 && uris.some((uri) => this.#asked.has(uri) && !this.#known.has(uri));
  }

  /** Resolves when one more of the files that are on their way is here; at once where none is. */
  async arrival(): Promise<void> {
    if (this.#asked.size > 0) await Promise.race(this.#asked.values());
  }

  /** Resolves when all of them are here. */
  async arrivals(): Promise<void> {
    await Promise.all(this.#asked.values());
  }

  #ask(uri: string, reader: ClientReader): void {
    if (!this.#asked.has(uri)) this.#asked.set(uri, this.#take(uri, reader));
  }

  async #take(uri: string, reader: ClientReader): Promise<void> {
    this.#known.set(uri, await answer(reader, uri));
    this.#asked.delete(uri);
    reader.arrived(uri);
  }
}

/** A client that fails to read a file has none for us. */
async function answer(reader: ClientReader, uri: string): Promise<Read> {
  try {
    return await reader.ask(uri);
  } catch {
    return { missing: "missing" };
  }
}
