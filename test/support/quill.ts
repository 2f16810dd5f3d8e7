/** The Quill with its parts and set-ups, as the samples say it. */
import { readFileSync } from "node:fs";
import type { CarModel } from "../../server/model/car.js";
import { carOf } from "./written-car.js";

const read = (name: string): string => readFileSync(new URL(`../../samples/quill/${name}`, import.meta.url), "utf8");

export const quillText = read("quill.crank");
export const quillParts = { "parts.crank": read("parts.crank") };

/** @param text the car's own, or changed */
export const quill = (text: string = quillText): CarModel => carOf(text, quillParts);
