/**
 * A review as one comment of a pull request: the headline first, what differs, detail folded away; plain enough to read as
 * an e-mail. A hidden mark in front lets the same comment be found and written anew.
 *
 * Invariant: never longer than the hosts take, however much differs: the first cars are told in full, the rest shorter.
 */
import { cautions } from "../cautions.js";
import type { Section } from "../section.js";
import { type ComparisonPage, comparisonPage, type PageSection } from "./page.js";
import { carWords, followerWords, type Review, type ReviewedCar } from "./review.js";

export const MARK = "<!-- bellcrank compare -->";
/** The hosts count 65,536 characters; bytes are never fewer, and a little is left for what is put around it. */
const MOST_BYTES = 65_000;

export function reviewMarkdown(review: Review): string {
  const head = [
    MARK,
    `**${escaped(review.headline)}**`,
    `Old: ${escaped(review.old)}. New: ${escaped(review.now)}.`,
  ].join("\n\n");
  const foot = `> ${cautions.replaceAll("\n", "\n> ")}`;
  const told = review.cars.filter(({ status }) => status !== "same");
  const forms = told.map((car) => formsOf(car, told.length > 1));
  const parts = fitted(forms, MOST_BYTES - bytes(head) - bytes(foot) - 8);
  return `${[head, ...parts, foot].join("\n\n")}\n`;
}

/** Each car as shortly as it may be, then from the first one on as fully as there is room for. */
function fitted(forms: readonly (readonly string[])[], room: number): readonly string[] {
  const shortest = forms.map((form) => form.at(-1) ?? "");
  const [kept, left] = keptWithin(shortest, room * NAMES);
  let spare = room - LAST_LINE - kept.reduce((sum, part) => sum + bytes(part) + 2, 0);
  const parts = kept.map((part, i) => {
    const found = forms[i]?.find((form) => bytes(form) - bytes(part) <= spare) ?? part;
    spare -= bytes(found) - bytes(part);
    return found;
  });
  return left === 0 ? parts : [...parts, `${left} more differ; \`bellcrank compare\` tells all of them.`];
}

const LAST_LINE = 120;
/** Of the room, what the names of many cars may take from what the first ones have to say. */
const NAMES = 0.5;

function keptWithin(parts: readonly string[], room: number): readonly [kept: readonly string[], left: number] {
  let used = 0;
  const end = parts.findIndex((part) => (used += bytes(part) + 2) > room);
  return end < 0 ? [parts, 0] : [parts.slice(0, end), parts.length - end];
}

/** From the fullest to a line. */
function formsOf(car: ReviewedCar, isOneOfMany: boolean): readonly string[] {
  const line = `- **${escaped(car.name)}** (${escaped(car.path)}): ${escaped(lineWords(car))}`;
  if (car.comparison === undefined || car.follows !== undefined) return [line];
  const page = comparisonPage(car.comparison);
  const head = isOneOfMany ? [`### ${escaped(car.name)}`, `${escaped(carWords(car))} (${escaped(car.path)})`] : [];
  const form = (sections: readonly string[]): string => [...head, ...sections, ...remarks(page)].join("\n\n");
  const main = page.sections.filter(({ isDetail }) => !isDetail);
  return [
    form(page.sections.map((section) => (section.isDetail ? folded(section) : open(section)))),
    form(main.map(open)),
    form(main.map((section) => open(shortened(section, MANY_ROWS)))),
    form(main.map((section) => open(shortened(section, FEW_ROWS)))),
    isOneOfMany ? line : form(main.slice(0, 1).map((section) => open(shortened(section, FEW_ROWS)))),
    `- **${escaped(car.name)}**`,
  ];
}

const MANY_ROWS = 60;
const FEW_ROWS = 12;
/** A cell that somebody wrote a novel into. */
const MOST_CELL = 300;

function lineWords(car: ReviewedCar): string {
  return [carWords(car), followerWords(car)].filter((part) => part !== undefined).join(" ");
}

function shortened(section: PageSection, most: number): PageSection {
  const { rows, columns } = section;
  if (rows.length <= most) return section;
  const rest = ["", `and ${rows.length - most} more`, ...columns.slice(2).map(() => "")].slice(0, columns.length);
  return { ...section, rows: [...rows.slice(0, most), rest] };
}

const open = ({ title, ...rest }: PageSection): string => `#### ${title}\n\n${tableOf(rest)}`;

/** Blank lines around the table: without them the hosts read no Markdown inside. */
const folded = ({ title, ...rest }: PageSection): string =>
  `<details><summary>${title} (${rest.rows.length})</summary>\n\n${tableOf(rest)}\n\n</details>`;

const remarks = (page: ComparisonPage): readonly string[] =>
  page.remarks.length === 0 ? [] : [page.remarks.map(escaped).join("\n")];

function tableOf({ columns, rows }: Pick<Section, "columns" | "rows">): string {
  const cells = [columns.map(({ head }) => head), ...rows].map((row) =>
    row.map((text) => escaped(text.slice(0, MOST_CELL))),
  );
  const widths = columns.map((_, i) => Math.min(WIDE, Math.max(3, ...cells.map((row) => row[i]?.length ?? 0))));
  const line = (row: readonly string[]): string =>
    `| ${row.map((text, i) => text.padEnd(widths[i] ?? 0)).join(" | ")} |`;
  const [head = [], ...body] = cells;
  return [line(head), `| ${widths.map((width) => "-".repeat(width)).join(" | ")} |`, ...body.map(line)].join("\n");
}

/** Wider cells are not filled up: the table is read as text only where its cells are short. */
const WIDE = 40;

/** What authors write is no markup, and calls nobody. */
export const escaped = (text: string): string =>
  text
    .replaceAll(/[\r\n]+/g, " ")
    .replaceAll(/[\\`*|[\]<>]/g, "\\$&")
    .replaceAll(/@(?=\w)/g, "@\u200B");

const bytes = (text: string): number => new TextEncoder().encode(text).length;
