/** `bellcrank sheet`: what the mechanics fit, set and measure for one car or set-up. */
import { type Command, Option } from "commander";
import { sheetHtml } from "../../views/sheet/html.js";
import { sheetMarkdown } from "../../views/sheet/markdown.js";
import { picturesOf } from "../../views/sheet/pictures.js";
import { setupSheet } from "../../views/sheet/sheet.js";
import type { Ends } from "../ends.js";
import { noteErrors } from "../error-note.js";
import { sheetJson } from "../output/sheet-json.js";
import { keptSheet, sheetSince } from "../sheet/last-sheet.js";
import { originOf } from "../sheet/origin.js";
import { printPdf } from "../sheet/printed.js";
import { writeText } from "../text-file.js";
import { carOf, openFile } from "../workspace.js";

interface Asked {
  readonly setup?: string;
  readonly format: "html" | "markdown" | "json";
  readonly since?: string;
  readonly last?: string;
  readonly output?: string;
  readonly pdf?: string;
}

export function sheetCommand(root: Command, ends: Ends): void {
  root
    .command("sheet")
    .description("The setup sheet for the mechanics: parts, settings, targets with room for what was measured.")
    .argument("<file>", "the file that declares the car or set-up")
    .option("--setup <name>", "which one, where the file declares several")
    .addOption(
      new Option("--format <format>", "how it is written").choices(["html", "markdown", "json"]).default("html"),
    )
    .addOption(
      new Option(
        "--since <operand>",
        "mark what differs from FILE, FILE#SETUP or REV:FILE, else from what it derives from",
      ),
    )
    .addOption(
      new Option("--last <sheet>", "mark what differs from a sheet that was kept with --format json").conflicts(
        "since",
      ),
    )
    .option("--output <file>", "write it there instead")
    .option("--pdf <file>", "print the page to a PDF through an installed browser")
    .addHelpText("after", examples)
    .action((path: string, asked: Asked) => {
      const { file } = openFile(path);
      const car = carOf(file, asked.setup);
      const sheet = setupSheet(car, file.findings(), lastOf(asked));
      const origin = originOf(file, new Date());
      const html = (): string => sheetHtml(sheet, origin, picturesOf(car, sheet));
      if (asked.pdf !== undefined) printPdf(html(), asked.pdf);
      const outputs = {
        html,
        markdown: () => sheetMarkdown(sheet, origin),
        json: () => sheetJson(sheet, origin),
      } as const;
      if (asked.output !== undefined) writeText(asked.output, outputs[asked.format]());
      else if (asked.pdf === undefined) process.stdout.write(outputs[asked.format]());
      noteErrors(file, ends);
    });
}

const examples = `
Examples:
  bellcrank sheet samples/quill/wet.crank --output wet.html
  bellcrank sheet samples/quill/wet.crank --since samples/quill/dry.crank --pdf wet.pdf
  bellcrank sheet samples/quill/wet.crank --format json --output last.json`;

function lastOf({ since, last, setup }: Asked): ReturnType<typeof keptSheet> | undefined {
  if (last !== undefined) return keptSheet(last);
  return since === undefined ? undefined : sheetSince(since, setup);
}
