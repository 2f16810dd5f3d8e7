/** `--threshold 0.5%` as a fraction. */
import { toSI } from "../../quantities/index.js";
import { UsageError } from "../usage-error.js";

export function shareOf(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const [, number, unit] = /^\s*(\d+(?:\.\d+)?)\s*(%?)\s*$/.exec(text) ?? [];
  const share = number === undefined ? undefined : toSI(Number(number), unit ?? "");
  if (share === undefined || !(share < 1))
    throw new UsageError(`--threshold "${text}": a share below 100 %, such as 0.5%`);
  return share;
}
