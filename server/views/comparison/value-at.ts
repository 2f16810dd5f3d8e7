/** What a path says of one car, whatever it names: a property, a part, a point, or a computed figure, at rest or in a case. */
import { figureAt } from "../../../grammar/vocabulary/index.js";
import { figureAsked } from "../../analyses/expectations.js";
import type { CheckedCar } from "../../findings/context.js";
import { propertyAt, treeOf } from "../../model/property-at.js";
import { statementAt } from "../../model/steps.js";
import { fromSI, showQuantity } from "../../quantities/index.js";
import { isAbsent, showFigure } from "../figures.js";
import { unitsOfCar } from "../units-of-car.js";
import { elementsCalled } from "../subject.js";
import { elementUnits } from "../element-units.js";
import { statementText } from "./value-text.js";

export type ValueAt =
  /** `number` is in the unit; texts carry it. */
  | { readonly kind: "number"; readonly number: number; readonly unit: string; readonly text: string }
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "none"; readonly why: string };

/** @param path `front.third.rate`, `front.heave-rate`, `front.ride-height at top-speed`; a property goes before a figure of its name. */
export function valueAt(car: CheckedCar, path: string): ValueAt {
  const [name = "", at] = path.trim().split(/\s+at\s+/);
  return (at === undefined ? written(car, name) : undefined) ?? computed(car, name, at);
}

function written({ model }: CheckedCar, path: string): ValueAt | undefined {
  const property = propertyAt(model, path);
  if (property?.kind === "part") return { kind: "text", text: property.name };
  if (property?.kind === "number" && property.count === undefined) {
    const { value, unit } = property.given;
    return numberOf(value, unit, showQuantity(value, unit, 6));
  }
  const found = statementAt(treeOf(model), path.split("."));
  if (found === undefined) return undefined;
  const text = statementText(found.statement, found.parent.concept);
  const count = property?.kind === "number" ? property.given.value : undefined;
  if (count !== undefined) return { kind: "number", number: count, unit: "", text };
  return text === "" ? { kind: "none", why: `${path} is a block of several lines` } : { kind: "text", text };
}

function computed(car: CheckedCar, figure: string, at: string | undefined): ValueAt {
  const found = figureAt(figure);
  if (found === undefined) return { kind: "none", why: `${figure} is neither a property that is written nor a figure` };
  const value = figureAsked({ figure, at }, car.analysis, car.cases, car.ride);
  if (isAbsent(value)) return { kind: "none", why: value.reason };
  const unit = unitOf(car, figure) ?? unitsOfCar(car.model)(found.figure.dimensions[0] ?? "number");
  return numberOf(value, unit, showFigure(value, unit));
}

/** A torsional element has its rate and its load in units of turns. */
function unitOf(car: CheckedCar, path: string): string | undefined {
  const segments = path.split(".");
  const name = segments.pop();
  const [element] = elementsCalled(car, segments.join("."));
  if (element?.figures === undefined) return undefined;
  const units = elementUnits(element.figures, unitsOfCar(car.model));
  return name === "rate" ? units.rate : name === "load" ? units.load : name === "deflection" ? units.travel : undefined;
}

const numberOf = (si: number, unit: string, text: string): ValueAt => ({
  kind: "number",
  number: fromSI(si, unit) ?? si,
  unit,
  text,
});
