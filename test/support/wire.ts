/**
 * A language client as an editor would be one: starts the built server in a process of its own and
 * speaks the protocol with it over standard streams.
 */
import { type ChildProcess, spawn } from "node:child_process";
import {
  type CancellationToken,
  createProtocolConnection,
  type Diagnostic,
  type InitializeParams,
  type InitializeResult,
  type ProgressType,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  type Range,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";

/** As the protocol's request types are made: the method with the type of its parameters. */
interface AskedType<Parameters> {
  readonly method: string;
  readonly _: readonly [Parameters, ...unknown[]] | undefined;
}

export class Wire {
  readonly #process: ChildProcess;
  readonly #connection: ProtocolConnection;
  readonly #published = new Map<string, PublishDiagnosticsParams>();
  readonly #waiting = new Set<() => void>();
  readonly #versions = new Map<string, number>();
  readonly exited: Promise<number | null>;
  answer: InitializeResult | undefined;

  constructor(command: string, args: readonly string[]) {
    this.#process = spawn(command, [...args], { stdio: ["pipe", "pipe", "inherit"] });
    const { stdin, stdout } = this.#process;
    if (stdin === null || stdout === null) throw new Error("the server's streams are not there");
    this.#connection = createProtocolConnection(new StreamMessageReader(stdout), new StreamMessageWriter(stdin));
    this.exited = new Promise((resolve) => this.#process.on("exit", resolve));
    this.#connection.onNotification("textDocument/publishDiagnostics", (published: PublishDiagnosticsParams) => {
      this.#published.set(published.uri, published);
      for (const wake of this.#waiting) wake();
    });
    this.#connection.onRequest("client/registerCapability", () => null);
    for (const refresh of ["inlayHint", "codeLens", "diagnostic"])
      this.#connection.onRequest(`workspace/${refresh}/refresh`, () => null);
    this.#connection.listen();
  }

  get pid(): number | undefined {
    return this.#process.pid;
  }

  async initialize(folders: readonly string[], more: Partial<InitializeParams> = {}): Promise<InitializeResult> {
    this.answer = await this.request<InitializeResult>("initialize", {
      processId: process.pid,
      rootUri: folders[0] ?? null,
      capabilities: {
        textDocument: { completion: { completionItem: { snippetSupport: true } } },
        workspace: { applyEdit: true, didChangeWatchedFiles: { dynamicRegistration: true } },
      },
      workspaceFolders: folders.map((uri) => ({ uri, name: uri })),
      ...more,
    } satisfies InitializeParams);
    await this.notify("initialized", {});
    return this.answer;
  }

  async open(uri: string, text: string): Promise<void> {
    this.#versions.set(uri, 1);
    await this.notify("textDocument/didOpen", { textDocument: { uri, languageId: "bellcrank", version: 1, text } });
  }

  /** One edit; the whole text where no range is given. */
  async change(uri: string, text: string, range?: Range): Promise<number> {
    const version = (this.#versions.get(uri) ?? 0) + 1;
    this.#versions.set(uri, version);
    const change = range === undefined ? { text } : { range, text };
    await this.notify("textDocument/didChange", { textDocument: { uri, version }, contentChanges: [change] });
    return version;
  }

  async shut(uri: string): Promise<void> {
    await this.notify("textDocument/didClose", { textDocument: { uri } });
  }

  /** What was published last, once `wanted` holds of it. */
  async findings(
    uri: string,
    wanted: (published: PublishDiagnosticsParams) => boolean = () => true,
  ): Promise<readonly Diagnostic[]> {
    const version = this.#versions.get(uri);
    const current = (published: PublishDiagnosticsParams): boolean =>
      published.version === undefined || published.version === version;
    return new Promise((resolve) => {
      const look = (): boolean => {
        const published = this.#published.get(uri);
        if (published === undefined || !current(published) || !wanted(published)) return false;
        this.#waiting.delete(look);
        resolve(published.diagnostics);
        return true;
      };
      if (!look()) this.#waiting.add(look);
    });
  }

  /** Answers what the server asks. */
  answers(method: string, reply: (parameters: { readonly uri: string }) => unknown): void {
    this.#connection.onRequest(method, reply);
  }

  /** Takes note of what the server asks, and has nothing to say to it. */
  asked<Parameters>(type: AskedType<Parameters>, take: (parameters: Parameters) => void): void {
    this.#connection.onRequest(type.method, (parameters: Parameters) => {
      take(parameters);
      return null;
    });
  }

  wasPublished(uri: string): boolean {
    return this.#published.has(uri);
  }

  /** What comes in parts to a request that is sent with this token. */
  streams<Part>(type: ProgressType<Part>, token: string, take: (part: Part) => void): void {
    this.#connection.onProgress(type, token, take);
  }

  async request<Result>(method: string, parameters: object, cancel?: CancellationToken): Promise<Result> {
    // A third argument that is undefined would be taken for a second parameter.
    return cancel === undefined
      ? this.#connection.sendRequest<Result>(method, parameters)
      : this.#connection.sendRequest<Result>(method, parameters, cancel);
  }

  async notify(method: string, parameters: object): Promise<void> {
    return this.#connection.sendNotification(method, parameters);
  }

  /** Ends the session as the protocol wants it and gives the exit code. */
  async stop(): Promise<number | null> {
    await this.#connection.sendRequest("shutdown");
    await this.#connection.sendNotification("exit");
    const code = await this.exited;
    this.#connection.dispose();
    return code;
  }
}
