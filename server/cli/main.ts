/**
 * The command `bellcrank`: reads the command line, runs one command, ends with its exit code. As a worker of its own
 * it makes rows of a sweep or checks files instead, so that one file is all that has to be shipped.
 */
import { isMainThread } from "node:worker_threads";
import { CommanderError } from "commander";
import { worker } from "workerpool";
import { checkRun } from "./checking/check-run.js";
import { program } from "./program.js";
import { exitCodes } from "./exit-codes.js";
import { sweepRows } from "./sweep-rows.js";
import { UsageError } from "./usage-error.js";

if (isMainThread) process.exitCode = await run(process.argv);
else worker({ sweepRows, checkRun });

async function run(argv: readonly string[]): Promise<number> {
  // A reader that has seen enough (`| head`) closes the pipe: that is no fault of ours.
  process.stdout.on("error", (error: NodeJS.ErrnoException) =>
    process.exit(error.code === "EPIPE" ? 0 : exitCodes.unusable),
  );
  let code: number = exitCodes.fine;
  try {
    await program((result) => {
      code = result;
    }).parseAsync([...argv]);
  } catch (error) {
    return codeOf(error);
  }
  return code;
}

/** Commander has printed its own message already; ours is printed here. */
function codeOf(error: unknown): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? exitCodes.fine : exitCodes.unusable;
  if (!(error instanceof UsageError)) throw error;
  process.stderr.write(`bellcrank: ${error.message}\n`);
  return exitCodes.unusable;
}
