/**
 * A tree as nested brackets, without its spans: what the fixtures show, and what two trees have to
 * share to mean the same. A short entry stands on one line.
 */
import type { Document, Entry, Item, Parsed, SyntaxProblem, Unit } from "../../grammar/index.js";

export function showDocument(document: Document): string {
  return document.entries.map((entry) => showEntry(entry, "")).join("\n");
}

export function showEntry(entry: Entry, indentation = ""): string {
  const notes = entry.notes.map(({ text }) => `${indentation}(note ${JSON.stringify(text)})\n`).join("");
  if (entry.kind === "row") return `${notes}${indentation}(row ${showItem(entry.key)} ${showItem(entry.value)})`;
  const header = `${notes}${indentation}(${showHeader(entry)}`;
  if (entry.block === undefined) return `${header})`;
  const closed = entry.block.closed ? "" : " unclosed";
  const entries = entry.block.entries.map((inner) => `\n${showEntry(inner, `${indentation}  `)}`);
  return `${header} {${closed}${entries.join("")}})`;
}

/** All of an entry but its block and notes. */
export function showHeader(entry: Entry): string {
  if (entry.kind === "row") return `row ${showItem(entry.key)} ${showItem(entry.value)}`;
  const items = entry.items.map(showItem);
  if (entry.equals !== undefined) items.splice(1, 0, "=");
  return [showItem(entry.head), ...items].join(" ");
}

export function showItem(item: Item): string {
  switch (item.kind) {
    case "path":
      return item.segments.map(({ text }) => text).join(".");
    case "quantity":
      return `${item.digits === String(item.value) ? "" : `${item.digits}=`}${item.value}${showUnit(item.unit)}`;
    case "tuple":
      return `(tuple ${item.members.map(showItem).join(" ")})${showUnit(item.unit)}`;
    case "group":
      return `(group ${showItem(item.inner)})${showUnit(item.unit)}`;
    case "range":
      return `(.. ${showItem(item.from)} ${showItem(item.to)})`;
    case "text":
      return JSON.stringify(item.value);
    case "binary":
      return `(${item.operator} ${showItem(item.left)} ${showItem(item.right)})`;
    case "negation":
      return `(negate ${showItem(item.operand)})`;
  }
}

function showUnit(unit: Unit | undefined): string {
  return unit === undefined ? "" : `[${unit.text}]`;
}

/** `kind "piece of text" detail`, one a line. */
export function showProblems({ problems, text }: Parsed): string {
  return problems.map((problem) => showProblem(problem, text)).join("\n");
}

function showProblem(problem: SyntaxProblem, text: string): string {
  const { kind, start, end, ...rest } = problem;
  const place = `${start}:${JSON.stringify(text.slice(start, Math.min(end, start + 40)))}`;
  const details = Object.entries(rest).flatMap(([key, value]) => {
    if (key === "opened" || key === "found" || String(value) === "") return [];
    return [`${key} ${typeof value === "string" ? JSON.stringify(value) : String(value)}`];
  });
  return [`${kind} ${place}`, ...details].join(" ");
}
