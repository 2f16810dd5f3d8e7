/**
 * A comparison as tables of text, before any face lays them out: changes by axle and mode, effects at rest and in the load
 * cases, expectations, findings. One content for the terminal, Markdown, a printed page and the editor.
 */
import type { Change, ChangeGroup, Told } from "./change.js";
import { caseChangeText } from "./compare.js";
import type { ComparedFinding, Comparison } from "./comparison.js";
import type { Effect } from "./effects.js";
import { left, type Section } from "../section.js";
import type { VerdictChange } from "./verdicts.js";

export interface PageSection extends Section {
  /** What a reader opens only when asked: folded, or left out of short forms. */
  readonly isDetail: boolean;
  /** What is said and what became of it; or what it does to the figures. */
  readonly part: "said" | "does";
  /** One a row: where it is written, so that a face can lead there. */
  readonly places: readonly (Place | undefined)[];
}

export interface Place {
  readonly side: "old" | "now";
  readonly uri: string;
  /** From 1. */
  readonly line: number;
}

export interface ComparisonPage {
  readonly title: string;
  readonly headline: string;
  readonly sections: readonly PageSection[];
  /** Sentences below the tables: how many figures were only counted, cases that have no equilibrium. */
  readonly remarks: readonly string[];
}

export function comparisonPage(comparison: Comparison): ComparisonPage {
  const { old, now, headline, changes, effects, verdicts, fresh, gone } = comparison;
  const [atRest, inCases] = [
    effects.filter(({ at }) => at === undefined),
    effects.filter(({ at }) => at !== undefined),
  ];
  const isMain = ({ isMain: main }: Effect): boolean => main;
  const isDetail = (effect: Effect): boolean => !isMain(effect);
  const sections: readonly PageSection[] = [
    said("Changes", changeColumns, changeRows(changes.filter((change) => !isNote(change)))),
    said("Expectations", verdictColumns, verdicts.filter(isNews).map(verdictRow)),
    said("New findings", findingColumns, fresh.map(findingRow("now"))),
    said("Findings gone", findingColumns, gone.map(findingRow("old"))),
    does("Effects at rest", effectColumns, effectRows(atRest.filter(isMain))),
    does("Effects in the load cases", caseColumns, caseRows(inCases.filter(isMain))),
    said("Notes", noteColumns, noteRows(changes.filter(isNote))),
    saidInDetail("Lines that come with them", changeColumns, changeRows(changes.flatMap(detailsOf))),
    doesInDetail("Elements and wheels at rest", effectColumns, effectRows(atRest.filter(isDetail))),
    doesInDetail("Elements and wheels in the load cases", caseColumns, caseRows(inCases.filter(isDetail))),
    saidInDetail("Expectations as before", verdictColumns, verdicts.filter((one) => !isNews(one)).map(verdictRow)),
  ];
  return {
    title: titleOf(old.name, old.label, now.name, now.label),
    headline,
    sections: sections.filter(({ rows }) => rows.length > 0),
    remarks: [...comparison.cases.map(caseChangeText), ...stillWords(comparison)],
  };
}

const titleOf = (old: string, oldLabel: string, now: string, nowLabel: string): string =>
  old === now ? `${now}: ${nowLabel} against ${oldLabel}` : `${now} (${nowLabel}) against ${old} (${oldLabel})`;

interface Row {
  readonly cells: readonly string[];
  readonly place?: Place | undefined;
}

const section =
  (isDetail: boolean, part: PageSection["part"]) =>
  (title: string, columns: Section["columns"], rows: readonly Row[]): PageSection => ({
    title,
    columns,
    rows: rows.map(({ cells }) => cells),
    places: rows.map(({ place }) => place),
    isDetail,
    part,
  });
const said = section(false, "said");
const does = section(false, "does");
const saidInDetail = section(true, "said");
const doesInDetail = section(true, "does");

const isNote = ({ of }: Change): boolean => of === "note";

const noteColumns = [left("at"), left("was"), left("is"), left("line")];
const changeColumns = [left("of"), left("what"), left("was"), left("is"), left("difference"), left("line")];
const effectColumns = [left("of"), left("figure"), left("was"), left("is"), left("difference")];
const caseColumns = [left("case"), left("figure"), left("was"), left("is"), left("difference")];
const verdictColumns = [left("expectation"), left("wanted"), left("was"), left("is"), left("")];
const findingColumns = [left(""), left("finding")];

const AXLE_ORDER = ["front", "rear", undefined] as const;
const TOPIC_ORDER = [
  "balance",
  "heave",
  "roll",
  "corner",
  "single wheel",
  "stance",
  "axle",
  "wheels",
  "geometry",
  "pitch",
  "warp",
];

/** "front, heave" */
export const groupWords = ({ axle, topic }: ChangeGroup): string =>
  axle === undefined ? (topic === "car" ? "car" : topic) : topic === "axle" ? axle : `${axle}, ${topic}`;

