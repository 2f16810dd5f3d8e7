/**
 * The content key of an axle: every name and number that its analysis reads, as text. Two axles with the
 * same key have the same figures, in whatever file and at whatever place they are written.
 *
 * Invariant: places, units and notes are not part of it; everything else of the axle's model is, so that a
 * property that an analysis comes to read later is in it already.
 */
import type { AxleModel, CarModel } from "../model/car.js";

/** Where something is written, in which unit, and what is said beside it. */
const NOT_READ: ReadonlySet<string> = new Set([
  "origin",
  "nameOrigin",
  "forOrigins",
  "wordOrigin",
  "statement",
  "chain",
  "unit",
  "notes",
  "given",
  "part",
]);

function textOf(value: unknown): string {
  if (typeof value === "number") return `${value}`;
  if (typeof value === "string") return JSON.stringify(value);
  if (typeof value !== "object" || value === null) return "";
  if (Array.isArray(value)) return `[${value.map(textOf).join()}]`;
  if (value instanceof Map) return textOf([...value]);
  let text = "{";
  for (const [key, inner] of Object.entries(value)) {
    if (!NOT_READ.has(key)) text += `${key}:${textOf(inner)},`;
  }
  return `${text}}`;
}

export function axleKey(axle: AxleModel, car: CarModel): string {
  // The block of the axle says once more, unread, what its other properties hold.
  const { block: _, ...rest } = axle;
  return `${textOf(rest)}|${car.mass?.value ?? ""}|${car.massFront?.value ?? ""}`;
}
