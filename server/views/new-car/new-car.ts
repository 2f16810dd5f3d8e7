/**
 * The files of a new car: a car, the parts that it is built from, and a first set-up, which check clean from the first minute on.
 * All numbers are invented and there to be replaced; the comments say where to begin.
 *
 * In: the answers. Out: names and texts of three files, in the canonical layout.
 */
import { format, parse } from "../../../grammar/index.js";
import { convertUnits } from "../convert-units.js";
import type { NewCar } from "./answers.js";
import { hardpoints, planar, type StartingLinkage } from "./linkages.js";
import { partsText } from "./parts.js";

export interface NewFile {
  readonly name: string;
  readonly text: string;
}

export function newCarFiles(car: NewCar): readonly NewFile[] {
  const { name } = car;
  const files = [
    { name: `${name}.crank`, text: carText(car) },
    { name: `${name}-parts.crank`, text: partsText(car) },
    { name: `${name}-first-run.crank`, text: setupText(car) },
  ];
  return files.map((file) => ({ ...file, text: format(car.units === "inch" ? inInches(file.text) : file.text) }));
}

const WHEELBASE = 2540;

interface Axle {
  readonly name: "front" | "rear";
  readonly x: number;
  readonly rod: NewCar["frontRod"];
  readonly track: number;
  readonly rideHeight: number;
  readonly wheel: string;
  /** N/mm at the heave spring. */
  readonly third: number;
  readonly damper: string;
  readonly heaveDamper: string;
}

function axlesOf({ frontRod, rearRod }: NewCar): readonly Axle[] {
  return [
    {
      name: "front",
      x: 0,
      rod: frontRod,
      track: 1480,
      rideHeight: 32,
      wheel:
        "centre (0, 731, 230) mm, camber -2 deg, toe -0.1 deg, loaded-radius 262.2 mm, unsprung-mass 17 kg, tyre-rate 165 N/mm",
      third: 55,
      damper: "V-24",
      heaveDamper: "V-30",
    },
    {
      name: "rear",
      x: -WHEELBASE,
      rod: rearRod,
      track: 1480,
      rideHeight: 42,
      wheel: `centre (${-WHEELBASE}, 731, 230) mm, camber -1.5 deg, toe 0.15 deg, loaded-radius 272.1 mm, unsprung-mass 19 kg, tyre-rate 185 N/mm`,
      third: 75,
      damper: "V-36",
      heaveDamper: "V-46",
    },
  ];
}

function carText(car: NewCar): string {
  const { name, title, downforce } = car;
  const air = downforce
    ? `
  aero {
    downforce-front 0.85 m^2  # lift coefficient times area, down positive
    downforce-rear 1.2 m^2
    drag { area 0.95 m^2, height 460 mm }
  }
`
    : "";
  return `# ${name}.crank: the car as it stands in the workshop
use "${name}-parts.crank"

## A starting point with invented figures: put in your own, axle by axle, and watch what the editor says of each.
car ${name} "${title.replaceAll('"', "'")}" {
  wheelbase ${WHEELBASE} mm
  mass 540 kg  # ready to run, with driver and fuel
  mass-front 44 %
  cg-height 285 mm
  roll-inertia 60 kg*m^2  # sprung mass, about its own centre of gravity
  pitch-inertia 390 kg*m^2
  brakes { front 58 %, mounting outboard }
  drive rear
${air}
${axlesOf(car)
  .map((axle) => axleText(car, axle))
  .join("\n")}

  case straight { speed 150 km/h }
  case hairpin { speed 60 km/h, lateral 1.2 g }
  case braking { speed 140 km/h, longitudinal -1.3 g }

  ## What the car is to do: change these to what you want, and the tests say whether it does.
  expect roll-gradient at hairpin below 3 deg/g
}
`;
}

