/**
 * The reference page of the language, made from the vocabulary: every word by the block that it
 * stands in, the figures that `expect` reads, and the units.
 *
 * Ranges are kept in SI in the table; `show` writes them in a usual unit (it is passed in, since
 * the arithmetic of units is not the grammar's).
 */
import { baseUnits, usualUnits } from "../vocabulary/units.js";
import {
  dimensionOfSlot,
  figures,
  groups,
  joiningWords,
  limitsOf,
  modeHelp,
  usualOf,
  type FigureWord,
} from "../vocabulary/index.js";
import { starterText } from "../vocabulary/starter-text.js";
import type { ConceptEntry, DimensionName, Limits, Word, WordGroup } from "../vocabulary/word.js";
import { formText, slotText } from "../vocabulary/form-text.js";

export type Show = (si: number, unit: string) => string;

export function referencePage(show: Show): string {
  const parts = [
    intro,
    ...groups.flatMap((group) => groupPart(group, show)),
    joiningPart(),
    modesPart(),
    figuresPart(),
    unitsPart(),
  ];
  return `${parts.join("\n\n")}\n`;
}

const intro = `# The words of Bellcrank

This page is made from the vocabulary (\`npm run generate\`); the editor's hover and completion say the same. The words stand by the
block that they belong to. In a form, capitals stand for what you write: \`NAME\` is a name of yours, \`MODE\` one of the modes below,
and a dimension such as \`LENGTH\` a value with a unit of it (see Units). Everything else is written as it stands.
*Needed* words have to be there; *named* ones may stand any number of times, each with its own name.`;

function groupPart(group: WordGroup, show: Show): readonly string[] {
  return [`## ${group.title}\n\n${group.help}`, ...group.concepts.map((entry) => conceptPart(entry, show))];
}

function conceptPart(entry: ConceptEntry, show: Show): string {
  const here = groups.flatMap(({ words }) => words).filter((word) => word.in.includes(entry.concept));
  // A word is described in full once, in the first block of its list; the others only name it.
  const own = here.filter((word) => word.in[0] === entry.concept);
  const others = here.filter((word) => !own.includes(word));
  return [
    `### \`${entry.concept}\``,
    entry.help,
    ...(entry.overrides === undefined
      ? []
      : [`Other lines are overrides; their paths start in \`${entry.overrides}\`.`]),
    ...(entry.rows ?? []).map(
      ({ key, value }) => `Rows: \`${slotText(key, dimensionText)}: ${slotText(value, dimensionText)}\``,
    ),
    ...(others.length === 0 ? [] : [`Also here: ${others.map(({ word }) => `\`${word}\``).join(", ")}.`]),
    ...own.map((word) => wordPart(word, show)),
  ].join("\n\n");
}

function wordPart(word: Word, show: Show): string {
  const facts = [
    word.takes.map((form) => `\`${[word.word, formText(form, dimensionText)].join(" ").trim()}\``).join(", "),
    ...blockFact(word),
    ...neededFact(word),
    ...(word.times === "one" ? [] : [word.times === "named" ? "named" : "any number"]),
    ...(word.fallback === undefined ? [] : [`when absent: ${word.fallback}`]),
    ...(word.in.length > 1 ? [`in ${word.in.map((concept) => `\`${concept}\``).join(", ")}`] : []),
    ...rangeFacts(word, show),
  ];
  const lines = [`#### \`${word.word}\``, word.help, facts.map((fact) => `- ${fact}`).join("\n")];
  return [...lines, `\`\`\`crank\n${starterText(word)}\n\`\`\``].join("\n\n");
}

function neededFact(word: Word): readonly string[] {
  if (word.needed !== true) return [];
  const spared = word.unless?.map((other) => `\`${other}\``).join(", ");
  return [spared === undefined ? "needed" : `needed, unless one of these is there: ${spared}`];
}

function blockFact(word: Word): readonly string[] {
  const opened = [...new Set([word.opens, ...(word.opensByForm ?? [])])].filter((concept) => concept !== undefined);
  if (opened.length === 0) return [];
  const list = opened.map((concept) => `\`${concept}\``).join(" or ");
  return [`${word.block === "required" ? "opens" : "may open"} ${list}`];
}

