/**
 * The elements of a file's cars with faults of one kind, as findings: left and right told once where they are alike, and
 * what a car or set-up underneath has already left to be told there.
 */
import type { ResolvedBlock, ResolvedStatement } from "../../model/car.js";
import type { Origin } from "../../model/origin.js";
import { type CheckedElement, elementAt, elementsOf } from "../axle-parts.js";
import type { CheckedCar, RuleContext } from "../context.js";
import type { Finding } from "../finding.js";
import { lengthUnit } from "../length-unit.js";
import { nameOf, placeFor, standsInBase } from "../where.js";
import { type FaultKind, type FaultOf, faultsOf, nameOfFault, severityOf } from "./faults.js";

/** One fault, with what a rule needs to word it. */
export interface Faulty<K extends FaultKind> {
  readonly context: RuleContext;
  readonly car: CheckedCar;
  readonly element: CheckedElement;
  readonly fault: FaultOf<K>;
  /** Unit of length of its axle's author. */
  readonly unit: string;
}

export interface FaultWords {
  /** What follows the element's name: " closes up …". */
  readonly message: string;
  /** Lines that it is the value of, as dotted words in the element: `coil.free-length`; the likeliest first. */
  readonly lines: readonly string[];
}

/** For a rule's fix to find the fault again. */
export interface FaultData {
  readonly car: string;
  readonly path: string;
  readonly fault: string;
  /** True where both sides have it and are mended together. */
  readonly both: boolean;
}

export function* faultFindings<K extends FaultKind>(
  context: RuleContext,
  kind: K,
  say: (faulty: Faulty<K>) => FaultWords,
  isTold: (faulty: Faulty<K>) => boolean = () => true,
): Generator<Finding> {
  for (const car of context.cars) {
    const told = faultsIn(context, car, kind)
      .filter(isTold)
      .map((faulty) => ({ ...faulty, words: say(faulty) }));
    for (const [i, one] of told.entries()) {
      const twin = told.findIndex((other, j) => i !== j && isAlike(one, other));
      if (twin !== -1 && twin < i) continue;
      yield findingOf(one, one.words, twin !== -1);
    }
  }
}

function faultsIn<K extends FaultKind>(context: RuleContext, car: CheckedCar, kind: K): readonly Faulty<K>[] {
  return elementsOf(car).flatMap((element) => {
    const { model, figures, axle } = element;
    if (isOfBase(car, element)) return [];
    return faultsOf(figures).flatMap((fault): readonly Faulty<K>[] => {
      if (!isOf(fault, kind) || standsInBase(car, (base) => hasSame(base, model.path, fault))) return [];
      return [{ context, car, element, fault, unit: axle === undefined ? "mm" : lengthUnit(axle) }];
    });
  });
}

/** Figures that are the base's own: whatever is wrong with them stands there. */
function isOfBase({ base }: CheckedCar, { axle, figures }: CheckedElement): boolean {
  if (base === undefined || axle === undefined) return false;
  return base.analysis.axles[axle.name]?.elements.includes(figures) === true;
}

const isOf = <K extends FaultKind>(fault: { readonly kind: FaultKind }, kind: K): fault is FaultOf<K> =>
  fault.kind === kind;

function hasSame(base: CheckedCar, path: string, fault: FaultOf<FaultKind>): boolean {
  const there = elementAt(base, path);
  return (
    there !== undefined &&
    faultsOf(there.figures).some(
      (one) => nameOfFault(one) === nameOfFault(fault) && severityOf(one) === severityOf(fault),
    )
  );
}

type Told = Pick<Faulty<FaultKind>, "element" | "fault"> & { readonly words: FaultWords };

const isAlike = (a: Told, b: Told): boolean =>
  a.element.model.name === b.element.model.name &&
  a.element.axle === b.element.axle &&
  nameOfFault(a.fault) === nameOfFault(b.fault) &&
  a.words.message === b.words.message;

function findingOf<K extends FaultKind>(
  { context, car, element, fault }: Faulty<K>,
  { message, lines }: FaultWords,
  both: boolean,
): Finding {
  const { model } = element;
  const { start, end } = placeFor(context, car, { places: placesOf(element, lines), element: model });
  const data: FaultData = { car: nameOf(car), path: model.path, fault: nameOfFault(fault), both };
  const whose = model.side === undefined || both ? model.name : `The ${model.side} ${model.name}`;
  return {
    rule: fault.kind,
    severity: severityOf(fault),
    uri: context.uri,
    span: { start, end },
    message: `${whose}${message}`,
    related: [],
    tags: [],
    data,
  };
}

/** A part from the shelf is put right where it is fitted, so that the line that fits it comes before the element. */
function placesOf({ model }: CheckedElement, lines: readonly string[]): readonly Origin[] {
  const values = lines.flatMap((line) => lineIn(model.block, line)?.origin ?? []);
  return [...values, ...(model.part === undefined ? [] : [model.part.origin]), model.nameOrigin];
}

/** The line at a dotted path of words: `coil.free-length`. */
export function lineIn(block: ResolvedBlock, path: string): ResolvedStatement | undefined {
  const [word = "", ...rest] = path.split(".");
  const found = block.statements.find((statement) => statement.word === word && statement.form >= 0);
  if (rest.length === 0 || found?.block === undefined) return rest.length === 0 ? found : undefined;
  return lineIn(found.block, rest.join("."));
}

/** The fault behind a finding, as the car has it now. */
export function faultBehind<K extends FaultKind>(
  finding: Finding,
  context: RuleContext,
  kind: K,
): (Faulty<K> & { readonly both: boolean }) | undefined {
  const { car: name, path, fault: which, both } = finding.data as FaultData;
  const car = context.cars.find((one) => nameOf(one) === name);
  const element = car && elementAt(car, path);
  if (car === undefined || element === undefined) return undefined;
  const { figures, axle } = element;
  const fault = faultsOf(figures).find((one): one is FaultOf<K> => isOf(one, kind) && nameOfFault(one) === which);
  const unit = axle === undefined ? "mm" : lengthUnit(axle);
  return fault && { context, car, element, fault, unit, both };
}
