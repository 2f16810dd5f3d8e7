/** `bellcrank serve`: the language server, for any editor that speaks LSP. */
import type { Command } from "commander";

export function serveCommand(root: Command): void {
  root
    .command("serve")
    .description("Run the language server on standard input and output.")
    .option("--stdio", "speak on standard input and output (the default, and the only way)")
    .addHelpText("after", "\nExample (in an editor's settings):\n  bellcrank serve --stdio")
    .action(async () => {
      // The server reads its transport from the process's arguments, and ends the process itself.
      if (!process.argv.includes("--stdio")) process.argv.push("--stdio");
      const server = new URL("./server.cjs", import.meta.url).href;
      await import(server);
    });
}
