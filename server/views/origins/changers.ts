/**
 * The set-ups of a workspace that change a value: the line that does it, what it was and is, and what that line alone does to the
 * car, found by putting the value of the base back in its place.
 */
import type { CheckedCar } from "../../findings/context.js";
import type { CarModel } from "../../model/car.js";
import type { Origin } from "../../model/origin.js";
import type { FileView } from "../../snapshot/workspace.js";
import { changesBetween } from "../comparison/changes.js";
import { type Effect, effectsBetween } from "../comparison/effects.js";
import { figureRows, figureRowsAtRest } from "../comparison/figure-rows.js";
import { figureWords } from "../comparison/headline.js";
import { nameOf } from "../comparison/pairs.js";
import { newNames } from "../comparison/renames.js";
import { USUAL_THRESHOLD } from "../comparison/thresholds.js";
import { differenceText } from "../comparison/value-text.js";
import { placeAt } from "../place.js";
import { unitsOfCar } from "../units-of-car.js";
import { beginningOf, isSamePlace, lineFrom } from "./among.js";
import type { Asked } from "./asked.js";
import { wordAt } from "./defaults.js";
import { foundAt, layersOf, ownSteps, type StepKind, valueOf } from "./steps.js";
import { isUnder, writtenPaths } from "./values.js";
import { type FileOf, nameIn, withoutSide, writtenAt } from "./written.js";

export interface Changer {
  /** The set-up's name. */
  readonly setup: string;
  readonly path: string;
  readonly kind: StepKind;
  readonly text: string;
  readonly origin: Origin;
  /** In what it derives from; undefined where it was not there. */
  readonly before: string | undefined;
  /** Undefined where it is taken out. */
  readonly now: string | undefined;
  /** "-10 N/mm, -18.2 %"; undefined where two things have no difference. */
  readonly difference: string | undefined;
  /** In a set-up of the workspace: where it is declared. */
  readonly car: CheckedCar;
  readonly file: FileView;
}

/** Lines of set-ups that change the property, or one side of it, in the order of the files; each line once. */
export function changersOf(asked: Asked, files: readonly FileView[], fileOf: FileOf): readonly Changer[] {
  if (asked.kind === "property" || asked.kind === "block") {
    const [root] = layersOf(asked.car);
    return root === undefined ? [] : changersOfCar(root, asked, files, fileOf);
  }
  if (asked.kind === "among") return changersOfLine(asked.car, asked.origin, files, fileOf);
  return asked.kind === "line" && asked.of === "part" ? changersOfPart(asked.origin, files, fileOf) : [];
}

type OfCar = Extract<Asked, { kind: "property" | "block" }>;

function changersOfCar(root: CarModel, asked: OfCar, files: readonly FileView[], fileOf: FileOf): readonly Changer[] {
  const setups = files.flatMap((file) => file.cars.map((car) => ({ file, car })));
  return setups
    .filter(({ car }) => car.base !== undefined && isSamePlace(layersOf(car)[0]?.origin, root.origin))
    .flatMap(({ file, car }) =>
      onceALine(pathsAsked(asked, car).flatMap((path) => changesIn(car, file, path, fileOf))),
    );
}

/** Of a block all that lies below it, before or after the set-up. */
function pathsAsked({ kind, path }: OfCar, { model, base }: CheckedCar): readonly (readonly string[])[] {
  if (kind === "property") return [path];
  const both = [...(base === undefined ? [] : writtenPaths(base.model)), ...writtenPaths(model)];
  const below = both.filter((one) => isUnder(one, path) || isUnder(withoutSide(one), path));
  return [...new Map(below.map((one) => [one.join("."), one])).values()];
}

/** Of a part in the catalogue: whatever says its figure anew where it is fitted, or fits another part. */
function changersOfPart(line: Origin, files: readonly FileView[], fileOf: FileOf): readonly Changer[] {
  const { around, statement } = placeAt(fileOf(line.uri).parsed.document, line.start);
  const whole = around.length === 1 ? nameIn(statement) : undefined;
  const cars = files.flatMap((file) => file.cars.map((car) => ({ file, car })));
  return cars.flatMap(({ file, car }) => {
    if (car.base === undefined || !file.uses.includes(line.uri)) return [];
    const { model } = car.base;
    const rests = (path: readonly string[]): boolean => {
      const found = foundAt(model, path);
      if (whole !== undefined) return path.at(-1) === "fit" && valueOf(found, path) === whole;
      return isSamePlace(found?.statement.origin, line);
    };
    return onceALine(
      writtenPaths(model)
        .filter(rests)
        .flatMap((path) => changesIn(car, file, path, fileOf)),
    );
  });
}

