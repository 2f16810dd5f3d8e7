/** What the editor says of the word under the pointer, as Markdown. */
import type { Span, Statement } from "../../grammar/index.js";
import type { Word } from "../../grammar/vocabulary/word.js";
import type { CheckedCar } from "../findings/context.js";
import type { FileView } from "../snapshot/workspace.js";
import { carSummary } from "./car-summary.js";
import { adjusterCard } from "./adjuster-card.js";
import { alignmentCard } from "./alignment-card.js";
import { axleSummary } from "./axle-summary.js";
import { caseCard } from "./cases-page.js";
import { elementCard } from "./element-card.js";
import { expectationCard } from "./expectation-card.js";
import { elementPlots, tablePlots } from "./hover-plots.js";
import { withUnitStars } from "./markdown.js";
import { kerbCard } from "./kerb-page.js";
import { holds, type Place, placeAt } from "./place.js";
import { provenance } from "./provenance.js";
import { axleAt, carAt, elementsNamedBy, elementsWrittenAt, type ElementSubject } from "./subject.js";
import { keptCard, trimCard } from "./trim-card.js";
import { unitCard } from "./unit-card.js";
import { weightsCard } from "./weights-card.js";
import { wordCard } from "./word-card.js";

export interface Hover {
  readonly span: Span;
  readonly markdown: string;
}

/** @param images whether whoever shows it draws images that stand in the text */
export function hoverAt(file: FileView, offset: number, images = false): Hover | undefined {
  const place = placeAt(file.parsed.document, offset);
  const inner = place.chain.at(-1);
  if (place.statement === undefined || inner === undefined || inner.kind === "block") return undefined;
  const parts = [
    ...figureParts(file, place, place.statement, offset, images),
    ...(images ? tablePlots(file, place) : []),
    ...wordParts(file, place, offset),
  ];
  return parts.length === 0 ? undefined : { span: inner, markdown: withUnitStars(parts.join("\n\n---\n\n")) };
}

function figureParts(
  file: FileView,
  place: Place,
  statement: Statement,
  offset: number,
  images: boolean,
): readonly string[] {
  const car = carAt(file, offset);
  if (car === undefined) return [];
  if (place.word?.role === "expectation") return some(expectationCard(car, statement, file.uri));
  const set = some(adjusterCard(car.model, file.uri, statement.start));
  const elements = elementsAround(file, statement, offset);
  const [first] = elements;
  if (first !== undefined && speaksOfElement(place, statement, first))
    return [...set, elementCard(elements), ...(images ? elementPlots(elements) : [])];
  if (set.length > 0) return set;
  if (place.word?.word === "axle") {
    const axle = axleAt(car, file.uri, statement.start);
    if (axle !== undefined) return [axleSummary(car, axle.name)];
  }
  const inCase = namedAround(place, "case");
  if (inCase !== undefined) return some(caseCard(car, inCase));
  const onKerb = namedAround(place, "kerb");
  if (onKerb !== undefined) return some(kerbCard(car, onKerb));
  const aligned = alignmentCard(car, file.uri, statement.start);
  if (aligned !== undefined) return [aligned];
  const patch = settingCard(car, file, statement);
  if (patch !== undefined) return [patch];
  const weighs = weightsCard(car, lineOf(place));
  if (weighs !== undefined) return [weighs];
  if (place.word?.word === "car" || place.word?.word === "setup") return some(carSummary(car));
  return [];
}

/** The name of the case or kerb whose statement this is, or that stands around it. */
function namedAround({ around, statement }: Place, word: "case" | "kerb"): string | undefined {
  const found = [statement, ...around].find(
    (one) => one?.head.segments.length === 1 && one.head.segments[0]?.text === word,
  );
  const [name] = found?.items ?? [];
  return name?.kind === "path" ? name.segments.map(({ text }) => text).join(".") : undefined;
}

/** Of the lines that say how the car is set on the flat patch. */
function settingCard(car: CheckedCar, file: FileView, { head, start }: Statement): string | undefined {
  const word = head.segments.at(-1)?.text;
  if (word === "keep-seats") return keptCard(car);
  if (word !== "trim" && word !== "ride-height") return undefined;
  const [first] = head.segments;
  const named = first?.text === "front" || first?.text === "rear" ? first.text : undefined;
  const axle = named ?? axleAt(car, file.uri, start)?.name;
  return axle === undefined ? undefined : trimCard(car, axle);
}

/** With what the line of the car or set-up begins that stands around the place: a word, or a name of its. */
const lineOf = ({ around, statement }: Place): string | undefined => (around[1] ?? statement)?.head.segments[0]?.text;

/** The element whose own statement or override this is; inside its block the innermost word comes first. */
function elementsAround(file: FileView, statement: Statement, offset: number): readonly ElementSubject[] {
  const car = carAt(file, offset);
  // A set-up of the same file inherits the line; its figures are told where the set-up speaks of the element.
  const written = elementsWrittenAt(file, statement.start).filter((one) => car === undefined || one.car === car);
  if (written.length > 0) return written;
  return car !== undefined && statement.head.segments.length > 1 ? elementsNamedBy(car, statement) : [];
}

function speaksOfElement(place: Place, statement: Statement, element: ElementSubject): boolean {
  return place.word?.role === "element" || (statement.head.segments.length > 1 && element.model.name.length > 0);
}

function wordParts(file: FileView, place: Place, offset: number): readonly string[] {
  const inner = place.chain.at(-1);
  const statement = place.statement;
  if (inner === undefined || statement === undefined) return [];
  const word: Word | undefined = place.word;
  const onHead = holds(statement.head, offset);
  const parts = onHead && word !== undefined ? [wordCard(word)] : [];
  if (inner.kind === "quantity" && inner.unit !== undefined) parts.push(...some(unitCard(inner)));
  if (!onHead || statement.head.segments.length > 1) parts.push(...some(provenance(file, statement, offset)));
  return parts;
}

function some(text: string | undefined): readonly string[] {
  return text === undefined ? [] : [text];
}
