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
  /** Changed while their text was on its way: what comes may be the text before that. */
  readonly #stale = new Set<string>();
  #listed: readonly string[] = [];
  #list: Promise<void> = Promise.resolve();
  #hasList: () => void = () => undefined;

  constructor(disk: WorkspaceFiles) {
    this.#disk = disk;
  }

  /** From now on the client is asked; before, and for clients that cannot answer, such files are missing. */
  connect(reader: ClientReader): void {
    this.#reader = reader;
  }

  /** The client is going to name its files: until it has, who asks for all of them waits. */
  expectList(): void {
    this.#list = new Promise((resolve) => {
      this.#hasList = resolve;
    });
  }

  /** The language's files, those on disk and those that the client has named. */
  list(): readonly string[] {
    return [...this.#disk.list(), ...this.#listed.filter((uri) => uri.endsWith(".crank"))];
  }

  /**
   * What the client has now, tables included. What is gone or new counts as changed: of a folder that was moved, nobody tells each
   * file. The language's files are asked for at once, so that who looks for a name in all of them need not wait for one after the other.
   */
  setListed(uris: readonly string[]): void {
    const now = new Set(uris.filter((uri) => !this.#disk.reads(uri)));
    const before = new Set(this.#listed);
    this.#listed = [...now];
    for (const uri of before) if (!now.has(uri)) this.changed(uri);
    for (const uri of now) if (isMissing(this.#known.get(uri))) this.changed(uri);
    for (const uri of this.list()) if (now.has(uri)) this.read(uri);
    this.#hasList();
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
    if (this.#asked.has(uri)) this.#stale.add(uri);
    else if (this.#known.has(uri)) this.#ask(uri, this.#reader);
    return true;
  }

  isAwaited(uris: readonly string[]): boolean {
    return this.#asked.size > 0 && uris.some((uri) => this.#asked.has(uri) && !this.#known.has(uri));
  }

  /** Resolves when one more of the files that are on their way is here; at once where none is. */
  async arrival(): Promise<void> {
    if (this.#asked.size > 0) await Promise.race(this.#asked.values());
  }

  /** Resolves when the files are named, and all that are on their way are here. */
  async arrivals(): Promise<void> {
    await this.#list;
    await Promise.all(this.#asked.values());
  }

  #ask(uri: string, reader: ClientReader): void {
    if (!this.#asked.has(uri)) this.#asked.set(uri, this.#take(uri, reader));
  }

  async #take(uri: string, reader: ClientReader): Promise<void> {
    let read: Read;
    do {
      this.#stale.delete(uri);
      read = await answer(reader, uri);
    } while (this.#stale.has(uri));
    this.#known.set(uri, read);
    this.#asked.delete(uri);
    reader.arrived(uri);
  }
}

const isMissing = (read: Read | undefined): boolean => read !== undefined && "missing" in read;

/** A client that fails to read a file has none for us. */
async function answer(reader: ClientReader, uri: string): Promise<Read> {
  try {
    return await reader.ask(uri);
  } catch {
    return { missing: "missing" };
  }
}
