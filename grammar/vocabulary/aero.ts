/** Words of the aerodynamics: downforce by axle, its slopes over ride height, drag. */
import { notNegative, positive, seen } from "./sources.js";
import { oneOf } from "./slots.js";
import type { Word, WordGroup } from "./word.js";

const downforce = (axle: "front" | "rear", starter: string): Word => ({
  word: `downforce-${axle}`,
  in: ["aero"],
  takes: oneOf("area"),
  role: "property",
  times: "one",
  needed: true,
  starter,
  usual: seen(-0.5, 4),
  help:
    `Downforce area carried by the ${axle} axle at design ride height: lift coefficient times reference area, down positive. ` +
    "Force is air density times speed squared times area, halved.",
});

const slope = (of: "front" | "rear", by: "front" | "rear"): Word => ({
  word: `${of}-by-${by}`,
  in: ["height-slopes"],
  takes: oneOf("area-slope"),
  role: "property",
  times: "one",
  fallback: "0 m^2/mm",
  starter: "0 m^2/mm",
  usual: seen(-40, 40),
  help:
    `Change of the ${of} axle's downforce area for each length that the ${by} ride height grows. Negative where lowering the ` +
    `${by} adds ${of} downforce.`,
});

export const aeroGroup: WordGroup = {
  title: "Aerodynamics",
  help: "Downforce areas of the axles at design ride height and how they change with the heights of both axles.",
  concepts: [
    { concept: "aero", help: "Downforce and drag as coefficient times area." },
    { concept: "height-slopes", help: "Downforce area per ride height, each axle by each axle's height." },
    { concept: "drag", help: "Drag as coefficient times area, and where it acts." },
  ],
  words: [
    {
      word: "aero",
      in: ["car"],
      takes: [[]],
      opens: "aero",
      block: "required",
      role: "property",
      times: "one",
      fallback: "no downforce and no drag",
      example: "aero { downforce-front 0.9 m^2, downforce-rear 1.4 m^2 }",
      help: "Downforce and drag of the car.",
    },
    downforce("front", "0.9 m^2"),
    downforce("rear", "1.4 m^2"),
    {
      word: "height-slopes",
      in: ["aero"],
      takes: [[]],
      opens: "height-slopes",
      block: "required",
      role: "property",
      times: "one",
      fallback: "downforce does not change with ride height",
      example: "height-slopes { front-by-front -0.006 m^2/mm, front-by-rear 0.002 m^2/mm }",
      help: "How the downforce areas change as the car moves away from design ride height.",
    },
    slope("front", "front"),
    slope("front", "rear"),
    slope("rear", "front"),
    slope("rear", "rear"),
    {
      word: "drag",
      in: ["aero"],
      takes: [[]],
      opens: "drag",
      block: "required",
      role: "property",
      times: "one",
      fallback: "no drag",
      example: "drag { area 1.05 m^2, height 480 mm }",
      help: "Air resistance; it acts backwards at its height and so moves load to the rear wheels.",
    },
    {
      word: "area",
      in: ["drag"],
      takes: oneOf("area"),
      role: "property",
      times: "one",
      needed: true,
      starter: "1 m^2",
      usual: seen(0.2, 2.5),
      limits: notNegative,
      help: "Drag coefficient times reference area.",
    },
    {
      word: "height",
      in: ["drag"],
      takes: oneOf("length"),
      role: "property",
      times: "one",
      needed: true,
      starter: "450 mm",
      usual: seen(0.1, 1.2),
      limits: positive,
      help: "Height above the ground at which the drag acts, at design ride height.",
    },
    {
      word: "lag",
      in: ["aero"],
      takes: oneOf("time"),
      role: "property",
      times: "one",
      fallback: "none stated: dynamic porpoising is not assessed",
      starter: "15 ms",
      usual: seen(0, 0.2),
      limits: notNegative,
      help: "Time constant with which downforce follows a change of ride height (first order).",
    },
  ],
};
