/** `bellcrank rates`: rates, sensitivities and leaks of one car or set-up. */
import type { Command } from "commander";
import { ratesMarkdown } from "../../views/rates-markdown.js";
import { carCommand } from "../car-command.js";
import type { Ends } from "../ends.js";
import { ratesCsv } from "../output/rates-csv.js";
import { ratesJson } from "../output/rates-json.js";
import { ratesText } from "../output/rates-text.js";

export function ratesCommand(root: Command, ends: Ends): void {
  carCommand(root, ends, {
    name: "rates",
    description: "Rates, motion in each mode and leaks at static trim, of one car or set-up.",
    example: "bellcrank rates samples/quill/wet.crank --format markdown",
    outputs: { text: ratesText, json: ratesJson, csv: ratesCsv, markdown: ratesMarkdown },
  });
}
