/** `bellcrank rates`: rates, sensitivities and leaks of one car or set-up. */
import { type Command, Option } from "commander";
import { ratesMarkdown } from "../../views/rates-markdown.js";
import { carCommand } from "../car-command.js";
import type { Ends } from "../ends.js";
import { ratesAt } from "../output/rates-at.js";
import { ratesCsv } from "../output/rates-csv.js";
import { ratesJson } from "../output/rates-json.js";
import { ratesText } from "../output/rates-text.js";

export function ratesCommand(root: Command, ends: Ends): void {
  carCommand(root, ends, {
    name: "rates",
    description: "Rates, motion in each mode and leaks at static trim, of one car or set-up.",
    example: "bellcrank rates samples/quill/wet.crank --format markdown",
    options: [new Option("--at <case>", "rates and motions at the positions of a load case, instead of at rest")],
    outputs: {
      text: (car, { at }) => (at === undefined ? ratesText(car) : ratesAt.text(car, at)),
      json: (car, { at }) => (at === undefined ? ratesJson(car) : ratesAt.json(car, at)),
      csv: (car, { at }) => (at === undefined ? ratesCsv(car) : ratesAt.csv(car, at)),
      markdown: (car, { at }) => (at === undefined ? ratesMarkdown(car) : ratesAt.markdown(car, at)),
    },
  });
}
