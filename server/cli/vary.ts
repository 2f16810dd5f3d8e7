/** What is varied, as it stands on the command line: `front.third.rate`, or with a range `front.third.rate=40..80N/mm`. */
import { UsageError } from "./usage-error.js";

const number = String.raw`[-+]?(?:\d+\.?\d*|\.\d+)`;
const range = new RegExp(`^(${number})\\s*\\.\\.\\s*(${number})\\s*([^\\s:\\d]\\S*?)?(?::(\\d+))?$`);

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
  const found = range.exec(text);
  if (found === null) return undefined;
  const [, from = "", to = "", unit = "", count] = found;
  return { from: Number(from), to: Number(to), unit, count: count === undefined ? undefined : Number(count) };
}
