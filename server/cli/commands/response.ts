/** `bellcrank response`: what a swinging road does to one car or set-up, over the frequency. */
import { type Command, Option } from "commander";
import { pageMarkdown } from "../../views/rates-markdown.js";
import { type Response, responsePage, roadMotions } from "../../views/response-page.js";
import { type Asked, carCommand } from "../car-command.js";
import { caseAsked } from "../case-asked.js";
import type { Ends } from "../ends.js";
import { gridOf } from "../grid.js";
import { pageText } from "../output/rates-text.js";
import { responseCsv, responseJson } from "../output/response.js";
import { speedOf } from "../speed.js";
import { UsageError } from "../usage-error.js";

type Car = Parameters<typeof responsePage>[0];

const outputs = {
  text: (...asked: Parameters<typeof responsePage>) => pageText(responsePage(...asked)),
  json: responseJson,
  csv: responseCsv,
  markdown: (...asked: Parameters<typeof responsePage>) => pageMarkdown(responsePage(...asked)),
} as const;

export function responseCommand(root: Command, ends: Ends): void {
  const written = (format: keyof typeof outputs) => (car: Car, asked: Asked) =>
    outputs[format](car, responseAsked(asked), caseAsked(car, asked));
  carCommand(root, ends, {
    name: "response",
    description: "Transfer functions: tyre loads, travels, ride heights and the body over the height of the road.",
    example: "bellcrank response samples/quill/quill.crank --at top-speed --road passing --frequency 0.5..30Hz:121",
    options: [
      new Option("--road <motion>", "how the road's height swings").choices(roadMotions).default("heave"),
      new Option("--frequency <range>", "from, to and how many, evenly by ratio").default("0.5..30Hz:61"),
      new Option("--speed <speed>", "of a passing road, such as 120km/h, else that of the load case"),
      new Option("--at <case>", "loads, springs and air of a load case, else of a straight"),
    ],
    outputs: { text: written("text"), json: written("json"), csv: written("csv"), markdown: written("markdown") },
  });
}

function responseAsked({ road, frequency = "", speed }: Asked): Response {
  const motion = roadMotions.find((one) => one === road) ?? "heave";
  return { motion, frequencies: byRatio(frequency), speed: speed === undefined ? undefined : speedOf(speed) };
}

/** The same count and ends as an even row, but each as many times the one before. */
function byRatio(text: string): readonly number[] {
  const even = gridOf("--frequency", text, "frequency");
  const [from = 0, to = from] = [even[0], even.at(-1)];
  if (!(from > 0) || to < from)
    throw new UsageError(`--frequency "${text}": frequencies rise from above 0, such as 0.5..30Hz:61`);
  const last = even.length - 1;
  return even.map((_, i) => (i === last ? to : from * (to / from) ** (i / last)));
}
