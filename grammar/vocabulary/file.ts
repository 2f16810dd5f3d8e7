/** Words of the top level, and those that stand almost everywhere. */
import { declares, oneOf, quantity, refersTo, text, keyword } from "./slots.js";
import type { WordGroup } from "./word.js";

export const fileGroup: WordGroup = {
  title: "The file",
  help: "A file declares cars, set-ups and parts, and names the files that it builds on.",
  concepts: [{ concept: "file", help: "The top level of a `.crank` file." }],
  words: [
    {
      word: "use",
      in: ["file"],
      takes: [[text("path")]],
      role: "structure",
      times: "many",
      example: 'use "parts.crank"',
      help:
        "Makes the cars, set-ups, parts and `let` names of another file known here. The path is relative to this file and " +
        "stays inside the workspace folders; a missing file is an error at this line.",
    },
    {
      word: "let",
      in: ["file", "catalogue", "car", "setup", "axle"],
      takes: [[declares("let"), quantity("any")]],
      role: "structure",
      times: "named",
      example: "let base-rate = 120 N/mm",
      help:
        "Gives a value a name, for use in expressions below it in the same block and in the blocks inside. Units are " +
        "checked: `base-rate + 2 mm` is an error. A minus between two names has blanks around it.",
    },
    {
      word: "catalogue",
      in: ["file"],
      takes: [[]],
      opens: "catalogue",
      block: "required",
      role: "structure",
      times: "many",
      example: "catalogue {\n  torsion-bar TB-185 { diameter 18.5 mm, length 290 mm, stock 2 }\n}",
      help: "The parts on the shelf. An element takes one with `fit`.",
    },
    {
      word: "car",
      in: ["file"],
      takes: [[declares("car"), text("title")], [declares("car")]],
      opens: "car",
      block: "required",
      role: "structure",
      times: "named",
      help: "A car: masses, axles, the elements that join the axles, load cases and expectations. The title is for reports.",
    },
    {
      word: "setup",
      in: ["file"],
      takes: [[declares("setup"), keyword("from"), refersTo("car-or-setup")]],
      opens: "setup",
      block: "required",
      role: "structure",
      times: "named",
      example: "setup oxlea-wet from quill {\n  front.third.rate 95 N/mm\n}",
      help:
        "What differs from a car, or from another set-up. Everything that is not said here is inherited. A chain that comes " +
        "back to itself is an error at every file in it.",
    },
  ],
};

export const stockWord = {
  word: "stock",
  takes: oneOf("count"),
  role: "property",
  times: "one",
  fallback: "not counted",
  starter: "2",
  limits: { atLeast: 0 },
  help: "How many of this part are on the shelf. For the setup sheet and the choice of parts; it enters no calculation.",
} as const;
