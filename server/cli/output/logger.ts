/** Logged channels for machines: JSON, whose form is described by `schema/logger.json`, and CSV, a row for each reading. */
import type { CheckedCar } from "../../findings/context.js";
import { isAbsent } from "../../views/figures.js";
import type { CheckedPairs } from "../../views/logger/check-pairs.js";
import { loggedChannel, type LoggedCurve, type LoggerAsked } from "../../views/logger/logged.js";
import { csv } from "./csv.js";
import { absence, json, rounded } from "./json.js";

export function loggerJson(car: CheckedCar, asked: LoggerAsked): string {
  const logged = loggedChannel(car, asked);
  return json({
    ...headOf(car, asked),
    ...(isAbsent(logged)
      ? absence(logged)
      : { curves: logged.curves.map((curve) => (isAbsent(curve) ? absence(curve) : curveJson(curve))) }),
  });
}

const headOf = ({ model }: CheckedCar, { axle, channel, zero, reads }: LoggerAsked): object => ({
  car: model.name,
  setup: model.setup ?? null,
  axle,
  channel,
  zero,
  reads,
});

function curveJson({ side, gives, channelUnit, unit, rows, polynomial, curve }: LoggedCurve): object {
  return {
    side: side ?? null,
    gives,
    channelUnit,
    unit,
    isCut: curve.isCut,
    table: rows.map(({ channel, motion }) => [rounded(channel), rounded(motion)]),
    polynomial: isAbsent(polynomial)
      ? absence(polynomial)
      : {
          degree: polynomial.degree,
          coefficients: polynomial.coefficients.map(rounded),
          largestError: rounded(polynomial.largestError),
        },
  };
}

export function loggerCsv(car: CheckedCar, asked: LoggerAsked): string {
  const logged = loggedChannel(car, asked);
  const curves = isAbsent(logged) ? [] : logged.curves.filter((one): one is LoggedCurve => !isAbsent(one));
  return csv([
    ["of", "channel", "channel unit", "gives", "value", "unit"],
    ...curves.flatMap(({ side, gives, channelUnit, unit, rows }) =>
      rows.map(({ channel, motion }) => [
        side ?? asked.axle,
        rounded(channel),
        channelUnit,
        gives,
        rounded(motion),
        unit,
      ]),
    ),
  ]);
}

export function pairsJson(car: CheckedCar, asked: LoggerAsked, pairs: readonly CheckedPairs[]): string {
  return json({
    ...headOf(car, asked),
    checks: pairs.map(({ curve, rows, rms, worst, offset, scale, left, likely }) => ({
      side: curve.side ?? null,
      gives: curve.gives,
      channelUnit: curve.channelUnit,
      unit: curve.unit,
      rms: rounded(rms),
      worst: { line: worst.line, off: rounded(worst.measured - worst.predicted) },
      offset: rounded(offset),
      scale: rounded(scale),
      left: rounded(left),
      likely,
      rows: rows.map(({ line, motion, measured, predicted }) => ({
        line,
        motion: rounded(motion),
        measured: rounded(measured),
        predicted: rounded(predicted),
      })),
    })),
  });
}

export const pairsCsv = (pairs: readonly CheckedPairs[]): string =>
  csv([
    ["of", "line", "motion", "unit", "measured", "predicted", "channel unit"],
    ...pairs.flatMap(({ curve, rows }) =>
      rows.map(({ line, motion, measured, predicted }) => [
        curve.side ?? "axle",
        line,
        rounded(motion),
        curve.unit,
        rounded(measured),
        rounded(predicted),
        curve.channelUnit,
      ]),
    ),
  ]);
