/** Which names the segments of an override's path speak of, for references and renaming. */
import type { Name } from "../../grammar/index.js";
import { findWord } from "../../grammar/vocabulary/index.js";
import { targetOf } from "./names.js";
import type { Place } from "./place.js";
import type { Scope } from "./scope.js";
import { at } from "./sink.js";
import type { Found } from "./steps.js";

interface Spoken {
  readonly path: readonly string[];
  /** The names in the text; they are the end of the path. */
  readonly segments: readonly Name[];
  readonly scope: Scope;
}

export function mention({ path, segments, scope }: Spoken, { statement, parent, segment }: Found): void {
  const { name, root } = statement;
  const written = segments[segments.length - (path.length - segment)];
  if (name === undefined || root === undefined || written?.text !== name.text) return;
  const word = findWord(parent.concept, statement.word);
  const target = word && targetOf(word);
  if (target === undefined) return;
  // `rocker.eye.third` and `rocker.third` are one place: a word before its name is no step.
  const steps = path[segment - 1] === statement.word ? segment - 1 : segment;
  const around = path.slice(0, steps).reduce<Place | undefined>((outer, step) => ({ segment: step, outer }), undefined);
  scope.sink.refer({ target, name: name.text, place: around, declaration: root }, at(scope.uri, written));
}
