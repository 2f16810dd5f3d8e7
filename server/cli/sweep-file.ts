/**
 * The file that a sweep writes to: what an interrupted one left there is kept, all but a torn last line.
 *
 * Invariant: a file that does not begin as this sweep's would is never touched.
 */
import { appendFileSync, createReadStream, existsSync, statSync, truncateSync, writeFileSync } from "node:fs";
import { UsageError } from "./usage-error.js";

export interface KeptRows {
  readonly count: number;
  /** The last whole line, with its end. */
  readonly last: string | undefined;
}

/**
 * Makes the file ready to be added to.
 *
 * @param startOf what the line of the nth row begins with; undefined beyond the last
 */
export async function resumed(
  path: string,
  head: string,
  startOf: (nth: number) => string | undefined,
): Promise<KeptRows> {
  if (!existsSync(path)) {
    writeFileSync(path, head);
    return { count: 0, last: undefined };
  }
  if (!statSync(path).isFile()) throw new UsageError(`--out ${path}: is not a file`);
  let bytes = 0;
  let count = -1;
  let last: string | undefined;
  for await (const line of wholeLines(path)) {
    const start = count < 0 ? head : startOf(count);
    if (start === undefined || !line.startsWith(start))
      throw new UsageError(`--out ${path}: line ${count + 2} is not of this sweep; name another file`);
    bytes += Buffer.byteLength(line);
    if (count >= 0) last = line;
    count++;
  }
  if (count < 0 && !(await beginsAs(path, head)))
    throw new UsageError(`--out ${path}: holds something else; name another file`);
  truncateSync(path, bytes);
  if (count < 0) appendFileSync(path, head);
  return { count: Math.max(count, 0), last };
}

/** Lines with their ends; what follows the last end is torn and left out. */
async function* wholeLines(path: string): AsyncGenerator<string> {
  let left = "";
  for await (const piece of createReadStream(path, "utf8")) {
    const lines = `${left}${String(piece)}`.split("\n");
    left = lines.pop() ?? "";
    for (const line of lines) yield `${line}\n`;
  }
}

/** Whether all that is there is a torn head. */
async function beginsAs(path: string, head: string): Promise<boolean> {
  let text = "";
  for await (const piece of createReadStream(path, "utf8")) {
    text += String(piece);
    if (text.length > head.length) return false;
  }
  return head.startsWith(text);
}
