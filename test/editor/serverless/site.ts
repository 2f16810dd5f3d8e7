/**
 * VS Code for the browser with no server behind it: a site of files alone. The files are those of the served editor; the extension
 * lies on the site as it is packed, and the folder that is opened is in the browser's memory.
 *
 * Invariant: nothing is answered but a file of the editor or of the extension.
 */
import { existsSync, readFileSync, statSync } from "node:fs";
import { createServer, type Server } from "node:http";
import { dirname, extname, join, resolve, sep } from "node:path";
import { installServedEditor } from "../served/install.js";
import { settings } from "../served/settings.js";

const TYPES: Readonly<Record<string, string>> = {
  ".css": "text/css",
  ".html": "text/html",
  ".js": "text/javascript",
  ".cjs": "text/javascript",
  ".json": "application/json",
  ".svg": "image/svg+xml",
  ".wasm": "application/wasm",
};

/** The name of the folder is what pictures show; its scheme is the one that the editor keeps in memory by itself. */
export const FOLDER = { scheme: "tmp", path: "/quarrow-bank" } as const;

export interface Site {
  readonly url: string;
  stop(): Promise<void>;
}

/** @param extension the folder that it was unpacked into */
export async function openSite(extension: string): Promise<Site> {
  const editor = resolve(dirname(installServedEditor().entry), "../../lib/vscode");
  const server = createServer(({ url = "/", headers }, response) => {
    const answer = answerTo(decodeURIComponent(new URL(url, "http://site").pathname), headers.host ?? "");
    response.writeHead(answer === undefined ? 404 : 200, { "content-type": answer?.type ?? "text/plain" });
    response.end(answer?.body);
  });
  const workbench = withoutServer(readFileSync(join(editor, WORKBENCH_SCRIPT), "utf8"));
  const answerTo = (path: string, host: string): Answer | undefined => {
    if (path === "/") return { type: "text/html", body: page(editor, host) };
    if (path === `/editor/${WORKBENCH_SCRIPT}`) return { type: "text/javascript", body: workbench };
    return fileBelow(editor, "/editor/", path) ?? fileBelow(extension, "/extension/", path);
  };
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  return { url: `http://127.0.0.1:${portOf(server)}/`, stop: () => stop(server) };
}

interface Answer {
  readonly type: string;
  readonly body: string | Buffer;
}

function fileBelow(folder: string, start: string, path: string): Answer | undefined {
  if (!path.startsWith(start)) return undefined;
  const file = resolve(folder, path.slice(start.length));
  if (!file.startsWith(folder + sep) || !existsSync(file) || !statSync(file).isFile()) return undefined;
  return { type: TYPES[extname(file)] ?? "application/octet-stream", body: readFileSync(file) };
}

const WORKBENCH = "out/vs/code/browser/workbench";
const WORKBENCH_SCRIPT = `${WORKBENCH}/workbench.js`;

/**
 * The served build's workbench takes the machine that its page came from for a remote one, and keeps settings there. Without those
 * two it is the plain one, which finds no remote machine and keeps settings in the browser.
 */
function withoutServer(script: string): string {
  const noRemote = replaced(script, /,remoteAuthority:location\.host/, "");
  const settingsThere = /(\w+)\.file\(this\.userDataPath\)\.with\(\{scheme:(\w+)\.vscodeRemote\}\)/;
  return replaced(noRemote, settingsThere, '$1.file("/User").with({scheme:$2.vscodeUserData})');
}

function replaced(text: string, pattern: RegExp, by: string): string {
  if (!pattern.test(text)) throw new Error(`This version of the editor has no ${pattern.source}.`);
  return text.replace(pattern, by);
}

/** The editor's own page, with what its server would put in. */
function page(editor: string, host: string): string {
  const configuration = {
    folderUri: FOLDER,
    additionalBuiltinExtensions: [{ scheme: "http", authority: host, path: "/extension" }],
    webviewEndpoint: `http://${host}/editor/out/vs/workbench/contrib/webview/browser/pre/`,
    configurationDefaults: settings,
    enableWorkspaceTrust: false,
    isEnabledFileDownloads: true,
    isEnabledFileUploads: true,
    // The served build will have both; neither is used.
    isEnabledCoderGettingStarted: false,
    userDataPath: "/bellcrank",
  };
  const values: Readonly<Record<string, string>> = {
    WORKBENCH_WEB_CONFIGURATION: JSON.stringify(configuration).replaceAll('"', "&quot;"),
    WORKBENCH_WEB_BASE_URL: "/editor",
    WORKBENCH_NLS_FALLBACK_URL: "/editor/out/nls.messages.js",
    WORKBENCH_NLS_URL: "/editor/out/nls.messages.js",
    WORKBENCH_SCRIPT_NONCE: "site",
  };
  const html = readFileSync(join(editor, WORKBENCH, "workbench.html"), "utf8");
  return html.replace(/\{\{(\w+)\}\}/g, (_, name: string) => values[name] ?? "");
}

function portOf(server: Server): number {
  const address = server.address();
  if (typeof address !== "object" || address === null) throw new Error("The site has no port.");
  return address.port;
}

function stop(server: Server): Promise<void> {
  server.closeAllConnections();
  return new Promise((closed) => {
    server.close(() => closed());
  });
}
