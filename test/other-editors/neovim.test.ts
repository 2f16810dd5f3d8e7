/** A second editor, with the configuration that the samples give: a finding and a hover come through it. */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";

const isThere = spawnSync("nvim", ["--version"]).status === 0;
if (!isThere) console.log("Neovim is not tried: there is none on the path (apt-get install neovim).");

const FILE = "samples/broken/coupling.crank";

interface Asked {
  readonly filetype: string;
  readonly findings: readonly { readonly line: number; readonly message: string; readonly code: string }[];
  readonly hover: string | null;
}

function ask(line: number, column: number): Asked {
  const command = `let g:bellcrank_command = ["${process.execPath}", "${resolve("dist/cli.js")}", "serve", "--stdio"]`;
  const scripts = ["-S", "samples/editors/neovim.lua", "-S", "test/other-editors/ask.lua"];
  const { stdout, stderr } = spawnSync("nvim", ["--headless", "--clean", "--cmd", command, ...scripts], {
    encoding: "utf8",
    timeout: 60_000,
    env: { ...process.env, ASK_FILE: FILE, ASK_LINE: String(line), ASK_COLUMN: String(column) },
  });
  const answer = stdout.split("\n").find((text) => text.startsWith("{"));
  if (answer === undefined) throw new Error(`Neovim answered nothing: ${stderr}`);
  return JSON.parse(answer) as Asked;
}

describe.skipIf(!isThere)("in Neovim", () => {
  it("the coupling error is found, and hover tells what moves the damper", () => {
    const lines = readFileSync(FILE, "utf8").split("\n");
    const line = lines.findIndex((text) => text.includes("damper roll-damper for roll"));
    const { filetype, findings, hover } = ask(line, lines[line]?.indexOf("roll-damper") ?? 0);
    expect(filetype).toBe("bellcrank");
    expect(findings.map(({ line: at, code }) => [at, code])).toContainEqual([line, "coupling"]);
    expect(findings[0]?.message).toContain("heave moves it too");
    expect(hover).toContain("roll-damper");
    expect(hover).toContain("heave");
  });
});
