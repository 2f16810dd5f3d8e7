/**
 * A set-up that stands in no file: the text that makes it from a car or set-up of a file, and what is wrong with it.
 *
 * It is read like any other text, so that paths, units, `by`, parts and limits mean what they mean in a file.
 */
import type { RuleContext } from "../findings/context.js";
import { runRules } from "../findings/run.js";
import { relativeTo } from "../model/relative.js";

/** What changes nothing that is asked for: the same value again, or a part that is on the shelf. */
const harmless: ReadonlySet<string> = new Set(["needless-override", "unused-part", "unused-let"]);

export interface VariationText {
  /** The file that it is read as. */
  readonly at: string;
  readonly text: string;
  readonly name: string;
}

/** A file of its own beside `uri`, which costs least to read; where that cannot name `uri` as the host does, more text in `uri`. */
export function variationText(uri: string, text: string, of: string, lines: readonly string[]): VariationText {
  const name = of === "variation" ? "variation-2" : "variation";
  const setup = `setup ${name} from ${of} {\n${lines.map((line) => `  ${line}\n`).join("")}}\n`;
  const at = `${uri}.variation.crank`;
  const file = plainName(uri);
  const target = file === undefined ? undefined : relativeTo(at, file);
  return target !== undefined && "uri" in target && target.uri === uri
    ? { at, text: `use "${file}"\n\n${setup}`, name }
    : { at: uri, text: `${text}\n\n${setup}`, name };
}

/** The last part of a URI as it would be written behind `use`. */
function plainName(uri: string): string | undefined {
  const last = uri.slice(uri.lastIndexOf("/") + 1);
  try {
    const plain = decodeURIComponent(last);
    return /["\\\n]/.test(plain) ? undefined : plain;
  } catch {
    return undefined;
  }
}

/** What the checks of text and model call an error in it, where reading it told of anything. */
export function complaintsOf(context: RuleContext): readonly string[] {
  const isSound = context.parsed.problems.length === 0 && context.problems.every(({ kind }) => harmless.has(kind));
  if (isSound) return [];
  const errors = runRules(context, ["syntax", "model"]).filter(({ severity }) => severity === "error");
  return errors.map(({ message }) => message);
}