function axleText(car: NewCar, axle: Axle): string {
  const { name, x, rod, track, rideHeight, wheel } = axle;
  const linkage = car.corner === "ratio" ? undefined : (car.corner === "planar" ? planar : hardpoints)(rod, x);
  return `  axle ${name} {
    track ${track} mm
    ride-height ${rideHeight} mm  # of the plane z = 0 above the ground, at the axle line
    travel -25 .. 22 mm
    trim by corner-spring

    wheel { ${wheel} }

    ${linkage?.text ?? "## Only ratios are known: measure each element's movement against the wheel's.\n    linkage ratio"}

${elementsText(car, axle, linkage)}
  }
`;
}

function elementsText(car: NewCar, axle: Axle, linkage: StartingLinkage | undefined): string {
  const heave = car.heave ? heaveText(axle, linkage) : "";
  const bar = car.bars ? barText(axle, linkage) : "";
  const connection = linkage === undefined ? "ratio corner 0.72" : `between rocker.side and chassis ${linkage.mount}`;
  return `${cornerSpring(car, axle, linkage)}
    damper side for corner {
      fit ${axle.damper}
      ${connection}
    }
${heave}${bar}`;
}

/** Firmer where nothing else carries heave. */
function cornerSpring(car: NewCar, { name }: Axle, linkage: StartingLinkage | undefined): string {
  const size = (name === "front" ? 0 : 1) + (car.heave ? 0 : 1);
  if (linkage === undefined)
    return `    spring corner-spring for corner {
      fit ${["K-80", "K-100", "K-120"][size] ?? ""}
      acts in-compression
      ratio corner 0.72
    }`;
  if (car.springs === "coil")
    return `    spring corner-spring for corner {
      fit ${["K-80", "K-100", "K-120"][size] ?? ""}
      acts in-compression
      between rocker.side and chassis ${linkage.mount}
    }`;
  return `    spring corner-spring for corner {
      fit ${["TB-120", "TB-130", "TB-140"][size] ?? ""}
      acts both-ways  # splined at both ends
      twists rocker against chassis
    }`;
}

function heaveText({ third, heaveDamper }: Axle, linkage: StartingLinkage | undefined): string {
  const connection =
    linkage === undefined ? "ratio heave 1.28, ratio roll 0" : "between left.rocker.third and right.rocker.third";
  return `    ## Between the rockers: heave works them, roll only swings them.
    spring third for heave {
      rate ${third} N/mm
      ${connection.replace(", ", "\n      ")}
    }
    damper heave-damper for heave {
      fit ${heaveDamper}
      ${connection.replace(", ", "\n      ")}
    }
`;
}

function barText({ name }: Axle, linkage: StartingLinkage | undefined): string {
  const fit = name === "front" ? "RB-14" : "RB-15";
  if (linkage === undefined)
    return `    anti-roll-bar bar for roll {
      fit ${fit}
      ratio roll 0.6 deg/mm
      ratio heave 0 deg/mm
    }
`;
  return `    anti-roll-bar bar for roll {
      fit ${fit}
      ${linkage.lever}
      drop-link rocker.bar { thread 1 mm/turn }
    }
`;
}

function setupText({ name }: NewCar): string {
  return `# ${name}-first-run.crank: a set-up says only what differs from the car
use "${name}.crank"

setup ${name}-first-run from ${name} {
  ## Up a little for the first run, until the ground clearance is known.
  front.ride-height by +2 mm
  rear.ride-height by +2 mm
}
`;
}

/** In the other units, to four digits: nothing here is known more closely. */
function inInches(text: string): string {
  const edits = [...convertUnits("new", parse(text), "inch")].sort((a, b) => b.span.start - a.span.start);
  return edits.reduce((before, { span, newText }) => {
    const value = Number(newText);
    const shown = Number.isFinite(value) && newText !== "" ? String(Number(value.toPrecision(4))) : newText;
    return before.slice(0, span.start) + shown + before.slice(span.end);
  }, text);
}
