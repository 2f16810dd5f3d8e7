/** The rocker eyes that an element is joined to, and where their names stand in its text. */
import type { Span } from "../../../grammar/index.js";
import type { Attachment, ConnectionModel, ElementModel } from "../../model/car.js";
import type { Given } from "../../model/origin.js";
import type { CheckedCar, RuleContext } from "../context.js";

export type EyeEnd = Extract<Attachment, { kind: "eye" }>;

/** Both ends of a telescopic element, or the upper ends of a bar's drop links. */
export function eyeEndsOf(connection: ConnectionModel | undefined): readonly EyeEnd[] {
  const ends =
    connection?.kind === "between"
      ? connection.ends
      : connection?.kind === "bar" || connection?.kind === "tee"
        ? [connection.links.left, connection.links.right]
        : [];
  return ends.filter((end): end is EyeEnd => end?.kind === "eye");
}

/** The place of the eye's name in the text that joins an element to it (`third` in `left.rocker.third`). */
export function eyeNameIn(context: RuleContext, end: EyeEnd): Span | undefined {
  const written = context.textOf(end.origin.uri)?.slice(end.origin.start, end.origin.end);
  const at = written?.lastIndexOf(`.${end.eye}`) ?? -1;
  if (at < 0) return undefined;
  const start = end.origin.start + at + 1;
  return { start, end: start + end.eye.length };
}

/** Every eye that an element is joined to, those of a hydraulic link's cylinders as well. */
const eyesOf = (connection: ConnectionModel | undefined): readonly EyeEnd[] =>
  connection?.kind === "cylinders"
    ? connection.cylinders.flatMap(({ ends }) => ends.filter((end): end is EyeEnd => end.kind === "eye"))
    : eyeEndsOf(connection);

/** Names of the other elements of the car that are joined to the same eye, each once. */
export function othersOn({ model }: CheckedCar, name: string, { origin }: Given<unknown>): readonly string[] {
  const ofAxles = [model.axles.front, model.axles.rear].flatMap((axle) => axle?.elements ?? []);
  const elements: readonly ElementModel[] = [...ofAxles, ...model.elements];
  const using = elements.filter(
    (other) =>
      other.name !== name &&
      eyesOf(other.connection).some(
        ({ point }) => point.origin.start === origin.start && point.origin.uri === origin.uri,
      ),
  );
  return [...new Set(using.map((other) => other.name))];
}
