/** What solving came to, as tables of text: the answer beside what stood before, adjuster steps and parts. */
import type { CheckedCar } from "../findings/context.js";
import { showQuantity } from "../quantities/index.js";
import { titleOf } from "./car-title.js";
import type { RatesPage } from "./rates-page.js";
import { left, right, type Section } from "./section.js";

export interface ShownOutcome {
  readonly value: number;
  readonly unit: string;
  readonly isMet: boolean;
  /** SI, to the nearest limit. */
  readonly margin: number;
}

export interface ShownAnswer {
  readonly isMet: boolean;
  readonly settings: readonly { readonly path: string; readonly text: string; readonly steps?: number }[];
  readonly outcomes: readonly ShownOutcome[];
}

export interface ShownSolution {
  readonly before: Pick<ShownAnswer, "settings" | "outcomes">;
  readonly answer: ShownAnswer;
  readonly onSteps: ShownAnswer | undefined;
  readonly withPart: ShownAnswer | undefined;
  readonly atBounds: readonly string[];
}

/** @param wanted as it stands behind `expect` */
export function solvePage(car: CheckedCar, found: ShownSolution, wanted: readonly string[]): RatesPage {
  const { before, answer, onSteps, withPart } = found;
  const ways: readonly (readonly [string, ShownAnswer | undefined])[] = [
    ["now", { ...before, isMet: before.outcomes.length > 0 && before.outcomes.every(({ isMet }) => isMet) }],
    [answer.isMet ? "answer" : "comes nearest", answer],
    ["on adjuster steps", onSteps],
    ["with a part", withPart],
  ];
  const shown = ways.flatMap(([name, way]) => (way === undefined ? [] : [{ name, way }]));
  return {
    title: [titleOf(car.model), ...verdict(found)].join(": "),
    sections: [settingSection(shown), outcomeSection(shown, wanted)],
    reasons: [],
  };
}

interface Way {
  readonly name: string;
  readonly way: ShownAnswer;
}

function settingSection(ways: readonly Way[]): Section {
  const paths = [...new Set(ways.flatMap(({ way }) => way.settings.map(({ path }) => path)))];
  return {
    title: "Settings",
    columns: [left("path"), ...ways.map(({ name }) => right(name))],
    rows: paths.map((path) => [path, ...ways.map(({ way }) => settingText(way, path))]),
  };
}

function settingText({ settings }: ShownAnswer, path: string): string {
  const found = settings.find((one) => one.path === path);
  if (found === undefined) return "-";
  const text = found.text.replace(/^-?\d+\.\d+/, (digits) => String(Number(Number(digits).toPrecision(6))));
  return found.steps === undefined ? text : `${text} (${stepsText(found.steps)})`;
}

const stepsText = (steps: number): string =>
  steps === 0 ? "as it stands" : `${steps > 0 ? "+" : ""}${steps} ${Math.abs(steps) === 1 ? "step" : "steps"}`;

const outcomeSection = (ways: readonly Way[], wanted: readonly string[]): Section => ({
  title: "What is expected",
  columns: [left("expected"), ...ways.map(({ name }) => right(name))],
  rows: wanted.map((one, i) => [one, ...ways.map(({ way }) => outcomeText(way.outcomes[i]))]),
});

/** "172.3 N/mm", or with what it misses by. */
function outcomeText(outcome: ShownOutcome | undefined): string {
  if (outcome === undefined) return "-";
  const { value, unit, isMet, margin } = outcome;
  const shown = showQuantity(value, unit, 5);
  return isMet ? shown : `${shown} (misses by ${showQuantity(Math.abs(margin), unit, 3)})`;
}

function verdict({ answer, atBounds }: ShownSolution): readonly string[] {
  if (answer.isMet) return [];
  const held = atBounds.length === 0 ? "" : `, since ${atBounds.join(" and ")} can go no further`;
  return [`this cannot be met${held}`];
}
