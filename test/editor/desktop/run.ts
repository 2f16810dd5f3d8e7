/** Starts a desktop VS Code with the packaged extension installed and has it run the checks from inside. */
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { resolveCliArgsFromVSCodeExecutablePath, runTests } from "@vscode/test-electron";
import { build } from "esbuild";
import { RESULTS_FILE, type Result, SAMPLE_FOLDER } from "./results.js";

const INSTALL_LIMIT_MS = 120_000;

export async function runInDesktop(executable: string, extension: string): Promise<readonly Result[]> {
  const state = mkdtempSync(join(tmpdir(), "bellcrank-desktop-"));
  try {
    const folders = ["--user-data-dir", join(state, "user"), "--extensions-dir", join(state, "extensions")];
    install(executable, folders, extension);
    const results = join(state, "results.json");
    await runTests({
      vscodeExecutablePath: executable,
      extensionDevelopmentPath: harness(state),
      extensionTestsPath: await bundle(state),
      extensionTestsEnv: { [RESULTS_FILE]: results, [SAMPLE_FOLDER]: resolve("samples/quill") },
      launchArgs: [state, ...folders, "--disable-workspace-trust", "--skip-welcome"],
    });
    return JSON.parse(readFileSync(results, "utf8")) as Result[];
  } finally {
    rmSync(state, { recursive: true, force: true });
  }
}

function install(executable: string, folders: readonly string[], extension: string): void {
  const [command, ...rest] = resolveCliArgsFromVSCodeExecutablePath(executable);
  if (command === undefined) throw new Error("VS Code's command line was not found.");
  const own = rest.filter(
    (argument) => !argument.startsWith("--user-data-dir") && !argument.startsWith("--extensions-dir"),
  );
  execFileSync(command, [...own, ...folders, "--install-extension", extension], {
    timeout: INSTALL_LIMIT_MS,
    stdio: ["ignore", "ignore", "inherit"],
    shell: process.platform === "win32",
  });
}

/** VS Code asks for an extension under development; this one does nothing, so that the packaged one is what is tested. */
function harness(state: string): string {
  const folder = join(state, "harness");
  mkdirSync(folder);
  const manifest = { name: "harness", publisher: "bellcrank", version: "0.0.0", engines: { vscode: "*" } };
  writeFileSync(join(folder, "package.json"), JSON.stringify(manifest));
  return folder;
}

async function bundle(state: string): Promise<string> {
  const outfile = join(state, "in-host.cjs");
  const entryPoints = ["test/editor/desktop/in-host.ts"];
  await build({ entryPoints, outfile, bundle: true, platform: "node", format: "cjs", external: ["vscode"] });
  return outfile;
}
