/** An element's claim beside its evidence: motion in every mode, leak, rates, share, load, travel. */
import type { ElementFigures, Figure, Leak } from "../analyses/results.js";
import type { ElementModel } from "../model/car.js";
import { isAbsent, showFigure, showRatio, showShare } from "./figures.js";
import type { ElementSubject } from "./subject.js";
import { type ShowUnit, unitsOfCar } from "./units-of-car.js";

/** One element, or the left and right one of a corner pair, as Markdown. */
export function elementCard(elements: readonly ElementSubject[]): string {
  return elements.map((element, index) => oneElement(element, index === 0)).join("\n\n");
}

function oneElement(element: ElementSubject, first: boolean): string {
  const { model, figures } = element;
  const head = [`**${model.path}** · ${model.kind} for ${model.for.join(" and ") || "no mode"}`];
  if (model.part !== undefined) head.push(`part ${model.part.name}`);
  const lines = [head.join(" · ")];
  if (first) lines.push(...model.notes.map((note) => `> ${note}`));
  if (figures === undefined) return [...lines, "Not computed: its axle is incomplete."].join("\n\n");
  const unit = unitsOfCar(element.car.model);
  lines.push(motionTable(figures, unit), figureList(element, figures, unit));
  return lines.join("\n\n");
}

function motionTable(figures: ElementFigures, unit: ShowUnit): string {
  const { sensitivity } = figures;
  if (isAbsent(sensitivity)) return `Motion: none (${sensitivity.reason})`;
  const show = (value: number): string =>
    figures.torsional ? showFigure(value, unit("angle-per-length"), 4) : showRatio(value);
  const modes = ["heave", "roll", "pitch", "warp"] as const;
  const what = figures.torsional ? "twist" : "compression";
  return [
    `| ${what} per wheel travel | ${modes.join(" | ")} |`,
    `| --- | ${modes.map(() => "---:").join(" | ")} |`,
    `| from ${figures.basis} | ${modes.map((mode) => show(sensitivity[mode])).join(" | ")} |`,
  ].join("\n");
}

function figureList(element: ElementSubject, figures: ElementFigures, unit: ShowUnit): string {
  const { model } = element;
  const damper = model.kind === "damper";
  const own = figures.torsional ? (damper ? "torsional-damping" : "torsional-rate") : damper ? "damping" : "rate";
  const rows: string[] = [];
  if (figures.motionRatio !== undefined && !figures.torsional) {
    rows.push(`motion ratio (element per wheel travel) ${ratio(figures.motionRatio)}`);
  }
  rows.push(...leakRows(figures.leak));
  rows.push(`${damper ? "damping at low speed" : "own rate"} ${showFigure(figures.rate, unit(own))}`);
  rows.push(`at the ${place(model)} ${showFigure(figures.atWheels, unit(atWheelsDimension(model, damper)))}`);
  rows.push(...shareRows(element, unit));
  const load = figures.torsional ? unit("moment") : unit("force");
  if (!damper) rows.push(`static load ${showFigure(figures.staticLoad, load)}`);
  rows.push(travelRow(figures, unit));
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

function place(model: ElementModel): string {
  return model.for.includes("corner") ? "wheel" : `axle in ${model.for[0] ?? "its mode"}`;
}

function atWheelsDimension(
  model: ElementModel,
  damper: boolean,
): "rate" | "torsional-rate" | "damping" | "torsional-damping" {
  const roll = model.for[0] === "roll";
  if (damper) return roll ? "torsional-damping" : "damping";
  return roll ? "torsional-rate" : "rate";
}

function shareRows(element: ElementSubject, unit: ShowUnit): readonly string[] {
  const rates = element.axle && element.car.analysis.axles[element.axle.name]?.rates;
  const share = rates?.shares.find(({ path }) => path === element.model.path);
  if (rates === undefined || share === undefined) return [];
  const parts = [
    partOf("heave", share.heave, rates.heaveRate, unit("rate")),
    partOf("roll", share.roll, rates.rollStiffness, unit("torsional-rate")),
  ].filter((part) => part !== undefined);
  return parts.length === 0 ? [] : [`adds ${parts.join(", ")}`];
}

function partOf(mode: "heave" | "roll", own: number, whole: Figure, unit: string): string | undefined {
  if (isAbsent(whole) || whole === 0 || own === 0) return undefined;
  return `${showFigure(own, unit)} (${showShare(own / whole)}) in ${mode}`;
}

function travelRow(figures: ElementFigures, unit: ShowUnit): string {
  const { travel } = figures;
  if (isAbsent(travel)) return `travel none (${travel.reason})`;
  const of = unit(figures.torsional ? "angle" : "length");
  return `moves ${showFigure(travel.from, of, 3)} to ${showFigure(travel.to, of, 3)} over the axle's travel`;
}
