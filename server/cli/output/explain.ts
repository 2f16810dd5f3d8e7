/** Where a value comes from, as text and for a machine. JSON is described by `schema/explain.json`. */
import type { CheckedCar } from "../../findings/context.js";
import type { Changer } from "../../views/origins/changers.js";
import { effectOf } from "../../views/origins/changers.js";
import type { Explained } from "../../snapshot/explain.js";
import type { FileOf } from "../../views/origins/written.js";
import { changeLabel, chainTitle, stepBy, stepLabel } from "../../views/origins/words.js";
import { shown } from "../workspace.js";
import { json } from "./json.js";
import { table } from "./table.js";

interface Answer {
  readonly car: CheckedCar;
  readonly told: Exclude<Explained, { kind: "none" }>;
  /** Undefined where nobody asked. */
  readonly changers: readonly Changer[] | undefined;
  readonly fileOf: FileOf;
}

type Values = Extract<Explained, { kind: "values" }>["values"];

export const explainOutputs = { text: explainText, json: explainJson } as const;

const left = (...heads: readonly string[]) => heads.map((head) => ({ head, align: "left" as const }));

function explainText({ car, told, changers, fileOf }: Answer): string {
  const parts =
    told.kind === "values"
      ? [valuesText(titleOf(car, told.path), told.values)]
      : [
          `${chainTitle(told.chain)}\n\n${stepsText(told.chain.steps, fileOf)}`,
          ...(told.brings.length === 0 ? [] : [valuesText("The part brings", told.brings)]),
        ];
  return [...parts, ...(changers === undefined ? [] : [changersText(changers, fileOf)])].join("\n");
}

const titleOf = ({ model }: CheckedCar, path: string): string =>
  path === "" ? (model.setup ?? model.name) : `${path} of ${model.setup ?? model.name}`;

const valuesText = (title: string, values: Values): string =>
  `${title}\n\n${table(
    left("path", "value", "said by"),
    values.map(({ path, value, by }) => [path, value, by]),
  )}`;

type Steps = Extract<Explained, { kind: "value" }>["chain"]["steps"];

function stepsText(steps: Steps, fileOf: FileOf): string {
  const rows = steps.map((step) => [
    step.kind === "removed" ? stepLabel(step) : (step.value ?? ""),
    stepBy(step),
    step.text,
    whereText(step.origin, fileOf),
  ]);
  return table(left("value", "said by", "line", "where"), rows);
}

function changersText(changers: readonly Changer[], fileOf: FileOf): string {
  if (changers.length === 0) return "No set-up there changes it.\n";
  const rows = changers.map((one) => [one.setup, changeLabel(one), effectOf(one) ?? "", whereText(one.origin, fileOf)]);
  return `Changed by\n\n${table(left("set-up", "change", "what this line does", "where"), rows)}`;
}

/** "samples/quill/wet.crank:6": editors and terminals lead there. */
function whereText(origin: Changer["origin"] | undefined, fileOf: FileOf): string {
  const place = placeJson(origin, fileOf);
  return place === null ? "" : `${place.file}:${place.line}`;
}

/** From 1; null for what no file says. */
function placeJson(origin: Changer["origin"] | undefined, fileOf: FileOf) {
  if (origin === undefined) return null;
  const { line, character } = fileOf(origin.uri).parsed.lines.position(origin.start);
  return { file: shown(origin.uri), line: line + 1, column: character + 1 };
}

function explainJson({ car, told, changers, fileOf }: Answer): string {
  return json({
    car: car.model.name,
    setup: car.model.setup ?? null,
    path: told.kind === "values" ? told.path : told.chain.path,
    value: told.kind === "values" ? null : (told.chain.value ?? null),
    steps:
      told.kind === "values"
        ? []
        : told.chain.steps.map(({ kind, by, text, value, origin }) => ({
            kind,
            by,
            value: value ?? null,
            text,
            place: placeJson(origin, fileOf),
          })),
    values: told.kind === "values" ? told.values : told.brings,
    changedBy: changers === undefined ? null : changers.map((one) => changerJson(one, fileOf)),
  });
}

const changerJson = (one: Changer, fileOf: FileOf): object => ({
  setup: one.setup,
  path: one.path,
  before: one.before ?? null,
  now: one.now ?? null,
  difference: one.difference ?? null,
  effect: effectOf(one) ?? null,
  text: one.text,
  place: placeJson(one.origin, fileOf),
});
