/** How findings name things, so that all of them speak alike. Text only. */
import type { DimensionName, NameTarget } from "../../grammar/vocabulary/word.js";

export function quoted(word: string): string {
  return `"${shortened(word)}"`;
}

/** A message stays one readable line, whatever the name or the text that it speaks of. */
export function shortened(word: string, most = 40): string {
  const line = word.slice(0, 10 * most).replace(/\s+/g, " ");
  return line.length <= most ? line : `${line.slice(0, most - 1)}…`;
}

/** `a`, `a or b`, `a, b or c`. */
export function either(items: readonly string[]): string {
  return joined(items, "or");
}

/** `a`, `a and b`, `a, b and c`. */
export function all(items: readonly string[]): string {
  return joined(items, "and");
}

function joined(items: readonly string[], last: "or" | "and"): string {
  if (items.length < 2) return items.join("");
  return `${items.slice(0, -1).join(", ")} ${last} ${items.at(-1)}`;
}

/** ` Did you mean "a" or "b"?`, or nothing. */
export function suggestion(words: readonly string[]): string {
  return words.length === 0 ? "" : ` Did you mean ${either(words.map(quoted))}?`;
}

const dimensions: Readonly<Record<DimensionName, string>> = {
  number: "a plain number",
  count: "a whole number",
  share: "a share in %",
  length: "a length",
  mass: "a mass",
  time: "a time",
  angle: "an angle",
  area: "an area",
  "piston-area": "an area",
  volume: "a volume",
  speed: "a speed",
  "damper-speed": "a speed",
  "angular-speed": "an angular speed",
  acceleration: "an acceleration",
  force: "a force",
  moment: "a moment",
  pressure: "a pressure",
  modulus: "a modulus (force per area)",
  stress: "a stress (force per area)",
  rate: "a rate (force per length)",
  "torsional-rate": "a torsional rate (moment per angle)",
  damping: "a damping rate (force per speed)",
  "torsional-damping": "a torsional damping rate (moment per angular speed)",
  inertia: "a moment of inertia (mass times length squared)",
  thread: "a length per turn",
  turns: "a number of turns",
  "area-slope": "an area per length",
  "angle-per-length": "an angle per length",
  "angle-per-acceleration": "an angle per acceleration",
  "per-length": "a figure per length",
  "flow-resistance": "a flow resistance (pressure per volume flow)",
  density: "a density",
  temperature: "a temperature",
  frequency: "a frequency",
  any: "a value",
};

/** `a rate (force per length)` for `rate`. */
export function dimensionWords(dimension: DimensionName): string {
  return dimensions[dimension];
}

const baseUnits = { length: "m", mass: "kg", time: "s", angle: "rad", temperature: "K", turn: "turn" } as const;

const isBase = (name: string): name is keyof typeof baseUnits => Object.hasOwn(baseUnits, name);

/** The same for a dimension that was found: `length^2*mass*time^-3`, which has no name, is `a value in m^2*kg/s^3`. */
export function foundWords(found: string): string {
  if (Object.hasOwn(dimensions, found)) return dimensions[found as DimensionName];
  const parts = found.split("*").map((part) => {
    const [name = "", power = "1"] = part.split("^");
    return { unit: isBase(name) ? baseUnits[name] : name, power: Number(power) };
  });
  const raised = (wanted: (power: number) => boolean) =>
    parts
      .filter(({ power }) => wanted(power))
      .map(({ unit, power }) => (Math.abs(power) === 1 ? unit : `${unit}^${Math.abs(power)}`));
  const [above, below] = [raised((power) => power > 0), raised((power) => power < 0)];
  return `a value in ${[above.join("*") || "1", ...below].join("/")}`;
}

const targets: Readonly<Record<NameTarget, string>> = {
  car: "car",
  setup: "set-up",
  "car-or-setup": "car or set-up",
  element: "element",
  part: "part",
  eye: "eye",
  case: "case",
  let: "let value",
  cylinder: "cylinder",
};

/** `set-up` for `setup`; a target that is not in the list is named as it is. */
export function targetWords(target: string): string {
  return Object.hasOwn(targets, target) ? targets[target as NameTarget] : target;
}