/** Of one line among several: the lines that have replaced it, or the one that it goes back to. */
function changersOfLine(
  { model: own }: CheckedCar,
  line: Origin,
  files: readonly FileView[],
  fileOf: FileOf,
): readonly Changer[] {
  const began = beginningOf(own, line);
  const cars = files.flatMap((file) => file.cars.map((car) => ({ file, car })));
  return cars.flatMap(({ file, car }) => {
    const { model, base } = car;
    const now = base && lineFrom(model, began);
    const was = base && lineFrom(base.model, began);
    if (now === undefined || was === undefined) return [];
    const { origin, word } = now.statement;
    const written = isSamePlace(was.statement.origin, origin) ? undefined : writtenAt(origin, fileOf);
    if (written === undefined) return [];
    const change = { before: valueOf(was, []), now: valueOf(now, []), difference: undefined };
    return [{ setup: nameOf(model), path: word, kind: "replaced", text: written.text, origin, ...change, car, file }];
  });
}

const onceALine = (changers: readonly Changer[]): readonly Changer[] =>
  changers.filter((one, i) => changers.findIndex(({ origin }) => isSamePlace(origin, one.origin)) === i);

/** Both sides of a path that names none. */
function sidesOf(path: readonly string[]): readonly (readonly string[])[] {
  const [axle = "", ...rest] = path;
  if ((axle !== "front" && axle !== "rear") || rest.length === 0 || withoutSide(path) !== path) return [path];
  return [
    [axle, "left", ...rest],
    [axle, "right", ...rest],
  ];
}

function changesIn(car: CheckedCar, file: FileView, path: readonly string[], fileOf: FileOf): readonly Changer[] {
  const { model, base } = car;
  if (base === undefined) return [];
  const found = sidesOf(path).map((side) => ({ side, step: ownSteps(base.model, model, side, fileOf).at(-1) }));
  const isOnBoth = found.every(({ step }) => isSameStep(step?.origin, found[0]?.step?.origin));
  return found.flatMap(({ side, step }) => {
    if (step?.origin === undefined) return [];
    const own = isOnBoth ? path : side;
    const { kind, text } = step;
    // A part's figure stands on the shelf; what the set-up says is `fit`.
    const fit =
      kind === "part" ? ownSteps(base.model, model, side, fileOf).find((one) => one.kind === "fitted") : undefined;
    const line = fit?.origin === undefined ? { text, origin: step.origin } : { text: fit.text, origin: fit.origin };
    return [{ setup: nameOf(model), path: own.join("."), kind, ...line, ...values(base.model, model, own), car, file }];
  });
}

const isSameStep = (a: Origin | undefined, b: Origin | undefined): boolean =>
  a === b || (a !== undefined && b !== undefined && isSamePlace(a, b));

function values(base: CarModel, model: CarModel, path: readonly string[]) {
  const [was, is] = [foundAt(base, path), foundAt(model, path)];
  const told = changesBetween(base, model).find((change) => change.path === path.join("."))?.difference;
  const plain = was && is && differenceText(was.statement.values, is.statement.values);
  return { before: valueOf(was, path), now: valueOf(is, path), difference: told ?? plain };
}

/**
 * What the line alone does: the set-up as it is against the set-up with the base's value in its place. Undefined where that cannot
 * be written in one line, as for what is taken out.
 */
export function effectOf({ car, file, path, before, now }: Changer): string | undefined {
  // Of one line among several no path tells which it is.
  const segments = path.split(".");
  const isAmong = foundAt(car.model, segments) === undefined || wordAt(car.model, segments)?.times === "many";
  if (before === undefined || now === undefined || isAmong) return undefined;
  const { car: without } = file.vary(nameOf(car.model), [`${path} ${before}`]);
  if (without === undefined) return undefined;
  const unit = unitsOfCar(car.model);
  const asked = { unit, share: USUAL_THRESHOLD, names: newNames([]) };
  // That its own rate moved says nothing new of an element.
  const isNews = ({ subject }: Effect): boolean => !subject.includes(".") || !path.startsWith(`${subject}.`);
  const moved = (rows: typeof figureRows): readonly Effect[] =>
    effectsBetween(without, car, { ...asked, rows }).moved.filter(isNews);
  // Most lines move the car at rest; to solve its load cases takes ten times as long.
  const words = figureWords(moved(figureRowsAtRest));
  if (words !== "") return words;
  const all = moved(figureRows);
  const first = all.find(({ isMain }) => isMain) ?? all[0];
  if (first === undefined) return "no figure moves noticeably";
  return `${first.subject} ${first.name}${first.at === undefined ? "" : ` at ${first.at}`} ${first.difference}`;
}
