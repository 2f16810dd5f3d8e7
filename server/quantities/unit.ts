/**
 * Reads a compound unit (`N*s/mm`, `kg·m²`, `1/m`) from the table of base units.
 *
 * In: the unit as written. Out: its exact ratio to SI and its dimension, or undefined.
 * Products and quotients are read from left to right, as written: `bar*s/l`, `N/mm`.
 *
 * Invariant: the ratio is formed in whole numbers and rounded once, so that 120 N/mm is
 * 120000 N/m and not a neighbour of it.
 */
import { baseDimensions, dimensions, type Exponents } from "../../grammar/vocabulary/dimensions.js";
import { baseUnits, type BaseUnit, type UnitSystem } from "../../grammar/vocabulary/units.js";

export interface UnitInfo {
  /** As written. */
  readonly text: string;
  /** SI value = value · factor + offset. */
  readonly factor: number;
  /** The factor as a ratio: multiplying and dividing by these loses less than by the rounded factor. */
  readonly numerator: number;
  readonly denominator: number;
  readonly offset?: number;
  readonly dimension: Exponents;
  readonly system: UnitSystem;
  /** Written with `%`. */
  readonly percent: boolean;
}

interface Term {
  readonly base: BaseUnit;
  readonly symbol: string;
  readonly power: number;
}

/** Units as typed are few, but a half-typed file may bring any number of them. */
const mostKept = 4096;
const kept = new Map<string, UnitInfo | undefined>();

/** The unit, or undefined where it is not made of known ones. The empty text is the unit of a plain number. */
export function parseUnit(text: string): UnitInfo | undefined {
  const known = kept.get(text);
  if (known !== undefined || kept.has(text)) return known;
  const info = readUnit(text);
  if (kept.size >= mostKept) kept.clear();
  kept.set(text, info);
  return info;
}

/** Longer than any compound that means something; keeps hostile texts cheap. */
const longest = 60;
const largestPower = 9;

function readUnit(text: string): UnitInfo | undefined {
  const terms = text.length > longest ? undefined : termsOf(text);
  return terms === undefined ? undefined : combine(text, terms);
}

/** The factors of a compound with their powers; undefined where one is not known or the text is not one. */
function termsOf(text: string): readonly Term[] | undefined {
  if (text === "") return [];
  const terms: Term[] = [];
  for (const { symbol, power } of factorsOf(text) ?? [{ symbol: "", power: 1 }]) {
    if (symbol === "1") continue;
    const base = baseUnits.get(symbol);
    if (base === undefined) return undefined;
    terms.push({ base, symbol, power });
  }
  return terms;
}

const factor = /^([^\s*/^·⋅⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+)(?:\^(-?\d+)|([⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+))?$/u;
const raised = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** Symbols with their powers, whether known or not; undefined where the text is not a compound. */
export function factorsOf(text: string): readonly { readonly symbol: string; readonly power: number }[] | undefined {
  const pieces = text.replace(/[·⋅]/gu, "*").split(/([*/])/);
  const factors: { symbol: string; power: number }[] = [];
  for (let index = 0; index < pieces.length; index += 2) {
    const match = factor.exec((pieces[index] ?? "").trim());
    if (match?.[1] === undefined) return undefined;
    const sign = pieces[index - 1] === "/" ? -1 : 1;
    const power = match[2] ?? fromRaised(match[3] ?? "");
    const size = power === "" ? 1 : Number(power);
    if (size === 0 || Math.abs(size) > largestPower) return undefined;
    if (match[1] === "1" && (index > 0 || pieces[1] !== "/")) return undefined;
    factors.push({ symbol: match[1], power: sign * size });
  }
  return factors;
}

function fromRaised(text: string): string {
  return text.replace(/./gu, (character) => (character === "⁻" ? "-" : String(raised.indexOf(character))));
}

function combine(text: string, terms: readonly Term[]): UnitInfo | undefined {
  let numerator = 1n;
  let denominator = 1n;
  let pi = 0;
  const exponents: Record<keyof Exponents, number> = { ...dimensions.number };
  for (const { base, power } of terms) {
    const size = BigInt(Math.abs(power));
    numerator *= (power > 0 ? base.numerator : base.denominator) ** size;
    denominator *= (power > 0 ? base.denominator : base.numerator) ** size;
    pi += base.pi * power;
    for (const name of baseDimensions) exponents[name] += base.dimension[name] * power;
  }
  const shift = offsetOf(terms);
  if (shift === undefined) return undefined;
  const ratio = reduced(numerator, denominator);
  const up = ratio.numerator * Math.PI ** Math.max(pi, 0);
  const down = ratio.denominator * Math.PI ** Math.max(-pi, 0);
  if (!Number.isFinite(up) || !Number.isFinite(down)) return undefined;
  return {
    text,
    factor: up / down,
    numerator: up,
    denominator: down,
    ...(shift === 0 ? {} : { offset: shift }),
    dimension: exponents,
    system: terms.find(({ base }) => base.system !== "neutral")?.base.system ?? "neutral",
    percent: terms.some(({ symbol }) => symbol === "%"),
  };
}

/** A scale with another nought makes sense by itself only: nothing is counted in degC per metre. */
function offsetOf(terms: readonly Term[]): number | undefined {
  const shifted = terms.find(({ base }) => base.offset !== undefined);
  if (shifted === undefined) return 0;
  return terms.length === 1 && shifted.power === 1 ? shifted.base.offset : undefined;
}

function reduced(numerator: bigint, denominator: bigint): { numerator: number; denominator: number } {
  let a = numerator;
  let b = denominator;
  while (b !== 0n) [a, b] = [b, a % b];
  return { numerator: Number(numerator / a), denominator: Number(denominator / a) };
}
