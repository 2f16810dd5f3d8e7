/** Logged channels as tables of text: what to type into a logger's channel maths, and over which stretch it holds. */
import { showNumber, showQuantity } from "../../quantities/index.js";
import type { CheckedCar } from "../../findings/context.js";
import { titleOf } from "../car-title.js";
import { isAbsent } from "../figures.js";
import type { RatesPage } from "../rates-page.js";
import { left, right, type Section } from "../section.js";
import { loggedChannel, type LoggedCurve, type LoggerAsked } from "./logged.js";

export function loggerPage(car: CheckedCar, asked: LoggerAsked): RatesPage {
  const title = `${titleOf(car.model)}: ${asked.axle} ${asked.channel}`;
  const logged = loggedChannel(car, asked);
  if (isAbsent(logged)) return { title, sections: [], reasons: [logged.reason] };
  const curves = logged.curves.filter((one): one is LoggedCurve => !isAbsent(one));
  const reasons = logged.curves.flatMap((one) => (isAbsent(one) ? [one.reason] : []));
  const isSided = curves.some(({ side }) => side !== undefined);
  return {
    title,
    sections: onceForBoth(curves).flatMap(([name, curve]) => [polynomialSection(name, curve), tableSection(curve)]),
    reasons,
    notes: [zeroWords(asked), ...(isSided ? [modesWords(car, asked)] : []), ...curves.flatMap(cutWords)],
  };
}

export const nameOf = ({ side, gives }: LoggedCurve): string => (side === undefined ? gives : `${side} wheel ${gives}`);

/** Left and right in one where the axle mirrors itself. */
function onceForBoth(curves: readonly LoggedCurve[]): readonly (readonly [name: string, curve: LoggedCurve])[] {
  const [one, other] = curves;
  const isAlike = other !== undefined && JSON.stringify(one?.rows) === JSON.stringify(other.rows);
  return one !== undefined && isAlike
    ? [["travel of the left wheel, as of the right one,", one]]
    : curves.map((curve) => [nameOf(curve), curve]);
}

function polynomialSection(name: string, curve: LoggedCurve): Section {
  const { polynomial, channelUnit, unit } = curve;
  const title = `${name} in ${unit} from the channel c in ${channelUnit}`;
  if (isAbsent(polynomial)) return { title, columns: [left("")], rows: [[polynomial.reason]] };
  const rows = polynomial.coefficients.map((coefficient, power) => [
    power === 0 ? "constant" : power === 1 ? "c" : `c^${power}`,
    coefficient.toPrecision(8),
  ]);
  return {
    title: `${title}, within ${showNumber(polynomial.largestError, 2)} ${unit}`,
    columns: [left("term"), right("coefficient")],
    rows,
  };
}

function tableSection({ rows, channelUnit, unit, gives }: LoggedCurve): Section {
  return {
    title: "As a table",
    columns: [right(`channel, ${channelUnit}`), right(`${gives}, ${unit}`)],
    rows: rows.map(({ channel, motion }) => [showNumber(channel, 5), showNumber(motion, 5)]),
  };
}

const zeroWords = ({ zero, reads, channel }: LoggerAsked): string => {
  const where = zero === "rest" ? "as the car stands on the flat patch" : "as the linkage is drawn";
  const way =
    reads === "extension"
      ? "grows as it is pulled apart"
      : `grows as ${channel === "rocker" ? "bump turns it" : "it is compressed"}`;
  return `the channel is nought ${where}, and ${way}; travel and heave are counted from there, bump positive`;
};

/** How both sides become modes, with the figures of this axle. */
function modesWords({ model }: CheckedCar, { axle }: LoggerAsked): string {
  const track = model.axles[axle]?.track;
  const roll =
    track === undefined
      ? "roll angle needs the track"
      : `roll angle in rad = (right − left) / ${showQuantity(track.value, track.unit, 6)}, left side up positive`;
  return `heave = (left + right) / 2; ${roll}`;
}

const cutWords = (curve: LoggedCurve): readonly string[] =>
  curve.curve.isCut
    ? [`${nameOf(curve)}: beyond the ends of the table the channel turns round, so that one value means two positions`]
    : [];
