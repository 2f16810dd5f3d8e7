/** The history of a value as a table with a plot of characters, as CSV, and for a machine (`schema/log.json`). */
import pc from "picocolors";
import { plot } from "simple-ascii-chart";
import { left } from "../../views/section.js";
import type { ValueAt } from "../../views/comparison/value-at.js";
import type { History, HistoryRow } from "../comparing/history.js";
import { csv } from "./csv.js";
import { json, rounded } from "./json.js";
import { table } from "./table.js";

const WIDTH = 60;
const HEIGHT = 8;
const SHORT_HASH = 8;

export function logText(history: History): string {
  const { rows, path, car, isCut } = history;
  if (rows.length === 0) return `${path} of ${car} is as it was first committed, or before.\n`;
  const columns = ["commit", "date", "author", "was", "is", "subject"].map(left);
  const cells = rows.map(({ commit, old, now }) => [
    commit?.hash.slice(0, SHORT_HASH) ?? "work tree",
    commit?.date.slice(0, 10) ?? "",
    commit?.author ?? "",
    shown(old),
    shown(now),
    commit?.subject ?? "not committed",
  ]);
  return [
    `${pc.bold(`${path} of ${car}`)}\n`,
    table(columns, cells),
    ...drawn(rows),
    ...(isCut ? ["Further back it had other values; --max tells more.\n"] : []),
  ].join("\n");
}

const shown = (value: ValueAt): string => (value.kind === "none" ? "-" : value.text);

/** Oldest to newest, one step a change; only numbers in one unit can be drawn. */
function drawn(rows: readonly HistoryRow[]): readonly string[] {
  const numbers = [...rows].reverse().map(({ now }) => now);
  const known = numbers.flatMap((value) => (value.kind === "number" ? [value] : []));
  const [first] = known;
  if (first === undefined || known.length < 2 || known.some(({ unit }) => unit !== first.unit)) return [];
  const points = known.map(({ number }, i): [number, number] => [i + 1, number]);
  const chart = plot(points, {
    width: Math.min(WIDTH, points.length * 8),
    height: HEIGHT,
    formatter: (value) => tick(value),
  });
  const lines = chart.split("\n").map((line) => line.trimEnd());
  return [`${first.unit === "" ? "value" : first.unit}, oldest to newest\n${lines.join("\n").replace(/^\n+/, "")}\n`];
}

const tick = (value: number): string => String(Number(value.toPrecision(4)));

export const logCsv = ({ rows }: History): string =>
  csv([
    ["commit", "date", "author", "subject", "file", "was", "is", "unit"],
    ...rows.map(({ commit, path, old, now }) => [
      commit?.hash ?? "",
      commit?.date ?? "",
      commit?.author ?? "",
      commit?.subject ?? "",
      path,
      bare(old),
      bare(now),
      now.kind === "number" ? now.unit : "",
    ]),
  ]);

const bare = (value: ValueAt): string | number =>
  value.kind === "number" ? rounded(value.number) : value.kind === "text" ? value.text : "";

export const logJson = ({ path, car, rows, isCut }: History): string =>
  json({
    path,
    car,
    more: isCut,
    rows: rows.map(({ commit, path: file, old, now }) => ({
      commit: commit?.hash ?? null,
      date: commit?.date ?? null,
      author: commit?.author ?? null,
      subject: commit?.subject ?? null,
      file,
      old: valueJson(old),
      new: valueJson(now),
    })),
  });

function valueJson(value: ValueAt): object {
  switch (value.kind) {
    case "number":
      return { value: rounded(value.number), unit: value.unit };
    case "text":
      return { text: value.text };
    case "none":
      return { absent: value.why };
  }
}
