/** A half-typed line never blanks the rest of the file: what stands on other lines is still in the tree, at its place. */
import { describe, expect, it } from "vitest";
import { type Document, type Entry, parse } from "../../grammar/index.js";
import { programs } from "./programs.js";
import { showHeader } from "./s-expression.js";

interface Placed {
  readonly line: number;
  /** The first words of the blocks around it, and the statement. */
  readonly what: string;
}

/** Every statement with the heads of the blocks that it stands in. */
function placed(text: string): readonly Placed[] {
  const { document, lines } = parse(text);
  const found: Placed[] = [];
  const visit = (entries: readonly Entry[], around: string) => {
    for (const entry of entries) {
      const what = `${around}/${showHeader(entry)}`;
      found.push({ line: lines.position(entry.start).line, what });
      if (entry.kind === "statement" && entry.block !== undefined)
        visit(entry.block.entries, `${around}/${headOf(entry)}`);
    }
  };
  visit((document satisfies Document).entries, "");
  return found;
}

function headOf(entry: Entry): string {
  return showHeader(entry).split(" ", 2).join(" ");
}

/** The lines that close or open nothing: cutting one of them says nothing about where the others belong. */
const isPlain = (line: string) => !/[{}]/.test(line.replace(/#.*/, "").replace(/\{[^{}]*\}/g, ""));

function lost(text: string, line: number, cut: string): readonly string[] {
  const lines = text.split("\n");
  const whole = placed(text).filter((entry) => entry.line !== line);
  lines[line] = cut;
  const still = new Set(placed(lines.join("\n")).map(({ what }) => what));
  return whole.map(({ what }) => what).filter((what) => !still.has(what));
}

describe("recovery", () => {
  it.each(programs)("keeps every other line of %s while one is typed", (_, text) => {
    const losses: string[] = [];
    text.split("\n").forEach((line, index) => {
      if (!isPlain(line)) return;
      for (let length = 0; length <= line.length; length++) {
        const cut = line.slice(0, length);
        // A cut inside a block on one line leaves it open; its own closing is what indentation then tells.
        losses.push(...lost(text, index, cut).map((what) => `${JSON.stringify(cut)} loses ${what}`));
      }
    });
    expect(losses).toEqual([]);
  });

  it.each(programs)("keeps every other line of %s where a line that opens or closes a block is gone", (_, text) => {
    const gone: string[] = [];
    text.split("\n").forEach((line, index) => {
      if (isPlain(line) || !line.trim().startsWith("}")) return;
      gone.push(...lost(text, index, "").map((what) => `without ${JSON.stringify(line)}: ${what}`));
    });
    expect(gone).toEqual([]);
  });

  it.each(programs)("keeps every line of %s at its place where an opening brace is gone", (_, text) => {
    const gone: string[] = [];
    const lines = text.split("\n");
    lines.forEach((line, index) => {
      const header = /^(\s*[\w][^{}#=]*(?:[a-z]|"))\s*\{$/.exec(line)?.[1];
      const isDeeper = /^ */.exec(lines[index + 1] ?? "")![0].length > /^ */.exec(line)![0].length;
      if (header === undefined || !isDeeper || (lines[index + 1] ?? "").trim().startsWith("#")) return;
      const before = placed(text).map(({ what }) => what);
      const now = new Set(
        placed([...lines.slice(0, index), header, ...lines.slice(index + 1)].join("\n")).map(({ what }) => what),
      );
      gone.push(...before.filter((what) => !now.has(what)).map((what) => `line ${index}: ${what}`));
    });
    expect(gone).toEqual([]);
  });

  it.each(programs)("keeps every line of %s at its place where a brace is too many", (_, text) => {
    const gone: string[] = [];
    const lines = text.split("\n");
    lines.forEach((line, index) => {
      const indentation = /^ */.exec(line)?.[0] ?? "";
      if (indentation.length === 0 || line.trim() === "") return;
      const before = placed(text).map(({ what }) => what);
      const now = new Set(
        placed([...lines.slice(0, index), `${indentation}}`, ...lines.slice(index)].join("\n")).map(({ what }) => what),
      );
      gone.push(...before.filter((what) => !now.has(what)).map((what) => `before line ${index}: ${what}`));
    });
    expect(gone).toEqual([]);
  });
});
