/** Words of a set-up, beside its override lines. */
import { refersTo } from "./slots.js";
import type { WordGroup } from "./word.js";

export const setupGroup: WordGroup = {
  title: "Set-up",
  help:
    "Lines are overrides: the path mirrors the nesting of the car (`front.third.rate 95 N/mm`), only `linkage` and `wheel` may " +
    "be left out; without `left` or `right` it means both sides. A value replaces; `by` adds to what is inherited.",
  concepts: [{ concept: "setup", help: "What differs from the car or set-up that it derives from.", overrides: "car" }],
  words: [
    {
      word: "remove",
      in: ["setup"],
      takes: [[refersTo("element")]],
      role: "structure",
      times: "many",
      example: "remove rear.roll-damper",
      help: "Takes an element off the car in this set-up.",
    },
    {
      word: "keep-seats",
      in: ["setup"],
      takes: [[]],
      role: "structure",
      times: "one",
      fallback: "the car is trimmed anew to its ride height",
      example: "keep-seats",
      help:
        "Leaves springs and rods as the base trims them, to see what a change does when nobody sets the car on the flat patch " +
        "again.",
    },
  ],
};
