/** `bellcrank import`: what a bench or two dials measured, as a curve of the language by few points. */
import { writeFileSync } from "node:fs";
import { basename, extname } from "node:path";
import { type Command, Option } from "commander";
import { format } from "../../../grammar/index.js";
import { parseUnit } from "../../quantities/index.js";
import { type BenchKind, type BenchOptions, type Imported, NoCurve, type Tolerance } from "../../views/bench/bench.js";
import { importBench } from "../../views/bench/import-bench.js";
import { benchTable, type BenchTable } from "../../views/bench/table.js";
import { sheetSvg } from "../../views/curve-plot.js";
import { csvCells } from "../importing/csv-cells.js";
import { writeInto } from "../importing/into-file.js";
import { curveText } from "../output/curves-text.js";
import { UsageError } from "../usage-error.js";

interface Options {
  readonly as?: BenchKind;
  readonly column?: string;
  readonly units?: string;
  readonly separator?: string;
  readonly decimalComma?: boolean;
  readonly skipBad?: boolean;
  readonly tolerance: string;
  readonly clicks?: string;
  readonly mode?: string;
  readonly name?: string;
  readonly into?: string;
  readonly element?: string;
  readonly setup?: string;
  readonly svg?: string;
  readonly plot?: boolean;
}

export function importCommand(root: Command): void {
  root
    .command("import")
    .description("A damper's or spring's bench, or a measured motion ratio, as a curve of the language by few points.")
    .argument("<csv>", "the table, with units in its header: velocity [mm/s]; force [N]")
    .addOption(new Option("--as <kind>", "what it is, else told by its units").choices(["damper", "spring", "ratio"]))
    .option("--column <text>", "only columns whose heading holds this")
    .option("--units <list>", "units of the columns, where the header has none: mm/s,N (a column without: -)")
    .option("--separator <sign>", "comma, semicolon, tab or a sign, else found out")
    .option("--decimal-comma", "numbers have a decimal comma (understood where commas do not part the columns)")
    .option("--skip-bad", "leave out rows that cannot be read, and tell them, instead of stopping")
    .option("--tolerance <share or value>", "how far the curve may pass the smoothed points: 2%, or 5N", "2%")
    .option("--clicks <n>", "where the clicker stands, for a table with a closed and an open column")
    .addOption(new Option("--mode <mode>", "of a ratio").choices(["corner", "heave", "roll", "pitch", "warp"]))
    .option("--name <name>", "of the valving that is written, else the file's")
    .option("--into <file>", "writes it into this file instead of printing it")
    .option("--element <path>", "with --into: the element or part, such as front.side or V-14")
    .option("--setup <name>", "with --into: the set-up that it is to stand in, as an override")
    .option("--svg <file>", "writes a plot of measured points and curve there")
    .option("--plot", "plots measured points and curve on standard error (usual in a terminal)")
    .option("--no-plot", "no plot in the terminal either")
    .addHelpText(
      "after",
      `
The text goes to standard output, plot and residual to standard error.

Examples:
  bellcrank import samples/tern/damper.csv --name D-9 --tolerance 1%
  bellcrank import ratio.csv --mode heave --into car.crank --element rear.coil --svg fit.svg`,
    )
    .action((path: string, options: Options) => {
      const imported = madeOf(path, readTable(path, options), options);
      tell(path, imported, options);
      const text = textOf(imported, options.name ?? nameFor(path));
      if (options.into === undefined) process.stdout.write(text);
      else intoFile(options.into, imported, options);
    });
}

