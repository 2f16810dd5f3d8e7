/** Work on all cores: how many may be used, and pieces of it done by workers, handed on in order. */
import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { type Pool, pool } from "workerpool";
import { inOrder } from "./in-order.js";
import { UsageError } from "./usage-error.js";

export type Exec = Pool["exec"];

/** What `--jobs` says; else all cores. */
export function jobsOf(text: string | undefined): number {
  const jobs = text === undefined ? availableParallelism() : Number(text);
  if (!Number.isInteger(jobs) || jobs < 1 || jobs > 256)
    throw new UsageError(`--jobs "${text ?? ""}": a whole number from 1 to 256`);
  return jobs;
}

/**
 * Each piece by a worker, which is this command itself (`main.ts` says what it can do).
 *
 * @param errand sends a worker on a piece: `exec(TASK, ARGUMENTS)`, plain data only
 * @param take gets what came of each, in order, and is awaited
 */
export async function onWorkers<Piece, Result>(
  pieces: Iterable<Piece>,
  workers: number,
  errand: (exec: Exec, piece: Piece) => PromiseLike<Result>,
  take: (result: Result, piece: Piece) => Promise<void> | void,
): Promise<void> {
  const crew = pool(fileURLToPath(import.meta.url), { maxWorkers: workers, workerType: "thread" });
  try {
    const run = async (piece: Piece): Promise<Result> => {
      const result = await errand(crew.exec.bind(crew), piece);
      return result;
    };
    await inOrder(pieces, workers * 3, run, take);
  } finally {
    await crew.terminate(true);
  }
}
