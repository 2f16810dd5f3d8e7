/** JSON for machines: the number of the schema first, two blanks of indentation, figures with their unit. */
import type { Absent, Figure } from "../../analyses/results.js";
import { fromSI } from "../../quantities/index.js";
import { isAbsent } from "../../views/figures.js";

export type Quantity = { readonly value: number; readonly unit: string } | { readonly absent: string };

export const schemaVersion = 1;

export function json(content: object): string {
  return `${JSON.stringify({ schema: schemaVersion, ...content }, undefined, 2)}\n`;
}

export function quantity(figure: Figure, unit: string): Quantity {
  if (isAbsent(figure)) return absence(figure);
  const value = fromSI(figure, unit);
  return value === undefined ? { absent: `"${unit}" is not a unit` } : { value: rounded(value), unit };
}

export const absence = ({ reason }: Absent): { readonly absent: string } => ({ absent: reason });

/** Twelve digits: all that a solver can vouch for, and free of the tail that binary fractions leave. */
export function rounded(value: number): number {
  return Number(value.toPrecision(12));
}