function readTable(path: string, options: Options): BenchTable {
  if ((options.into === undefined) !== (options.element === undefined))
    throw new UsageError("--into FILE and --element PATH go together: where to write");
  const { rows, separator } = csvCells(path, options.separator);
  const units = options.units?.split(",").map((unit) => unit.trim());
  const table = benchTable(rows, units, options.decimalComma === true || separator !== ",");
  if (typeof table === "string") throw new UsageError(`${path}: ${table}`);
  if (table.bad.length > 0 && options.skipBad !== true) {
    const more = table.bad.length > mostTold ? `; and ${table.bad.length - mostTold} more` : "";
    throw new UsageError(`${path}: ${table.bad.slice(0, mostTold).join("; ")}${more}; --skip-bad leaves such rows out`);
  }
  if (table.bad.length > 0) process.stderr.write(`# left out: ${table.bad.join("; ")}\n`);
  return table;
}

const mostTold = 10;

function madeOf(path: string, table: BenchTable, options: Options): Imported {
  const asked: BenchOptions = {
    tolerance: toleranceOf(options.tolerance),
    clicks: clicksOf(options.clicks),
    mode: options.mode,
    column: options.column,
  };
  try {
    return importBench(table, options.as, asked);
  } catch (error) {
    if (error instanceof NoCurve) throw new UsageError(`${path}: ${error.message}`);
    throw error;
  }
}

function toleranceOf(text: string): Tolerance {
  const [, digits = "", unit = ""] = /^\s*(\d+\.?\d*|\.\d+)\s*(\S*)\s*$/.exec(text) ?? [];
  const value = Number(digits);
  if (digits !== "" && value > 0 && unit === "%" && value < 100) return { share: value / 100 };
  if (digits !== "" && value > 0 && unit !== "" && unit !== "%" && parseUnit(unit) !== undefined)
    return { value, unit };
  throw new UsageError(`--tolerance "${text}": a share such as 2%, or a value with its unit such as 5N`);
}

function clicksOf(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  if (!/^\d{1,4}$/.test(text)) throw new UsageError(`--clicks "${text}": a whole number from 0`);
  return Number(text);
}

/** Told where it does not get into the text that may be piped on. */
function tell(path: string, { curves, remarks }: Imported, { plot, svg }: Options): void {
  if (plot ?? process.stderr.isTTY) process.stderr.write(`${curves.map(curveText).join("\n")}\n`);
  for (const remark of remarks) process.stderr.write(`# ${remark}\n`);
  if (svg === undefined) return;
  try {
    writeFileSync(svg, `${sheetSvg(basename(path), { path: basename(path), kind: "bench", curves })}\n`);
  } catch {
    throw new UsageError(`--svg ${svg}: cannot be written`);
  }
}

/** A name as the language has them: it begins with a letter. */
function nameFor(path: string): string {
  const plain = basename(path, extname(path))
    .replace(/[^\w-]+/g, "-")
    .replace(/^-+|-+$/g, "");
  return /^[A-Za-z]/.test(plain) ? plain : `bench-${plain}`.replace(/-+$/, "");
}

/** Valvings on a shelf of their own; of springs and ratios the lines that belong into an element. */
function textOf({ kind, variants }: Imported, name: string): string {
  if (!/^[A-Za-z][\w-]*$/.test(name)) throw new UsageError(`--name "${name}": letters, digits and hyphens`);
  if (kind !== "damper") return format(`${variants.flatMap(({ lines }) => lines).join("\n")}\n`);
  const part = (label: string, lines: readonly string[]): string => {
    const suffix = label.replace(/[^\w]+/g, "-").replace(/^-+|-+$/g, "");
    return `valving ${variants.length === 1 || suffix === "" ? name : `${name}-${suffix}`} {\n${lines.join("\n")}\n}`;
  };
  return format(`catalogue {\n${variants.map(({ label, lines }) => part(label, lines)).join("\n")}\n}\n`);
}

function intoFile(into: string, { variants }: Imported, { element = "", setup }: Options): void {
  const [variant, more] = variants;
  if (variant === undefined) return;
  if (more !== undefined) {
    const labels = variants.map(({ label }) => `"${label}"`).join(", ");
    throw new UsageError(`it has several settings (${labels}): choose one with --column`);
  }
  writeInto(into, element, variant, setup);
  process.stdout.write(`wrote ${element} into ${into}\n`);
}
