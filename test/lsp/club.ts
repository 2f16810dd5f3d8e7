/** A server started as other editors start it, on a copy of the sample car that a test may change. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Position, Range } from "vscode-languageserver/node";
import { Wire } from "../support/wire.js";

export interface Club {
  readonly wire: Wire;
  readonly folder: string;
  uri(name: string): string;
  read(name: string): string;
  write(name: string, text: string): void;
  open(name: string, text?: string): Promise<string>;
  close(): Promise<number | null>;
}

export async function startClub(): Promise<Club> {
  const folder = mkdtempSync(join(tmpdir(), "club house "));
  cpSync("samples/quill", folder, { recursive: true });
  const wire = new Wire(process.execPath, ["dist/cli.js", "serve", "--stdio"]);
  await wire.initialize([pathToFileURL(folder).href]);
  const uri = (name: string): string => pathToFileURL(join(folder, name)).href;
  const read = (name: string): string => readFileSync(join(folder, name), "utf8");
  return {
    wire,
    folder,
    uri,
    read,
    write: (name, text) => writeFileSync(join(folder, name), text),
    async open(name, text = read(name)) {
      await wire.open(uri(name), text);
      await wire.findings(uri(name));
      return text;
    },
    async close() {
      const code = await wire.stop();
      rmSync(folder, { recursive: true, force: true });
      return code;
    },
  };
}

/** Position of the first `part` inside the first `marker`. */
export function at(text: string, marker: string, part = marker): Position {
  const start = text.indexOf(marker);
  if (start < 0) throw new Error(`"${marker}" does not stand in the text`);
  return positionOf(text, start + marker.indexOf(part));
}

export function rangeAt(text: string, marker: string, part = marker): Range {
  const start = text.indexOf(marker) + marker.indexOf(part);
  return { start: positionOf(text, start), end: positionOf(text, start + part.length) };
}

export function positionOf(text: string, offset: number): Position {
  const before = text.slice(0, offset).split("\n");
  return { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
}

/** The text after edits, as an editor would have it. */
export function edited(text: string, edits: readonly { readonly range: Range; readonly newText: string }[]): string {
  const offsets = edits.map(({ range, newText }) => ({
    start: offsetOf(text, range.start),
    end: offsetOf(text, range.end),
    newText,
  }));
  return offsets
    .sort((a, b) => b.start - a.start)
    .reduce((result, { start, end, newText }) => result.slice(0, start) + newText + result.slice(end), text);
}

function offsetOf(text: string, { line, character }: Position): number {
  return (
    text
      .split("\n")
      .slice(0, line)
      .reduce((sum, one) => sum + one.length + 1, 0) + character
  );
}
