/**
 * Findings on request: `textDocument/diagnostic` and `workspace/diagnostic`.
 *
 * A client that takes published findings has those of its open files published, in the turn after a keystroke; a pull
 * would come later and ask for every one of them. What it pulls is the findings of files that nobody has open, if the
 * setting asks for all files. A client that only pulls is answered for both.
 *
 * Invariant: no finding reaches a client both ways.
 */
import {
  type CancellationToken,
  type Connection,
  type Disposable,
  DocumentDiagnosticRequest,
  type DocumentDiagnosticReport,
  type DocumentDiagnosticParams,
  type ServerCapabilities,
  type WorkspaceDiagnosticParams,
  type WorkspaceDiagnosticReport,
} from "vscode-languageserver";
import type { NextTurn } from "../environment.js";
import type { Publisher } from "../publisher.js";
import { normalUri, type Session } from "../session.js";
import { type Report, Reports } from "./reports.js";
import { type FileReport, type Looked, WorkspacePull } from "./workspace-pull.js";

const OPTIONS = { interFileDependencies: true, workspaceDiagnostics: true };

type Send = (reports: readonly FileReport[]) => void;

/** So long nothing has to be typed, before files that nobody has open are checked: they would only be in the way. */
const PAUSE_MS = 250;

/** Of an open file whose findings are published. */
const PUBLISHED: Report = { kind: "full", resultId: "published", items: [] };

export class PulledFindings {
  readonly #connection: Connection;
  readonly #session: Session;
  readonly #publisher: Publisher;
  readonly #nextTurn: NextTurn;
  readonly #reports: Reports;
  /** The requests that are held open, each with its stream if it has one. */
  readonly #pulls = new Map<WorkspacePull, Send | undefined>();
  #listed: readonly string[] | undefined;
  #typedAt = -PAUSE_MS;
  #registered: Promise<Disposable> | undefined;

  constructor(connection: Connection, session: Session, publisher: Publisher, nextTurn: NextTurn) {
    this.#connection = connection;
    this.#session = session;
    this.#publisher = publisher;
    this.#nextTurn = nextTurn;
    this.#reports = new Reports(session);
    session.textsChanged = (uris, list) => {
      if (list === "stale") this.#listed = undefined;
      else this.#typedAt = performance.now();
      for (const [pull, send] of this.#pulls) {
        pull.changed(uris);
        this.#takeBack(pull, send, uris);
      }
    };
    session.restedOn = () => [...this.#pulls.keys()].flatMap((pull) => pull.restedOn());
    connection.languages.diagnostics.on((parameters) => this.#document(parameters));
    connection.languages.diagnostics.onWorkspace((parameters, token, _progress, stream) =>
      this.#workspace(parameters, token, stream && ((items) => stream.report({ items: [...items] }))),
    );
  }

  /** For clients that only pull, and for those that could not be told later. */
  capabilities(): Pick<ServerCapabilities, "diagnosticProvider"> {
    const { publishes, client } = this.#session;
    const isToldLater = client.textDocument?.diagnostic?.dynamicRegistration === true;
    const isAsked = client.textDocument?.diagnostic !== undefined && !isToldLater && this.#coversAll;
    return publishes && !isAsked ? {} : { diagnosticProvider: OPTIONS };
  }

  /** Announces what the setting asks for, or takes it back. */
  settingsRead(): void {
    const { publishes, client } = this.#session;
    for (const pull of this.#pulls.keys()) pull.restart();
    if (!publishes || client.textDocument?.diagnostic?.dynamicRegistration !== true) return;
    if (this.#coversAll) this.#register();
    else this.#unregister();
  }

  stop(): void {
    for (const pull of this.#pulls.keys()) pull.end();
  }

  get #coversAll(): boolean {
    return this.#session.settings.findingsScope === "allFiles";
  }

  /** For no documents: those that are open have their findings published, and need not be asked for. */
  #register(): void {
    this.#registered ??= this.#connection.client.register(DocumentDiagnosticRequest.type, {
      ...OPTIONS,
      documentSelector: [],
    });
  }

  #unregister(): void {
    void this.#registered?.then((registration) => registration.dispose());
    this.#registered = undefined;
  }

  async #document({ textDocument, previousResultId }: DocumentDiagnosticParams): Promise<DocumentDiagnosticReport> {
    const { report } = await this.#report(normalUri(textDocument.uri));
    const { resultId } = report;
    return resultId === previousResultId ? { kind: "unchanged", resultId } : report;
  }

  async #report(uri: string): Promise<Looked> {
    const file = this.#isPublished(uri) ? undefined : await this.#session.arrivedFile(uri);
    // It may have been opened meanwhile.
    if (file === undefined || this.#isPublished(uri)) return { report: PUBLISHED, rests: [] };
    return { report: this.#reports.of(file), rests: [...file.uses, ...file.readsText] };
  }

  #isPublished(uri: string): boolean {
    return this.#session.publishes && this.#session.workspace.isOpen(uri);
  }

  /** Held open: with a stream for as long as the client likes, without one until there is something new. */
  async #workspace(
    { previousResultIds }: WorkspaceDiagnosticParams,
    token: CancellationToken,
    stream: Send | undefined,
  ): Promise<WorkspaceDiagnosticReport> {
    this.#listed = undefined;
    const previous = previousResultIds.map(({ uri, value }) => ({ uri: normalUri(uri), value }));
    const pull = new WorkspacePull({ uris: () => this.#uris(), look: (uri) => this.#inItsTurn(uri) }, previous);
    this.#pulls.set(pull, stream);
    token.onCancellationRequested(() => pull.end());
    const items: FileReport[] = [];
    const send: Send = stream ?? ((reports) => void items.push(...reports));
    while (!pull.ended && items.length === 0) {
      await pull.round(send);
      if (items.length === 0) await pull.change();
    }
    this.#pulls.delete(pull);
    const others = stream === undefined ? pull.unchanged(items) : [];
    return { items: [...items, ...others] };
  }

  #uris(): readonly string[] {
    return this.#coversAll ? (this.#listed ??= this.#session.everyUri()) : [];
  }

  /** Whatever was reported of a file goes at once when the file is opened: it is published now. */
  #takeBack(pull: WorkspacePull, send: Send | undefined, uris: readonly string[]): void {
    const opened = this.#coversAll ? uris.filter((uri) => this.#isPublished(uri)) : [];
    const reports = send === undefined ? [] : pull.take(new Map(opened.map((uri) => [uri, PUBLISHED])));
    if (reports.length > 0) send?.(reports);
  }

  /** Not while somebody types, nor before what is open has had its turn. What was made of the file is not kept for long. */
  async #inItsTurn(uri: string): Promise<Looked> {
    while (!this.#isPublished(uri)) {
      await new Promise<void>((resolve) => this.#nextTurn(resolve));
      const pause = this.#typedAt + PAUSE_MS - performance.now();
      if (pause > 0) await new Promise((resolve) => setTimeout(resolve, pause));
      else if (!this.#publisher.isWaiting) break;
    }
    const looked = await this.#report(uri);
    this.#session.workspace.release(uri);
    return looked;
  }
}
