/** An element's claim beside its evidence: motion in every mode, leak, rates, share, load, travel. */
import type { ElementFigures, Figure, Leak } from "../analyses/results.js";
import { atWheelsPlace, atWheelsUnit, elementUnits } from "./element-units.js";
import { isAbsent, showFigure, showRatio, showShare } from "./figures.js";
import { fluidRows } from "./fluid-card.js";
import { areAlike, pathOfPair } from "./like-sides.js";
import { strengthRows } from "./strength-card.js";
import type { ElementSubject } from "./subject.js";
import { type ShowUnit, unitsOfCar } from "./units-of-car.js";

/** One element, or the left and right one of a corner pair: told once where they are alike, each by itself where not. */
export function elementCard(elements: readonly ElementSubject[]): string {
  const [first] = elements;
  if (first !== undefined && areAlike(elements))
    return oneElement(first, true, pathOfPair(first), ", both sides alike");
  return elements.map((element, index) => oneElement(element, index === 0, element.model.path, "")).join("\n\n");
}

function oneElement(element: ElementSubject, first: boolean, path: string, whichSides: string): string {
  const { model, figures } = element;
  const head = [`**${path}**${whichSides} · ${model.kind} for ${model.for.join(" and ") || "no mode"}`];
  if (model.part !== undefined) head.push(`part ${model.part.name}`);
  const lines = [head.join(" · ")];
  if (first) lines.push(...model.notes.map((note) => `> ${note}`));
  if (figures === undefined) return [...lines, "Not computed: its axle is incomplete."].join("\n\n");
  const unit = unitsOfCar(element.car.model);
  lines.push(motionTable(figures, unit, whichSides === "" ? "" : ", left side"), figureList(element, figures, unit));
  return lines.join("\n\n");
}

function motionTable(figures: ElementFigures, unit: ShowUnit, of: string): string {
  const { sensitivity } = figures;
  if (isAbsent(sensitivity)) return `Motion: none (${sensitivity.reason})`;
  const { moved, motion: show } = elementUnits(figures, unit);
  const modes = ["heave", "roll", "pitch", "warp"] as const;
  return [
    `| ${moved} per wheel travel | ${modes.join(" | ")} |`,
    `| --- | ${modes.map(() => "---:").join(" | ")} |`,
    `| from ${figures.basis}${of} | ${modes.map((mode) => show(sensitivity[mode])).join(" | ")} |`,
  ].join("\n");
}

function figureList(element: ElementSubject, figures: ElementFigures, unit: ShowUnit): string {
  const { model } = element;
  const damper = model.kind === "damper";
  const units = elementUnits(figures, unit);
  const rows: string[] = [];
  if (figures.motionRatio !== undefined && !figures.torsional) {
    rows.push(`motion ratio (element per wheel travel) ${ratio(figures.motionRatio)}`);
  }
  rows.push(...leakRows(figures.leak));
  rows.push(`${damper ? "damping at low speed" : "own rate"} ${showFigure(figures.rate, units.rate)}`);
  rows.push(`at the ${atWheelsPlace(model)} ${showFigure(figures.atWheels, atWheelsUnit(model, unit))}`);
  rows.push(...shareRows(element, unit));
  // The pressure of oil is told with its fluid.
  if (!damper && figures.measure !== "volume") rows.push(`static load ${showFigure(figures.staticLoad, units.load)}`);
  rows.push(...fluidRows(element, figures, unit));
  rows.push(...strengthRows(figures, element.car.analysis, unit, units.travel));
  rows.push(travelRow(figures, units.travel, model.axle === undefined ? "car" : "axle"));
  return rows.map((row) => `- ${row}`).join("\n");
}

const ratio = (figure: Figure): string => (isAbsent(figure) ? showFigure(figure, "") : showRatio(figure));

function leakRows(leak: ElementFigures["leak"]): readonly string[] {
  if (leak === undefined) return [];
  if (isAbsent(leak)) return [`leak none (${leak.reason})`];
  return [leakText(leak)];
}

/** "leak into heave: 1.2 % at design, 1.4 % over the travel, 0.1 % of the rate". */
export function leakText(leak: Leak): string {
  const into = leak.mode === "other-wheel" ? "the other wheel" : leak.mode;
  const finite = `${showShare(leak.finite)} over the travel`;
  const rate = isAbsent(leak.rate)
    ? `share of the rate there: none (${leak.rate.reason})`
    : `${showShare(leak.rate)} of the rate there`;
  return `leak into ${into}: ${showShare(leak.firstOrder)} at design, ${finite}, ${rate}`;
}

function shareRows(element: ElementSubject, unit: ShowUnit): readonly string[] {
  const parts = element.axle === undefined ? sharesInCar(element, unit) : sharesInAxle(element, unit);
  const told = parts.filter((part) => part !== undefined);
  return told.length === 0 ? [] : [`adds ${told.join(", ")}`];
}

function sharesInAxle({ car, axle, model }: ElementSubject, unit: ShowUnit): readonly (string | undefined)[] {
  const rates = axle && car.analysis.axles[axle.name]?.rates;
  const share = rates?.shares.find(({ path }) => path === model.path);
  if (rates === undefined || share === undefined) return [];
  return [
    partOf("heave", share.heave, rates.heaveRate, unit("rate")),
    partOf("roll", share.roll, rates.rollStiffness, unit("torsional-rate")),
  ];
}

/** Of the car's patterns of wheel travel. */
function sharesInCar({ car, model }: ElementSubject, unit: ShowUnit): readonly (string | undefined)[] {
  const { shares, springs } = car.analysis.modal;
  const share = shares.find(({ path }) => path === model.path);
  const { patterns } = springs;
  if (share === undefined || isAbsent(patterns)) return [];
  const modes = ["heave", "pitch", "roll", "warp"] as const;
  return modes.map((mode, i) => partOf(`the ${mode} pattern`, share[mode], patterns[i]?.[i] ?? 0, unit("rate")));
}

/** A share that would be shown as 0 %. */
const NEXT_TO_NOTHING = 5e-5;

function partOf(mode: string, own: number, whole: Figure, unit: string): string | undefined {
  if (isAbsent(whole) || !(Math.abs(own) > NEXT_TO_NOTHING * Math.abs(whole))) return undefined;
  return `${showFigure(own, unit)} (${showShare(own / whole)}) in ${mode}`;
}

function travelRow({ travel }: ElementFigures, unit: string, whose: string): string {
  if (isAbsent(travel)) return `travel none (${travel.reason})`;
  return `moves ${showFigure(travel.from, unit, 3)} to ${showFigure(travel.to, unit, 3)} over the ${whose}'s travel`;
}
