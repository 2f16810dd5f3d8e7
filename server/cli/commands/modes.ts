/** `bellcrank modes`: frequencies, damping ratios and stability of one car or set-up, at rest and in its load cases. */
import { type Command, Option } from "commander";
import { modesPage } from "../../views/modes-page.js";
import { pageMarkdown } from "../../views/rates-markdown.js";
import { carCommand } from "../car-command.js";
import { caseAsked } from "../case-asked.js";
import type { Ends } from "../ends.js";
import { modesCsv } from "../output/modes-csv.js";
import { modesJson } from "../output/modes-json.js";
import { pageText } from "../output/rates-text.js";

export function modesCommand(root: Command, ends: Ends): void {
  carCommand(root, ends, {
    name: "modes",
    description:
      "Natural frequencies, damping ratios, what moves in each mode, and stability, at rest and in the load cases.",
    example: "bellcrank modes samples/quill/quill.crank --at hairpin",
    options: [new Option("--at <case>", "one load case only, else the car at rest and every case")],
    outputs: {
      text: (car, asked) => pageText(modesPage(car, caseAsked(car, asked))),
      json: (car, asked) => modesJson(car, caseAsked(car, asked)),
      csv: (car, asked) => modesCsv(car, caseAsked(car, asked)),
      markdown: (car, asked) => pageMarkdown(modesPage(car, caseAsked(car, asked))),
    },
  });
}
