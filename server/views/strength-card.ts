/**
 * What an element bears and how much room it has, as lines of its card: stresses against what is allowed, a coil's
 * length, stroke, stages, when a bar's link springs are used up, and what an inerter adds at the wheels.
 */
import type {
  CarAnalysis,
  ChangeOver,
  CoilFigures,
  ElementFigures,
  LawEvent,
  StressFigures,
  StrokeFigures,
  Where,
} from "../analyses/results.js";
import { isAbsent, showFigure } from "./figures.js";
import type { ShowUnit } from "./units-of-car.js";

/** @param own unit of the element's own deflection */
export function strengthRows(
  figures: ElementFigures,
  car: CarAnalysis,
  unit: ShowUnit,
  own: string,
): readonly string[] {
  return [...loadRows(figures, unit, own), ...stageRows(figures, car, unit, own)];
}

/** Where its law goes over into another stage, when link springs are used up, what an inerter adds at the wheels. */
export function stageRows(figures: ElementFigures, car: CarAnalysis, unit: ShowUnit, own: string): readonly string[] {
  return [
    ...eventRows(figures, unit, own),
    ...(car.changeOvers ?? []).filter(({ path }) => path === figures.path).map((one) => changeOverRow(one, unit)),
    ...inertanceRows(figures, unit),
  ];
}

function loadRows({ strength }: ElementFigures, unit: ShowUnit, own: string): readonly string[] {
  if (strength === undefined) return [];
  if (isAbsent(strength)) return [`stress and room: none (${strength.reason})`];
  const { stresses, coil, stroke } = strength;
  return [
    ...stresses.map((stress) => stressRow(stress, unit("stress"))),
    ...(coil === undefined ? [] : [coilRow(coil, unit("length"))]),
    ...(stroke === undefined ? [] : [strokeRow(stroke, own)]),
  ];
}

function stressRow({ part, kind, atRest, most, allowable, stated, source }: StressFigures, unit: string): string {
  const shown = (value: number): string => showFigure(value, unit, 3);
  const limit = stated ? `${shown(allowable)} that its maker allows` : `${shown(allowable)} that are usual (${source})`;
  return `${part} in ${kind}: ${shown(atRest)} at rest, ${shown(most)} at most, of ${limit}`;
}

function coilRow({ atRest, solid, margin }: CoilFigures, unit: string): string {
  const shown = (value: number): string => showFigure(value, unit, 3);
  const left = margin < 0 ? `closes up ${shown(-margin)} before its end` : `${shown(margin)} left at least`;
  return `coil ${shown(atRest)} long at rest, ${shown(solid)} closed up: ${left} over the travel`;
}

function strokeRow({ bump, rebound }: StrokeFigures, unit: string): string {
  const shown = ({ atRest, least }: StrokeFigures["bump"]): string =>
    `${showFigure(atRest, unit, 3)} from rest (${showFigure(least, unit, 3)} left over the travel)`;
  return `stroke in bump ${shown(bump)}, in rebound ${shown(rebound)}`;
}

const EVENTS: Readonly<Record<LawEvent["what"], string>> = {
  free: "begins to carry",
  stage: "a stage is used up",
};

function eventRows({ events }: ElementFigures, unit: ShowUnit, own: string): readonly string[] {
  if (events === undefined) return [];
  if (isAbsent(events)) return [`stages: none (${events.reason})`];
  return events.map(({ what, at, where }) => {
    const place = where === undefined ? "beyond the travel" : placeOf(where, unit("length"));
    return `${EVENTS[what]} at ${showFigure(at, own, 3)} of its own from design: ${place}`;
  });
}

function placeOf({ mode, travel }: Where, unit: string): string {
  const shown = showFigure(Math.abs(travel), unit, 3);
  if (mode === "rest") return "at rest";
  if (mode === "roll") return `in roll, ${shown} at each wheel, the ${travel > 0 ? "right" : "left"} one in bump`;
  return `at ${shown} of ${travel < 0 ? "droop" : "bump"}`;
}

function changeOverRow({ angle, body, lateral }: ChangeOver, unit: ShowUnit): string {
  const shown = showFigure(angle, unit("angle"), 3);
  const ground = isAbsent(body) ? "" : ` (${showFigure(body, unit("angle"), 3)} against the ground)`;
  const turn = isAbsent(lateral)
    ? `lateral acceleration: none (${lateral.reason})`
    : `at ${showFigure(lateral, "g", 3)}`;
  return `link springs used up at ${shown} of roll${ground}, ${turn}; then the bar alone`;
}

function inertanceRows({ inertance, for: claims }: ElementFigures, unit: ShowUnit): readonly string[] {
  if (inertance === undefined) return [];
  const { heave, roll, single } = inertance;
  const parts = [
    `${showFigure(heave, unit("mass"))} in heave`,
    `${showFigure(roll, unit("inertia"))} in roll`,
    ...(claims.includes("corner") ? [`${showFigure(single, unit("mass"))} at its own wheel`] : []),
  ];
  return [`adds as mass at the wheels ${parts.join(", ")}`];
}
