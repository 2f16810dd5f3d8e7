/** `bellcrank/compare` and what goes with it: a car or set-up held against another, or against itself as it was committed. */
import { createWorkspace } from "../../snapshot/create.js";
import type { FileView } from "../../snapshot/workspace.js";
import { compare as compareCars, type ComparedSide } from "../../views/comparison/compare.js";
import { reviewBody, reviewStyle } from "../../views/comparison/html.js";
import { isOneCar, nameOf } from "../../views/comparison/pairs.js";
import { reviewOfTwo } from "../../views/comparison/review.js";
import { fileName } from "../../views/comparison/page.js";
import { carAt } from "../../views/subject.js";
import type { Feature } from "../feature.js";
import type {
  CommittedTextAnswer,
  CommittedTextMethod,
  CommittedTextParams,
  CompareAnswer,
  CompareChoices,
  CompareChoicesMethod,
  CompareChoicesParams,
  CompareMethod,
  CompareParams,
} from "../protocol-compare.js";
import { normalUri, type Session } from "../session.js";

const COMPARE: CompareMethod = "bellcrank/compare";
const CHOICES: CompareChoicesMethod = "bellcrank/compareChoices";
const COMMITTED: CommittedTextMethod = "bellcrank/committedText";

const NO_GIT = "Revisions can be read where Bellcrank runs on a machine with git; here it runs in a browser.";

export const compare: Feature = {
  capabilities: {},
  attach(connection, session) {
    const committed = new Committed(session);
    connection.onRequest<CompareAnswer, void>(COMPARE, async (params: CompareParams): Promise<CompareAnswer> => {
      const file = await session.arrivedFile(params.uri);
      const now = chosen(file, params);
      if (now === undefined) return none(`${fileName(file.uri)} declares no car and no set-up.`);
      const old = await olderSide(session, committed, now, params);
      return "why" in old ? none(old.why) : answer(old, now, params.uri);
    });
    connection.onRequest(CHOICES, async (params: CompareChoicesParams): Promise<CompareChoices> => {
      const file = await session.arrivedFile(params.uri);
      return choicesFor(session, file, chosen(file, params), await session.everyArrivedFile());
    });
    connection.onRequest<CommittedTextAnswer, void>(
      COMMITTED,
      ({ uri, revision }: CommittedTextParams): CommittedTextAnswer => {
        const found = session.revisions?.file(normalUri(uri), revision) ?? { why: NO_GIT };
        if ("why" in found) return found;
        const read = found.host.read(found.uri);
        return "text" in read ? read : { why: `${fileName(uri)} is not in ${found.label}.` };
      },
    );
  },
};

const none = (why: string): CompareAnswer => ({ kind: "none", why });

/** By its name, else the one around the cursor, else the file's first. */
function chosen(file: FileView, { name, offset }: Pick<CompareParams, "name" | "offset">): ComparedSide | undefined {
  const label = `${fileName(file.uri)} as it stands`;
  const named = file.cars.find(({ model }) => nameOf(model) === name);
  if (name !== undefined) return named && { file, car: named, label };
  const car = (offset === undefined ? undefined : carAt(file, offset)) ?? file.cars[0];
  return car && { file, car, label };
}

async function olderSide(
  session: Session,
  committed: Committed,
  { car: { model } }: ComparedSide,
  { uri, with: other, again }: CompareParams,
): Promise<ComparedSide | { readonly why: string }> {
  if (other.kind === "setup") {
    const file = await session.arrivedFile(other.uri);
    const found = chosen(file, { name: other.name });
    if (found === undefined) return { why: `${fileName(other.uri)} has no car or set-up ${other.name} any more.` };
    if (!isOneCar(found.car.model, model))
      return { why: `${found.car.model.name} and ${model.name} are not the same car.` };
    return { ...found, label: fileName(other.uri) };
  }
  const found = committed.file(normalUri(uri), other.revision, again === true);
  if ("why" in found) return found;
  const { file, label } = found;
  const car = file.cars.find((one) => nameOf(one.model) === nameOf(model));
  return car === undefined
    ? { why: `There was no ${nameOf(model)} in ${fileName(file.uri)} at ${label}: it is new.` }
    : { file, car, label };
}

interface AsCommitted {
  readonly file: FileView;
  readonly label: string;
}

/**
 * The last committed file that was asked for: a view asks again on every keystroke, which changes nothing of what is
 * committed, and to ask git takes longer than to compare.
 */
class Committed {
  readonly #session: Session;
  #last: (AsCommitted & { readonly asked: string }) | undefined;

  constructor(session: Session) {
    this.#session = session;
  }

  file(uri: string, revision: string, again: boolean): AsCommitted | { readonly why: string } {
    const asked = `${revision} ${uri}`;
    if (again && this.#last?.asked === asked) return this.#last;
    const found = this.#session.revisions?.file(uri, revision) ?? { why: NO_GIT };
    if ("why" in found) return found;
    this.#last = { asked, file: createWorkspace(found.host).file(found.uri), label: found.label };
    return this.#last;
  }
}

function answer(old: ComparedSide, now: ComparedSide, uri: string): CompareAnswer {
  const found = compareCars(old, now);
  return {
    kind: "page",
    name: found.now.name,
    headline: found.headline,
    body: reviewBody(reviewOfTwo(found, fileName(uri))),
    style: reviewStyle,
    uses: [...new Set([...now.file.uses, ...now.file.readsText, ...old.file.uses, ...old.file.readsText])],
  };
}

function choicesFor(
  session: Session,
  file: FileView,
  side: ComparedSide | undefined,
  all: readonly FileView[],
): CompareChoices {
  const names = session.revisions?.names(file.uri) ?? { why: NO_GIT };
  const revisions: CompareChoices["revisions"] =
    "why" in names ? { kind: "none", ...names } : { kind: "git", ...names };
  if (side === undefined) return { name: undefined, setups: [], revisions };
  const { model } = side.car;
  const setups = all
    .flatMap((other) => other.cars.map((car) => ({ uri: other.uri, model: car.model })))
    .filter((other) => other.model.name === model.name && nameOf(other.model) !== nameOf(model))
    .map((other) => ({
      uri: other.uri,
      name: nameOf(other.model),
      isBase: file.uses.includes(other.uri) && model.bases.includes(nameOf(other.model)),
    }));
  // Nearest base first, then by name.
  const last = model.bases.length + 1;
  // Bases first, then its neighbours: a workspace may hold several cars of one name.
  const rank = ({ name, isBase, uri }: CompareChoices["setups"][number]): number =>
    isBase ? model.bases.indexOf(name) + 1 : folderOf(uri) === folderOf(file.uri) ? last : last + 1;
  setups.sort((a, b) => rank(a) - rank(b) || a.name.localeCompare(b.name));
  return { name: nameOf(model), setups, revisions };
}

const folderOf = (uri: string): string => uri.slice(0, uri.lastIndexOf("/"));
