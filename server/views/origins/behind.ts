/** What a line reads: the `let`s that it names, with those behind them, and the properties of the car in its expression. */
import type { Path } from "../../../grammar/index.js";
import { letsIn } from "../../model/lets.js";
import type { CarModel } from "../../model/car.js";
import type { Origin } from "../../model/origin.js";
import { pathOf } from "../../model/place.js";
import type { Let, Scope } from "../../model/scope.js";
import type { Formula } from "../../model/tree.js";
import { foundAt, type Step, valueOf } from "./steps.js";
import { type FileOf, writtenAt } from "./written.js";

/** Nearest first; each once, so that a circle of `let`s comes to an end. */
export function letsBehind(line: Origin, fileOf: FileOf, seen = new Set<string>()): readonly Step[] {
  const named = fileOf(line.uri).symbols.filter(
    ({ target, references }) => target === "let" && references.some((place) => isInside(place, line)),
  );
  return named.flatMap(({ declaration }) => {
    const key = `${declaration.uri} ${declaration.start}`;
    const written = seen.has(key) ? undefined : writtenAt(declaration, fileOf);
    seen.add(key);
    if (written === undefined) return [];
    const step: Step = { ...written, by: letName(written.text), kind: "let", value: undefined };
    return [step, ...letsBehind(written.origin, fileOf, seen)];
  });
}

const isInside = (place: Origin, line: Origin): boolean => line.start <= place.start && place.end <= line.end;

/** "let soft" of `let soft = 95 N/mm`, wherever the `let` stands. */
const letName = (text: string): string => text.split("=")[0]?.trim() ?? text;

/** Properties that a formula reads, looked up as the resolver does: from its block outwards. */
export function propertiesBehind(model: CarModel, { items, scope }: Formula, fileOf: FileOf): readonly Step[] {
  const read = items.flatMap((item) => propertyNames(item, scope, new Set()));
  return read.flatMap(({ path, scope: from }) => {
    const names = path.segments.map(({ text }) => text);
    const property = lookUp(model, names, from);
    if (property === undefined) return [];
    const written = writtenAt(property.found.statement.origin, fileOf);
    const value = valueOf(property.found, property.path);
    return written === undefined ? [] : [{ ...written, by: property.path.join("."), kind: "reads", value }];
  });
}

interface Named {
  readonly path: Path;
  readonly scope: Scope;
}

function propertyNames(item: Let["item"], scope: Scope, seen: Set<Let>): readonly Named[] {
  const { lets, others } = letsIn(item, scope);
  const behind = lets.filter((known) => !seen.has(known));
  for (const known of behind) seen.add(known);
  return [
    ...others.map((path) => ({ path, scope })),
    ...behind.flatMap((known) => propertyNames(known.item, known.scope, seen)),
  ];
}

function lookUp(model: CarModel, names: readonly string[], scope: Scope) {
  const isCoordinate = ["x", "y", "z"].includes(names.at(-1) ?? "");
  for (let around = pathOf(scope.place); ; around = around.slice(0, -1)) {
    const whole = [...around, ...names];
    for (const path of isCoordinate ? [whole, whole.slice(0, -1)] : [whole]) {
      const found = foundAt(model, path);
      if (found !== undefined) return { path, found };
    }
    if (around.length === 0) return undefined;
  }
}
