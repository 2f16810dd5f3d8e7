/**
 * One `workspace/diagnostic` request, held open: what differs from what the client has, and from then on what changes.
 *
 * In: which files there are, and whose text changed. Out: reports of those files alone whose findings are others.
 * Invariant: a file that findings are pushed for is never reported with any, and one that is gone never keeps its own.
 */
import type { PreviousResultId, WorkspaceDocumentDiagnosticReport } from "vscode-languageserver";
import type { Report } from "./reports.js";

export type FileReport = WorkspaceDocumentDiagnosticReport;

/** A file's report, and the files that it rests on. */
export interface Looked {
  readonly report: Report;
  readonly rests: readonly string[];
}

/** What a pull needs to know of the files. */
interface Pulled {
  /** The files that a pull covers now. */
  uris(): readonly string[];
  look(uri: string): Promise<Looked>;
}

/** Result id of a file whose findings the client has to forget. */
const NONE = "none";

/** So many at a time are sent: the first ones show while the rest is still checked. */
const CHUNK = 20;

export class WorkspacePull {
  readonly #pulled: Pulled;
  /** By the addresses that the client has: the ids of what it was told last. */
  readonly #told: Map<string, string>;
  readonly #rests = new Map<string, ReadonlySet<string>>();
  #changed = new Set<string>();
  #isStale = true;
  #wake: (() => void) | undefined;
  ended = false;

  constructor(pulled: Pulled, previous: readonly PreviousResultId[]) {
    this.#pulled = pulled;
    this.#told = new Map(previous.map(({ uri, value }) => [uri, value]));
  }

  /** These changed, came, went, were opened or closed. */
  changed(uris: readonly string[]): void {
    for (const uri of uris) this.#changed.add(uri);
    this.#stir();
  }

  /** Everything has to be looked at again, as after a change of the settings. */
  restart(): void {
    this.#rests.clear();
    this.#stir();
  }

  end(): void {
    this.ended = true;
    this.#stir();
  }

  #stir(): void {
    this.#isStale = true;
    this.#wake?.();
  }

  /** Resolves when there may be something new. */
  async change(): Promise<void> {
    if (this.#isStale || this.ended) return;
    await new Promise<void>((resolve) => {
      this.#wake = resolve;
    });
    this.#wake = undefined;
  }

  /** Looks at what changed since the last round; whatever differs goes to `send`, a few files at a time. */
  async round(send: (reports: readonly FileReport[]) => void): Promise<void> {
    const changed = this.#changed;
    this.#changed = new Set();
    this.#isStale = false;
    const uris = new Set(this.#pulled.uris());
    let waiting: FileReport[] = [...this.#told.keys()]
      .filter((uri) => !uris.has(uri))
      .flatMap((uri) => this.#gone(uri));
    for (const uri of uris) {
      if (this.ended) return;
      if (!this.#isDue(uri, changed)) continue;
      waiting.push(...(await this.#look(uri)));
      if (waiting.length < CHUNK) continue;
      send(waiting);
      waiting = [];
    }
    if (waiting.length > 0) send(waiting);
  }

  /** What the client has still holds of the files beside these. */
  unchanged(sent: readonly FileReport[]): readonly FileReport[] {
    const others = new Set(this.#rests.keys());
    for (const { uri } of sent) others.delete(uri);
    return [...others].flatMap((uri): FileReport[] => {
      const resultId = this.#told.get(uri);
      return resultId === undefined ? [] : [{ kind: "unchanged", uri, version: null, resultId }];
    });
  }

  #isDue(uri: string, changed: ReadonlySet<string>): boolean {
    const rests = this.#rests.get(uri);
    return rests === undefined || [...changed].some((one) => rests.has(one));
  }

  async #look(uri: string): Promise<readonly FileReport[]> {
    const { report, rests } = await this.#pulled.look(uri);
    this.#rests.set(uri, new Set([uri, ...rests]));
    if (this.#told.get(uri) === report.resultId) return [];
    this.#told.set(uri, report.resultId);
    return [{ ...report, uri, version: null }];
  }

  #gone(uri: string): readonly FileReport[] {
    this.#rests.delete(uri);
    if (this.#told.get(uri) === NONE) return [];
    this.#told.set(uri, NONE);
    return [{ kind: "full", uri, version: null, resultId: NONE, items: [] }];
  }
}
