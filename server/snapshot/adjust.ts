/**
 * The adjustment matrix of a car or set-up: each adjuster moved by one step through the language itself, and every figure
 * that it is held against.
 */
import {
  type AdjustedFigure,
  type OffDiagonal,
  offDiagonals,
  type Step,
  stepEffects,
} from "../analyses/adjustments.js";
import { figureAtCase } from "../analyses/case-paths.js";
import { figureAtPath } from "../analyses/figure-paths.js";
import type { Figure } from "../analyses/results.js";
import type { CheckedCar } from "../findings/context.js";
import { partsLike } from "../findings/solving/parts.js";
import { lineOf, numberSetting, partSetting, presentText, type Setting, stepOf } from "../findings/solving/setting.js";
import { nameOf } from "../findings/where.js";
import { type Adjustable, adjustablesOf } from "../model/adjustables.js";
import type { NumberAt, PartAt } from "../model/property-at.js";
import { showQuantity } from "../quantities/index.js";
import type { FileView } from "./workspace.js";

export interface AdjustmentRow {
  readonly path: string;
  readonly for: readonly string[];
  /** "55 N/mm", "TB-110" */
  readonly now: string;
  /** "+5 N/mm", "TB-115" */
  readonly step: string;
  readonly changes: readonly Figure[];
  readonly relative: readonly Figure[];
  readonly independence: Figure;
}

export interface AdjustmentMatrix {
  readonly figures: readonly AdjustedFigure[];
  readonly rows: readonly AdjustmentRow[];
  readonly offDiagonals: readonly OffDiagonal[];
  /** Adjusters that cannot be moved either way, with the reason. */
  readonly stuck: readonly { readonly path: string; readonly why: string }[];
}

interface Read extends AdjustedFigure {
  read(car: CheckedCar): Figure;
}

const modeFigures = ["heave", "roll"] as const;

function axleFigures(axle: "front" | "rear"): readonly Read[] {
  const at = (name: string, group: AdjustedFigure["group"], mode: AdjustedFigure["mode"]): Read => ({
    name: `${axle}.${name}`,
    group,
    axle,
    mode,
    read: ({ analysis }) => figureAtPath(analysis, `${axle}.${name}`),
  });
  return [
    at("heave-rate", "rate", "heave"),
    at("roll-stiffness", "rate", "roll"),
    at("wheel-rate", "rate", undefined),
    ...modeFigures.map((mode) => at(`${mode}-damping`, "damping", mode)),
    at("ride-height", "height", undefined),
  ];
}

const bodyFigures: readonly Read[] = (["heave", "pitch", "roll"] as const).flatMap((mode): readonly Read[] => [
  {
    name: `body.${mode}-rate`,
    group: "rate",
    axle: undefined,
    mode,
    read: ({ analysis }) => analysis.modal.springs.body[mode],
  },
  {
    name: `body.${mode}-damping`,
    group: "damping",
    axle: undefined,
    mode,
    read: ({ analysis }) => analysis.modal.damping.body[mode],
  },
]);

const atRest = (name: string): Read => ({
  name,
  group: "share",
  axle: undefined,
  mode: undefined,
  read: ({ analysis }) => figureAtPath(analysis, name),
});

const inCase = (name: string, at: string, group: "height" | "share", axle?: "front" | "rear"): Read => ({
  name: `${name} at ${at}`,
  group,
  axle,
  mode: undefined,
  read({ cases }) {
    const result = cases.at(at);
    return result === undefined ? { kind: "absent", reason: `there is no case ${at}` } : figureAtCase(result, name);
  },
});

function figuresOf({ model }: CheckedCar): readonly Read[] {
  const axles = (["front", "rear"] as const).filter((axle) => model.axles[axle] !== undefined);
  return [
    ...axles.flatMap(axleFigures),
    ...bodyFigures,
    atRest("roll-stiffness-front"),
    ...model.cases.flatMap(({ name }) => [
      ...axles.map((axle) => inCase(`${axle}.ride-height`, name, "height", axle)),
      ...["load-transfer-front", "roll-stiffness-front", "downforce-front"].map((share) =>
        inCase(share, name, "share"),
      ),
    ]),
  ];
}

/** One step up; where that cannot be, one down. */
function movesOf(file: FileView, { property }: Adjustable): readonly (Setting & { readonly says: string })[] {
  if (property.kind === "part") return otherParts(file, property).map((one) => ({ ...one, says: one.text }));
  return [1, -1].flatMap((way) => {
    const value = property.given.value + way * stepOf(property);
    const setting = value > (property.count ?? Infinity) ? undefined : numberSetting(property, value, way);
    return setting === undefined ? [] : [{ ...setting, says: stepText(property, way) }];
  });
}

function otherParts(file: FileView, { concept, name, path }: PartAt): readonly Setting[] {
  const names = partsLike(file, concept, name);
  const own = names.indexOf(name);
  return [names[own + 1], names[own - 1]].flatMap((other) => (other === undefined ? [] : [partSetting(path, other)]));
}

function stepText(property: NumberAt, way: number): string {
  const sign = way > 0 ? "+" : "-";
  const turns = property.step?.unit.includes("turn") === true ? " (1 turn)" : "";
  return `${sign}${showQuantity(stepOf(property), property.given.unit)}${turns}`;
}

/** Of two parts, the one that is nearer to what is fitted now. */
function isSmaller(before: readonly Figure[], a: readonly Figure[], b: readonly Figure[]): boolean {
  const size = (after: readonly Figure[]): number =>
    before.reduce<number>((most, was, i) => {
      const is = after[i];
      const change = typeof was === "number" && typeof is === "number" && was !== 0 ? Math.abs(is / was - 1) : 0;
      return Math.max(most, change);
    }, 0);
  return size(a) > 0 && size(a) < size(b);
}

export function adjustmentMatrix(file: FileView, car: CheckedCar): AdjustmentMatrix {
  const figures = figuresOf(car);
  const read = (one: CheckedCar): readonly Figure[] => figures.map((figure) => figure.read(one));
  const before = read(car);
  const steps: (Step & { readonly now: string; readonly step: string })[] = [];
  const stuck: { readonly path: string; readonly why: string }[] = [];
  for (const adjustable of adjustablesOf(car.model)) {
    const { property, axle } = adjustable;
    const tried = movesOf(file, adjustable).map((move) => ({ move, made: file.vary(nameOf(car), [lineOf(move)]) }));
    const moved = tried.flatMap(({ move, made: { car: other, complaints } }) =>
      other === undefined || complaints.length > 0 ? [] : [{ step: move.says, car: other }],
    );
    const [first, second] = moved
      .slice(0, property.kind === "part" ? 2 : 1)
      .map(({ step, car: other }) => ({ step, after: read(other) }));
    if (first === undefined) {
      const why = tried[0]?.made.complaints[0] ?? "there is no other of its kind";
      stuck.push({ path: property.path, why });
      continue;
    }
    const { after, step } = second !== undefined && isSmaller(before, second.after, first.after) ? second : first;
    steps.push({ path: property.path, for: adjustable.for, axle, before, after, now: presentText(property), step });
  }
  const effects = stepEffects(figures, steps);
  return {
    figures,
    rows: steps.flatMap(({ path, now, step, for: modes }, i) => {
      const effect = effects[i];
      return effect === undefined ? [] : [{ ...effect, path, now, step, for: modes }];
    }),
    offDiagonals: offDiagonals(figures, steps, effects),
    stuck,
  };
}
