/** A car written as text, resolved, assembled and analysed: for tests of the way from words to figures. */
import { analyseAxle } from "../../server/analyses/analyse-axle.js";
import { analyseCar } from "../../server/analyses/analyse-car.js";
import type { AxleAnalysis, CarAnalysis, ElementFigures, Figure } from "../../server/analyses/results.js";
import { assembleAxle } from "../../server/assemble/assemble.js";
import type { AxleMechanism } from "../../server/elements/mechanism.js";
import type { CarModel } from "../../server/model/car.js";
import { AxleAnalyses } from "../../server/snapshot/axle-analyses.js";
import { contextOf } from "./context.js";

export const carOf = (
  text: string,
  more: Readonly<Record<string, string>> = {},
  which: "first" | "last" = "first",
): CarModel => {
  const checked = contextOf({ "car.crank": text, ...more }, "car.crank").cars.at(which === "first" ? 0 : -1);
  if (checked === undefined) throw new Error("no car in the text");
  return checked.model;
};

export function analysisOf(car: CarModel): CarAnalysis {
  const analyses = new AxleAnalyses();
  return analyseCar(car, (axle) => analyses.of(axle, car), analyses.joining(car));
}

export function mechanismOf(
  text: string,
  more: Readonly<Record<string, string>> = {},
  which: "first" | "last" = "first",
): AxleMechanism {
  const car = carOf(text, more, which);
  if (car.axles.front === undefined) throw new Error("no front axle in the text");
  return assembleAxle(car.axles.front, car);
}

export const frontOf = (text: string): AxleAnalysis => analyseAxle(mechanismOf(text));

export function elementIn(
  { elements }: { readonly elements: readonly ElementFigures[] },
  path: string,
): ElementFigures {
  const found = elements.find((element) => element.path === path);
  if (found === undefined) throw new Error(`no ${path} among ${elements.map((element) => element.path).join(", ")}`);
  return found;
}

export const number = (figure: Figure | undefined): number => {
  if (typeof figure !== "number") throw new Error(figure?.reason ?? "nothing");
  return figure;
};

export const reason = (figure: unknown): string => {
  if (typeof figure === "object" && figure !== null && "reason" in figure && typeof figure.reason === "string") {
    return figure.reason;
  }
  throw new Error(`not absent: ${JSON.stringify(figure)}`);
};

export interface CarText {
  readonly elements?: string;
  readonly linkage?: string;
  readonly axle?: string;
  readonly car?: string;
  readonly before?: string;
}

/** The check case's corner (check-values.md, WB-1) as it is written down. */
export const wishboneLinkage = `linkage {
      lower-wishbone { fore (150, 250, 150) mm, aft (-170, 245, 160) mm, outer (8, 722, 150) mm }
      upper-wishbone { fore (125, 300, 398) mm, aft (-145, 296, 384) mm, outer (-12, 700, 440) mm }
      track-rod { inner (95, 260, 185) mm, outer (112, 712, 190) mm }
      push-rod on lower-wishbone { outer (5, 640, 175) mm, inner (-2, 333, 519) mm }
      rocker {
        pivot (-10, 283, 473) mm
        axis (40, 5, -7)
        eye side (-12, 238, 523) mm
        eye third (-14, 276, 533) mm
        eye bar (-18, 341, 470) mm
        eye high (-6, 279, 537) mm
        eye low (-6, 287, 412) mm
      }
    }`;

export const cornerSpring = `spring side for corner {
      rate 150 N/mm
      between rocker.side and chassis (-55, 88, 385) mm
    }`;

/** A car with a front axle; what is not given is that of the check case. */
export function carText({
  elements = cornerSpring,
  linkage = wishboneLinkage,
  axle = "",
  car = "",
  before = "",
}: CarText): string {
  return `${before}
car tried {
  wheelbase 2500 mm
  mass 560 kg
  mass-front 50 %
  cg-height 300 mm
  ${car}
  axle front {
    track 1571.171173495033 mm
    ride-height 30 mm
    travel -30 .. 30 mm
    ${axle}
    wheel {
      centre (0, 780, 320) mm
      camber -1 deg
      toe 0.2 deg
      loaded-radius 320.0487449740505 mm
      unsprung-mass 18 kg
      tyre-rate 200 N/mm
    }
    ${linkage}
    ${elements}
  }
}
`;
}
