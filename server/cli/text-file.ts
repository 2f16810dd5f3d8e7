/** Texts that a command reads or writes beside set-ups: tables, lists, pages. What goes wrong is for the user to put right. */
import { isUtf8 } from "node:buffer";
import { readFileSync, writeFileSync } from "node:fs";
import { UsageError } from "./usage-error.js";

const MEGABYTE = 2 ** 20;
/** A bench that samples for minutes fills some megabytes; a larger file is something else. */
const MOST_BYTES = 64 * MEGABYTE;

const why: Readonly<Record<string, string>> = { ENOENT: "there is no such file", EISDIR: "is a folder" };

/** @param called how the user named it, where that is not the path */
export function readText(path: string, called = path): string {
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    throw new UsageError(`${called}: ${why[(error as NodeJS.ErrnoException).code ?? ""] ?? "cannot be read"}`);
  }
  if (bytes.length > MOST_BYTES) throw new UsageError(`${called}: is larger than ${MOST_BYTES / MEGABYTE} MB`);
  if (!isUtf8(bytes)) throw new UsageError(`${called}: is not UTF-8 text`);
  return bytes.toString("utf8");
}

export function writeText(path: string, text: string): void {
  try {
    writeFileSync(path, text);
  } catch (error) {
    throw new UsageError(`${path} cannot be written (${(error as NodeJS.ErrnoException).code ?? "unknown error"})`);
  }
}
