/**
 * One connection: the handshake, the documents and what is watched; the features answer the rest.
 * Transport and surroundings are passed in, so that the same server runs on stdio, on IPC and in a browser's worker.
 */
import {
  type Connection,
  DidChangeWatchedFilesNotification,
  type InitializeParams,
  type InitializeResult,
  type ServerCapabilities,
  TextDocuments,
  TextDocumentSyncKind,
  WatchKind,
} from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import { createWorkspace } from "../snapshot/create.js";
import type { WorkspaceFiles } from "../host/workspace-files.js";
import { ClientFiles } from "./client-files.js";
import type { Environment } from "./environment.js";
import { features } from "./features/index.js";
import type {
  FilesMethod,
  FilesParams,
  InitializationOptions,
  ReadTextAnswer,
  ReadTextMethod,
  ReadTextParams,
} from "./protocol.js";
import { Publisher } from "./publisher.js";
import { PulledFindings } from "./pull/pulled-findings.js";
import { normalUri, Session } from "./session.js";
import { warmUp } from "./warm-up.js";
import { readSettings } from "./settings.js";

export function startServer(connection: Connection, { files: disk, nextTurn, revisions }: Environment): void {
  const files = new ClientFiles(disk);
  const session = new Session(createWorkspace(files), () => files.list());
  session.revisions = revisions;
  const publisher = new Publisher(connection, session, nextTurn);
  const pulled = new PulledFindings(connection, session, publisher, nextTurn);
  connection.onInitialize((parameters) => {
    const options = optionsOf(parameters);
    if (options.readsText === true) askClient(connection, session, publisher, files);
    const folders = parameters.workspaceFolders ?? [];
    if (options.namesFiles === true && folders.some(({ uri }) => !disk.reads(uri))) files.expectList();
    const { capabilities, ...result } = initialize(parameters, session, disk);
    return { ...result, capabilities: { ...capabilities, ...pulled.capabilities() } };
  });
  connection.onInitialized(() => {
    watch(connection, session);
    pulled.settingsRead();
  });
  syncDocuments(connection, session, publisher, disk);
  followFiles(connection, session, publisher, files);
  connection.onDidChangeConfiguration(({ settings }) => {
    session.settings = readSettings((settings as { bellcrank?: unknown } | null)?.bellcrank);
    refreshViews(connection, session);
    pulled.settingsRead();
  });
  for (const feature of features) feature.attach(connection, session);
  connection.onShutdown(() => {
    publisher.stop();
    pulled.stop();
  });
  connection.listen();
}

/** What a client sends here is not ours: each option is looked at before it is used. */
function optionsOf(parameters: InitializeParams): { readonly [Option in keyof InitializationOptions]: unknown } {
  return (parameters.initializationOptions ?? {}) as object;
}

function askClient(connection: Connection, session: Session, publisher: Publisher, files: ClientFiles): void {
  const method: ReadTextMethod = "bellcrank/readText";
  session.isAwaited = (uris) => files.isAwaited(uris);
  session.arrival = () => files.arrival();
  session.arrivals = () => files.arrivals();
  files.connect({
    ask: (uri) => connection.sendRequest<ReadTextAnswer>(method, { uri } satisfies ReadTextParams),
    arrived: (uri) => fileChanged(connection, session, publisher, [uri]),
  });
  const listed: FilesMethod = "bellcrank/files";
  connection.onNotification(listed, ({ uris }: FilesParams) => {
    files.setListed(uris.map(normalUri));
    session.textsChanged([], "stale");
  });
}

function initialize(parameters: InitializeParams, session: Session, disk: WorkspaceFiles): InitializeResult {
  warmUp();
  session.client = parameters.capabilities;
  const options = optionsOf(parameters);
  session.settings = readSettings(options.settings);
  if (typeof options.pages === "string") session.pages = options.pages;
  if (Array.isArray(options.commands)) session.commands = new Set(options.commands.map(String));
  session.drawsImages = options.drawsImages === true;
  const folders = parameters.workspaceFolders?.map((folder) => folder.uri) ?? [];
  disk.setRoots(folders);
  const sync: ServerCapabilities = {
    positionEncoding: "utf-16",
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
    workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
  };
  const parts = [sync, ...features.map((feature) => feature.capabilities)];
  const workspace: object = Object.assign({}, ...parts.map((part) => part.workspace));
  const capabilities = Object.assign({}, ...parts, { workspace }) as ServerCapabilities;
  return { capabilities, serverInfo: { name: "bellcrank" } };
}

function syncDocuments(connection: Connection, session: Session, publisher: Publisher, disk: WorkspaceFiles): void {
  const documents = new TextDocuments(TextDocument);
  documents.onDidOpen(({ document }) => {
    if (!disk.hasRoots) disk.addFolderOf(document.uri);
  });
  documents.onDidChangeContent(({ document }) => {
    const uri = normalUri(document.uri);
    session.workspace.set(uri, document.getText());
    publisher.changed(uri, document.version);
    session.textsChanged([uri], "same");
  });
  documents.onDidClose(({ document }) => {
    const uri = normalUri(document.uri);
    session.workspace.unset(uri);
    publisher.closed(uri);
    session.textsChanged([uri], "stale");
  });
  documents.listen(connection);
}

function followFiles(connection: Connection, session: Session, publisher: Publisher, files: ClientFiles): void {
  connection.onDidChangeWatchedFiles(({ changes }) => {
    const changed = changes.flatMap(({ uri }) => filesAt(normalUri(uri), session));
    const ours = changed.filter((uri) => !files.changed(uri));
    if (changed.length > 0) fileChanged(connection, session, publisher, ours);
    session.textsChanged(changed, "stale");
  });
}

/** The file itself; of a folder that came or went, of whose files nobody tells each, those that what has findings rests on. */
function filesAt(uri: string, session: Session): readonly string[] {
  if (LANGUAGE_FILE.test(uri)) return [uri];
  const { workspace } = session;
  const byOpen = workspace.open().flatMap((open) => {
    const { uses, readsText } = workspace.file(open);
    return [...uses, ...readsText];
  });
  return [...new Set([...byOpen, ...session.restedOn()])].filter((file) => file.startsWith(`${uri}/`));
}

const LANGUAGE_FILE = /\.(?:crank|csv)$/;

/** Whatever rests on these files is stale. */
function fileChanged(connection: Connection, session: Session, publisher: Publisher, uris: readonly string[]): void {
  for (const uri of uris) {
    session.workspace.forget(uri);
    publisher.refresh(session.workspace.dependents(uri));
  }
  session.textsChanged(uris, "same");
  if (!session.publishes && session.client.workspace?.diagnostics?.refreshSupport === true)
    void connection.languages.diagnostics.refresh();
  refreshViews(connection, session);
}

/** Files that nobody has open are followed through the client, which knows the file system. */
function watch(connection: Connection, session: Session): void {
  if (session.client.workspace?.didChangeWatchedFiles?.dynamicRegistration !== true) return;
  void connection.client.register(DidChangeWatchedFilesNotification.type, {
    watchers: [
      { globPattern: "**/*.crank" },
      { globPattern: "**/*.csv" },
      // Folders: what tells of one that was moved does not tell of the files in it.
      { globPattern: "**/*", kind: WatchKind.Create | WatchKind.Delete },
    ],
  });
}

function refreshViews(connection: Connection, session: Session): void {
  if (session.client.workspace?.inlayHint?.refreshSupport === true) void connection.languages.inlayHint.refresh();
  if (session.client.workspace?.codeLens?.refreshSupport === true)
    void connection.sendRequest("workspace/codeLens/refresh");
}
