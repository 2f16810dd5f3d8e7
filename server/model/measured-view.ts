/** What was measured: figures that exist, in their own dimension, of the car or set-up that the block itself stands in. */
import { figureAt } from "../../grammar/vocabulary/index.js";
import { matchesDimension, parseUnit } from "../quantities/index.js";
import type { CarModel, ResolvedStatement } from "./car.js";
import { checkCase } from "./case-view.js";
import { checkFigure } from "./figure-check.js";
import type { Given, Origin } from "./origin.js";
import type { Sink } from "./sink.js";
import { type CarTree, wordIn } from "./tree.js";

export interface MeasuredFigure {
  readonly figure: string;
  readonly at: string | undefined;
  readonly value: Given;
  /** In the figure's own unit, or a share of the prediction where it says so in %. */
  readonly within: { readonly given: Given; readonly isShare: boolean } | undefined;
  readonly origin: Origin;
}

/** What a set-up inherits was measured on another car, and is told where it is written. */
export function checkMeasured(
  tree: CarTree,
  base: CarTree | undefined,
  cases: ReadonlyMap<string, Origin>,
  sink: Sink,
): void {
  const block = wordIn(tree.block, "measured")?.block;
  const inherited = new Set(base && wordIn(base.block, "measured")?.block?.statements);
  for (const statement of block?.statements ?? []) {
    if (statement.word !== "figure" || inherited.has(statement)) continue;
    const [figure, at] = statement.values.filter((value) => value.kind === "path");
    if (figure?.kind !== "path") continue;
    if (at?.kind === "path") checkCase(at, cases, sink);
    const [value, within] = statement.values.filter((one) => one.kind === "number");
    const own = [value, within?.unit === "%" ? undefined : within].filter((one) => one !== undefined);
    checkFigure(figure, own, at !== undefined, tree, sink, "figure");
  }
}

/** The block, where it stands in the car or set-up itself. */
export function ownMeasured({ block, origin }: CarModel): ResolvedStatement | undefined {
  const found = block.statements.find(({ word }) => word === "measured");
  if (found === undefined) return undefined;
  const { uri, start, end } = found.origin;
  return uri === origin.uri && start >= origin.start && end <= origin.end ? found : undefined;
}

/** Whether a unit is one of the figure's own. */
function isOf(segments: readonly string[], unitText: string): boolean {
  const [found, unit] = [figureAt(segments), parseUnit(unitText)];
  return unit !== undefined && found?.figure.dimensions.some((dimension) => matchesDimension(unit, dimension)) === true;
}

/** Those that can be read; what is wrong with the others is told as problems. */
export function measuredFigures(car: CarModel): readonly MeasuredFigure[] {
  return (ownMeasured(car)?.block?.statements ?? []).flatMap(({ word, values, origin }): MeasuredFigure[] => {
    if (word !== "figure") return [];
    const [figure, at] = values.filter((value) => value.kind === "path");
    const [value, within] = values.filter((one) => one.kind === "number");
    if (figure?.kind !== "path" || value === undefined || !isOf(figure.segments, value.unit)) return [];
    const isShare = within?.unit === "%" && value.unit !== "%";
    return [
      {
        figure: figure.segments.join("."),
        at: at?.kind === "path" ? at.segments.join(".") : undefined,
        value,
        within: within && { given: within, isShare },
        origin,
      },
    ];
  });
}
