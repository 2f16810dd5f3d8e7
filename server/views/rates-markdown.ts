/** Rates as Markdown: what goes into a comment or a note. */
import type { CheckedCar } from "../findings/context.js";
import { cautions } from "./cautions.js";
import { withUnitStars } from "./markdown.js";
import { type RatesPage, ratesPage, type Section } from "./rates-page.js";

export const ratesMarkdown = (car: CheckedCar): string => pageMarkdown(ratesPage(car));

export function pageMarkdown(page: RatesPage): string {
  const reasons =
    page.reasons.length === 0
      ? []
      : [["No figure (-) where:", "", ...page.reasons.map((reason) => `- ${reason}`)].join("\n")];
  const parts = [
    `# ${page.title}`,
    ...page.sections.map(section),
    ...reasons,
    ...(page.notes ?? []).map((note) => `Note: ${note}`),
    `> ${cautions.replaceAll("\n", "\n> ")}`,
  ];
  return withUnitStars(`${parts.join("\n\n")}\n`);
}

function section({ title, columns, rows }: Section): string {
  const head = row(columns.map((column) => column.head));
  const rule = row(columns.map(({ align }) => (align === "right" ? "---:" : "---")));
  return [`## ${title}`, "", head, rule, ...rows.map(row)].join("\n");
}

const row = (cells: readonly string[]): string => `| ${cells.map((text) => text.replaceAll("|", "\\|")).join(" | ")} |`;
