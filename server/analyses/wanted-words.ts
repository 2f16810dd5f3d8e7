/** What an expectation wants, in the author's own units, and figures with the digits that a miss is seen in. Text only. */
import { showQuantity } from "../quantities/index.js";
import type { Expectation } from "./expectations.js";

/** So many digits that the miss, or the margin, is seen in the figure. */
export const digitsFor = (value: number, by: number): number =>
  Math.min(9, Math.max(4, 2 + Math.ceil(Math.log10(Math.max(1, Math.abs(value) / by)))));

/** "between 150 N/mm and 190 N/mm", in the author's units. */
export function wantedWords(wants: Expectation["wants"]): string {
  const shown = ({ value, unit }: { readonly value: number; readonly unit: string }): string =>
    showQuantity(value, unit, 6);
  switch (wants.kind) {
    case "between":
      return `between ${shown(wants.from)} and ${shown(wants.to)}`;
    case "above":
    case "below":
      return `${wants.kind} ${shown(wants.limit)}`;
    case "within":
      return `${shown(wants.target)} within ${shown(wants.tolerance)}`;
  }
}
