/** What a sheet is held against: another set-up or revision, or the JSON of a sheet that was kept. */
import { lastSheetOf } from "../../views/sheet/sheet.js";
import type { SheetItem } from "../../views/sheet/item.js";
import { inWords } from "../comparing/in-words.js";
import { operandCar } from "../comparing/two.js";
import { readText } from "../text-file.js";
import { UsageError } from "../usage-error.js";

type LastSheet = ReturnType<typeof lastSheetOf>;

export function sheetSince(operand: string, setup: string | undefined): LastSheet {
  const { car, label } = inWords(() => operandCar(operand, setup));
  return lastSheetOf(car, label);
}

/** Of `sheet --format json`. */
export function keptSheet(path: string): LastSheet {
  const found = contentOf(path);
  if (!isRecord(found) || found["schema"] !== 1 || !Array.isArray(found["items"]))
    throw new UsageError(`${path} is no setup sheet; one is written by bellcrank sheet --format json`);
  const items = found["items"].filter(isItem);
  const { setup, car } = found;
  return { name: [setup, car].find((name) => typeof name === "string") ?? path, items };
}

function contentOf(path: string): unknown {
  const text = readText(path);
  try {
    return JSON.parse(text);
  } catch {
    throw new UsageError(`${path} is not JSON`);
  }
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;

const isItem = (value: unknown): value is Pick<SheetItem, "key" | "name" | "value"> =>
  isRecord(value) && ["key", "name", "value"].every((key) => typeof value[key] === "string");
