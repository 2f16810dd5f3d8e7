/** A table from a bench as lines of the language: which kind it is, where nobody says so, is told by its units. */
import { type BenchKind, type BenchOptions, columnsOf, type Imported, NoCurve } from "./bench.js";
import { damperOf } from "./damper.js";
import { ratioOf } from "./ratio.js";
import { springOf } from "./spring.js";
import type { BenchTable } from "./table.js";

const makers = { damper: damperOf, spring: springOf, ratio: ratioOf } as const;

/** @throws NoCurve where no curve can be made of it */
export function importBench(table: BenchTable, kind: BenchKind | undefined, options: BenchOptions): Imported {
  if (table.rows.length < 2) throw new NoCurve("it has fewer than two rows of numbers");
  return makers[kind ?? kindOf(table)](table, options);
}

function kindOf(table: BenchTable): BenchKind {
  const has = (...dimensions: Parameters<typeof columnsOf>[1][]): boolean => columnsOf(table, ...dimensions).length > 0;
  if (has("force", "moment")) return has("damper-speed", "angular-speed") ? "damper" : "spring";
  if (columnsOf(table, "length", "angle").length > 1) return "ratio";
  const units = table.columns.map(({ unit }) => unit).join(" and ");
  throw new NoCurve(
    `its columns are in ${units}: force against speed, force against deflection, or two lengths are due`,
  );
}
