/** Words of the car as a whole: main dimensions, brakes and drive. */
import { aShare, positive, seen } from "./sources.js";
import { choice, declares, oneOf, point } from "./slots.js";
import type { WordGroup } from "./word.js";

export const carGroup: WordGroup = {
  title: "Car",
  help: "Main dimensions, brakes and drive. Axes after ISO 8855: x forward, y left, z up, one origin for the whole car.",
  concepts: [
    { concept: "car", help: "One car: what it weighs, its axles, and what is asked of it." },
    { concept: "clearance-point", help: "A point of the body that must not touch the road." },
    { concept: "brakes", help: "How the braking force is shared and where it is reacted." },
  ],
  words: [
    {
      word: "wheelbase",
      in: ["car"],
      takes: oneOf("length"),
      role: "property",
      times: "one",
      needed: true,
      starter: "2500 mm",
      usual: seen(1.2, 4),
      limits: positive,
      help: "Distance along x between the front and the rear axle line, at design ride height.",
    },
    {
      word: "clearance-point",
      in: ["car"],
      takes: [[declares("element")]],
      opens: "clearance-point",
      block: "required",
      role: "property",
      times: "named",
      fallback: "ground clearance is that of the axle lines",
      example: "clearance-point nose { point (420, 0, 8) mm }",
      help:
        "A point of the body that must not touch the road: the front edge of the floor, a skid. Its height above the road is told " +
        "in every load case; `expect nose.clearance at top-speed above 6 mm` holds it to a limit.",
    },
    {
      word: "point",
      in: ["clearance-point"],
      takes: [[point]],
      role: "property",
      times: "one",
      needed: true,
      starter: "(400, 0, 5) mm",
      help: "Where it is, (x, y, z), at design ride height.",
    },
    {
      word: "brakes",
      in: ["car"],
      takes: [[]],
      opens: "brakes",
      block: "required",
      role: "property",
      times: "one",
      fallback: "cases with braking are not worked out",
      example: "brakes { front 58 %, mounting outboard }",
      help: "Brake bias and where the brakes sit. Outboard brakes are reacted by the upright, inboard ones by the chassis.",
    },
    {
      word: "front",
      in: ["brakes"],
      takes: oneOf("share"),
      opens: "share-adjuster",
      block: "optional",
      role: "property",
      times: "one",
      needed: true,
      starter: "58 %",
      usual: seen(0.4, 0.8),
      limits: aShare,
      help: "Share of the braking force at the front wheels, from 0 to 100 %.",
    },
    {
      word: "mounting",
      in: ["brakes"],
      takes: [[choice("outboard", "inboard")]],
      role: "property",
      times: "one",
      fallback: "outboard",
      starter: "outboard",
      help:
        "`outboard`: calipers on the uprights, so the brake force acts at the tyre contact; `inboard`: on the chassis, so it " +
        "acts at the wheel centre. It decides anti-dive and anti-lift.",
    },
    {
      word: "drive",
      in: ["car"],
      takes: [[choice("rear", "front", "all")]],
      role: "property",
      times: "one",
      fallback: "cases with drive are not worked out",
      starter: "rear",
      help: "The driven axle or axles. Drive is reacted inboard: the force acts at the wheel centre.",
    },
  ],
};
