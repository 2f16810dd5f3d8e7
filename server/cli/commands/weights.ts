/** `bellcrank weights`: masses and corner weights, and the turns that bring the cross weight to what is wanted. */
import type { Command } from "commander";
import { pageMarkdown } from "../../views/rates-markdown.js";
import { weightsPage } from "../../views/weights-page.js";
import { carCommand } from "../car-command.js";
import type { Ends } from "../ends.js";
import { pageText } from "../output/rates-text.js";
import { weightsJson } from "../output/weights-json.js";

export function weightsCommand(root: Command, ends: Ends): void {
  carCommand(root, ends, {
    name: "weights",
    description: "Masses and corner weights of one car or set-up; from `scales` the turns to the wanted cross weight.",
    example: "bellcrank weights samples/quill/wet.crank --format markdown",
    outputs: {
      text: (car) => pageText(weightsPage(car)),
      json: weightsJson,
      markdown: (car) => pageMarkdown(weightsPage(car)),
    },
  });
}
