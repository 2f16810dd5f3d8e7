/**
 * What a line of a set-up did: the chain of what it replaced, oldest first; what a sum came to; what a part took the place of;
 * what was taken off.
 */
import { LineTable, type Statement } from "../../grammar/index.js";
import type { CheckedCar } from "../findings/context.js";
import type { CarModel, ElementModel, ResolvedBlock, ResolvedStatement } from "../model/car.js";
import type { Origin } from "../model/origin.js";
import { showQuantity } from "../quantities/index.js";
import type { FileView } from "../snapshot/workspace.js";
import { carAt } from "./subject.js";

export function provenance(file: FileView, statement: Statement, offset: number): string | undefined {
  const car = carAt(file, offset);
  if (car === undefined) return undefined;
  if (statement.head.segments[0]?.text === "remove") return takenOff(file, car, statement);
  const resolved = resolvedAt(car.model, file.uri, statement.start);
  const [first] = resolved;
  if (first === undefined) return undefined;
  const parts = [replaced(file, first.chain), sumOf(statement, resolved), inPlaceOf(file, car, statement)];
  const told = parts.filter((part) => part !== undefined);
  return told.length === 0 ? undefined : told.join("\n\n");
}

function replaced(file: FileView, chain: readonly Origin[]): string | undefined {
  return chain.length === 0 ? undefined : listed("Replaces, oldest first:", file, chain);
}

const listed = (head: string, file: FileView, origins: readonly Origin[]): string =>
  [head, ...origins.map((origin) => `- ${excerpt(file, origin)}`)].join("\n");

/** What `by` comes to; two values where both sides had different ones. */
function sumOf({ items }: Statement, resolved: readonly ResolvedStatement[]): string | undefined {
  const [by] = items;
  if (by?.kind !== "path" || by.segments.length !== 1 || by.segments[0]?.text !== "by") return undefined;
  const values = resolved.flatMap(({ values: [value] }) =>
    value?.kind === "number" ? [`\`${showQuantity(value.value, value.unit, 6)}\``] : [],
  );
  return values.length === 0 ? undefined : `Comes to ${[...new Set(values)].join(" and ")}.`;
}

/** Lines of the base that a part has put out of work; its figures stand in the catalogue. */
function inPlaceOf(file: FileView, { model, base }: CheckedCar, { start, head }: Statement): string | undefined {
  if (base === undefined || head.segments.at(-1)?.text !== "fit") return undefined;
  const fitted = elementsOf(model).filter(({ block }) => hasStatementAt(block, file.uri, start));
  const gone = fitted.flatMap(({ path, block }) => {
    const before = elementsOf(base.model).find((element) => element.path === path)?.block.statements ?? [];
    const left = new Set(block.statements.map(({ word }) => word));
    return before.filter(
      ({ word, origin }) => word !== "fit" && (!left.has(word) || !hasStatementAt(block, origin.uri, origin.start)),
    );
  });
  const origins = gone.map(({ origin }) => origin);
  const once = origins.filter(({ start: at }, i) => origins.findIndex((other) => other.start === at) === i);
  return once.length === 0 ? undefined : listed("Stands in place of:", file, once);
}

const hasStatementAt = ({ statements }: ResolvedBlock, uri: string, start: number): boolean =>
  statements.some(({ origin }) => origin.uri === uri && origin.start === start);

/** What `remove` takes off, as it was written. */
function takenOff(file: FileView, { base }: CheckedCar, { items: [item] }: Statement): string | undefined {
  if (base === undefined || item?.kind !== "path") return undefined;
  const path = item.segments.map(({ text }) => text).join(".");
  const [element] = elementsOf(base.model).filter((one) => one.path === path || withoutSide(one) === path);
  return element && listed("Takes off:", file, [element.origin]);
}

const withoutSide = ({ path, side }: ElementModel): string =>
  path
    .split(".")
    .filter((name) => name !== side)
    .join(".");

const elementsOf = ({ axles, elements }: CarModel): readonly ElementModel[] => [
  ...(axles.front?.elements ?? []),
  ...(axles.rear?.elements ?? []),
  ...elements,
];

/** Of a corner element on both sides. */
function resolvedAt(model: CarModel, uri: string, start: number): readonly ResolvedStatement[] {
  return [model.block, ...elementsOf(model).map(({ block }) => block)].flatMap(
    (block) => findStatement(block, uri, start) ?? [],
  );
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
