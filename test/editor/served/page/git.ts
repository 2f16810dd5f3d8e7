/** Git in the folder of a check, as somebody would run it in a terminal beside the editor. */
import { execFileSync } from "node:child_process";

const identity = ["-c", "user.name=Ada Fitter", "-c", "user.email=ada@club.example"];

/** Runs one command there; fails with what git says. */
export function gitIn(folder: string): (...args: readonly string[]) => void {
  return (...args) =>
    void execFileSync("git", [...identity, ...args], { cwd: folder, stdio: ["ignore", "ignore", "pipe"] });
}
