/** Serves a folder in the web-served editor, with the packaged extension installed, on loopback only. */
import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import { readdirSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { installServedEditor, type ServedEditorFiles } from "./install.js";
import { type ExtensionHost, writeSettings } from "./settings.js";

const START_LIMIT_MS = 60_000;
const INSTALL_LIMIT_MS = 120_000;

export interface Served {
  readonly url: string;
  readonly process: ChildProcess;
  stop(): Promise<void>;
}

/** `state` is a folder for the editor's own files; `folder` is the one that it opens. */
export async function serve(
  extension: string,
  folder: string,
  state: string,
  host: ExtensionHost = "server",
): Promise<Served> {
  const files = installServedEditor();
  const base = beginning(files, state);
  writeSettings(join(state, "user"), host);
  installExtension(files, base, extension);
  const port = await freePort();
  const server = spawn(files.node, [...base, ...serving(port), folder], {
    env: plainEnvironment(),
    stdio: ["ignore", "pipe", "pipe"],
    // A group of its own, so that its own children end with it.
    detached: true,
  });
  const url = `http://127.0.0.1:${port}/?folder=${encodeURIComponent(folder)}`;
  await answering(server, `http://127.0.0.1:${port}/healthz`);
  return { url, process: server, stop: () => stop(server) };
}

/** The extension as an editor unpacks it: the folder that it is in then. */
export function unpack(extension: string, state: string): string {
  const files = installServedEditor();
  installExtension(files, beginning(files, state), extension);
  const extensions = join(state, "extensions");
  const folder = readdirSync(extensions).find((name) => name.startsWith("bellcrank."));
  if (folder === undefined) throw new Error(`The extension is not in ${extensions}.`);
  return join(extensions, folder);
}

function beginning({ entry }: ServedEditorFiles, state: string): string[] {
  const folders = ["--user-data-dir", join(state, "user"), "--extensions-dir", join(state, "extensions")];
  return [entry, ...folders, "--config", join(state, "config.yaml")];
}

function serving(port: number): string[] {
  const quiet = ["--disable-telemetry", "--disable-update-check", "--disable-workspace-trust"];
  return ["--auth", "none", "--bind-addr", `127.0.0.1:${port}`, ...quiet];
}

function installExtension(files: ServedEditorFiles, base: readonly string[], extension: string): void {
  const output = execFileSync(files.node, [...base, "--install-extension", extension, "--force"], {
    env: plainEnvironment(),
    encoding: "utf8",
    timeout: INSTALL_LIMIT_MS,
    // Native modules that were not built are reported here; installing does without them.
    stdio: ["ignore", "pipe", "ignore"],
  });
  if (!output.includes("successfully installed")) throw new Error(`The extension was not installed:\n${output}`);
}

/** Inside a terminal of an editor, these would make the served one a mere client of it. */
function plainEnvironment(): NodeJS.ProcessEnv {
  return Object.fromEntries(
    Object.entries(process.env).filter(([name]) => !/^(VSCODE_|ELECTRON_|NODE_OPTIONS|PORT$)/.test(name)),
  );
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() =>
        typeof address === "object" && address !== null ? resolve(address.port) : reject(new Error("no port")),
      );
    });
  });
}

async function answering(server: ChildProcess, url: string): Promise<void> {
  let output = "";
  const collect = (piece: Buffer): void => {
    output = (output + piece.toString()).slice(-4000);
  };
  server.stdout?.on("data", collect);
  server.stderr?.on("data", collect);
  const end = Date.now() + START_LIMIT_MS;
  while (Date.now() < end && server.exitCode === null) {
    // Refused until it listens; that is what is waited for.
    const answer = await fetch(url).catch(() => undefined);
    if (answer?.ok === true) return;
    await pause(200);
  }
  await stop(server);
  throw new Error(`The served editor did not start:\n${output}`);
}

async function stop(server: ChildProcess): Promise<void> {
  if (server.pid === undefined || server.exitCode !== null || server.signalCode !== null) return;
  const gone = new Promise<void>((resolve) => server.once("exit", () => resolve()));
  signalGroup(server.pid, "SIGTERM");
  await Promise.race([gone, pause(5_000, undefined, { ref: false })]);
  signalGroup(server.pid, "SIGKILL");
}

function signalGroup(pid: number, signal: NodeJS.Signals): void {
  try {
    process.kill(-pid, signal);
  } catch (error) {
    // Nobody left in the group: what was wanted.
    if ((error as NodeJS.ErrnoException).code !== "ESRCH") throw error;
  }
}
