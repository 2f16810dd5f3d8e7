/** Builds what is shipped once before the tests that run it as a user does: the server and the command line. */
import { execFileSync } from "node:child_process";

export default function setup(): void {
  execFileSync(process.execPath, ["esbuild.mjs"], { stdio: "inherit" });
}
