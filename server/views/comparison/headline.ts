/**
 * What a reviewer wants to read first, in one sentence: the rates that moved most, damping, balance and heights, then what
 * became of expectations and findings.
 */
import type { Change } from "./change.js";
import type { Comparison } from "./comparison.js";
import type { Effect } from "./effects.js";
import { percent } from "./value-text.js";
import { showNumber, fromSI } from "../../quantities/index.js";

type Told = Pick<Comparison, "changes" | "effects" | "cases" | "verdicts" | "fresh" | "gone">;

/** As many as one reads at a glance. */
const MOST = 4;

export function headlineOf(told: Told): string {
  const consequences = [...caseWords(told), ...verdictWords(told), ...findingWords(told)].join(", ");
  const figures = figureWords(told.effects);
  if (told.changes.length === 0 && told.effects.length === 0 && consequences === "") return "Nothing differs.";
  if (figures === "" && consequences === "") return `${changeWords(told.changes)}, and no figure moves noticeably.`;
  const sentence = [figures, consequences].filter((part) => part !== "").join("; ");
  return `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`;
}

function changeWords(changes: readonly Change[]): string {
  const notes = changes.filter(({ of }) => of === "note" || of === "expectation").length;
  if (changes.length === 0) return "Nothing differs in what is written";
  if (changes.every(({ of }) => of === "note")) return "Only notes differ";
  if (notes === changes.length) return "Only notes and expectations differ";
  if (changes.every(({ kind }) => kind === "renamed")) return "Only names differ";
  return changes.length === 1 ? "One thing differs" : `${changes.length} things differ`;
}

/** Rates and damping by how much they moved, then the balance and the heights; empty where none of these moved. */
export function figureWords(effects: readonly Effect[]): string {
  const atRest = effects.filter(({ at, isMain }) => at === undefined && isMain);
  const rates = [
    ...scales(atRest, "heave rate (both wheels)", "heave rate"),
    ...scales(atRest, "roll stiffness", "roll stiffness"),
  ];
  const damping = [
    ...scales(atRest, "heave damping", "heave damping"),
    ...scales(atRest, "roll damping", "roll damping"),
  ];
  const words = bySize([...rates, ...damping])
    .slice(0, MOST)
    .map(({ words: text }) => text);
  return [...words, ...balanceWords(effects), ...heightWords(atRest)].join(", ");
}

interface Scaled {
  readonly words: string;
  readonly size: number;
}

/** "front heave rate +6 %"; both axles by the same share are told once. */
function scales(effects: readonly Effect[], name: string, shown: string): readonly Scaled[] {
  const found = effects.flatMap(({ subject, name: own, relative }) =>
    own === name && relative !== undefined ? [{ subject, relative }] : [],
  );
  const [first, second] = found;
  if (first !== undefined && second !== undefined && short(first.relative) === short(second.relative))
    return [{ words: `${shown} ${short(first.relative)} on both axles`, size: Math.abs(first.relative) }];
  return found.map(({ subject, relative }) => ({
    words: `${subject} ${shown} ${short(relative)}`,
    size: Math.abs(relative),
  }));
}

const bySize = (all: readonly Scaled[]): readonly Scaled[] => [...all].sort((a, b) => b.size - a.size);

/** Two digits are enough for a headline. */
const short = (relative: number): string => percent(Number(relative.toPrecision(2)));

/** "roll balance 0.8 points to the front" */
function balanceWords(effects: readonly Effect[]): readonly string[] {
  const found = effects.find(({ name, at }) => name === "roll stiffness at the front" && at === undefined);
  if (found?.change === undefined) return [];
  const points = showNumber(Math.abs(found.change) * 100, 2);
  return [`roll balance ${points} points to the ${found.change > 0 ? "front" : "rear"}`];
}

/** "front 2 mm higher" */
function heightWords(effects: readonly Effect[]): readonly string[] {
  const found = effects.flatMap(({ subject, name, change, unit }) => {
    if (name !== "ride height" || change === undefined) return [];
    const shown = showNumber(Math.abs(fromSI(change, unit) ?? change), 2);
    return [{ subject, words: `${shown} ${unit} ${change > 0 ? "higher" : "lower"}` }];
  });
  const [first, second] = found;
  if (first !== undefined && first.words === second?.words) return [`both axles ${first.words}`];
  return found.map(({ subject, words }) => `${subject} ${words}`);
}

function caseWords({ cases }: Told): readonly string[] {
  const lost = cases.filter(({ now }) => now !== undefined).length;
  return lost === 0 ? [] : [`no equilibrium any more in ${counted(lost, "load case")}`];
}

function verdictWords({ verdicts }: Told): readonly string[] {
  const count = (status: string): number => verdicts.filter((one) => one.status === status).length;
  const [missed, met] = [count("newly-missed"), count("newly-met")];
  return [
    ...(missed === 0 ? [] : [`${counted(missed, "expectation")} newly missed`]),
    ...(met === 0 ? [] : [`${counted(met, missed === 0 ? "expectation" : "", true)} newly met`]),
  ];
}

function findingWords({ fresh, gone }: Told): readonly string[] {
  const of = (severity: string): number => fresh.filter((one) => one.severity === severity).length;
  return [
    ...(of("error") === 0 ? [] : [counted(of("error"), "new error")]),
    ...(of("warning") === 0 ? [] : [counted(of("warning"), "new warning")]),
    ...(fresh.length === 0 && gone.length > 0 ? [`${counted(gone.length, "finding")} gone`] : []),
  ];
}

const numerals = [
  "no",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
];

function counted(count: number, what: string, isBare = false): string {
  const number = numerals[count] ?? String(count);
  return isBare && what === "" ? number : `${number} ${what}${count === 1 ? "" : "s"}`;
}
