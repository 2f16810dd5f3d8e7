/**
 * Everything that differs between two revisions, or a revision and the work tree: changed, added, deleted and renamed files,
 * and every set-up that rests on one of them.
 */
import { resolve } from "node:path";
import { type GitChange, Repository, short } from "../../host/git.js";
import type { FileView } from "../../snapshot/workspace.js";
import { type FilePair, review } from "../../views/comparison/review.js";
import { nameOf } from "../../views/comparison/pairs.js";
import { UsageError } from "../usage-error.js";
import { shown } from "../workspace.js";
import type { Compared, CompareOptions } from "./compared.js";
import { addressOf, commitWorld, Trouble, workTree, type World } from "./world.js";

interface Range {
  readonly from: string;
  readonly to: string | undefined;
  readonly isFromBase: boolean;
}

export function compareRevisions(
  revisions: readonly string[],
  paths: readonly string[],
  options: CompareOptions,
): Compared {
  const repository = repositoryOf(paths);
  const range = rangeOf(revisions, options);
  const to = range.to === undefined ? undefined : repository.commit(range.to);
  const from = startOf(repository, range, to);
  const changed = repository.changed(from, to);
  const old = commitWorld(repository, range.isFromBase ? short(from) : range.from, from);
  const now =
    range.to === undefined || to === undefined ? workTree([repository.top]) : commitWorld(repository, range.to, to);
  const troubles = new Set<string>();
  const asked = paths.map((path) => fileAsked(path, repository, now, old));
  const pairs = pairsOf(changed, asked, { repository, old, now, troubles }).map((pair) => chosen(pair, options.setup));
  const labels = {
    old: range.isFromBase ? `${old.label}, the merge base with ${range.from}` : old.label,
    now: now.label,
  };
  const renamed = new Map(changed.map(({ path, oldPath }) => [repository.uriOf(path), repository.uriOf(oldPath)]));
  return {
    review: review(pairs, { ...labels, file: (uri) => now.view(uri) }, options.share),
    troubles: [...troubles],
    textBefore: (uri) => old.view(uri).textOf(renamed.get(uri) ?? uri),
    textAfter: (uri) => now.view(uri).textOf(uri),
  };
}

/** Around the current folder, else around the first path that is named. */
function repositoryOf([first]: readonly string[]): Repository {
  try {
    return Repository.around(process.cwd());
  } catch (error) {
    if (first === undefined) throw error;
    return Repository.around(first);
  }
}

/** `REV`, `REV REV`, `A..B`, and `A...B`, which starts where both grew from. */
function rangeOf(revisions: readonly string[], { mergeBase }: CompareOptions): Range {
  const [first = "", second, more] = revisions;
  if (more !== undefined) throw new UsageError("--git takes one revision or two; put files behind --");
  const three = first.split("...");
  const parts = three.length === 2 ? three : first.split("..");
  const [from, to] = parts.length === 2 && second === undefined ? parts : [first, second];
  return {
    from: from === "" || from === undefined ? "HEAD" : from,
    to: parts.length === 2 && to === "" ? "HEAD" : to,
    isFromBase: three.length === 2 || (mergeBase ?? (parts.length === 1 && process.env["CI"] !== undefined)),
  };
}

function startOf(repository: Repository, { from, isFromBase }: Range, to: string | undefined): string {
  const commit = repository.commit(from);
  return isFromBase ? repository.mergeBase(commit, to ?? repository.commit("HEAD")) : commit;
}

/** The file or folder as git names it; it has to be on one side at least. */
function fileAsked(path: string, repository: Repository, ...worlds: readonly World[]): string {
  const way = repository.pathOf(resolve(path));
  const uri = addressOf(path);
  const isThere = worlds.some(
    (world) =>
      way === "" || world.view(uri).textOf(uri) !== undefined || world.list().some((one) => one.startsWith(`${uri}/`)),
  );
  if (!isThere) throw new UsageError(`${path}: there is no such file or folder on either side`);
  return way;
}

interface Sides {
  readonly repository: Repository;
  readonly old: World;
  readonly now: World;
  readonly troubles: Set<string>;
}

function pairsOf(changed: readonly GitChange[], asked: readonly string[], sides: Sides): readonly FilePair[] {
  const { repository, now } = sides;
  const isAsked = (path: string): boolean =>
    asked.length === 0 || asked.some((one) => one === "" || path === one || path.startsWith(`${one}/`));
  const touched = new Set(changed.flatMap(({ path, oldPath }) => [path, oldPath].map((one) => repository.uriOf(one))));
  const before = new Map(changed.map((one) => [one.path, one.oldPath]));
  const paths = now.list().map((uri) => repository.pathOfUri(uri));
  const resting = paths.filter((path) => isAsked(path) && restsOn(now.view(repository.uriOf(path)), touched));
  const gone = changed.flatMap(({ status, path }) => (status === "deleted" && path.endsWith(".crank") ? [path] : []));
  const all = [...resting, ...gone.filter(isAsked)];
  return all.flatMap((path) => pairOf(path, before.get(path) ?? path, sides) ?? []);
}

const restsOn = ({ uses, readsText }: FileView, touched: ReadonlySet<string>): boolean =>
  [...uses, ...readsText].some((uri) => touched.has(uri));

/** Undefined where a side cannot be read, which is told once a cause. */
function pairOf(path: string, oldPath: string, { repository, old, now, troubles }: Sides): FilePair | undefined {
  try {
    return {
      old: old.file(repository.uriOf(oldPath)),
      now: now.file(repository.uriOf(path)),
      path: shown(repository.uriOf(path)),
    };
  } catch (error) {
    if (!(error instanceof Trouble)) throw error;
    troubles.add(error.message);
    return undefined;
  }
}

/** With `--setup`, of each file only the car or set-up of that name. */
function chosen(pair: FilePair, setup: string | undefined): FilePair {
  const only = (file: FileView | undefined): FileView | undefined =>
    file && { ...file, cars: file.cars.filter(({ model }) => nameOf(model) === setup) };
  return setup === undefined ? pair : { ...pair, old: only(pair.old), now: only(pair.now) };
}
