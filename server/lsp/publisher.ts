/**
 * Sends findings. There is no timer: a changed document is checked as soon as the messages that
 * are already here have been read, then, one a turn, the open documents that rest on it. A newer
 * change simply puts its document in front again, so that nothing is computed twice.
 *
 * Invariant: a file that is neither open nor asked for has no published findings.
 */
import type { Connection, Diagnostic } from "vscode-languageserver";
import { diagnosticsOf } from "./diagnostics.js";
import type { NextTurn } from "./environment.js";
import type { Session } from "./session.js";

export class Publisher {
  readonly #connection: Connection;
  readonly #session: Session;
  readonly #waiting = new Set<string>();
  readonly #versions = new Map<string, number>();
  readonly #nextTurn: NextTurn;
  #cancelTurn: (() => void) | undefined;

  constructor(connection: Connection, session: Session, nextTurn: NextTurn) {
    this.#connection = connection;
    this.#session = session;
    this.#nextTurn = nextTurn;
  }

  /** The text of an open document changed: it comes first, those that rest on it afterwards. */
  changed(uri: string, version: number): void {
    this.#versions.set(uri, version);
    const others = this.#session.workspace.dependents(uri).filter((other) => other !== uri);
    const rest = [...this.#waiting].filter((other) => other !== uri);
    this.#waiting.clear();
    for (const next of [uri, ...rest, ...others]) this.#waiting.add(next);
    this.#schedule();
  }

  closed(uri: string): void {
    this.#versions.delete(uri);
    this.#waiting.delete(uri);
    this.#send(uri, []);
    this.refresh(this.#session.workspace.dependents(uri));
  }

  /** Checks these again if they are open. */
  refresh(uris: Iterable<string>): void {
    for (const uri of uris) if (this.#versions.has(uri)) this.#waiting.add(uri);
    this.#schedule();
  }

  /** Whether an open file still waits for its turn. */
  get isWaiting(): boolean {
    return this.#waiting.size > 0;
  }

  stop(): void {
    this.#cancelTurn?.();
    this.#cancelTurn = undefined;
    this.#waiting.clear();
  }

  #schedule(): void {
    if (this.#cancelTurn !== undefined || this.#waiting.size === 0) return;
    this.#cancelTurn = this.#nextTurn(() => this.#takeTurn());
  }

  #takeTurn(): void {
    this.#cancelTurn = undefined;
    for (const uri of this.#waiting) {
      this.#waiting.delete(uri);
      const file = this.#session.workspace.file(uri);
      const diagnostics = diagnosticsOf(this.#session, file);
      // A file that is still on its way is not missing; when it is here, this one comes again.
      if (!this.#session.isIncomplete(file)) this.#send(uri, diagnostics);
      break;
    }
    this.#schedule();
  }

  #send(uri: string, diagnostics: Diagnostic[]): void {
    if (!this.#session.publishes) return;
    const version = this.#versions.get(uri);
    const parameters = version === undefined ? { uri, diagnostics } : { uri, version, diagnostics };
    void this.#connection.sendDiagnostics(parameters);
  }
}
