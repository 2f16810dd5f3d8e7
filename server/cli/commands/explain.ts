/** `bellcrank explain`: where a value comes from, and the set-ups that change it. */
import { type Command, Option } from "commander";
import type { CheckedCar } from "../../findings/context.js";
import type { FileView } from "../../snapshot/workspace.js";
import { askedFor } from "../../views/origins/asked.js";
import { type Changer, changersOf } from "../../views/origins/changers.js";
import { explain } from "../../snapshot/explain.js";
import type { Ends } from "../ends.js";
import { noteErrors } from "../error-note.js";
import { explainOutputs } from "../output/explain.js";
import { UsageError } from "../usage-error.js";
import { carOf, openFile, openPaths } from "../workspace.js";

interface Options {
  readonly setup?: string;
  readonly changedIn?: string;
  readonly format: keyof typeof explainOutputs;
}

export function explainCommand(root: Command, ends: Ends): void {
  root
    .command("explain")
    .description("Where a value comes from: every line that had a say in it, the one in force first.")
    .argument("<file>", "the file that declares the car or set-up")
    .argument("[path]", "the value, as a set-up writes it; a block, or nothing at all, lists the values inside", "")
    .option("--setup <name>", "which one, where the file declares several")
    .option("--changed-in <folder>", "also tell the set-ups below this folder that change it")
    .addOption(
      new Option("--format <format>", "how the answer is written").choices(Object.keys(explainOutputs)).default("text"),
    )
    .addHelpText(
      "after",
      `
Examples:
  bellcrank explain samples/quill/wet.crank front.third.rate
  bellcrank explain samples/quill/wet.crank front.third
  bellcrank explain samples/quill/quill.crank front.third.rate --changed-in samples/quill`,
    )
    .action((path: string, named: string, { setup, changedIn, format }: Options) => {
      const of = named.trim();
      const { workspace, file } = openFile(path);
      const car = carOf(file, setup);
      const fileOf = (uri: string): FileView => workspace.file(uri);
      const told = explain(car, of, fileOf);
      if (told.kind === "none") throw new UsageError(told.why);
      const changers = changedIn === undefined ? undefined : changersBelow(changedIn, path, { file, car, of });
      process.stdout.write(explainOutputs[format]({ car, told, changers, fileOf }));
      noteErrors(file, ends);
    });
}

interface Subject {
  readonly file: FileView;
  readonly car: CheckedCar;
  readonly of: string;
}

/** In a workspace that holds both the file and the folder. */
function changersBelow(folder: string, path: string, { file, car, of }: Subject): readonly Changer[] {
  const { workspace, files } = openPaths([path, folder]);
  const again = carOf(workspace.file(file.uri), car.model.setup ?? car.model.name);
  return changersOf(askedFor(again, of === "" ? [] : of.split(".")), files, (uri) => workspace.file(uri));
}
