/** Words of what the mechanics measured, to be held against what is predicted. */
import { blockOnly, figure, keyword, quantity, refersTo, text } from "./slots.js";
import type { WordGroup } from "./word.js";

const any = quantity("any");
const at = [keyword("at"), refersTo("case")];
const within = [keyword("within"), any];

export const measuredGroup: WordGroup = {
  title: "As measured",
  help:
    "What was written down beside the car, held against what the tool predicts for the car or set-up that the block stands in. It " +
    "says nothing of set-ups that derive from it: they are other cars to measure.",
  concepts: [{ concept: "measured", help: "Values that were measured, and when." }],
  words: [
    {
      word: "measured",
      in: ["car"],
      takes: blockOnly,
      opens: "measured",
      block: "required",
      spread: true,
      role: "property",
      times: "one",
      fallback: "nothing was measured",
      example:
        'measured {\n  when "after scrutineering"\n  corner-weights { front-left 119 kg, front-right 118.5 kg, rear-left 151 kg, rear-right 151.5 kg }\n' +
        "  figure front.ride-height 32.5 mm\n  figure front.heave-rate 176 N/mm within 4 %\n}",
      help:
        "What the mechanics measured on this car or set-up. Hover, `bellcrank measured` and the setup sheet show each value beside " +
        "the predicted one, and a difference beyond the tolerance is a finding. A set-up that derives from this one does not inherit it.",
    },
    {
      word: "when",
      in: ["measured"],
      takes: [[text("when and where")]],
      role: "property",
      times: "one",
      fallback: "not said",
      starter: '"after the second run"',
      help: "When it was measured, in your own words.",
    },
    {
      word: "corner-weights",
      in: ["measured"],
      takes: blockOnly,
      opens: "scales",
      block: "required",
      role: "property",
      times: "one",
      fallback: "not weighed",
      example: "corner-weights { front-left 119 kg, front-right 118.5 kg, rear-left 151 kg, rear-right 151.5 kg }",
      help: "What the four pads showed, held against the predicted corner weights within 2 % (usual for a set of pads).",
    },
    {
      word: "figure",
      in: ["measured"],
      takes: [
        [figure, any],
        [figure, any, ...within],
        [figure, ...at, any],
        [figure, ...at, any, ...within],
      ],
      role: "property",
      times: "many",
      fallback: "not measured",
      example: "figure front.heave-rate 176 N/mm within 5 N/mm",
      help:
        "A figure as `expect` names it, and what was measured. `within` says how far off it may be, in its own unit or in % of the " +
        "prediction; without it the tolerance is the usual one of that kind of figure: 1 mm of ride height, 0.1 deg of camber or toe, " +
        "2 % of a load, 5 % of a rate, 10 % of damping.",
    },
  ],
};