/** Front, rear, car; within an axle by mode. */
export function inGroups<T extends { readonly group: ChangeGroup }>(all: readonly T[]): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const one of all) {
    const key = groupWords(one.group);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  const rank = ([first]: readonly T[]): number => {
    if (first === undefined) return 0;
    const { axle, topic } = first.group;
    const mode = TOPIC_ORDER.indexOf(topic);
    return AXLE_ORDER.indexOf(axle) * 100 + (mode < 0 ? TOPIC_ORDER.length : mode);
  };
  return [...groups.values()].sort((a, b) => rank(a) - rank(b));
}

/** The name of the group in its first row only. */
function grouped<T extends { readonly group: ChangeGroup }>(all: readonly T[], rowOf: (one: T) => Row): readonly Row[] {
  return inGroups(all).flatMap((group) =>
    group.map((one, i) => {
      const { cells, place } = rowOf(one);
      return { cells: [i === 0 ? groupWords(one.group) : "", ...cells], place };
    }),
  );
}

const changeRows = (changes: readonly Change[]): readonly Row[] => grouped(changes, changeRow);

function changeRow(change: Change): Row {
  const { old, now, difference } = change;
  const place = placeOf(now, "now") ?? placeOf(old, "old");
  const line = place === undefined ? "" : `${fileName(place.uri)}:${place.line}`;
  return { cells: [pathWords(change), shownText(old), shownText(now), difference ?? aloneWords(change), line], place };
}

const placeOf = (told: Told | undefined, side: Place["side"]): Place | undefined =>
  told?.line === undefined ? undefined : { side, uri: told.origin.uri, line: told.line };

const noteRows = (changes: readonly Change[]): readonly Row[] =>
  changes.map((change) => {
    const { cells, place } = changeRow(change);
    const [, was = "", is = "", , line = ""] = cells;
    return { cells: [pathWords({ ...change, of: "property" }), was, is, line], place };
  });

const shownText = (told: Told | undefined): string => told?.text ?? "-";

/** "note at front.third.rate", "front.side.bump (also rear.side.bump)" */
export function pathWords({ of, path, also }: Change): string {
  const own = of === "note" ? `note at ${path}` : path;
  return also.length === 0 ? own : `${own} (also ${also.join(", ")})`;
}

const aloneWords = ({ kind }: Change): string => (kind === "changed" ? "" : kind === "added" ? "new" : kind);

export const fileName = (uri: string): string => decodeURIComponent(uri.split("/").at(-1) ?? uri);

const detailsOf = ({ details }: Change): readonly Change[] => details.flatMap((one) => [one, ...detailsOf(one)]);

const effectRow = ({ subject, name, oldText, nowText, difference }: Effect): readonly string[] => [
  subject === "car" ? name : `${subject} ${name}`,
  oldText,
  nowText,
  difference,
];

/** The heading says the axle already. */
const effectRows = (effects: readonly Effect[]): readonly Row[] =>
  grouped(effects, (effect) => {
    const { axle } = effect.group;
    const { subject } = effect;
    const own =
      subject === axle
        ? "car"
        : axle !== undefined && subject.startsWith(`${axle} `)
          ? subject.slice(axle.length + 1)
          : subject;
    return { cells: effectRow({ ...effect, subject: own }) };
  });

/** By case, whatever axle they are of. */
function caseRows(effects: readonly Effect[]): readonly Row[] {
  const names = [...new Set(effects.map(({ at }) => at ?? ""))];
  return names.flatMap((name) =>
    effects
      .filter(({ at }) => at === name)
      .map((effect, i) => ({ cells: [i === 0 ? name : "", ...effectRow(effect)] })),
  );
}

const isNews = ({ status }: VerdictChange): boolean => status !== "still-met";

function verdictRow({ asked, wanted, old, now, status, margin, origin, line }: VerdictChange): Row {
  const words = [status.replaceAll("-", " "), ...(margin === undefined ? [] : [`margin ${margin}`])].join(", ");
  const side = status === "no-longer-asked" ? "old" : "now";
  return { cells: [asked, wanted, old ?? "-", now ?? "-", words], place: { side, uri: origin.uri, line } };
}

const findingRow =
  (side: Place["side"]) =>
  ({ severity, message, rule, uri, line }: ComparedFinding): Row => ({
    cells: [severity, `${message} (${rule})`],
    place: { side, uri, line },
  });

function stillWords({ still, threshold, effects }: Comparison): readonly string[] {
  if (still === 0) return [];
  const share = `${Number((threshold * 100).toPrecision(3))} %`;
  const further = effects.length === 0 ? "" : " further";
  return [
    `${still}${further} ${still === 1 ? "figure" : "figures"} moved less than ${share} or a step of its adjuster.`,
  ];
}
