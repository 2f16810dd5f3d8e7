/**
 * A starting car for a file that is still empty: the usual new car with its parts in one text, called as the file is.
 *
 * In: the file's address and text. Out: what to write into it; undefined where something stands there already.
 */
import { usual, whyNoName } from "./answers.js";
import { newCarFiles } from "./new-car.js";

export interface StartHere {
  readonly name: string;
  readonly text: string;
}

export const startHereTitle = "Start a car here";

export function startHere(uri: string, text: string): StartHere | undefined {
  if (/\S/.test(text)) return undefined;
  const name = nameFrom(uri);
  const [car, parts] = newCarFiles({ ...usual, name, title: name });
  return { name, text: `${withoutHead(parts?.text ?? "")}\n${withoutHead(car?.text ?? "")}` };
}

/** The comment that names a file, and what it uses, are of files that are not made here. */
const withoutHead = (text: string): string => text.replace(/^(?:(?:#(?!#)|use ).*\n|\n)+/, "");

function nameFrom(uri: string): string {
  const last = uri.split(/[/\\:]/).at(-1) ?? "";
  const name = decoded(last)
    .replace(/\.crank$/i, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^[^a-z]+|-+$/g, "");
  return whyNoName(name) === undefined ? name : "my-car";
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    // A stray % of the name itself.
    return text;
  }
}
