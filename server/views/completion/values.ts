/** What can stand in one slot: words, modes, units behind a number, names that are declared, points of the linkage. */
import type { Item, Span } from "../../../grammar/index.js";
import type { DimensionName, NameTarget, Slot } from "../../../grammar/vocabulary/word.js";
import { unitsOf } from "../../quantities/index.js";
import { type Candidate, candidate } from "./candidate.js";
import { figurePaths } from "./figure-paths.js";
import type { ValueScene } from "./scene.js";
import { attachmentCandidates } from "./points.js";
import { partCandidates } from "./parts.js";

export function valueCandidates(slot: Slot, scene: ValueScene): readonly Candidate[] {
  switch (slot.kind) {
    case "keyword":
      return [candidate(slot.word, "word", scene.span)];
    case "choice":
      return slot.words.map((word) => candidate(word, "word", scene.span));
    case "modes":
      return modesFor(scene).map((mode) => candidate(mode, "mode", scene.span));
    case "reference":
      return referenceCandidates(slot.to, scene);
    case "attachment":
    case "body":
      return attachmentCandidates(scene, slot.kind);
    case "figure":
      return figureCandidates(scene);
    case "quantity":
    case "range":
      return letCandidates(scene);
    case "name":
    case "point":
    case "text":
      return [];
  }
}

/** Units that a number can carry here; a range's last number, too. */
export function unitCandidates(slots: readonly Slot[], item: Item | undefined, span: Span): readonly Candidate[] {
  const number = item?.kind === "range" ? item.to : item;
  if (number?.kind !== "quantity" && number?.kind !== "tuple") return [];
  const dimensions = new Set(slots.flatMap(dimensionsOf));
  return [...dimensions].flatMap((dimension, group) =>
    unitsOf(dimension)
      .filter((unit) => unit !== "")
      .map((unit, index) => candidate(unit, "unit", span, { detail: dimension, rank: group + index / 100 })),
  );
}

function dimensionsOf(slot: Slot): readonly DimensionName[] {
  return slot.kind === "quantity" || slot.kind === "range" || slot.kind === "point" ? [slot.dimension] : [];
}

function modesFor(scene: ValueScene): readonly string[] {
  return scene.axle === undefined ? ["heave", "pitch", "roll", "warp"] : ["corner", "heave", "roll"];
}

function referenceCandidates(target: NameTarget, scene: ValueScene): readonly Candidate[] {
  if (target === "part") return partCandidates(scene);
  if (target === "element") return elementCandidates(scene);
  const targets: readonly NameTarget[] = target === "car-or-setup" ? ["car", "setup"] : [target];
  const symbols = scene.file.symbols.filter((symbol) => targets.includes(symbol.target));
  return unique(symbols.map((symbol) => candidate(symbol.name, "name", scene.span, { detail: symbol.target })));
}

function elementCandidates(scene: ValueScene): readonly Candidate[] {
  const elements = scene.axle === undefined ? [] : (scene.car?.model.axles[scene.axle]?.elements ?? []);
  return unique(elements.map((element) => candidate(element.name, "element", scene.span, { detail: element.kind })));
}

function letCandidates(scene: ValueScene): readonly Candidate[] {
  const lets = scene.file.symbols.filter((symbol) => symbol.target === "let");
  return unique(lets.map((symbol) => candidate(symbol.name, "name", scene.span, { detail: "let" })));
}

function figureCandidates(scene: ValueScene): readonly Candidate[] {
  return figurePaths(scene.car).map(({ path, help }) => candidate(path, "figure", scene.span, { documentation: help }));
}

function unique(candidates: readonly Candidate[]): readonly Candidate[] {
  return candidates.filter((one, index) => candidates.findIndex((other) => other.label === one.label) === index);
}
