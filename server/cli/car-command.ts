/** A command that tells figures of one car or set-up of a file: its arguments and formats. */
import { type Command, Option } from "commander";
import type { CheckedCar } from "../findings/context.js";
import type { Ends } from "./ends.js";
import { noteErrors } from "./error-note.js";
import { carOf, openFile } from "./workspace.js";

export interface CarCommand {
  readonly name: string;
  readonly description: string;
  readonly example: string;
  /** What it can be asked besides. */
  readonly options?: readonly Option[];
  /** By the name of the format; `text` is the one that is taken where none is asked for. */
  readonly outputs: Readonly<Record<string, (car: CheckedCar, asked: Asked) => string>>;
}

/** The options as they were given, by name. */
export type Asked = Readonly<Record<string, string | undefined>>;

interface Options extends Asked {
  readonly setup?: string;
  readonly format: string;
}

export function carCommand(root: Command, ends: Ends, command: CarCommand): void {
  const { name, description, example, options = [], outputs } = command;
  const made = root
    .command(name)
    .description(description)
    .argument("<file>", "the file that declares the car or set-up")
    .option("--setup <name>", "which one, where the file declares several")
    .addOption(
      new Option("--format <format>", "how the figures are written").choices(Object.keys(outputs)).default("text"),
    )
    .addHelpText("after", `\nExample:\n  ${example}`)
    .action((path: string, asked: Options) => {
      const { setup, format } = asked;
      const { file } = openFile(path);
      const write = outputs[format];
      const car = carOf(file, setup);
      if (write !== undefined) process.stdout.write(write(car, asked));
      noteErrors(file, ends);
    });
  for (const option of options) made.addOption(option);
}
