/**
 * The rows of a table are not in rising order, or two of them have the same key. Between two rows
 * the value is interpolated, and that has a meaning only if the keys rise.
 *
 * ```crank wrong
 * catalogue {
 *   valving V-14 {
 *     bump { 100 mm/s: 470 N, 50 mm/s: 320 N }
 *     rebound { 50 mm/s: 410 N, 100 mm/s: 690 N }
 *   }
 * }
 * ```
 *
 * ```crank right
 * catalogue {
 *   valving V-14 {
 *     bump { 50 mm/s: 320 N, 100 mm/s: 470 N }
 *     rebound { 50 mm/s: 410 N, 100 mm/s: 690 N }
 *   }
 * }
 * ```
 */
import type { Block, Row } from "../../../../grammar/index.js";
import { toSI } from "../../../quantities/index.js";
import type { RuleContext } from "../../context.js";
import { fromModel } from "../../from-problems.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { blockAt, entryAt } from "../../tree.js";
import { quoted } from "../../wording.js";

const meta = { id: "table-order", title: "Table rows out of order", cost: "model", severity: "error" } as const;

export const tableOrder: Rule = {
  meta,
  check: (context) =>
    fromModel(meta, context, ["table-order"], (problem) => ({
      message: `The rows of ${quoted(problem.word)} do not rise from one to the next, so there is nothing to read between them. Put them in rising order, each key once.`,
    })),
  fix: (finding, context) => {
    const rows = rowsOf(tableAt(finding, context));
    const sorted = rows && inOrder(rows);
    return rows && sorted ? [reordered(finding.uri, context.text, rows, sorted)] : [];
  },
};

/** The table around the finding, or the one that its statement opens. */
function tableAt(finding: Finding, context: RuleContext): Block | undefined {
  const entry = entryAt(context.parsed.document, finding.span);
  if (entry?.kind === "statement") return entry.block;
  return blockAt(context.parsed.document, finding.span);
}

function rowsOf(block: Block | undefined): readonly Row[] | undefined {
  const rows = block?.entries.filter((entry) => entry.kind === "row");
  return rows && rows.length === block?.entries.length ? rows : undefined;
}

/** Undefined where a key is no plain number, or comes twice: then order alone mends nothing. */
function inOrder(rows: readonly Row[]): readonly Row[] | undefined {
  const keyed: { readonly row: Row; readonly key: number }[] = [];
  for (const row of rows) {
    const key = row.key.kind === "quantity" ? toSI(row.key.value, row.key.unit?.text ?? "") : undefined;
    if (key === undefined || keyed.some((other) => other.key === key)) return undefined;
    keyed.push({ row, key });
  }
  return keyed.sort((a, b) => a.key - b.key).map(({ row }) => row);
}

/** Each row's text takes the place of another's: commas, line breaks and comments stay where they are. */
function reordered(uri: string, text: string, rows: readonly Row[], sorted: readonly Row[]): Fix {
  const edits = rows.flatMap((row, index) => {
    const newText = text.slice(sorted[index]?.start ?? 0, sorted[index]?.end ?? 0);
    return sorted[index] === row ? [] : [{ uri, span: { start: row.start, end: row.end }, newText }];
  });
  return { title: "Put the rows in rising order", edits, preferred: true, safe: false };
}
