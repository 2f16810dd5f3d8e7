/**
 * What is called otherwise but is the same: eyes, elements and cases with equal content under another name. The old car is
 * then read with the new names, so that whatever speaks of them is no change either.
 */
import { findWord } from "../../../grammar/vocabulary/index.js";
import type { CarModel, ResolvedBlock, ResolvedRow, ResolvedStatement, ResolvedValue } from "../../model/car.js";
import type { AxleName, Origin } from "../../model/origin.js";
import { isSameStatement } from "../../model/same.js";

export interface Rename {
  readonly of: "element" | "eye" | "case";
  readonly axle: AxleName | undefined;
  readonly from: string;
  readonly to: string;
  readonly old: Origin;
  readonly now: Origin;
}

const AXLES = ["front", "rear"] as const;

/** Eyes first, since elements speak of them; elements twice, since levers of one are ends of another. */
export function renamesBetween(old: CarModel, now: CarModel): readonly Rename[] {
  let found: readonly Rename[] = AXLES.flatMap((axle) => eyes(old, now, axle));
  for (let round = 0; round < 2; round++) {
    const before = found;
    const more = [undefined, ...AXLES].flatMap((axle) => elements(old, now, axle, before));
    found = [...before, ...more];
  }
  const cases = named(old.block, now.block, "case", ({ word }) => word === "case", undefined);
  return [...found, ...cases];
}

const blockOf = (car: CarModel, axle: AxleName | undefined): ResolvedBlock | undefined =>
  axle === undefined ? car.block : car.axles[axle]?.block;

function eyes(old: CarModel, now: CarModel, axle: AxleName): readonly Rename[] {
  const rocker = (car: CarModel): ResolvedBlock | undefined => inside(inside(blockOf(car, axle), "linkage"), "rocker");
  const [before, after] = [rocker(old), rocker(now)];
  if (before === undefined || after === undefined) return [];
  return named(before, after, "eye", ({ word }) => word === "eye", axle);
}

const inside = (block: ResolvedBlock | undefined, word: string): ResolvedBlock | undefined =>
  block?.statements.find((statement) => statement.word === word)?.block;

function elements(
  old: CarModel,
  now: CarModel,
  axle: AxleName | undefined,
  known: readonly Rename[],
): readonly Rename[] {
  const [before, after] = [blockOf(old, axle), blockOf(now, axle)];
  if (before === undefined || after === undefined) return [];
  const renamed = withNewNames(before, axle, known);
  return named(renamed, after, "element", (statement) => isElement(statement, before), axle);
}

export const isElement = ({ word }: ResolvedStatement, { concept }: Pick<ResolvedBlock, "concept">): boolean =>
  findWord(concept, word)?.role === "element";

function named(
  old: ResolvedBlock,
  now: ResolvedBlock,
  of: Rename["of"],
  isOne: (statement: ResolvedStatement) => boolean,
  axle: AxleName | undefined,
): readonly Rename[] {
  const only = (here: ResolvedBlock, there: ResolvedBlock): ResolvedStatement[] =>
    here.statements.filter(
      (one) =>
        one.name !== undefined && isOne(one) && !there.statements.some(({ name }) => name?.text === one.name?.text),
    );
  const gone = only(old, now);
  const come = only(now, old);
  return gone.flatMap((before) => {
    const index = come.findIndex((after) => isSameStatement(nameless(before), nameless(after)));
    const [after] = index < 0 ? [] : come.splice(index, 1);
    if (before.name === undefined || after?.name === undefined) return [];
    const [from, to] = [before.name, after.name];
    return [{ of, axle, from: from.text, to: to.text, old: from.origin, now: to.origin }];
  });
}

/** Its content alone. */
export const nameless = (statement: ResolvedStatement): ResolvedStatement => ({
  ...statement,
  name: undefined,
  values: statement.values.filter((value) => !(value.kind === "word" && value.text === statement.name?.text)),
});

/** A block of the old car with the new names in it. */
export function withNewNames(
  block: ResolvedBlock,
  axle: AxleName | undefined,
  renames: readonly Rename[],
): ResolvedBlock {
  return renames.length === 0 ? block : blockWith(block, new Renaming(axle, renames));
}

function blockWith(block: ResolvedBlock, names: Renaming): ResolvedBlock {
  return {
    ...block,
    statements: block.statements.map((statement) => statementWith(statement, block, names)),
    rows: block.rows.map((row): ResolvedRow => ({ ...row, key: names.value(row.key), value: names.value(row.value) })),
  };
}

function statementWith(statement: ResolvedStatement, around: ResolvedBlock, names: Renaming): ResolvedStatement {
  const own = statement.name && { ...statement.name, text: names.own(statement, around) };
  // Axles are read by themselves: their names are theirs.
  const block = statement.word === "axle" ? statement.block : statement.block && blockWith(statement.block, names);
  const values = statement.values.map((value) =>
    value.kind === "word" && own !== undefined && value.text === statement.name?.text
      ? { ...value, text: own.text }
      : names.value(value),
  );
  return { ...statement, name: own, values, block };
}

class Renaming {
  readonly #axle: AxleName | undefined;
  readonly #renames: readonly Rename[];

  constructor(axle: AxleName | undefined, renames: readonly Rename[]) {
    this.#axle = axle;
    this.#renames = renames;
  }

  own({ word, name }: ResolvedStatement, around: ResolvedBlock): string {
    const of = word === "eye" ? "eye" : word === "case" ? "case" : "element";
    const isOwn = of !== "element" || findWord(around.concept, word)?.role === "element";
    const found = this.#renames.find(
      (one) => isOwn && one.of === of && one.axle === this.#axle && one.from === name?.text,
    );
    return found?.to ?? name?.text ?? "";
  }

  value(value: ResolvedValue): ResolvedValue {
    if (value.kind === "path" || value.kind === "attachment")
      return { ...value, segments: this.#segments(value.segments) };
    // A case by its name alone, as the rows of `hold` have it.
    const found = value.kind === "word" && this.#renames.find(({ of, from }) => of === "case" && from === value.text);
    return found ? { ...value, text: found.to } : value;
  }

  #segments(segments: readonly string[]): readonly string[] {
    const [first] = segments;
    const axle = first === "front" || first === "rear" ? first : this.#axle;
    return segments.map((segment, i) => {
      // An eye may be called like the element that hangs on it.
      const of = segments[i - 1] === "rocker" || segments[i - 1] === "eye" ? "eye" : "element";
      const found = this.#renames.find(
        (one) =>
          one.from === segment &&
          ((one.of === of && one.axle === axle) || (one.of === "case" && segments.length === 1)),
      );
      return found?.to ?? segment;
    });
  }
}

/** How the newer car calls what a path of the older one names, and the load cases. */
export function newNames(renames: readonly Rename[]): {
  readonly path: (path: string) => string;
  readonly case: (name: string) => string;
} {
  const of = (name: string, kind: Rename["of"], axle: AxleName | undefined): string =>
    renames.find((one) => one.of === kind && one.axle === axle && one.from === name)?.to ?? name;
  return {
    path(path) {
      const [first] = path.split(/[. ]/);
      const axle = first === "front" || first === "rear" ? first : undefined;
      return path
        .split(".")
        .map((segment) => of(segment, "element", axle))
        .join(".");
    },
    case: (name) => of(name, "case", undefined),
  };
}

export type NewNames = ReturnType<typeof newNames>;
