/** `bellcrank new`: a starting car that checks clean, from a few questions or from flags. */
import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { confirm, input, select } from "@inquirer/prompts";
import { type Command, Option } from "commander";
import { isAsked, type NewCar, questions, usual, whyNoName, yesOrNo } from "../../views/new-car/answers.js";
import { newCarFiles } from "../../views/new-car/new-car.js";
import { UsageError } from "../usage-error.js";
import { shownPath } from "../workspace.js";

interface Asked extends Partial<Omit<NewCar, "name">> {
  readonly into: string;
  readonly yes?: boolean;
}

export function newCommand(root: Command): void {
  const command = root
    .command("new")
    .description("A starting car, its parts and a first set-up: asks a few questions, or takes flags.")
    .argument("[name]", "what set-ups call the car: swift-2")
    .option("--title <words>", "what people call it")
    .option("--into <folder>", "where the files go", ".")
    .option("--yes", "ask nothing: what is not said is as usual");
  for (const { of, asks, options } of questions)
    command.addOption(new Option(`${flagOf(of)} <answer>`, asks).choices(options.map(({ value }) => value)));
  for (const { of, asks } of yesOrNo) {
    command.option(flagOf(of), asks);
    command.option(`--no-${of}`, `without: ${asks.toLowerCase()}`);
  }
  command.addHelpText("after", examples).action(async (name: string | undefined, asked: Asked) => {
    const car = await answered(name, asked);
    const written = write(newCarFiles(car), asked.into);
    process.stdout.write(
      `${written.map((path) => `wrote ${shownPath(path)}`).join("\n")}\n\n${next(car, asked.into)}\n`,
    );
  });
}

const examples = `
Examples:
  bellcrank new
  bellcrank new swift-2 --title "Swift 2" --corner planar --springs coil --no-downforce --yes --into cars`;

/** `frontRod` is `--front-rod`. */
const flagOf = (of: string): string => `--${of.replaceAll(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;

/** Asks for what was not said; nobody can answer where there is no terminal. */
async function answered(name: string | undefined, asked: Asked): Promise<NewCar> {
  if (asked.yes === true || !process.stdin.isTTY) return fromFlags(name, asked);
  const called = name ?? (await input({ message: "Name in set-ups", default: "swift-2", validate: isName }));
  const why = whyNoName(called);
  if (why !== undefined) throw new UsageError(why);
  const title = asked.title ?? (await input({ message: "Name among people", default: called }));
  let car: NewCar = { ...usual, ...said(asked), name: called, title };
  for (const { of, asks, options } of questions) {
    if (asked[of] !== undefined || !isAsked(of, car.corner)) continue;
    const choices = options.map(({ value, label }) => ({ value, name: label }));
    car = { ...car, [of]: await select({ message: asks, choices }) };
  }
  for (const { of, asks } of yesOrNo)
    if (asked[of] === undefined) car = { ...car, [of]: await confirm({ message: asks, default: usual[of] }) };
  return car;
}

const isName = (text: string): true | string => whyNoName(text) ?? true;

function fromFlags(name: string | undefined, asked: Asked): NewCar {
  if (name === undefined) throw new UsageError("say what the car is called: bellcrank new swift-2 --yes");
  const why = whyNoName(name);
  if (why !== undefined) throw new UsageError(why);
  return { ...usual, ...said(asked), name, title: asked.title ?? name };
}

/** Only the answers, without what else was asked for. */
function said(asked: Asked): Partial<NewCar> {
  const keys = [...questions.map(({ of }) => of), ...yesOrNo.map(({ of }) => of)];
  return Object.fromEntries(keys.flatMap((key) => (asked[key] === undefined ? [] : [[key, asked[key]]])));
}

/** All of the files or none, and none that is there. */
function write(files: ReturnType<typeof newCarFiles>, folder: string): readonly string[] {
  const paths = files.map(({ name }) => join(resolve(folder), name));
  const there = paths.find((path) => existsSync(path));
  if (there !== undefined) throw new UsageError(`${shownPath(there)} is there already; nothing was written`);
  try {
    mkdirSync(resolve(folder), { recursive: true });
    for (const [i, path] of paths.entries()) writeFileSync(path, files[i]?.text ?? "", { flag: "wx" });
  } catch (error) {
    throw new UsageError(`${folder} cannot be written to: ${error instanceof Error ? error.message : String(error)}`);
  }
  return paths;
}

function next({ name }: NewCar, into: string): string {
  const car = shownPath(join(resolve(into), `${name}.crank`));
  return `Next: put in your own figures, and look at what they do with\n  bellcrank check "${car}"\n  bellcrank rates "${car}"`;
}
