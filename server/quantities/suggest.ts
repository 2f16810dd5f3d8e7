/**
 * What an unknown or unfitting unit was meant to be.
 *
 * In: the unit as written, and the dimension that is due where it is known. Out: candidates, the
 * likeliest first, every one of them a unit that parses and, with a dimension, fits it.
 */
import { dimensions } from "../../grammar/vocabulary/dimensions.js";
import { baseUnits } from "../../grammar/vocabulary/units.js";
import type { DimensionName } from "../../grammar/vocabulary/word.js";
import { matchesDimension } from "./convert.js";
import { factorsOf, parseUnit } from "./unit.js";
import { unitsOf, usualUnit } from "./usual.js";

/** How whole units are written elsewhere. Common usage, no published source. */
const spellings: Readonly<Record<string, readonly string[]>> = {
  nm: ["N*m"],
  nmm: ["N*mm"],
  knm: ["kN*m"],
  kmh: ["km/h"],
  kph: ["km/h"],
  mps: ["m/s"],
  ftlb: ["lbf*ft"],
  "ft-lb": ["lbf*ft"],
  lbft: ["lbf*ft"],
  "lb-ft": ["lbf*ft"],
  inlb: ["lbf*in"],
  "in-lb": ["lbf*in"],
  lbin: ["lbf*in"],
  sqmm: ["mm^2"],
  mm2: ["mm^2"],
  cm2: ["cm^2"],
  m2: ["m^2"],
  in2: ["in^2"],
  mm3: ["mm^3"],
  cm3: ["ml"],
  cc: ["ml"],
  ccm: ["ml"],
  m3: ["m^3"],
  in3: ["in^3"],
  kgm2: ["kg*m^2"],
  nms: ["N*m*s"],
  kgf: ["N"],
  kp: ["N"],
  mil: ["in"],
  thou: ["in"],
};

/** How single symbols are written elsewhere, in lower case. A gram is no unit here: `g` is gravity. */
const symbols: Readonly<Record<string, readonly string[]>> = {
  '"': ["in"],
  "''": ["in"],
  "′′": ["in"],
  "″": ["in"],
  "”": ["in"],
  inch: ["in"],
  inches: ["in"],
  "'": ["ft"],
  "′": ["ft"],
  feet: ["ft"],
  foot: ["ft"],
  lbs: ["lb", "lbf"],
  pound: ["lb", "lbf"],
  pounds: ["lb", "lbf"],
  "#": ["lb", "lbf"],
  lbm: ["lb"],
  lb: ["lbf"],
  lbf: ["lb"],
  kgs: ["kg"],
  kilo: ["kg"],
  kilos: ["kg"],
  gs: ["g"],
  newton: ["N"],
  newtons: ["N"],
  metre: ["m"],
  metres: ["m"],
  meter: ["m"],
  meters: ["m"],
  millimetre: ["mm"],
  millimetres: ["mm"],
  millimeter: ["mm"],
  millimeters: ["mm"],
  mms: ["mm"],
  µm: ["um"],
  μm: ["um"],
  micron: ["um"],
  "°": ["deg"],
  degree: ["deg"],
  degrees: ["deg"],
  degs: ["deg"],
  radian: ["rad"],
  radians: ["rad"],
  rads: ["rad"],
  "°c": ["degC"],
  c: ["degC"],
  celsius: ["degC"],
  sec: ["s"],
  secs: ["s"],
  second: ["s"],
  seconds: ["s"],
  msec: ["ms"],
  hr: ["h"],
  hour: ["h"],
  liter: ["l"],
  litre: ["l"],
  liters: ["l"],
  litres: ["l"],
  bars: ["bar"],
  turns: ["turn"],
  rev: ["turn"],
  percent: ["%"],
  "per-cent": ["%"],
  pct: ["%"],
};

const mostCandidates = 5;
const longestGuessed = 40;

