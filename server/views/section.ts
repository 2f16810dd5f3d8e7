/** One table of figures as text, before any face lays it out. */
import type { Figure } from "../analyses/results.js";
import { isAbsent, showFigure } from "./figures.js";

export interface Column {
  readonly head: string;
  readonly align: "left" | "right";
}

export interface Section {
  readonly title: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
}

export const right = (head: string): Column => ({ head, align: "right" });
export const left = (head: string): Column => ({ head, align: "left" });

/** As a Markdown table under a line of its title. */
export const asTable = ({ title, columns, rows }: Section): string =>
  [
    title,
    "",
    `| ${columns.map(({ head }) => head).join(" | ")} |`,
    `| ${columns.map(({ align }) => (align === "right" ? "---:" : "---")).join(" | ")} |`,
    ...rows.map((row) => `| ${row.join(" | ")} |`),
  ].join("\n");

/** The figure, or a dash whose reason is told once below all tables. */
export function cell(figure: Figure, unit: string, reasons: Set<string>): string {
  if (!isAbsent(figure)) return showFigure(figure, unit);
  reasons.add(figure.reason);
  return "-";
}
