/**
 * One value or figure of a car through the history of its file: every commit that gave it another value, with the value
 * before and after. Files that the car rests on count as much as its own.
 */
import { resolve } from "node:path";
import { type GitCommit, Repository } from "../../host/git.js";
import type { CheckedCar } from "../../findings/context.js";
import type { FileView } from "../../snapshot/workspace.js";
import { nameOf } from "../../views/comparison/pairs.js";
import { type ValueAt, valueAt } from "../../views/comparison/value-at.js";
import { UsageError } from "../usage-error.js";
import { operandOf } from "./operand.js";
import { addressOf, commitWorld, Trouble, workTree } from "./world.js";

export interface HistoryRow {
  /** Undefined for the work tree. */
  readonly commit: Pick<GitCommit, "hash" | "date" | "author" | "subject"> | undefined;
  readonly path: string;
  readonly old: ValueAt;
  readonly now: ValueAt;
}

export interface History {
  readonly path: string;
  readonly car: string;
  /** Newest first. */
  readonly rows: readonly HistoryRow[];
  /** Set where there were more. */
  readonly isCut: boolean;
}

export interface HistoryAsked {
  readonly setup: string | undefined;
  readonly most: number;
  readonly since: string | undefined;
}

export function historyOf(typed: string, path: string, asked: HistoryAsked): History {
  const operand = operandOf(typed);
  if (operand.revision !== undefined)
    throw new UsageError(`${typed}: a history ends at the present; leave the revision out`);
  const repository = Repository.around(resolve(operand.path));
  const own = repository.pathOf(operand.path);
  const values = new Values(repository, operand.setup ?? asked.setup, path);
  const present = values.present(own);
  if (present === undefined) throw new UsageError(`${typed}: there is no such file`);
  if (present.value.kind === "none" && present.car !== undefined && values.isUnknown(present.value))
    throw new UsageError(present.value.why);
  const rows: HistoryRow[] = [];
  let isCut = false;
  let newest = true;
  for (const commit of repository.history(own, asked.since)) {
    const now = values.of(commit.hash, commit.path);
    if (newest && differs(now.value, present.value))
      rows.push({ commit: undefined, path: own, old: now.value, now: present.value });
    newest = false;
    const isTouched = commit.touched.some((one) => now.rests.has(one) || one === commit.oldPath);
    if (!isTouched) continue;
    const old = commit.parent === undefined ? NOTHING : values.of(commit.parent, commit.oldPath).value;
    if (!differs(old, now.value)) continue;
    isCut = rows.length >= asked.most;
    if (isCut) break;
    rows.push({ commit, path: commit.path, old, now: now.value });
  }
  return { path, car: present.car === undefined ? "" : nameOf(present.car.model), rows, isCut };
}

const NOTHING: ValueAt = { kind: "none", why: "the file was not there" };

const differs = (a: ValueAt, b: ValueAt): boolean =>
  a.kind === "none" || b.kind === "none" ? a.kind !== b.kind : a.text !== b.text;

interface Found {
  readonly value: ValueAt;
  readonly car: CheckedCar | undefined;
  /** Paths of the files that it rests on. */
  readonly rests: ReadonlySet<string>;
}

class Values {
  readonly #repository: Repository;
  readonly #setup: string | undefined;
  readonly #path: string;
  readonly #known = new Map<string, Found>();

  constructor(repository: Repository, setup: string | undefined, path: string) {
    this.#repository = repository;
    this.#setup = setup;
    this.#path = path;
  }

  present(path: string): Found | undefined {
    const world = workTree([this.#repository.top]);
    const file = world.file(addressOf(`${this.#repository.top}/${path}`));
    return file && this.#in(file, true);
  }

  of(commit: string, path: string): Found {
    const key = `${commit}:${path}`;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const found = this.#read(commit, path);
    this.#known.set(key, found);
    return found;
  }

  /** Neither a property of the car nor the name of a figure: that is a slip of the pen, not a state of the car. */
  isUnknown({ why }: { readonly why: string }): boolean {
    return why.includes("neither a property") || why.includes("is no figure that is computed");
  }

  #read(commit: string, path: string): Found {
    const world = commitWorld(this.#repository, commit, commit);
    try {
      const file = world.file(this.#repository.uriOf(path));
      return file === undefined ? { value: NOTHING, car: undefined, rests: new Set([path]) } : this.#in(file, false);
    } catch (error) {
      if (!(error instanceof Trouble)) throw error;
      return { value: { kind: "none", why: "the file does not parse" }, car: undefined, rests: new Set([path]) };
    }
  }

  #in(file: FileView, isPresent: boolean): Found {
    const rests = new Set([...file.uses, ...file.readsText].map((uri) => this.#repository.pathOfUri(uri)));
    const car = chosen(file, this.#setup, isPresent);
    const value: ValueAt =
      car === undefined ? { kind: "none", why: "there was no such car" } : valueAt(car, this.#path);
    return { value, car, rests };
  }
}

/** The named one, else the only one; at present a choice that is left open is a mistake. */
function chosen(file: FileView, setup: string | undefined, isPresent: boolean): CheckedCar | undefined {
  const names = file.cars.map(({ model }) => nameOf(model));
  const found = setup === undefined ? file.cars[0] : file.cars.find(({ model }) => nameOf(model) === setup);
  if (isPresent && found === undefined)
    throw new UsageError(
      setup === undefined
        ? "the file declares no car and no set-up"
        : `there is no car or set-up "${setup}"; there is ${names.join(", ") || "none"}`,
    );
  if (isPresent && setup === undefined && names.length > 1)
    throw new UsageError(`the file declares ${names.join(", ")}: choose one with --setup, or as FILE#NAME`);
  return found;
}
