/** Why a car has no equilibrium in a case, as a clause: one wording for findings, absent figures and the command line. */
import type { WheelName, WhyNot } from "./outcome.js";

const millimetres = (metres: number): string => `${Math.round(metres * 10_000) / 10} mm`;
const named = ({ axle, side }: WheelName): string => `${axle} ${side}`;

export function whyNotWords(why: WhyNot): string {
  switch (why.kind) {
    case "aero-stiffness":
      return "downforce grows faster as the car sinks than springs and tyres push back";
    case "aground":
      return `the body would come to stand on the road at the ${why.axle} axle line`;
    case "airborne":
      return `both ${why.axle} wheels come off the ground`;
    case "tips-over":
      return `both ${why.side} wheels come off the ground, and the car tips over`;
    case "reach":
      return `the ${why.link} of the ${named(why.wheel)} wheel binds at ${millimetres(why.travel)} of travel`;
    case "stroke":
      return `${why.element} cannot follow as far`;
    case "unheld":
      return "nothing holds the car against a further movement there";
    case "not-found":
      return "no position was found in which all forces balance";
  }
}