function rangeFacts(word: Word, show: Show): readonly string[] {
  const slot = word.takes.flat().find((candidate) => dimensionOfSlot(candidate) !== undefined);
  if (slot === undefined) return [];
  const unit = unitFor(word, dimensionOfSlot(slot));
  const limits = limitsOf(word, slot);
  const usual = usualOf(word, slot);
  return [
    ...(limits === undefined ? [] : [`has to be ${limitText(limits, unit, show)}`]),
    ...(usual === undefined ? [] : [`usual: ${show(usual.from, unit)} to ${show(usual.to, unit)} (${usual.source})`]),
  ];
}

function limitText(limits: Limits, unit: string, show: Show): string {
  const parts = [
    limits.above === undefined ? undefined : `above ${show(limits.above, unit)}`,
    limits.atLeast === undefined ? undefined : `at least ${show(limits.atLeast, unit)}`,
    limits.atMost === undefined ? undefined : `at most ${show(limits.atMost, unit)}`,
    limits.below === undefined ? undefined : `below ${show(limits.below, unit)}`,
  ];
  return parts.filter((part) => part !== undefined).join(" and ");
}

/** The unit that the word's own starter is written in, else the first usual one. */
function unitFor(word: Word, dimension: DimensionName | undefined): string {
  const units = unitsFor(dimension);
  const written = word.starter?.split(" ").at(-1) ?? "";
  return units.includes(written) ? written : (units[0] ?? "");
}

function unitsFor(dimension: DimensionName | undefined): readonly string[] {
  if (dimension === undefined || dimension === "any") return [];
  return [...new Set([...usualUnits[dimension].si, ...usualUnits[dimension].inch])];
}

const dimensionText = (dimension: DimensionName): string => (dimension === "any" ? "VALUE" : dimension.toUpperCase());

function table(header: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;
  return [line(header), line(header.map(() => "---")), ...rows.map(line)].join("\n");
}

function joiningPart(): string {
  const rows = Object.entries(joiningWords).map(([word, help]) => [`\`${word}\``, help]);
  return `## Joining words\n\nThey stand between the parts of a statement and are never units.\n\n${table(["word", "meaning"], rows)}`;
}

function modesPart(): string {
  const rows = Object.entries(modeHelp).map(([mode, help]) => [`\`${mode}\``, help]);
  const text =
    "Patterns of wheel travel (FL, FR, RL, RR), bump positive, one unit at every wheel. Elements of an axle are for `corner`, " +
    "`heave` or `roll`, or several of them (`for heave and roll`); elements of the car for `heave`, `pitch`, `roll` or `warp`.";
  return `## Modes\n\n${text}\n\n${table(["mode", "pattern"], rows)}`;
}

const scopeText: Readonly<Record<FigureWord["scope"], string>> = {
  car: "",
  axle: "AXLE.",
  wheel: "AXLE[.SIDE].",
  element: "AXLE[.SIDE].ELEMENT.",
  point: "POINT.",
};

function figuresPart(): string {
  const rows = figures.map((figure) => [
    `\`${scopeText[figure.scope]}${figure.figure.replace("<mode>", "MODE")}\``,
    figure.dimensions.join(" or "),
    figure.needsCase ? "yes" : "",
    figure.help,
  ]);
  const text =
    "What `expect` can read. `AXLE` is `front` or `rear`, `SIDE` is `left` or `right` (without it, of what the sides have in " +
    "common), `ELEMENT` a name; an element of the car stands without `AXLE`. Where a figure needs a case, say `at CASE`.";
  return `## Figures\n\n${text}\n\n${table(["figure", "dimension", "needs a case", "what it is"], rows)}`;
}

function unitsPart(): string {
  const rows = Object.entries(usualUnits).map(([dimension, { si, inch }]) => [
    dimension,
    si.map(unitText).join(", "),
    inch === si ? "" : inch.map(unitText).join(", "),
  ]);
  const text =
    "A unit stands behind its number, and covers a whole point, range or pair. Units are made of base units with `*`, `/` and " +
    `\`^\` (or \`·\` and raised digits), read from left to right: ${[...baseUnits.keys()].map((unit) => `\`${unit}\``).join(", ")}. ` +
    "`g` is standard gravity, 9.80665 m/s², never a gram; `lb` is a mass, `lbf` a force. Conversions are exact (NIST SP 811, ISO 80000).";
  return `## Units\n\n${text}\n\n${table(["dimension", "SI", "inch"], rows)}`;
}

const unitText = (unit: string): string => (unit === "" ? "no unit" : `\`${unit}\``);
