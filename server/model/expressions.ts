/**
 * Expressions with units: `+ - * /`, brackets, numbers, and names that the caller looks up.
 *
 * In: an item of the syntax tree. Out: an amount in SI with its dimension, or nothing and a problem.
 * Invariant: a result is finite; sums of ten thousand terms do not deepen the stack.
 */
import type { Binary, Group, Item, Path, Quantity } from "../../grammar/index.js";
import type { Exponents } from "../../grammar/vocabulary/dimensions.js";
import type { DimensionName } from "../../grammar/vocabulary/word.js";
import { parseUnit, suggestUnits, toSI, unitsOf } from "../quantities/index.js";
import {
  combine,
  describeDimension,
  isPlain,
  nameOfDimension,
  plainNumber,
  sameDimension,
  type Amount,
  type UnitInfo,
} from "./amount.js";
import type { ModelProblem } from "./problem.js";
import { at } from "./sink.js";

export interface Names {
  readonly uri: string;
  /** The word whose value is worked out, for messages. */
  readonly word: string;
  report(problem: ModelProblem): void;
  /** Undefined where the name has no value; whoever looks it up tells why. */
  lookUp(path: Path): Amount | undefined;
}

/** `cover` is the unit behind the brackets around: bare terms of a sum inside are counted in it. */
export function evaluate(item: Item, names: Names, cover?: UnitInfo): Amount | undefined {
  const amount = evaluateAny(item, names, cover);
  if (amount === undefined || Number.isFinite(amount.si)) return amount;
  reportForm(item, names, "Its value is beyond all bounds.");
  return undefined;
}

function evaluateAny(item: Item, names: Names, cover: UnitInfo | undefined): Amount | undefined {
  switch (item.kind) {
    case "quantity":
      return ofQuantity(item, names);
    case "path":
      return names.lookUp(item);
    case "negation": {
      const operand = evaluate(item.operand, names, cover);
      return operand && { ...operand, si: -operand.si };
    }
    case "group":
      return ofGroup(item, names, cover);
    case "binary":
      return ofChain(item, names, cover);
    default:
      reportForm(item, names, "Only numbers can be calculated with.");
      return undefined;
  }
}

/** The line is right as far as its words go; what stands in one place of it cannot be taken. */
export function reportForm(item: Item, names: Pick<Names, "uri" | "word" | "report">, detail: string): void {
  names.report({ ...at(names.uri, item), kind: "wrong-form", word: names.word, expected: [], detail });
}

function ofQuantity(item: Quantity, names: Names): Amount | undefined {
  if (item.unit === undefined) return { si: item.value, exponents: plainNumber, unit: "" };
  const { text } = item.unit;
  const unit = parseUnit(text);
  const si = unit && toSI(item.value, text);
  if (unit !== undefined && si !== undefined) return { si, exponents: unit.dimension, unit: text };
  reportUnit(names, item.unit, text, undefined);
  return undefined;
}

export function reportUnit(
  names: Pick<Names, "uri" | "report">,
  place: { readonly start: number; readonly end: number },
  text: string,
  dimension: DimensionName | undefined,
): void {
  const candidates = suggestUnits(text, dimension);
  names.report({ ...at(names.uri, place), kind: "unknown-unit", unit: text, dimension, candidates });
}

function ofGroup(item: Group, names: Names, cover: UnitInfo | undefined): Amount | undefined {
  if (item.unit === undefined) return evaluate(item.inner, names, cover);
  const { text } = item.unit;
  const unit = parseUnit(text);
  if (unit === undefined) {
    reportUnit(names, item.unit, text, undefined);
    return undefined;
  }
  const inner = evaluate(item.inner, names, unit);
  if (inner === undefined) return undefined;
  if (isPlain(inner.exponents))
    return { si: toSI(inner.si, text) ?? Number.NaN, exponents: unit.dimension, unit: text };
  if (sameDimension(inner.exponents, unit.dimension)) return { ...inner, unit: text };
  reportDimension(names, item, unit.dimension, inner);
  return undefined;
}

