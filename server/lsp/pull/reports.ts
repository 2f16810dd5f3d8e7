/**
 * What a pull is answered for one file, with a result id: as long as a file's findings are what they were, its id is too,
 * whatever was typed meanwhile.
 *
 * Invariant: an id names one content, and none that another run of the server gave.
 */
import type { FullDocumentDiagnosticReport } from "vscode-languageserver";
import type { FileView } from "../../snapshot/workspace.js";
import { diagnosticsOf } from "../diagnostics.js";
import type { Session } from "../session.js";

export type Report = FullDocumentDiagnosticReport & { readonly resultId: string };

export class Reports {
  readonly #session: Session;
  readonly #given = new Map<string, { readonly content: string; readonly resultId: string }>();
  readonly #run = Date.now().toString(36);
  #count = 0;

  constructor(session: Session) {
    this.#session = session;
  }

  of(file: FileView): Report {
    const items = diagnosticsOf(this.#session, file);
    return { kind: "full", resultId: this.#idOf(file.uri, JSON.stringify(items)), items };
  }

  #idOf(uri: string, content: string): string {
    const last = this.#given.get(uri);
    if (last?.content === content) return last.resultId;
    this.#count += 1;
    const resultId = `${this.#run}-${this.#count}`;
    this.#given.set(uri, { content, resultId });
    return resultId;
  }
}
