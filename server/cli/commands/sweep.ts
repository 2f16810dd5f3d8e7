/** `bellcrank sweep`: a table of figures over set-ups that differ in a few properties, made on all cores. */
import { once } from "node:events";
import { appendFileSync } from "node:fs";
import { SingleBar } from "cli-progress";
import { type Command, Option } from "commander";
import type { CheckedCar } from "../../findings/context.js";
import { complaintAbout, rowCount, sweptFigure, type SweptAxis, usualFigures, valuesAt } from "../../snapshot/sweep.js";
import type { FileView } from "../../snapshot/workspace.js";
import { type Exec, jobsOf, onWorkers } from "../crew.js";
import { type SweepTable, sweepFormats } from "../output/sweep-lines.js";
import { resumed } from "../sweep-file.js";
import { type SweepJob, sweepRows } from "../sweep-rows.js";
import { UsageError } from "../usage-error.js";
import { sweptAxis } from "../vary.js";
import { carOf, openFile } from "../workspace.js";

interface Options {
  readonly setup?: string;
  readonly vary: readonly string[];
  readonly figure?: readonly string[];
  readonly format: keyof typeof sweepFormats;
  readonly out?: string;
  readonly shard?: string;
  readonly jobs?: string;
}

const collect = (value: string, before: readonly string[] = []): readonly string[] => [...before, value];
const mostRows = 10_000_000;
/** Rows of one errand of a worker: a tenth of a second's work. */
const chunk = 40;

export function sweepCommand(root: Command): void {
  root
    .command("sweep")
    .description("A table of figures over set-ups that differ in a few properties, one row a set-up.")
    .argument("<file>", "the file that declares the car or set-up")
    .option("--setup <name>", "which one, where the file declares several")
    .addOption(
      new Option("--vary <path=from..to:count>", "a property with its values, or with parts: path=A,B; once for each")
        .argParser(collect)
        .makeOptionMandatory(),
    )
    .addOption(
      new Option("--figure <figure>", "a column, as `expect` names it, with `at CASE` where it is of a case").argParser(
        collect,
      ),
    )
    .addOption(new Option("--format <format>", "one line a set-up").choices(Object.keys(sweepFormats)).default("csv"))
    .option("--out <file>", "writes there; what an interrupted sweep left there is kept and gone on with")
    .option("--shard <i/n>", "the i-th of n equal runs of rows: put together they are the whole")
    .option("--jobs <n>", "how many cores to use, else all")
    .addHelpText(
      "after",
      `
Without --figure the columns are what is expected of the car.

Examples:
  bellcrank sweep samples/quill/quill.crank --vary front.third.rate=40..80N/mm:9 --vary front.corner-bar.fit=TB-105,TB-110
  bellcrank sweep samples/quill/quill.crank --vary front.ride-height=28..36mm:81 --vary rear.ride-height=46..54mm:81 \\
    --figure 'downforce-front at top-speed' --out heights.csv`,
    )
    .action(async (path: string, options: Options) => {
      const { file } = openFile(path);
      const car = carOf(file, options.setup);
      const axes = axesOf(options.vary, file, car);
      const figures = figuresOf(options.figure ?? usualFigures(car), file, car);
      const [from, to] = shardOf(options.shard, rowCount(axes));
      const { name, setup } = car.model;
      const table = { car: name, setup, axes, figures, rows: rowCount(axes), from, to };
      await write({ file: path, setup: options.setup, axes, figures }, table, options);
    });
}

function axesOf(vary: readonly string[], file: FileView, car: CheckedCar): readonly SweptAxis[] {
  const axes = vary.map(sweptAxis);
  const twice = axes.find(({ path }, i) => axes.some((other, j) => j < i && other.path === path));
  if (twice !== undefined) throw new UsageError(`--vary ${twice.path} stands twice`);
  for (const axis of axes) {
    const complaint = complaintAbout(file, car, axis);
    if (complaint !== undefined) throw new UsageError(`--vary ${axis.path}: ${complaint}`);
  }
  if (rowCount(axes) > mostRows) throw new UsageError(`${rowCount(axes)} set-ups are too many: at most ${mostRows}`);
  return axes;
}

function figuresOf(names: readonly string[], file: FileView, car: CheckedCar) {
  if (names.length === 0) throw new UsageError("no figure to tell: name one with --figure");
  return names.map((name) => {
    const found = sweptFigure(file, car, name);
    if ("why" in found) throw new UsageError(`--figure "${name}": ${found.why}`);
    return found;
  });
}

function shardOf(text: string | undefined, rows: number): readonly [from: number, to: number] {
  if (text === undefined) return [0, rows];
  const found = /^(\d+)\/(\d+)$/.exec(text);
  const [own, all] = [Number(found?.[1] ?? 0), Number(found?.[2] ?? 0)];
  if (own < 1 || own > all) throw new UsageError(`--shard "${text}": write which of how many, such as 1/4`);
  return [Math.floor(((own - 1) * rows) / all), Math.floor((own * rows) / all)];
}

async function write(job: SweepJob, table: SweepTable, { format, out, jobs }: Options): Promise<void> {
  const { from, to, axes } = table;
  const lines = sweepFormats[format];
  const workers = jobsOf(jobs);
  const first = from + (out === undefined ? 0 : await keptIn(out, job, table, format));
  if (out === undefined) await print(lines.head(table));
  const bar = process.stderr.isTTY
    ? new SingleBar({ format: "{bar} {value}/{total} set-ups, {eta_formatted} left" })
    : undefined;
  bar?.start(to - from, first - from);
  let done = first;
  await eachRun(job, first, to, workers, async (rows, start) => {
    const text = rows.map((cells, i) => lines.line(table, start + i, valuesAt(axes, start + i), cells)).join("");
    if (out === undefined) await print(text);
    else appendFileSync(out, text);
    done += rows.length;
    bar?.update(done - from);
  });
  bar?.stop();
}

/** How many rows the file holds already. The last of them is made again: it tells whether the car is still the same. */
async function keptIn(out: string, job: SweepJob, table: SweepTable, format: Options["format"]): Promise<number> {
  const { from, to, axes } = table;
  const lines = sweepFormats[format];
  const { count, last } = await resumed(out, lines.head(table), (nth) =>
    from + nth < to ? lines.start(table, from + nth, valuesAt(axes, from + nth)) : undefined,
  );
  const row = from + count - 1;
  const [cells] = count === 0 ? [] : sweepRows(job, row, row + 1);
  if (cells !== undefined && lines.line(table, row, valuesAt(axes, row), cells) !== last)
    throw new UsageError(`--out ${out}: was made when the car was another; name another file`);
  return count;
}

type Rows = ReturnType<typeof sweepRows>;

/** In order, on workers where there is enough to do for them. */
async function eachRun(
  job: SweepJob,
  from: number,
  to: number,
  workers: number,
  take: (rows: Rows, start: number) => Promise<void>,
): Promise<void> {
  const starts = function* () {
    for (let start = from; start < to; start += chunk) yield start;
  };
  const end = (start: number): number => Math.min(start + chunk, to);
  if (workers === 1 || to - from <= chunk) {
    for (const start of starts()) await take(sweepRows(job, start, end(start)), start);
    return;
  }
  const errand = (exec: Exec, start: number) => exec<typeof sweepRows>("sweepRows", [job, start, end(start)]);
  await onWorkers(starts(), workers, errand, take);
}

async function print(text: string): Promise<void> {
  if (!process.stdout.write(text)) await once(process.stdout, "drain");
}
