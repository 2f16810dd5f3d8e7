/** Names in expressions that are no `let`: properties of the car, looked up from a block outwards. */
import type { Path } from "../../grammar/index.js";
import { dimensions } from "../../grammar/vocabulary/dimensions.js";
import { plainNumber, type Amount } from "./amount.js";
import type { ResolvedValue } from "./car.js";
import { mention } from "./mentions.js";
import { pathOf } from "./place.js";
import { type Scope } from "./scope.js";
import { routeOf, startOf, statementAt, stepsFrom } from "./steps.js";
import type { CarTree, TreeBlock, TreeStatement } from "./tree.js";

export interface Property {
  readonly statement: TreeStatement;
  readonly parent: TreeBlock;
  /** 0, 1, 2 for `.x`, `.y`, `.z` behind a point. */
  readonly coordinate: number | undefined;
  /** Read from the right side, whose points the tree keeps in the frame of a left one. */
  readonly isMirrored: boolean;
}

export function findProperty(tree: CarTree, path: Path, scope: Scope): Property | undefined {
  const names = path.segments.map((segment) => segment.text);
  for (let around = pathOf(scope.place); ; around = around.slice(0, -1)) {
    const found = propertyAt(tree, [...around, ...names], path, scope);
    if (found !== undefined || around.length === 0) return found;
  }
}

function propertyAt(tree: CarTree, full: readonly string[], path: Path, scope: Scope): Property | undefined {
  const isMirrored = routeOf(tree, full).side === "right";
  const spoken = { path: full, segments: path.segments, scope };
  const whole = statementAt(tree, full, (step) => mention(spoken, step));
  if (whole !== undefined) return { ...whole, coordinate: undefined, isMirrored };
  const coordinate = ["x", "y", "z"].indexOf(full.at(-1) ?? "");
  const point = coordinate === -1 ? undefined : statementAt(tree, full.slice(0, -1));
  return point && { ...point, coordinate, isMirrored };
}

/** A statement's value as an amount: its first number, or one coordinate of its point. */
export function amountOf(statement: TreeStatement, { coordinate, isMirrored }: Property): Amount | undefined {
  const isWanted = (value: ResolvedValue) => value.kind === (coordinate === undefined ? "number" : "point");
  const value = statement.values.find(isWanted);
  if (value?.kind === "number" && value.dimension !== "any") {
    return { si: value.value, exponents: dimensions[value.dimension], unit: value.unit };
  }
  if (value?.kind !== "point" || coordinate === undefined) return undefined;
  const si = value.value[value.value.length === 2 ? coordinate - 1 : coordinate];
  const exponents = value.unit === "" ? plainNumber : dimensions.length;
  return si === undefined ? undefined : { si: isMirrored && coordinate === 1 ? -si : si, exponents, unit: value.unit };
}

/** Whether a name speaks of a line that is there but could not be read: that is told already. */
export function isUnread(tree: CarTree, path: Path, scope: Scope): boolean {
  const names = path.segments.map((segment) => segment.text);
  const last = names.pop() ?? "";
  for (let around = pathOf(scope.place); ; around = around.slice(0, -1)) {
    if (blockAt(tree, [...around, ...names])?.broken?.has(last) === true) return true;
    if (around.length === 0) return false;
  }
}

function blockAt(tree: CarTree, path: readonly string[]): TreeBlock | undefined {
  const route = routeOf(tree, path);
  if (route.rest.length === 0) return startOf(tree, route, route.side ?? "left");
  return statementAt(tree, path)?.statement.block;
}

/** Properties that can be named without a path from the block. */
export function nearbyProperties(tree: CarTree, scope: Scope): readonly string[] {
  const names: string[] = [];
  for (let around = pathOf(scope.place); ; around = around.slice(0, -1)) {
    const block = blockAt(tree, around);
    if (block !== undefined) names.push(...stepsFrom(block, false));
    if (around.length === 0) return [...new Set(names)];
  }
}
