/**
 * What the features of one connection share: the workspace, the client's abilities and settings.
 * Addresses are brought to one spelling here, so that `file:///a%20b` and `file:///a b` are one file.
 */
import type { ClientCapabilities } from "vscode-languageserver";
import { URI } from "vscode-uri";
import type { Revisions } from "../host/revisions.js";
import type { FileView, Workspace } from "../snapshot/workspace.js";
import { defaultSettings, type Settings } from "./settings.js";

export class Session {
  readonly workspace: Workspace;
  settings: Settings = defaultSettings;
  client: ClientCapabilities = {};
  /** Where the pages of the findings are kept, if the client said so. */
  pages: string | undefined;
  /** Commands that the client answers to: a lens may name these and no others. */
  commands: ReadonlySet<string> = new Set();
  /** Files as they were committed; undefined where no git can be run, as in a browser. */
  revisions: Revisions | undefined;
  /** Whether the client said that its hovers draw images. */
  drawsImages = false;
  /** Whether one of these files is still on its way from the client. */
  isAwaited: (uris: readonly string[]) => boolean = () => false;
  /** Resolves when one more of those is here. */
  arrival: () => Promise<void> = () => Promise.resolve();
  /** Resolves when all of them are, and the client has named its files. */
  arrivals: () => Promise<void> = () => Promise.resolve();

  /** Tells whoever gives findings on request: these texts changed, came, went, were opened or closed. */
  textsChanged: (uris: readonly string[], list: "same" | "stale") => void = () => undefined;

  /** What files that nobody has open rest on, as far as their findings were given. */
  restedOn: () => readonly string[] = () => [];

  readonly #listFiles: () => readonly string[];

  /** `listFiles` names the language's files in the workspace folders, open or not. */
  constructor(workspace: Workspace, listFiles: () => readonly string[]) {
    this.workspace = workspace;
    this.#listFiles = listFiles;
  }

  /** Every file of the workspace, open ones first: for what must not miss a file (references, rename). */
  everyFile(): readonly FileView[] {
    return this.everyUri().map((uri) => this.workspace.file(uri));
  }

  everyUri(): readonly string[] {
    return [...new Set([...this.workspace.open(), ...this.#listFiles()])];
  }

  /** Likewise, once the texts that only the client can read are here. */
  async everyArrivedFile(): Promise<readonly FileView[]> {
    for (;;) {
      await this.arrivals();
      const files = this.everyFile();
      if (!files.some((file) => this.isIncomplete(file))) return files;
    }
  }

  file(uri: string): FileView {
    return this.workspace.file(normalUri(uri));
  }

  /** The file once everything that it rests on is here. */
  async arrivedFile(uri: string): Promise<FileView> {
    let file = this.file(uri);
    while (this.isIncomplete(file)) {
      await this.arrival();
      file = this.file(uri);
    }
    return file;
  }

  /** Whether something that the file rests on, a table included, is still on its way. */
  isIncomplete({ uses, readsText }: FileView): boolean {
    return this.isAwaited(uses) || this.isAwaited(readsText);
  }

  /** Whether findings of open files are published: unless the client says that it pulls, and not that it is told. */
  get publishes(): boolean {
    const { publishDiagnostics, diagnostic } = this.client.textDocument ?? {};
    return publishDiagnostics !== undefined || diagnostic === undefined;
  }

  /** Whether plots may stand in hovers: only where Markdown does. */
  get showsPlots(): boolean {
    return this.drawsImages && this.client.textDocument?.hover?.contentFormat?.includes("markdown") === true;
  }

  /** Whether the client takes edits that name document versions and can be annotated. */
  get takesDocumentChanges(): boolean {
    return this.client.workspace?.workspaceEdit?.documentChanges === true;
  }
}

export function normalUri(uri: string): string {
  return URI.parse(uri).toString();
}
