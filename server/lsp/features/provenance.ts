/** Where a value comes from, and which set-ups change it; the latter are its implementations too. */
import type { Location } from "vscode-languageserver";
import type { FileView } from "../../snapshot/workspace.js";
import { fileName } from "../../views/comparison/page.js";
import { nameOf } from "../../views/comparison/pairs.js";
import { type Asked, askedAt } from "../../views/origins/asked.js";
import type { ValueChain } from "../../views/origins/chain.js";
import { chainOfAsked } from "../../views/origins/chain-of-asked.js";
import { type Changer, changersOf, effectOf } from "../../views/origins/changers.js";
import { choicesOf } from "../../views/origins/choices.js";
import { changeLabel, chainTitle, stepBy, stepLabel } from "../../views/origins/words.js";
import { rangeOf } from "../convert.js";
import type { Feature } from "../feature.js";
import type {
  ChangersAnswer,
  ChangersMethod,
  ToldPlace,
  ValueAsked,
  WhereFromAnswer,
  WhereFromMethod,
} from "../protocol-provenance.js";
import type { Session } from "../session.js";

const WHERE_FROM: WhereFromMethod = "bellcrank/whereFrom";
const CHANGERS: ChangersMethod = "bellcrank/changers";

export const provenance: Feature = {
  capabilities: { implementationProvider: true },
  attach(connection, session) {
    const fileOf = (uri: string) => session.file(uri);
    connection.onRequest<WhereFromAnswer, void>(WHERE_FROM, async (params: ValueAsked): Promise<WhereFromAnswer> => {
      const asked = askedIn(await session.arrivedFile(params.uri), params);
      if (asked.kind === "none") return asked;
      // A choice that was made is not asked about again.
      const choices = "path" in params ? undefined : choicesOf(asked, fileOf);
      if (choices !== undefined && choices.length > 1) return chooseFrom(asked, choices);
      const only = choices?.[0]?.path.split(".");
      const chain = chainOfAsked("path" in asked && only !== undefined ? { ...asked, path: only } : asked, fileOf);
      return chain === undefined
        ? { kind: "none", why: nothingAt(asked) }
        : { kind: "chain", title: chainTitle(chain), steps: chain.steps.map((step) => toldStep(session, step)) };
    });
    connection.onRequest<ChangersAnswer, void>(CHANGERS, async (params: ValueAsked): Promise<ChangersAnswer> => {
      const asked = askedIn(await session.arrivedFile(params.uri), params);
      if (asked.kind === "none") return asked;
      const changers = changersOf(asked, await session.everyArrivedFile(), fileOf);
      const subject = subjectOf(asked, fileOf);
      return changers.length === 0
        ? { kind: "none", why: `No set-up of this workspace changes ${subject}.` }
        : { kind: "changers", title: `Set-ups that change ${subject}`, changers: told(session, changers) };
    });
    connection.onImplementation(async ({ textDocument, position }): Promise<Location[]> => {
      const asked = askedIn(await session.arrivedFile(textDocument.uri), { uri: textDocument.uri, position });
      if (asked.kind === "none" || asked.kind === "block") return [];
      const places = changersOf(asked, await session.everyArrivedFile(), fileOf);
      return places.map(({ origin }) => locationOf(session, origin));
    });
  },
};

function askedIn(file: FileView, params: ValueAsked): Asked {
  if ("position" in params) return askedAt(file, file.parsed.lines.offset(params.position));
  const car = file.cars.find(({ model }) => nameOf(model) === params.name);
  return car === undefined
    ? { kind: "none", why: `${fileName(file.uri)} has no car or set-up ${params.name} any more.` }
    : { kind: "property", car, path: params.path.split(".") };
}

type Told = Exclude<Asked, { kind: "none" }>;

const chooseFrom = (asked: Told, values: NonNullable<ReturnType<typeof choicesOf>>): WhereFromAnswer => ({
  kind: "choose",
  name: "car" in asked ? nameOf(asked.car.model) : "",
  values,
});

const nothingAt = (asked: Told): string =>
  "path" in asked && asked.path.length > 0
    ? `Nothing that could be read is written of ${asked.path.join(".")}, and the language has no value for it.`
    : "Nothing can be read here.";

/** "front.third.rate", "quill", "diameter 10.5 mm of part TB-105" */
function subjectOf(asked: Told, fileOf: (uri: string) => FileView): string {
  if ("path" in asked) return asked.path.length === 0 ? nameOf(asked.car.model) : asked.path.join(".");
  const [step] = chainOfAsked(asked, fileOf)?.steps ?? [];
  return step === undefined ? "it" : `"${step.text}" of ${step.by}`;
}

type Origin = Changer["origin"];

function toldStep(session: Session, step: ValueChain["steps"][number]): ToldPlace {
  return { label: stepLabel(step), by: stepBy(step), text: step.text, where: whereOf(session, step.origin) };
}

/** Effects cost an analysis each: of more than that nobody reads them. */
const MOST_EFFECTS = 12;

const told = (session: Session, changers: readonly Changer[]): readonly ToldPlace[] =>
  changers.map((one, i) => {
    const effect = i < MOST_EFFECTS ? effectOf(one) : undefined;
    return {
      label: changeLabel(one),
      by: `set-up ${one.setup}`,
      text: effect === undefined ? one.text : `${one.text}: ${effect}`,
      where: whereOf(session, one.origin),
    };
  });

function whereOf(session: Session, origin: Origin | undefined): ToldPlace["where"] {
  if (origin === undefined) return undefined;
  const { uri, range } = locationOf(session, origin);
  return { uri, range, shown: `${fileName(uri)}:${range.start.line + 1}` };
}

const locationOf = (session: Session, origin: Origin): Location => ({
  uri: origin.uri,
  range: rangeOf(session.file(origin.uri).parsed.lines, origin),
});
