/**
 * The published model of a car or set-up from its tree. Axles that a set-up leaves as they are
 * stay the very objects of what it derives from.
 */
import { type AxleSides, axleSides } from "./axle-sides.js";
import { axleOf } from "./axle-view.js";
import type { AxleModel, CarModel } from "./car.js";
import { checkMeasured } from "./measured-view.js";
import { caseRoots, casesOf, checkKerbs, expectationsOf } from "./case-view.js";
import { elementsOf, type ElementPlace } from "./element-view.js";
import type { Declared, FileContext } from "./file-context.js";
import { choiceIn, numberIn } from "./given.js";
import type { AxleName, Origin } from "./origin.js";
import type { ResolvedCar } from "./resolved-file.js";
import type { Sink } from "./sink.js";
import { at } from "./sink.js";
import type { View } from "./view.js";
import { axleStatement, wordIn, type CarTree, type TreeBlock } from "./tree.js";

/** Leak thresholds where none are written, as the vocabulary says. */
const usualLimits = { information: 0.02, warning: 0.05 };

/** `chain` is what it derives from, nearest first; `base` the view of the nearest. */
export function viewOf(declared: Declared, tree: CarTree, chain: readonly Declared[], base: View | undefined): View {
  const { context, raw, nameOrigin, sink } = declared;
  const root = chain.at(-1) ?? declared;
  const { block } = tree;
  const place = placeFor(tree, sink);
  const brakes = wordIn(block, "brakes")?.block;
  checkKerbs(tree, base?.tree, place.cases, sink);
  checkMeasured(tree, base?.tree, place.cases, sink);
  const model: ResolvedCar = {
    name: root.name,
    title: titleOf(root),
    setup: declared.kind === "setup" ? declared.name : undefined,
    bases: chain.map((link) => link.name),
    base: chain[0]?.name,
    baseModel: base?.model,
    origin: at(context.uri, raw),
    nameOrigin,
    notes: raw.notes.map((note) => note.text),
    wheelbase: numberIn(block, "wheelbase"),
    mass: numberIn(block, "mass"),
    massFront: numberIn(block, "mass-front"),
    cgHeight: numberIn(block, "cg-height"),
    rollInertia: numberIn(block, "roll-inertia"),
    pitchInertia: numberIn(block, "pitch-inertia"),
    brakes: brakes && { front: numberIn(brakes, "front"), mounting: mountingOf(brakes) },
    drive: driveOf(block),
    axles: {
      front: axleFor("front", tree, place, base, context),
      rear: axleFor("rear", tree, place, base, context),
    },
    elements: elementsOf(block, block, place, undefined),
    cases: casesOf(tree),
    expectations: expectationsOf(
      tree,
      base && { tree: base.tree, expectations: base.model.expectations },
      place.cases,
      sink,
    ),
    leakLimits: leakLimitsOf(block),
    block,
  };
  return { model, tree };
}

function titleOf({ raw }: Declared): string | undefined {
  const title = raw.items.find((item) => item.kind === "text");
  return title?.kind === "text" ? title.value : undefined;
}

function mountingOf(brakes: TreeBlock): "outboard" | "inboard" {
  return choiceIn(brakes, "mounting") === "inboard" ? "inboard" : "outboard";
}

function driveOf(block: TreeBlock): CarModel["drive"] {
  const drive = choiceIn(block, "drive");
  return drive === "front" || drive === "rear" || drive === "all" ? drive : undefined;
}

function leakLimitsOf(block: TreeBlock): CarModel["leakLimits"] {
  const limits = wordIn(wordIn(block, "checks")?.block, "leak")?.block;
  return {
    information: numberIn(limits, "information")?.value ?? usualLimits.information,
    warning: numberIn(limits, "warning")?.value ?? usualLimits.warning,
  };
}

function placeFor(tree: CarTree, sink: Sink): ElementPlace {
  const axles = { front: sidesOf(tree, "front"), rear: sidesOf(tree, "rear") };
  const cases: ReadonlyMap<string, Origin> = caseRoots(tree);
  return { around: { axles, axle: undefined, side: undefined, word: "", sink }, cases };
}

function sidesOf(tree: CarTree, name: AxleName): AxleSides | undefined {
  const left = axleStatement(tree, name)?.block;
  const right = tree.right[name];
  return left && right && axleSides(name, { left, right });
}

function axleFor(
  name: AxleName,
  tree: CarTree,
  place: ElementPlace,
  base: View | undefined,
  { readings }: FileContext,
): AxleModel | undefined {
  const statement = axleStatement(tree, name);
  const sides = place.around.axles[name];
  if (statement === undefined || sides === undefined) return undefined;
  const model = base?.model.axles[name];
  const before = base && sidesOf(base.tree, name);
  if (base === undefined)
    return readings.axle(statement, sides, place.around.sink, () => axleOf(statement, sides, place, undefined));
  if (model === undefined || before === undefined) return axleOf(statement, sides, place, undefined);
  const isUnchanged = before.blocks.left === sides.blocks.left && before.blocks.right === sides.blocks.right;
  return isUnchanged ? model : axleOf(statement, sides, place, { model, sides: before });
}
