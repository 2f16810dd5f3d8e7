/** Where the value of a statement comes from: the chain of what it replaced, oldest first. */
import { LineTable, type Statement } from "../../grammar/index.js";
import type { ResolvedBlock, ResolvedStatement } from "../model/car.js";
import type { Origin } from "../model/origin.js";
import type { FileView } from "../snapshot/workspace.js";
import { carAt } from "./subject.js";

export function provenance(file: FileView, statement: Statement, offset: number): string | undefined {
  const car = carAt(file, offset);
  if (car === undefined) return undefined;
  const resolved = findStatement(car.model.block, file.uri, statement.start);
  if (resolved === undefined || resolved.chain.length === 0) return undefined;
  const steps = resolved.chain.map((origin) => `- ${excerpt(file, origin)}`);
  return ["Replaces, oldest first:", ...steps].join("\n");
}

function findStatement(block: ResolvedBlock, uri: string, start: number): ResolvedStatement | undefined {
  for (const statement of block.statements) {
    if (statement.origin.uri === uri && statement.origin.start === start) return statement;
    const inside = statement.block && findStatement(statement.block, uri, start);
    if (inside !== undefined) return inside;
  }
  return undefined;
}

/** "`120 N/mm` in quill.crank, line 61". */
export function excerpt(file: FileView, origin: Origin): string {
  const text = file.textOf(origin.uri);
  const name = decodeURIComponent(origin.uri.split("/").at(-1) ?? origin.uri);
  if (text === undefined) return name;
  const line = new LineTable(text).position(origin.start).line + 1;
  return `\`${text.slice(origin.start, origin.end).split("\n")[0]}\` in ${name}, line ${line}`;
}
