/** A comparison for the terminal. */
import pc from "picocolors";
import { cautions } from "../../views/cautions.js";
import { comparisonPage } from "../../views/comparison/page.js";
import { carWords, followerWords, type ReviewedCar } from "../../views/comparison/review.js";
import type { Compared } from "../comparing/compared.js";
import { table } from "./table.js";

/** @param isFull tells every figure that moved, else only what is looked at first */
export function compareText({ review }: Compared, isFull: boolean): string {
  const told = review.cars.filter(({ status }) => status !== "same");
  const same = review.cars.length - told.length;
  return [
    `${pc.bold(review.headline)}\n`,
    `was: ${review.old}\nis:  ${review.now}\n`,
    ...told.map((car) => carText(car, told.length > 1, isFull)),
    ...(same === 0 || told.length === 0
      ? []
      : [`${same} ${same === 1 ? "car or set-up is" : "cars and set-ups are"} as before.\n`]),
    ...(told.length === 0 ? [] : [`${pc.dim(cautions)}\n`]),
  ].join("\n");
}

function carText(car: ReviewedCar, isOneOfMany: boolean, isFull: boolean): string {
  const head = isOneOfMany ? `${pc.bold(`${car.name} (${car.path})`)}\n${carWords(car)}\n` : "";
  const follows = followerWords(car);
  if (follows !== undefined) return `${head}${follows}\n`;
  if (car.comparison === undefined) return head;
  const { sections, remarks } = comparisonPage(car.comparison);
  const shown = sections.filter(({ isDetail }) => isFull || !isDetail);
  const left = sections.length - shown.length === 0 ? [] : ["--full tells what moved at every element and wheel."];
  return [
    head,
    ...shown.map(({ title, columns, rows }) => `${pc.bold(title)}\n${table(columns, rows)}`),
    `${[...remarks, ...left].join("\n")}\n`,
  ]
    .filter((part) => part.trim() !== "")
    .join("\n");
}
