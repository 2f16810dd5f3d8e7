/**
 * `npm start`: shows the main job in the terminal, on the samples, with the command that was just built.
 * Each command is printed as a user would type it.
 */
import { spawnSync } from "node:child_process";

/** The exit code that says that there are findings: they are what is to be seen, so they do not end the tour. */
const FINDINGS = 1;

/** What to say, and what to run. */
/** @type {{ words: string, command: string[] }[]} */
const steps = [
  { words: "A car drawn in space, its catalogue and two set-ups, checked:", command: ["check", "samples/quill"] },
  {
    words: "A roll damper with one eye off, so that it also moves in heave:",
    command: ["check", "samples/broken/coupling.crank"],
  },
  { words: "What the dry-day set-up comes to:", command: ["rates", "samples/quill/dry.crank"] },
];

for (const { words, command } of steps) {
  console.log(`\n${words}\n\n$ bellcrank ${command.join(" ")}`);
  const { status } = spawnSync(process.execPath, ["dist/cli.js", ...command], { stdio: "inherit" });
  if (status === null || status > FINDINGS) process.exit(status ?? 1);
}

console.log(`
In the editor the same figures stand in the text while you type:

  npm run editor     opens the samples in an editor with the extension
  npm run package    makes dist/bellcrank-<version>.vsix, for "Install from VSIX" in VS Code
`);
