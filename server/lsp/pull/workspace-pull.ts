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
  /** Of the files that were looked at: what they rest on. */
  readonly #rests = new Map<string, ReadonlySet<string>>();
  /** Those whose report may not hold any more. */
  readonly #due = new Set<string>();
  /** Changed since the look at a file began: its report may be of before or after. */
  readonly #meanwhile = new Set<string>();
  #isStale = true;
  #wake: (() => void) | undefined;
  ended = false;

  constructor(pulled: Pulled, previous: readonly PreviousResultId[]) {
    this.#pulled = pulled;
    this.#told = new Map(previous.map(({ uri, value }) => [uri, value]));
  }

  /** These changed, came, went, were opened or closed. */
  changed(uris: readonly string[]): void {
    for (const uri of uris) this.#meanwhile.add(uri);
    for (const [uri, rests] of this.#rests) if (uris.some((one) => rests.has(one))) this.#due.add(uri);
    this.#stir();
  }

  /** These reports hold from now on, before whatever else is looked at. */
  take(reports: ReadonlyMap<string, Report>): readonly FileReport[] {
    return [...reports].flatMap(([uri, report]) => this.#tell(uri, { report, rests: [] }));
  }

  /** Everything has to be looked at again, as after a change of the settings. */
  restart(): void {
    for (const uri of this.#rests.keys()) this.#due.add(uri);
    this.#stir();
  }

  /** Everything that the files rest on, themselves included. */
  restedOn(): readonly string[] {
    return [...this.#rests.values()].flatMap((rests) => [...rests]);
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

  /**
   * Looks at the files whose report is not known to hold; whatever differs goes to `send`, a few files at a time. A further change
   * ends the round early, since the next one begins with the files that are open.
   */
  async round(send: (reports: readonly FileReport[]) => void): Promise<void> {
    this.#isStale = false;
    const uris = new Set(this.#pulled.uris());
    let waiting: FileReport[] = [...this.#told.keys()]
      .filter((uri) => !uris.has(uri))
      .flatMap((uri) => this.#gone(uri));
    for (const uri of uris) {
      if (this.ended || this.#isStale) break;
      if (this.#rests.has(uri) && !this.#due.has(uri)) continue;
      waiting.push(...(await this.#look(uri)));
      if (waiting.length < CHUNK) continue;
      send(waiting.filter((report) => this.#holds(report)));
      waiting = [];
    }
    const rest = waiting.filter((report) => this.#holds(report));
    if (rest.length > 0) send(rest);
  }

  /** False where a later report of the same file has been sent meanwhile. */
  #holds({ uri, resultId }: FileReport): boolean {
    return this.#told.get(uri) === resultId;
  }

  /** What the client has still holds of the files beside these. */
  unchanged(sent: readonly FileReport[]): readonly FileReport[] {
    const others = new Set([...this.#rests.keys()].filter((uri) => !this.#due.has(uri)));
    for (const { uri } of sent) others.delete(uri);
    return [...others].flatMap((uri): FileReport[] => {
      const resultId = this.#told.get(uri);
      return resultId === undefined ? [] : [{ kind: "unchanged", uri, version: null, resultId }];
    });
  }

  async #look(uri: string): Promise<readonly FileReport[]> {
    this.#meanwhile.clear();
    const looked = await this.#pulled.look(uri);
    const reports = this.#tell(uri, looked);
    if ([uri, ...looked.rests].some((one) => this.#meanwhile.has(one))) this.#due.add(uri);
    return reports;
  }

  #tell(uri: string, { report, rests }: Looked): readonly FileReport[] {
    this.#rests.set(uri, new Set([uri, ...rests]));
    this.#due.delete(uri);
    if (this.#told.get(uri) === report.resultId) return [];
    this.#told.set(uri, report.resultId);
    return [{ ...report, uri, version: null }];
  }

  #gone(uri: string): readonly FileReport[] {
    this.#rests.delete(uri);
    this.#due.delete(uri);
    if (this.#told.get(uri) === NONE) return [];
    this.#told.set(uri, NONE);
    return [{ kind: "full", uri, version: null, resultId: NONE, items: [] }];
  }
}
