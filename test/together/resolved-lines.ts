/** The lines of every element of a resolved car, each by its dotted path: what an override changed is what differs. */
import type { CarModel, ResolvedBlock, ResolvedStatement, ResolvedValue } from "../../server/model/car.js";

export interface ResolvedLine {
  readonly path: string;
  readonly statement: ResolvedStatement;
  /** What it says, in SI. */
  readonly said: string;
}

function saidOf(value: ResolvedValue): string {
  switch (value.kind) {
    case "number":
    case "point":
    case "range":
      return String(value.value);
    case "word":
    case "text":
      return value.text;
    case "path":
      return value.segments.join(".");
    case "attachment":
      return `${value.segments.join(".")} ${String(value.point?.value ?? "")}`;
    case "modes":
      return value.modes.map(({ text }) => text).join(" and ");
  }
}

function linesIn(block: ResolvedBlock, before: string): readonly ResolvedLine[] {
  return block.statements.flatMap((statement): readonly ResolvedLine[] => {
    const path = `${before}.${statement.name?.text ?? statement.word}`;
    const said = [statement.word, ...statement.values.map(saidOf)].join(" ");
    const inside = statement.block === undefined ? [] : linesIn(statement.block, path);
    const table = statement.block?.rows.map(({ key, value }) => `${saidOf(key)}: ${saidOf(value)}`).join(", ") ?? "";
    return [{ path, statement, said: `${said} ${table}`.trim() }, ...inside];
  });
}

export function resolvedLines({ axles, elements }: CarModel): ReadonlyMap<string, ResolvedLine> {
  const all = [axles.front, axles.rear].flatMap((axle) => axle?.elements ?? []).concat(elements);
  return new Map(all.flatMap(({ path, block }) => linesIn(block, path)).map((line) => [line.path, line]));
}

/** Paths whose line is new, gone or says something else, the blocks around them left out. */
export function differing(
  before: ReadonlyMap<string, ResolvedLine>,
  after: ReadonlyMap<string, ResolvedLine>,
): readonly string[] {
  const paths = new Set([...before.keys(), ...after.keys()]);
  return [...paths].filter((path) => before.get(path)?.said !== after.get(path)?.said).sort();
}
