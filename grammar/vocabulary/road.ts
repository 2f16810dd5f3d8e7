/** Words of the road that a car's response is worked out for. */
import { positive, seen } from "./sources.js";
import { blockOnly, choice, oneOf } from "./slots.js";
import type { WordGroup } from "./word.js";

export const roadGroup: WordGroup = {
  title: "Road",
  help: "The random road on which `contact` and `platform` are told: how rough, and how fast.",
  concepts: [{ concept: "road", help: "Roughness of a road after ISO 8608, and the speed on it." }],
  words: [
    {
      word: "road",
      in: ["car"],
      takes: blockOnly,
      opens: "road",
      block: "required",
      role: "property",
      times: "one",
      fallback: "figures on a road are worked out only where the command line says which",
      example: "road { class B, speed 120 km/h }",
      help:
        "The road that `contact` (RMS change of the tyre load over its static load) and `platform` (RMS change of ride height) " +
        "are told for, with dampers at the speeds that they meet there.",
    },
    {
      word: "class",
      in: ["road"],
      takes: [[choice("A", "B", "C", "D", "E", "F", "G", "H")]],
      role: "property",
      times: "one",
      needed: true,
      starter: "B",
      help: "Class of roughness after ISO 8608: `A` the smoothest, each next one twice as rough. A good track is `A`, a lane `C`.",
    },
    {
      word: "speed",
      in: ["road"],
      takes: oneOf("speed"),
      role: "property",
      times: "one",
      needed: true,
      starter: "120 km/h",
      usual: seen(5, 100),
      limits: positive,
      help: "Forward speed: the faster, the rougher, and the sooner the rear follows the front.",
    },
    {
      word: "sides",
      in: ["road"],
      takes: [[choice("isotropic", "same", "independent")]],
      role: "property",
      times: "one",
      fallback: "isotropic",
      starter: "isotropic",
      help:
        "What left and right have in common: `isotropic`, as on a surface that looks alike in every direction; the `same` " +
        "profile on both; or two that have nothing to do with each other.",
    },
  ],
};
