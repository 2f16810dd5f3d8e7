/** Paths that a set-up can override: axles, elements, their words; and the word that a path ends in. */
import type { Span, Statement } from "../../../grammar/index.js";
import { findWord, wordsIn } from "../../../grammar/vocabulary/index.js";
import type { Word } from "../../../grammar/vocabulary/word.js";
import { massStatements } from "../../assemble/masses.js";
import type { FileView } from "../../snapshot/workspace.js";
import type { Place } from "../place.js";
import { carAt, everyElement } from "../subject.js";
import { type Candidate, candidate } from "./candidate.js";

export function overrideCandidates(file: FileView, place: Place, span: Span): readonly Candidate[] {
  if (place.concept !== "setup") return [];
  const car = carAt(file, span.end);
  if (car === undefined) return [];
  const elements = everyElement(car).flatMap(({ model }) => {
    const path = model.path.replace(".left.", ".").replace(".right.", ".");
    return settable(model.kind).map((word) =>
      candidate(`${path}.${word.word}`, "property", span, { documentation: word.help }),
    );
  });
  const axles = (["front", "rear"] as const)
    .filter((name) => car.model.axles[name] !== undefined)
    .flatMap((name) =>
      [...settable("axle"), ...settable("wheel")].map((word) =>
        candidate(`${name}.${word.word}`, "property", span, { documentation: word.help, rank: 2 }),
      ),
    );
  const masses = massStatements(car.model).flatMap(({ word, name }) =>
    settable("mass-line").map((line) =>
      candidate(`${name?.text ?? word}.${line.word}`, "property", span, { documentation: line.help }),
    ),
  );
  const labels = new Set<string>();
  return [...elements, ...masses, ...axles].filter(({ label }) => !labels.has(label) && labels.add(label));
}

/** Words of a block that carry one value: what a day's set-up changes. */
function settable(concept: string): readonly Word[] {
  return wordsIn(concept).filter((word) => word.role === "property" || word.role === "law" || word.word === "fit");
}

/** `front.third.rate` ends in `rate` of a spring: the word whose slots the rest of the line fills. */
export function overriddenWord(file: FileView, place: Place, line: Statement): Word | undefined {
  const last = line.head.segments.at(-1)?.text;
  const car = carAt(file, line.start);
  if (place.concept !== "setup" || last === undefined || car === undefined) return undefined;
  const path = line.head.segments.map((segment) => segment.text).filter((name) => name !== "left" && name !== "right");
  const element = everyElement(car).find(({ model }) =>
    path.join(".").startsWith(`${model.path.replace(/\.(left|right)\./, ".")}.`),
  );
  const isMass = massStatements(car.model).some(({ word, name }) => (name?.text ?? word) === path[0]);
  const outside = isMass ? ["mass-line"] : ["axle", "wheel", "car"];
  const concepts = element === undefined ? outside : [element.model.kind];
  for (const concept of concepts) {
    const word = findWord(concept, last);
    if (word !== undefined) return word;
  }
  return undefined;
}
