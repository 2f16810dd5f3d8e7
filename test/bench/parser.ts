/**
 * How fast text becomes a tree, once warm: megabytes a second at 10 kB and at 1 MB, and what the
 * first parse of a process costs. The text is the programs of the language page, one after the
 * other; the figure covers lexing, parsing with recovery, and every node of the tree.
 *
 * Run alone: `npx esbuild test/bench/parser.ts --bundle --platform=node --format=esm | node --input-type=module - parser`
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "../../grammar/index.js";

export interface ParserFigures {
  readonly first: { readonly milliseconds: number };
  readonly small: { readonly bytes: number; readonly megabytesPerSecond: number };
  readonly broken: { readonly bytes: number; readonly megabytesPerSecond: number };
  readonly large: { readonly bytes: number; readonly megabytesPerSecond: number };
}

/** Measures and prints. `programs` is the folder of the texts. */
export function benchParser(programs = "test/grammar/programs"): ParserFigures {
  const program = readdirSync(programs)
    .sort()
    .map((name) => readFileSync(join(programs, name), "utf8"))
    .join("\n");
  const first = milliseconds(() => parse("car a { }"));
  const small = textOf(program, 10_000);
  const broken = breakLines(small);
  const large = textOf(program, 1_000_000);
  const figures: ParserFigures = {
    first: { milliseconds: first },
    small: { bytes: small.length, megabytesPerSecond: throughput(small, 2000) },
    broken: { bytes: broken.length, megabytesPerSecond: throughput(broken, 1000) },
    large: { bytes: large.length, megabytesPerSecond: throughput(large, 12) },
  };
  print(figures);
  return figures;
}

/** The whole program over and over, about `size` bytes; one flat string of one-byte characters. */
function textOf(program: string, size: number): string {
  const whole = program.repeat(Math.round(size / program.length));
  return Buffer.from(whole.replace(/[^\x20-\x7e\n]/g, "-"), "latin1").toString("latin1");
}

/** Every tenth line cut off in the middle, as while typing. */
function breakLines(text: string): string {
  const lines = text.split("\n").map((line, index) => (index % 10 === 5 ? line.slice(0, line.length / 2) : line));
  return Buffer.from(lines.join("\n"), "latin1").toString("latin1");
}

/** The median of `runs`, after as many to warm up. */
function throughput(text: string, runs: number): number {
  for (let run = 0; run < runs; run++) parse(text);
  const times = Array.from({ length: runs }, () => milliseconds(() => parse(text))).sort((a, b) => a - b);
  return text.length / 1000 / (times[runs >> 1] as number);
}

function milliseconds(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

function print({ first, small, broken, large }: ParserFigures): void {
  const line = (name: string, { bytes, megabytesPerSecond }: ParserFigures["small"], goal: string) =>
    console.log(`  ${name.padEnd(28)} ${megabytesPerSecond.toFixed(1).padStart(6)} MB/s at ${bytes} bytes ${goal}`);
  console.log("Parser with tree and recovery");
  console.log(`  ${"first parse in the process".padEnd(28)} ${first.milliseconds.toFixed(1).padStart(6)} ms`);
  line("small text", small, "(at least 30)");
  line("small text, a tenth broken", broken, "");
  line("large text", large, "(at least 7)");
}

if (process.argv[2] === "parser") benchParser();
