/** One axle of the resolved car from its blocks, left and right. */
import type { AxleSides } from "./axle-sides.js";
import type { Surroundings } from "./attachments.js";
import type { AxleModel, TrimModel, WheelModel } from "./car.js";
import { cornerOf } from "./corner-view.js";
import { elementsOf, type ElementPlace } from "./element-view.js";
import { checkLinkages, checkWheel } from "./geometry-check.js";
import { numberIn, pointIn } from "./given.js";
import type { Given, Origin, Side } from "./origin.js";
import type { Sink } from "./sink.js";
import { checkTyre } from "./tyre-check.js";
import { isCornerElement } from "./sides.js";
import { wordIn, type TreeBlock, type TreeStatement } from "./tree.js";

/** What the vocabulary says holds where no `travel` is written, m. */
const usualTravel = { from: -0.025, to: 0.025 };

/** The axle that a set-up changes: what it leaves alone is taken over as it is. */
export interface AxleBase {
  readonly model: AxleModel;
  readonly sides: AxleSides;
}

export function axleOf(
  statement: TreeStatement,
  sides: AxleSides,
  place: ElementPlace,
  base: AxleBase | undefined,
): AxleModel {
  const { left, right } = sides.blocks;
  const around: Surroundings = { ...place.around, axle: sides };
  const keepsLinkage = base !== undefined && isSame("linkage", base.sides, sides);
  const keepsWheel = base !== undefined && isSame("wheel", base.sides, sides);
  if (!keepsLinkage) checkLinkages(sides, around.sink);
  if (!keepsWheel) {
    checkTyre(sides, around.sink);
    checkWheel(sides, base?.sides, around.sink);
  }
  return {
    name: sides.name,
    origin: statement.origin,
    nameOrigin: statement.name?.origin ?? statement.wordOrigin,
    track: numberIn(left, "track"),
    rideHeight: numberIn(left, "ride-height"),
    drawnRideHeight: base === undefined ? numberIn(left, "ride-height") : base.model.drawnRideHeight,
    travel: travelOf(left),
    trim: trimOf(sides, around.sink),
    wheel: keepsWheel ? base.model.wheel : { left: wheelOf(left, "left"), right: wheelOf(right, "right") },
    corner: keepsLinkage ? base.model.corner : cornersOf(sides, statement.wordOrigin),
    elements: elementsOf(left, right, { ...place, around }, keepsLinkage && keepsWheel ? base : undefined),
    block: left,
    ...(right === left ? {} : { rightBlock: right }),
  };
}

/** Whether both sides have the very lines of the base. */
function isSame(word: string, base: AxleSides, sides: AxleSides): boolean {
  const side = (name: Side) => wordIn(base.blocks[name], word) === wordIn(sides.blocks[name], word);
  return side("left") && side("right");
}

function cornersOf({ blocks }: AxleSides, fallback: Origin): AxleModel["corner"] {
  return { left: cornerOf(blocks.left, "left", fallback), right: cornerOf(blocks.right, "right", fallback) };
}

function travelOf(axle: TreeBlock): AxleModel["travel"] {
  const range = wordIn(axle, "travel")?.values[0];
  if (range?.kind !== "range") return { ...usualTravel, given: undefined };
  const [from, to] = range.value;
  return { from, to, given: range };
}

function wheelOf(axle: TreeBlock, side: Side): WheelModel {
  const block = wordIn(axle, "wheel")?.block;
  return {
    centre: pointIn(block, "centre", side),
    camber: numberIn(block, "camber"),
    toe: numberIn(block, "toe"),
    loadedRadius: numberIn(block, "loaded-radius"),
    unsprungMass: numberIn(block, "unsprung-mass"),
    tyreRate: tyreRateOf(block),
    tyreDamping: numberIn(block, "tyre-damping"),
  };
}

/** At the pressure that the tyre runs at, where its stiffness is measured against pressure; else as stated. */
function tyreRateOf(wheel: TreeBlock | undefined): Given | undefined {
  const pressure = numberIn(wheel, "pressure");
  const rows = (wordIn(wheel, "tyre-rates")?.block?.rows ?? []).flatMap(({ key, value }) =>
    key.kind === "number" && value.kind === "number" ? [{ at: key.value, rate: value.value, unit: value.unit }] : [],
  );
  const sorted = rows.sort((a, b) => a.at - b.at);
  const first = sorted.findIndex(({ at }) => pressure !== undefined && at >= pressure.value);
  const above = first < 0 ? sorted.length - 1 : Math.max(1, first);
  const [low, high] = [sorted[above - 1], sorted[above]];
  if (pressure === undefined || low === undefined || high === undefined || !(high.at > low.at))
    return numberIn(wheel, "tyre-rate");
  const value = low.rate + ((high.rate - low.rate) * (pressure.value - low.at)) / (high.at - low.at);
  const { origin, statement, chain } = pressure;
  return value > 0 ? { value, unit: low.unit, origin, statement, chain } : numberIn(wheel, "tyre-rate");
}

const springs: ReadonlySet<string> = new Set(["spring", "gas-spring"]);

/** As written; else by the corner springs, else by the heave spring, else by nothing. */
function trimOf(sides: AxleSides, sink: Sink): TrimModel {
  const line = wordIn(sides.blocks.left, "trim");
  const [by] = line?.values ?? [];
  if (by?.kind === "word") return { by: "push-rod", element: undefined, given: by.origin };
  if (by?.kind === "path") {
    const name = by.segments.join(".");
    const element = named(sides.blocks.left, name);
    if (element?.root !== undefined) {
      const place = { segment: sides.name, outer: undefined };
      sink.refer({ target: "element", name, place, declaration: element.root }, by.origin);
      return { by: "element", element: name, given: by.origin };
    }
    sink.report({
      ...by.origin,
      kind: "unknown-name",
      name,
      target: "element",
      candidates: springNames(sides.blocks.left),
    });
  }
  const usual = firstSpring(sides.blocks.left, isCornerElement) ?? firstSpring(sides.blocks.left, isForHeave);
  return usual === undefined
    ? { by: "nothing", element: undefined, given: undefined }
    : { by: "element", element: usual, given: undefined };
}

const isForHeave = (statement: TreeStatement): boolean =>
  statement.values.some((value) => value.kind === "modes" && value.modes.some((mode) => mode.text === "heave"));

function named(block: TreeBlock, name: string): TreeStatement | undefined {
  return block.statements.find((statement) => statement.name?.text === name);
}

function firstSpring(block: TreeBlock, suits: (statement: TreeStatement) => boolean): string | undefined {
  return block.statements.find((statement) => springs.has(statement.word) && suits(statement))?.name?.text;
}

const springNames = (block: TreeBlock): readonly string[] =>
  block.statements.flatMap(({ word, name }) => (springs.has(word) && name !== undefined ? [name.text] : []));
