/** Load cases as CSV: one figure a row. */
import type { CheckedCar } from "../../findings/context.js";
import { fromSI } from "../../quantities/index.js";
import { carRows, elementRows, wheelRows } from "../../views/case-rows.js";
import { caseResults } from "../../views/cases-page.js";
import { isAbsent } from "../../views/figures.js";
import { unitsOfCar } from "../../views/units-of-car.js";
import { csv } from "./csv.js";
import { rounded } from "./json.js";

export function casesCsv(car: CheckedCar): string {
  const unit = unitsOfCar(car.model);
  const rows = caseResults(car).flatMap((result) =>
    result.kind !== "equilibrium"
      ? [[result.name, "car", result.kind, "", ""] as const]
      : [...carRows(result, unit), ...wheelRows(result, unit), ...elementRows(result, unit)].map((row) => {
          const value = isAbsent(row.figure) ? "" : rounded(fromSI(row.figure, row.unit) ?? row.figure);
          return [result.name, row.subject, row.name, value, row.unit] as const;
        }),
  );
  return csv([["case", "subject", "figure", "value", "unit"], ...rows]);
}
