/** Two operands, or one against what it derives from. */
import { dirname, resolve } from "node:path";
import { Repository } from "../../host/git.js";
import type { CheckedCar } from "../../findings/context.js";
import type { FileView } from "../../snapshot/workspace.js";
import { compare } from "../../views/comparison/compare.js";
import { isOneCar, nameOf } from "../../views/comparison/pairs.js";
import { type Review, review, reviewOfTwo, withBase } from "../../views/comparison/review.js";
import { readText } from "../text-file.js";
import { UsageError } from "../usage-error.js";
import { shown } from "../workspace.js";
import type { CompareOptions, Compared } from "./compared.js";
import { type Operand, operandOf } from "./operand.js";
import { addressOf, commitWorld, standIn, workTree, type World } from "./world.js";

interface Side {
  readonly operand: Operand;
  readonly world: World;
  readonly file: FileView;
  readonly label: string;
}

export function compareWithBase(typed: string, options: CompareOptions): Compared {
  const side = sideOf(operandOf(typed), options.labelNew, options);
  const car = carOf(side, options);
  const versions = { now: side.label, file: (uri: string) => side.world.view(uri) };
  const found = withBase(car, side.file, versions, options.share);
  if (found === undefined)
    throw new UsageError(
      `${nameOf(car.model)} derives from nothing; name a second car or set-up, or a revision with --git`,
    );
  return comparedOf(reviewOfTwo(found, shown(side.file.uri)), side, side);
}

export function compareTwo(typedOld: string, typedNew: string, options: CompareOptions): Compared {
  const old = sideOf(operandOf(typedOld), options.labelOld, options);
  const now = sideOf(operandOf(typedNew), options.labelNew, options);
  const path = shown(now.file.uri);
  if (isWhole(old, options) && isWhole(now, options)) {
    const pair = { old: old.file, now: now.file, path };
    const versions = { old: old.label, now: now.label, file: (uri: string) => now.world.view(uri) };
    return comparedOf(review([pair], versions, options.share), old, now);
  }
  const [before, after] = carsOf(old, now, options);
  if (options.acrossCars !== true && !isOneCar(before.model, after.model))
    throw new UsageError(
      `${before.model.name} and ${after.model.name} are not the same car; --across-cars compares them all the same`,
    );
  const found = compare(
    { car: before, file: old.file, label: old.label },
    { car: after, file: now.file, label: now.label },
    options.share,
  );
  return comparedOf(reviewOfTwo(found, path), old, now);
}

/** The car that an operand speaks of. */
export function operandCar(
  typed: string,
  setup: string | undefined,
): { readonly car: CheckedCar; readonly label: string } {
  const operand = operandOf(typed);
  const side = sideOf(operand, undefined, {});
  // A name that is asked of the sheet's own file need not be in the other one.
  const names = side.file.cars.map(({ model }) => nameOf(model));
  const asked = setup !== undefined && names.includes(setup) ? { setup } : {};
  return { car: carOf(side, asked), label: side.label };
}

const comparedOf = (found: Review, old: Side, now: Side): Compared => ({
  review: found,
  troubles: [],
  textBefore: (uri) => old.file.textOf(uri === now.file.uri ? old.file.uri : uri),
  textAfter: (uri) => now.file.textOf(uri),
});

/** Several cars and set-ups, of which none is chosen: two versions of one file. */
const isWhole = ({ operand, file }: Side, { setup }: CompareOptions): boolean =>
  operand.setup === undefined && setup === undefined && file.cars.length > 1;

/** Where one side leaves the choice open, it is the one that is called like the other. */
function carsOf(old: Side, now: Side, options: CompareOptions): readonly [CheckedCar, CheckedCar] {
  if (isWhole(old, options)) {
    const after = carOf(now, options);
    return [carOf(old, { setup: nameOf(after.model) }), after];
  }
  const before = carOf(old, options);
  return [before, carOf(now, isWhole(now, options) ? { setup: nameOf(before.model) } : options)];
}

function carOf({ operand, file, label }: Side, { setup }: Pick<CompareOptions, "setup">): CheckedCar {
  const name = operand.setup ?? setup;
  const names = file.cars.map(({ model }) => nameOf(model));
  const [only, more] = file.cars;
  if (only === undefined) throw new UsageError(`${label} declares no car and no set-up`);
  if (name === undefined && more !== undefined)
    throw new UsageError(`${label} declares ${names.join(", ")}: choose one with --setup, or as FILE#NAME`);
  const found = name === undefined ? only : file.cars.find(({ model }) => nameOf(model) === name);
  if (found === undefined)
    throw new UsageError(`${label} has no car or set-up "${name ?? ""}"; it has ${names.join(", ")}`);
  return found;
}

function sideOf(operand: Operand, label: string | undefined, { name }: CompareOptions): Side {
  if (operand.revision !== undefined) return sideInGit(operand, operand.revision, label);
  if (name !== undefined) return standInSide(operand, name, label);
  const world = workTree([process.cwd(), dirname(resolve(operand.path))]);
  const file = world.file(addressOf(operand.path));
  if (file === undefined) throw new UsageError(`${operand.typed}: there is no such file`);
  return { operand, world, file, label: label ?? shown(file.uri) };
}

/** From the current folder, else from the top of the repository, as git itself reads such a path. */
function sideInGit(operand: Operand, revision: string, label: string | undefined): Side {
  const repository = Repository.around(process.cwd());
  const commit = repository.commit(revision);
  const world = commitWorld(repository, revision, commit);
  const here = addressesIn(repository, operand.path);
  const file = here.map((uri) => world.file(uri)).find((one) => one !== undefined);
  if (file === undefined) throw new UsageError(`${operand.path} is not in ${world.label}`);
  return { operand, world, file, label: label ?? `${shown(file.uri)} at ${world.label}` };
}

function addressesIn(repository: Repository, path: string): readonly string[] {
  const fromTop = repository.uriOf(path.replace(/^\.\//, ""));
  return path.startsWith("..") || path.startsWith("/")
    ? [repository.uriOf(repository.pathOf(path))]
    : [repository.uriOf(repository.pathOf(resolve(path))), fromTop];
}

/** The text of one file in the place of another, so that what it uses is found beside that. */
function standInSide(operand: Operand, name: string, label: string | undefined): Side {
  const text = readText(operand.path, operand.typed);
  const path = resolve(name);
  const world = standIn(label ?? operand.typed, text, path);
  const file = world.file(addressOf(path));
  if (file === undefined) throw new UsageError(`${name}: cannot be read`);
  return { operand, world, file, label: label ?? operand.typed };
}
