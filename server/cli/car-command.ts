/** A command that tells figures of one car or set-up of a file: its arguments and formats. */
import { type Command, Option } from "commander";
import type { CheckedCar } from "../findings/context.js";
import type { Ends } from "./ends.js";
import { noteErrors } from "./error-note.js";
import { UsageError } from "./usage-error.js";
import { carOf, openPaths } from "./workspace.js";

export interface CarCommand {
  readonly name: string;
  readonly description: string;
  readonly example: string;
  /** By the name of the format; `text` is the one that is taken where none is asked for. */
  readonly outputs: Readonly<Record<string, (car: CheckedCar) => string>>;
}

interface Options {
  readonly setup?: string;
  readonly format: string;
}

export function carCommand(root: Command, ends: Ends, { name, description, example, outputs }: CarCommand): void {
  root
    .command(name)
    .description(description)
    .argument("<file>", "the file that declares the car or set-up")
    .option("--setup <name>", "which one, where the file declares several")
    .addOption(
      new Option("--format <format>", "how the figures are written").choices(Object.keys(outputs)).default("text"),
    )
    .addHelpText("after", `\nExample:\n  ${example}`)
    .action((path: string, { setup, format }: Options) => {
      const [file] = openPaths([path]).files;
      if (file === undefined) throw new UsageError(`${path}: not a file`);
      const write = outputs[format];
      const car = carOf(file, setup);
      if (write !== undefined) process.stdout.write(write(car));
      noteErrors(file, ends);
    });
}
