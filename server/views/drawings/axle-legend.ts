/** The legend below a drawn axle: which number is which element, in lines that fit. */
import type { DrawnElement } from "./axle-shape.js";

export interface Tagged {
  readonly number: number;
  readonly elements: readonly DrawnElement[];
}

/** @param figure width of one character, px */
export function legendLines(
  tagged: readonly Tagged[],
  unplaced: readonly string[],
  width: number,
  figure: number,
): readonly string[] {
  const entries = [
    ...tagged.map(({ number, elements }) => `${number} ${elements.map(({ path }) => shortName(path)).join(", ")}`),
    ...(unplaced.length === 0 ? [] : [`not drawn, by ratio: ${[...new Set(unplaced.map(shortName))].join(", ")}`]),
  ];
  const most = Math.max(10, Math.floor(width / figure));
  const lines: string[] = [];
  for (const entry of entries) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + entry.length + 3 <= most) lines[lines.length - 1] = `${last} · ${entry}`;
    else lines.push(...cut(entry, most));
  }
  return lines;
}

/** The axle is known; which side it is on is seen. */
const shortName = (path: string): string => path.replace(/^(front|rear)\./, "").replace(/^(left|right)\./, "");

function cut(text: string, most: number): readonly string[] {
  const parts: string[] = [];
  for (let at = 0; at < text.length; at += most) parts.push(text.slice(at, at + most));
  return parts;
}