export function suggestUnits(text: string, dimension?: DimensionName): string[] {
  const fits = (candidate: string): boolean => {
    const unit = parseUnit(candidate);
    return unit !== undefined && candidate !== text && (dimension === undefined || matchesDimension(unit, dimension));
  };
  const guesses = text.length > longestGuessed ? [] : guessesFor(text.trim(), dimension);
  const usual = dimension === undefined ? [] : usualFor(text, dimension);
  return [...new Set([...guesses, ...usual])].filter(fits).slice(0, mostCandidates);
}

function guessesFor(text: string, dimension: DimensionName | undefined): readonly string[] {
  const lower = text.toLowerCase();
  const whole = Object.hasOwn(spellings, lower) ? (spellings[lower] ?? []) : [];
  return [...whole, ...symbolBySymbol(text), ...nearest(text, dimension)];
}

/** Each symbol put right by itself: `n/MM` → `N/mm`, `lbs/in` → `lbf/in`. */
function symbolBySymbol(text: string): readonly string[] {
  const pieces = text.split(/([*/^·⋅²³]|\^-?\d+)/u);
  let texts: readonly string[] = [""];
  for (const piece of pieces) {
    const ways = /^[\p{L}°"'″′”#µμ]/u.test(piece) ? waysOf(piece) : [piece];
    texts = texts.flatMap((start) => ways.map((way) => start + way)).slice(0, 64);
  }
  return texts.filter((candidate) => candidate !== text);
}

function waysOf(symbol: string): readonly string[] {
  const lower = symbol.toLowerCase();
  const others = Object.hasOwn(symbols, lower) ? (symbols[lower] ?? []) : [];
  const sameLetters = [...baseUnits.keys()].filter((known) => known.toLowerCase() === lower);
  const grouped = Object.hasOwn(spellings, lower) ? (spellings[lower] ?? []) : [];
  const known = baseUnits.has(symbol) ? [symbol] : [];
  const ways = [...new Set([...known, ...sameLetters, ...others, ...grouped, ...unglued(symbol)])];
  return ways.length === 0 ? [symbol] : ways;
}

/** `Ns` is N*s written without its sign. */
function unglued(symbol: string): readonly string[] {
  if (baseUnits.has(symbol)) return [];
  const cuts = Array.from({ length: Math.max(symbol.length - 1, 0) }, (_, index) => index + 1);
  return cuts
    .map((cut) => [symbol.slice(0, cut), symbol.slice(cut)] as const)
    .filter(([first, second]) => baseUnits.has(first) && baseUnits.has(second))
    .map(([first, second]) => `${first}*${second}`);
}

const everyUsual: readonly string[] = (Object.keys(dimensions) as DimensionName[])
  .flatMap(unitsOf)
  .filter((unit) => unit !== "");

/** Usual units one slip of the fingers away. */
function nearest(text: string, dimension: DimensionName | undefined): readonly string[] {
  const pool = dimension === undefined || dimension === "any" ? everyUsual : unitsOf(dimension);
  return pool.filter((unit) => unit.length > 1 && isOneSlip(text.toLowerCase(), unit.toLowerCase()));
}

/** Whether one letter was left out, added, replaced, or swapped with its neighbour. */
function isOneSlip(typed: string, meant: string): boolean {
  let from = 0;
  while (from < typed.length && typed[from] === meant[from]) from++;
  const rest = (text: string, skipped: number): string => text.slice(from + skipped);
  return (
    rest(typed, 1) === rest(meant, 1) ||
    rest(typed, 1) === rest(meant, 0) ||
    rest(typed, 0) === rest(meant, 1) ||
    (typed[from] === meant[from + 1] && typed[from + 1] === meant[from] && rest(typed, 2) === rest(meant, 2))
  );
}

/** The usual units of the dimension; those of the author's system of units before the others. */
function usualFor(text: string, dimension: DimensionName): readonly string[] {
  const inch = factorsOf(text)?.some(({ symbol }) => baseUnits.get(symbol)?.system === "inch") === true;
  const first = usualUnit(dimension, inch ? "inch" : "si");
  const second = usualUnit(dimension, inch ? "si" : "inch");
  return [first, second, ...unitsOf(dimension)];
}
