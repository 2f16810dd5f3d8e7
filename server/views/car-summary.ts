/**
 * The whole car at static trim, as tables: its stiffness and damping about the centre of gravity, in the four patterns
 * of wheel travel with what couples them, and what each axle and each element between them adds.
 */
import type { CarModal, Figure, ModalFigures } from "../analyses/results.js";
import type { CheckedCar } from "../findings/context.js";
import type { DimensionName } from "../../grammar/vocabulary/word.js";
import { isAbsent, showFigure, showShare } from "./figures.js";
import { motionLine } from "./motion-lines.js";
import { restName } from "./rest-words.js";
import { asTable, cell, left, right, type Section } from "./section.js";
import { type ShowUnit, unitsOfCar } from "./units-of-car.js";

const MODES = ["heave", "pitch", "roll", "warp"] as const;

interface BodyRow {
  readonly name: string;
  readonly of: (modal: ModalFigures) => Figure;
  readonly stiffness: DimensionName;
  readonly damping: DimensionName;
}

/** What couples heave with a turn is force for each radian, which nobody has a feel for: told as the place of the force. */
const BODY: readonly BodyRow[] = [
  { name: "heave", of: ({ body }) => body.heave, stiffness: "rate", damping: "damping" },
  { name: "pitch", of: ({ body }) => body.pitch, stiffness: "torsional-rate", damping: "torsional-damping" },
  { name: "roll", of: ({ body }) => body.roll, stiffness: "torsional-rate", damping: "torsional-damping" },
  {
    name: "pitch with roll",
    of: ({ body }) => body.pitchRoll,
    stiffness: "torsional-rate",
    damping: "torsional-damping",
  },
  { name: "heave is resisted behind the centre of gravity by", of: behind, stiffness: "length", damping: "length" },
  { name: "and left of it by", of: leftOf, stiffness: "length", damping: "length" },
];

/** Where a pure heave meets its resistance, m: −K_hθ / K_hh behind the centre of gravity, as pitch is positive nose down. */
function behind({ body }: ModalFigures): Figure {
  return arm(body.heavePitch, body.heave);
}

/** −K_hφ / K_hh, as roll is positive with the left side up. */
function leftOf({ body }: ModalFigures): Figure {
  return arm(body.heaveRoll, body.heave);
}

function arm(moment: Figure, force: Figure): Figure {
  if (isAbsent(force)) return force;
  if (isAbsent(moment)) return moment;
  return force === 0 ? { kind: "absent", reason: "nothing resists heave" } : 0 - moment / force;
}

/** Both axles are there, so that there is something to say. */
const isWhole = ({ analysis }: CheckedCar): boolean =>
  analysis.axles.front !== undefined && analysis.axles.rear !== undefined;

export function carSections(car: CheckedCar, reasons: Set<string>): readonly Section[] {
  if (!isWhole(car)) return [];
  const unit = unitsOfCar(car.model);
  const { modal } = car.analysis;
  return [bodySection(modal, unit, reasons), patternSection(modal, unit, reasons), shareSection(modal, unit)];
}

function bodySection({ springs, withTyres, damping }: CarModal, unit: ShowUnit, reasons: Set<string>): Section {
  return {
    title: "The whole car, about its centre of gravity",
    columns: [left(""), right("springs"), right("with tyres"), right("dampers at low speed")],
    rows: BODY.map(({ name, of, stiffness, damping: damped }) => [
      name,
      cell(of(springs), unit(stiffness), reasons),
      cell(of(withTyres), unit(stiffness), reasons),
      cell(of(damping), unit(damped), reasons),
    ]),
  };
}

/** Rates of the patterns on the diagonal; beside it what couples two of them, as a share of the mean of both. */
function patternSection({ springs }: CarModal, unit: ShowUnit, reasons: Set<string>): Section {
  const { patterns } = springs;
  const row = (mode: string, i: number): readonly string[] => [
    mode,
    ...MODES.map((_, j) => {
      if (isAbsent(patterns)) return cell(patterns, "", reasons);
      const value = patterns[i]?.[j] ?? 0;
      return i === j ? showFigure(value, unit("rate")) : coupling(value, patterns[i]?.[i] ?? 0, patterns[j]?.[j] ?? 0);
    }),
  ];
  return {
    title: "The whole car, in patterns of wheel travel (one at every wheel), and what couples them",
    columns: [left(""), ...MODES.map(right)],
    rows: MODES.map(row),
  };
}

/** K_ij / √(K_ii K_jj): between −100 % and 100 % for a car that stands. */
function coupling(value: number, one: number, other: number): string {
  if (value === 0) return "0 %";
  return one > 0 && other > 0 ? showShare(value / Math.sqrt(one * other)) : "-";
}

function shareSection({ shares }: CarModal, unit: ShowUnit): Section {
  const named = (path: string): string => (path === "front" || path === "rear" ? `${path} axle` : path);
  return {
    title: "What axles and the elements between them add to each pattern",
    columns: [left(""), ...MODES.map(right)],
    // Two axles alone are told by their own rates.
    rows:
      shares.length < 3
        ? []
        : shares.map((share) => [named(share.path), ...MODES.map((mode) => showFigure(share[mode], unit("rate")))]),
  };
}

/** As a hover, for the car's own statement; undefined where it has one axle only. */
export function carSummary(car: CheckedCar): string | undefined {
  if (!isWhole(car)) return undefined;
  const reasons = new Set<string>();
  const unit = unitsOfCar(car.model);
  const tables = [
    bodySection(car.analysis.modal, unit, reasons),
    patternSection(car.analysis.modal, unit, reasons),
  ].map(asTable);
  const why = [...reasons].map((reason) => `- no figure where ${reason}`);
  return [
    `**${car.model.setup ?? car.model.name}**, ${restName(car.model)}`,
    motionLine(car, undefined),
    ...tables,
    ...(why.length === 0 ? [] : [why.join("\n")]),
  ].join("\n\n");
}
