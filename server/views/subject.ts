/**
 * Which element, axle or car of the computed model a place in the text speaks of: by where the
 * model says that it was written, or by the dotted path of an override.
 */
import type { Statement } from "../../grammar/index.js";
import type { ElementFigures } from "../analyses/results.js";
import type { CheckedCar } from "../findings/context.js";
import type { AxleModel, ElementModel } from "../model/car.js";
import type { FileView } from "../snapshot/workspace.js";

export interface ElementSubject {
  readonly car: CheckedCar;
  readonly axle: AxleModel | undefined;
  readonly model: ElementModel;
  /** Undefined where the axle could not be computed at all. */
  readonly figures: ElementFigures | undefined;
}

/** Elements declared by the statement that starts at `start` in this file, both sides of a corner element. */
export function elementsWrittenAt(file: FileView, start: number): readonly ElementSubject[] {
  return file.cars.flatMap((car) =>
    everyElement(car).filter(({ model }) => model.origin.uri === file.uri && model.origin.start === start),
  );
}

/** Elements that an override's head names: `front.third.rate` speaks of `front.third`, `front.left.side.fit` of one side. */
export function elementsNamedBy(car: CheckedCar, statement: Statement): readonly ElementSubject[] {
  const path = statement.head.segments.map((segment) => segment.text);
  return everyElement(car).filter(({ model }) => pathsOf(model).some((own) => startsWith(path, own)));
}

/** Elements of exactly that path, both of a corner pair that is named without a side. */
export const elementsCalled = (car: CheckedCar, path: string): readonly ElementSubject[] =>
  everyElement(car).filter(({ model }) => pathsOf(model).some((own) => own.join(".") === path));

/** With its side, and without. */
function pathsOf({ path, side }: ElementModel): readonly (readonly string[])[] {
  const own = path.split(".");
  return [own, own.filter((name) => name !== side)];
}

export function everyElement(car: CheckedCar): readonly ElementSubject[] {
  const ofAxles = (["front", "rear"] as const).flatMap((name) => {
    const axle = car.model.axles[name];
    return axle?.elements.map((model) => subject(car, axle, model)) ?? [];
  });
  return [...ofAxles, ...car.model.elements.map((model) => subject(car, undefined, model))];
}

function subject(car: CheckedCar, axle: AxleModel | undefined, model: ElementModel): ElementSubject {
  const all = axle === undefined ? car.analysis.elements : car.analysis.axles[axle.name]?.elements;
  const figures = all?.find(({ path }) => path === model.path);
  return { car, axle, model, figures };
}

function startsWith(path: readonly string[], start: readonly string[]): boolean {
  return start.every((name, index) => path[index] === name);
}

/** The car or set-up whose statement holds the offset. */
export function carAt(file: FileView, offset: number): CheckedCar | undefined {
  return file.cars.find(
    ({ model: { origin } }) => origin.uri === file.uri && origin.start <= offset && offset <= origin.end,
  );
}

/** The axle that is written around the offset. */
export function axleAt(car: CheckedCar, uri: string, offset: number): AxleModel | undefined {
  return [car.model.axles.front, car.model.axles.rear].find(
    (axle) => axle?.origin.uri === uri && axle.origin.start <= offset && offset <= axle.origin.end,
  );
}
