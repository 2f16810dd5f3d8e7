/** Rates for the terminal. */
import pc from "picocolors";
import type { CheckedCar } from "../../findings/context.js";
import { cautions } from "../../views/cautions.js";
import { type RatesPage, ratesPage } from "../../views/rates-page.js";
import { table } from "./table.js";

export const ratesText = (car: CheckedCar): string => pageText(ratesPage(car));

export function pageText(page: RatesPage): string {
  const sections = page.sections.map(({ title, columns, rows }) => `${pc.bold(title)}\n${table(columns, rows)}`);
  const reasons =
    page.reasons.length === 0
      ? []
      : [`${["No figure (-) where:", ...page.reasons.map((reason) => `  ${reason}`)].join("\n")}\n`];
  const notes = (page.notes ?? []).map((note) => `Note: ${note}\n`);
  return [`${pc.bold(page.title)}\n`, ...sections, ...reasons, ...notes, `${pc.dim(cautions)}\n`].join("\n");
}
