/**
 * In which units the figures of an element are shown, and in which words: by what its deflection is (a length, an
 * angle, a swept volume), whether it damps, and where it stands.
 */
import type { ElementFigures } from "../analyses/results.js";
import type { DimensionName } from "../../grammar/vocabulary/word.js";
import type { ElementModel } from "../model/car.js";
import { showFigure, showRatio } from "./figures.js";
import type { ShowUnit } from "./units-of-car.js";

export interface ElementUnits {
  /** What one metre of wheel travel does to it: "compression". */
  readonly moved: string;
  /** Its motion for each wheel travel, as text. */
  readonly motion: (value: number) => string;
  readonly rate: string;
  readonly load: string;
  readonly travel: string;
}

export function elementUnits(figures: ElementFigures, unit: ShowUnit): ElementUnits {
  const damper = figures.kind === "damper";
  if (figures.measure === "volume") {
    return {
      moved: "oil pushed out",
      motion: (value) => showFigure(value, unit("piston-area"), 4),
      rate: `${unit("pressure")}/${unit("volume")}`,
      load: unit("pressure"),
      travel: unit("volume"),
    };
  }
  const { torsional } = figures;
  const own: DimensionName = torsional
    ? damper
      ? "torsional-damping"
      : "torsional-rate"
    : damper
      ? "damping"
      : "rate";
  return {
    moved: torsional ? "twist" : "compression",
    motion: torsional ? (value) => showFigure(value, unit("angle-per-length"), 4) : showRatio,
    rate: unit(own),
    load: unit(torsional ? "moment" : "force"),
    travel: unit(torsional ? "angle" : "length"),
  };
}

/** Of what it gives at the wheels in its first claimed mode; pitch turns the body as roll does. */
export function atWheelsUnit({ kind, for: claims }: ElementModel, unit: ShowUnit): string {
  const turns = claims[0] === "roll" || claims[0] === "pitch";
  if (kind === "damper") return unit(turns ? "torsional-damping" : "damping");
  return unit(turns ? "torsional-rate" : "rate");
}

/** "wheel", "axle in heave", "car in pitch". */
export function atWheelsPlace({ axle, for: claims }: ElementModel): string {
  if (claims.includes("corner")) return "wheel";
  return `${axle === undefined ? "car" : "axle"} in ${claims[0] ?? "its mode"}`;
}
