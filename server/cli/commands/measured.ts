/** `bellcrank measured`: what the mechanics wrote down beside what is predicted. */
import type { Command } from "commander";
import { measuredPage } from "../../views/measured.js";
import { pageMarkdown } from "../../views/rates-markdown.js";
import { carCommand } from "../car-command.js";
import type { Ends } from "../ends.js";
import { measuredCsv, measuredJson } from "../output/measured.js";
import { pageText } from "../output/rates-text.js";

export function measuredCommand(root: Command, ends: Ends): void {
  carCommand(root, ends, {
    name: "measured",
    description: "What was measured on a car or set-up beside what is predicted, with what is beyond its tolerance.",
    example: "bellcrank measured samples/quill/dry.crank",
    outputs: {
      text: (car) => pageText(measuredPage(car)),
      json: measuredJson,
      csv: measuredCsv,
      markdown: (car) => pageMarkdown(measuredPage(car)),
    },
  });
}
