/**
 * `npm start`: shows the main job in the terminal, on the samples, with the command that was just built.
 * Each command is printed as a user would type it.
 */
import { spawnSync } from "node:child_process";

/** What to say, and what to run. A finding of a broken sample is what is to be seen there, so it does not stop the tour. */
const steps = [
  ["A car drawn in space, its catalogue and two set-ups, checked:", ["check", "samples/quill"]],
  [
    "The same roll damper with one eye off, so that it also moves in heave:",
    ["check", "samples/broken/coupling.crank", "--fail-on", "never"],
  ],
  ["What the dry-day set-up comes to:", ["rates", "samples/quill/dry.crank"]],
];

for (const [words, command] of steps) {
  console.log(`\n${words}\n\n$ bellcrank ${command.join(" ")}`);
  const { status } = spawnSync(process.execPath, ["dist/cli.js", ...command], { stdio: "inherit" });
  if (status !== 0) process.exit(status ?? 1);
}

console.log(`
In the editor the same figures stand in the text while you type:

  npm run editor     opens the samples in an editor with the extension
  npm run package    makes dist/bellcrank-<version>.vsix, for "Install from VSIX" in VS Code
`);
