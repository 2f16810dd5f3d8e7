/** How long a rod or a drop link is set against the drawing: one word, with the help of its place. */
import { seen } from "./sources.js";
import { oneOf } from "./slots.js";
import type { Concept, Word } from "./word.js";

export const setLength = (concepts: readonly Concept[], help: string): Word => ({
  word: "longer",
  in: concepts,
  takes: oneOf("length"),
  role: "property",
  times: "one",
  adjusts: true,
  fallback: "0 mm, as long as it is drawn",
  starter: "0 mm",
  usual: seen(-0.02, 0.02),
  help,
});
