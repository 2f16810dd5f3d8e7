/** The figures of one car or set-up as tables of text, before any face lays them out: one content for all. */
import { restWords } from "./rest-words.js";
import type { ElementFigures, Figure } from "../analyses/results.js";
import type { CheckedCar } from "../findings/context.js";
import { axleRows } from "./axle-summary.js";
import { carSections } from "./car-summary.js";
import { elementUnits } from "./element-units.js";
import { isAbsent, showFigure, showShare } from "./figures.js";
import { titleOf } from "./car-title.js";
import { cell, left, right, type Section } from "./section.js";
import { stageSection, strengthSection } from "./strength-section.js";
import { everyElement } from "./subject.js";
import { type ShowUnit, unitsOfCar } from "./units-of-car.js";

export type { Column, Section } from "./section.js";

export interface RatesPage {
  readonly title: string;
  readonly sections: readonly Section[];
  /** Reasons behind the dashes of the tables, each once. */
  readonly reasons: readonly string[];
  /** How the figures are meant, where that needs a word. */
  readonly notes?: readonly string[];
}

export function ratesPage(car: CheckedCar): RatesPage {
  const reasons = new Set<string>();
  const sections = [
    axleSection(car, reasons),
    motionSection(car, reasons),
    shareSection(car),
    strengthSection(car, reasons),
    stageSection(car),
    ...carSections(car, reasons),
    expectationSection(car, reasons),
  ];
  return { title: titleOf(car.model), sections: sections.filter(({ rows }) => rows.length > 0), reasons: [...reasons] };
}

function axleSection(car: CheckedCar, reasons: Set<string>): Section {
  const unit = unitsOfCar(car.model);
  const axles = (["front", "rear"] as const).filter((name) => car.analysis.axles[name] !== undefined);
  const byAxle = axles.map((name) => {
    const rates = car.analysis.axles[name]?.rates;
    return rates === undefined
      ? []
      : [
          ...axleRows(rates),
          { name: "share of roll stiffness", figure: rates.rollStiffnessShare, dimension: "share" as const },
        ];
  });
  const rows = (byAxle[0] ?? []).map(({ name, dimension }, index) => [
    name,
    ...byAxle.map((list) =>
      cell(list[index]?.figure ?? { kind: "absent", reason: "not computed" }, unit(dimension), reasons),
    ),
  ]);
  return { title: `Rates ${restWords(car)}`, columns: [left(""), ...axles.map(right)], rows };
}

function motionSection(car: CheckedCar, reasons: Set<string>): Section {
  const unit = unitsOfCar(car.model);
  const modes = ["heave", "roll", "pitch", "warp"] as const;
  const columns = [
    left("element"),
    left("for"),
    ...modes.map(right),
    right("leak at design"),
    right("over travel"),
    right("of the rate"),
    left("from"),
  ];
  const rows = everyElement(car).flatMap(({ figures }) =>
    figures === undefined ? [] : [motionRow(figures, unit, reasons)],
  );
  return { title: "Motion per wheel travel, and leak into the modes that an element is not for", columns, rows };
}

function motionRow(figures: ElementFigures, unit: ShowUnit, reasons: Set<string>): readonly string[] {
  const { sensitivity, leak } = figures;
  const { motion: show } = elementUnits(figures, unit);
  const motion = isAbsent(sensitivity)
    ? absent(sensitivity.reason, 4, reasons)
    : [sensitivity.heave, sensitivity.roll, sensitivity.pitch, sensitivity.warp].map(show);
  const leaks =
    leak === undefined
      ? ["", "", ""]
      : isAbsent(leak)
        ? absent(leak.reason, 3, reasons)
        : [leak.firstOrder, leak.finite, leak.rate].map((part) => share(part, reasons));
  return [figures.path, figures.for.join(" and "), ...motion, ...leaks, figures.basis];
}

function absent(reason: string, count: number, reasons: Set<string>): readonly string[] {
  reasons.add(reason);
  return Array.from({ length: count }, () => "-");
}

function share(figure: Figure, reasons: Set<string>): string {
  if (!isAbsent(figure)) return showShare(figure);
  reasons.add(figure.reason);
  return "-";
}

function shareSection(car: CheckedCar): Section {
  const unit = unitsOfCar(car.model);
  const rows = (["front", "rear"] as const).flatMap((name) => {
    const rates = car.analysis.axles[name]?.rates;
    return (rates?.shares ?? []).map((part) => [
      part.path,
      showFigure(part.heave, unit("rate")),
      ofWhole(part.heave, rates?.heaveRate),
      showFigure(part.roll, unit("torsional-rate")),
      ofWhole(part.roll, rates?.rollStiffness),
      showFigure(part.single, unit("rate")),
    ]);
  });
  const columns = [
    left("element"),
    right("in heave"),
    right(""),
    right("in roll"),
    right(""),
    right("on a single wheel"),
  ];
  return { title: "What each element adds", columns, rows };
}

function ofWhole(part: number, whole: Figure | undefined): string {
  return whole === undefined || isAbsent(whole) || whole === 0 ? "-" : showShare(part / whole);
}

function expectationSection(car: CheckedCar, reasons: Set<string>): Section {
  const rows = car.model.expectations.map((wanted, index) => {
    const judged = car.analysis.expectations.find((result) => result.index === index);
    const name = wanted.at === undefined ? wanted.figure : `${wanted.figure} at ${wanted.at}`;
    if (judged === undefined) return [name, "-", "not judged"];
    const verdict = judged.met === undefined ? "not judged" : judged.met ? "met" : "missed";
    return [name, cell(judged.value, judged.unit, reasons), verdict];
  });
  return { title: "Expectations", columns: [left("figure"), right("is"), left("")], rows };
}
