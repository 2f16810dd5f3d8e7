/** What is varied, as it stands on the command line: `front.third.rate`, or with a range `front.third.rate=40..80N/mm`. */
import { UsageError } from "./usage-error.js";

const number = String.raw`[-+]?(?:\d+\.?\d*|\.\d+)`;
const rangeShape = new RegExp(`^(${number})\\s*\\.\\.\\s*(${number})\\s*([^\\s:\\d]\\S*?)?(?::(\\d+))?$`);

export interface VariedPath {
  readonly path: string;
  /** What stands behind `=`. */
  readonly rest: string | undefined;
}

export interface VariedRange {
  readonly from: number;
  readonly to: number;
  readonly unit: string;
  readonly count: number | undefined;
}

export function variedPath(text: string): VariedPath {
  const at = text.indexOf("=");
  const path = (at < 0 ? text : text.slice(0, at)).trim();
  if (!/^[\w-]+(\.[\w-]+)*$/.test(path))
    throw new UsageError(`--vary "${text}": write the path that a set-up would, such as front.third.rate`);
  return { path, rest: at < 0 ? undefined : text.slice(at + 1).trim() };
}

/** `40..80 N/mm:9`; undefined where it is no range. */
export function variedRange(text: string): VariedRange | undefined {
  const found = rangeShape.exec(text);
  if (found === null) return undefined;
  const [, from = "", to = "", unit = "", count] = found;
  return { from: Number(from), to: Number(to), unit, count: count === undefined ? undefined : Number(count) };
}

/** Twelve digits: what is read back is what was meant, without the tail of binary fractions. */
const written = (value: number): string => {
  const text = String(Number(value.toPrecision(12)));
  return text.includes("e") ? value.toFixed(20).replace(/\.?0+$/, "") : text;
};

/** A property with all values that it is to have: `front.third.rate=40..80N/mm:9`, `front.bar.fit=RB-14,RB-15`, or one value. */
export function sweptAxis(text: string): { readonly path: string; readonly values: readonly string[] } {
  const { path, rest = "" } = variedPath(text);
  const example = `${path}=40..80N/mm:9, or ${path}=RB-14,RB-15 for parts`;
  if (rest === "") throw new UsageError(`--vary "${text}": say between which values, such as ${example}`);
  const range = variedRange(rest);
  if (range === undefined) {
    if (rest.includes("..") || rest.includes(":"))
      throw new UsageError(`--vary "${text}": is no range that can be read; write ${example}`);
    return {
      path,
      values: distinct(
        text,
        rest.split(",").map((value) => spacedUnit(value.trim())),
      ),
    };
  }
  const { from, to, unit, count } = range;
  if (from === to)
    throw new UsageError(`--vary "${text}": the range is empty; write ${path}=${from}${unit} for one value`);
  if (count === undefined) throw new UsageError(`--vary "${text}": how many values? Write ${path}=${rest}:9`);
  if (count < 2 || count > mostValues)
    throw new UsageError(
      `--vary "${text}": a range takes from 2 to ${mostValues} values; write ${path}=${from}${unit} for one`,
    );
  const values = Array.from({ length: count }, (_, i) => written(from + ((to - from) * i) / (count - 1)));
  return { path, values: values.map((value) => (unit === "" ? value : `${value} ${unit}`)) };
}

const mostValues = 1_000_000;

/** `40N/mm` as the language writes it. */
const spacedUnit = (value: string): string => value.replace(new RegExp(`^(${number})(?=[^\\s\\d.])`), "$1 ");

function distinct(text: string, values: readonly string[]): readonly string[] {
  if (values.some((value) => value === "" || /[{}#\n"]/.test(value)) || new Set(values).size < values.length)
    throw new UsageError(`--vary "${text}": write values or parts, each once, with commas between them`);
  return values;
}
