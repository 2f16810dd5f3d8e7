/** `bellcrank road`: contact and platform of one car or set-up on a random road. */
import { type Command, Option } from "commander";
import { pageMarkdown } from "../../views/rates-markdown.js";
import { roadPage } from "../../views/road-page.js";
import { type Asked, carCommand } from "../car-command.js";
import { caseAsked } from "../case-asked.js";
import type { Ends } from "../ends.js";
import { speedOf } from "../speed.js";
import { pageText } from "../output/rates-text.js";
import { roadCsv, roadJson } from "../output/road.js";
import { UsageError } from "../usage-error.js";

type Car = Parameters<typeof roadPage>[0];
type Road = Parameters<typeof roadPage>[1];

const outputs = {
  text: (...asked: Parameters<typeof roadPage>) => pageText(roadPage(...asked)),
  json: roadJson,
  csv: roadCsv,
  markdown: (...asked: Parameters<typeof roadPage>) => pageMarkdown(roadPage(...asked)),
} as const;

const CLASSES = ["A", "B", "C", "D", "E", "F", "G", "H"];

export function roadCommand(root: Command, ends: Ends): void {
  const written = (format: keyof typeof outputs) => (car: Car, asked: Asked) =>
    outputs[format](car, roadAsked(car, asked), caseAsked(car, asked));
  carCommand(root, ends, {
    name: "road",
    description:
      "Contact (change of tyre load over static load) and platform (change of ride height) on a random road.",
    example: "bellcrank road samples/quill/quill.crank --class B --speed 120km/h",
    options: [
      new Option("--class <letter>", "roughness after ISO 8608, else that of the road block").choices(CLASSES),
      new Option("--speed <speed>", "speed on it, such as 120km/h, else that of the road block"),
      new Option("--sides <how>", "what left and right have in common").choices(["isotropic", "same", "independent"]),
      new Option("--at <case>", "loads, springs and air of a load case, else of a straight at that speed"),
    ],
    outputs: { text: written("text"), json: written("json"), csv: written("csv"), markdown: written("markdown") },
  });
}

function roadAsked({ ride, model }: Car, asked: Asked): Road {
  const letter = asked["class"] ?? ride.written?.class;
  const speed = asked["speed"] === undefined ? ride.written?.speed : speedOf(asked["speed"]);
  if (letter === undefined || speed === undefined)
    throw new UsageError(
      `${model.setup ?? model.name} has no road block: say --class and --speed, such as --class B --speed 120km/h`,
    );
  return { class: letter, speed, sides: asked["sides"] ?? ride.written?.sides ?? "isotropic" };
}