export function reportDimension(
  names: Pick<Names, "uri" | "report">,
  place: Item,
  wanted: DimensionName | Exponents,
  { exponents, unit }: Amount,
): void {
  const expected = typeof wanted === "string" ? wanted : (nameOfDimension(wanted) ?? "any");
  const due = typeof wanted === "string" ? wanted : describeDimension(wanted);
  const candidates = expected === "any" ? [] : unitsOf(expected);
  const found = unit === "%" ? "share" : describeDimension(exponents);
  const problem = { kind: "dimension", expected, due, found, candidates } as const;
  names.report({ ...at(names.uri, place), ...problem });
}

/** A run of operators of one level leans to the left: walked down and folded back without recursion. */
function ofChain(item: Binary, names: Names, cover: UnitInfo | undefined): Amount | undefined {
  const spine: Binary[] = [];
  let first: Item = item;
  while (first.kind === "binary") {
    spine.push(first);
    first = first.left;
  }
  let left = evaluate(first, names, cover);
  for (let i = spine.length - 1; i >= 0; i--) {
    const node = spine[i] as Binary;
    const right = evaluate(node.right, names, cover);
    left = left && right && applied(node, left, right, names, cover);
  }
  return left;
}

function applied(
  node: Binary,
  left: Amount,
  right: Amount,
  names: Names,
  cover: UnitInfo | undefined,
): Amount | undefined {
  switch (node.operator) {
    case "*":
      return {
        si: left.si * right.si,
        exponents: combine(left.exponents, right.exponents, 1),
        unit: isPlain(left.exponents) ? right.unit : isPlain(right.exponents) ? left.unit : "",
      };
    case "/":
      return divided(node, left, right, names);
    default:
      return summed(node, covered(node.left, left, right, cover), covered(node.right, right, left, cover), names);
  }
}

function divided(node: Binary, left: Amount, right: Amount, names: Names): Amount | undefined {
  if (right.si === 0) {
    reportForm(node.right, names, "It is divided by nought.");
    return undefined;
  }
  const unit = isPlain(right.exponents) ? left.unit : "";
  return { si: left.si / right.si, exponents: combine(left.exponents, right.exponents, -1), unit };
}

/** A bare number beside one that has a dimension is counted in the unit behind the brackets. */
function covered(item: Item, amount: Amount, other: Amount, cover: UnitInfo | undefined): Amount {
  const isBare = item.kind === "quantity" && item.unit === undefined;
  if (!isBare || cover === undefined || !sameDimension(other.exponents, cover.dimension)) return amount;
  return { si: toSI(amount.si, cover.text) ?? amount.si, exponents: cover.dimension, unit: cover.text };
}

function summed(node: Binary, left: Amount, right: Amount, names: Names): Amount | undefined {
  if (!sameDimension(left.exponents, right.exponents)) {
    reportMixed(node, left, right, names);
    return undefined;
  }
  const si = node.operator === "+" ? left.si + right.si : left.si - right.si;
  return { si, exponents: left.exponents, unit: left.unit || right.unit };
}

function reportMixed(node: Binary, left: Amount, right: Amount, names: Names): void {
  const [bare, other] = isPlain(left.exponents) ? [node.left, right] : [node.right, left];
  const dimension = nameOfDimension(other.exponents);
  if (bare.kind === "quantity" && bare.unit === undefined && dimension !== undefined) {
    const place = at(names.uri, bare);
    names.report({ ...place, kind: "missing-unit", digits: bare.digits, dimension, candidates: unitsOf(dimension) });
    return;
  }
  reportDimension(names, node.right, left.exponents, right);
}

/** Every dotted name in an expression, without recursion down the long side. */
export function namesIn(item: Item): Path[] {
  const found: Path[] = [];
  const open: Item[] = [item];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (next.kind === "path") found.push(next);
    else if (next.kind === "binary") open.push(next.right, next.left);
    else if (next.kind === "negation") open.push(next.operand);
    else if (next.kind === "group") open.push(next.inner);
    else if (next.kind === "tuple") open.push(...next.members);
    else if (next.kind === "range") open.push(next.to, next.from);
  }
  return found;
}
