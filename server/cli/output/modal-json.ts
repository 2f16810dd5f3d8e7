/** The whole car's stiffness and damping for a machine: part of `schema/rates.json`. */
import type { BodyFigures, CarModal, ModalFigures } from "../../analyses/results.js";
import { isAbsent } from "../../views/figures.js";
import type { ShowUnit } from "../../views/units-of-car.js";
import { absence, quantity } from "./json.js";

interface Units {
  /** Force for each travel, and moment for each radian. */
  readonly straight: string;
  readonly turning: string;
  /** Force for each radian. */
  readonly across: string;
}

export function modalJson(modal: CarModal, unit: ShowUnit): object {
  const force = unit("force");
  const stiffness = { straight: unit("rate"), turning: unit("torsional-rate"), across: `${force}/rad` };
  const damping = { straight: unit("damping"), turning: unit("torsional-damping"), across: `${force}*s/rad` };
  return {
    wheels: matrix(modal.wheels, stiffness.straight),
    springs: figures(modal.springs, stiffness),
    withTyres: figures(modal.withTyres, stiffness),
    damping: figures(modal.damping, damping),
    shares: modal.shares.map(({ path, ...modes }) => ({
      path,
      heave: quantity(modes.heave, stiffness.straight),
      pitch: quantity(modes.pitch, stiffness.straight),
      roll: quantity(modes.roll, stiffness.straight),
      warp: quantity(modes.warp, stiffness.straight),
    })),
  };
}

const figures = ({ patterns, body }: ModalFigures, units: Units): object => ({
  patterns: matrix(patterns, units.straight),
  body: bodyJson(body, units),
});

const matrix = (of: ModalFigures["patterns"], unit: string): object =>
  isAbsent(of) ? absence(of) : of.map((row) => row.map((value) => quantity(value, unit)));

const bodyJson = (body: BodyFigures, { straight, turning, across }: Units): object => ({
  heave: quantity(body.heave, straight),
  pitch: quantity(body.pitch, turning),
  roll: quantity(body.roll, turning),
  heavePitch: quantity(body.heavePitch, across),
  heaveRoll: quantity(body.heaveRoll, across),
  pitchRoll: quantity(body.pitchRoll, turning),
});
