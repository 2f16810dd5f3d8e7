/** The blades of an anti-roll bar from their block. */
import { bladeAngle, type BladeGeometry } from "../elements/laws/anti-roll-bar.js";
import type { ResolvedBlock } from "../model/car.js";
import { type Lawless, lawless } from "./lawless.js";
import { blockOf, numberOf, quantitiesOf } from "./reading.js";

/** Steel, Pa: the vocabulary's fallback for a blade's `modulus`. */
const YOUNGS_MODULUS = 205e9;
const FLAT = 0;
const ON_EDGE = Math.PI / 2;

export function bladeOf(block: ResolvedBlock): BladeGeometry | Lawless | undefined {
  const blade = blockOf(block, "blade");
  if (blade === undefined) return undefined;
  const [thickness, width] = quantitiesOf(blade, "section");
  const [position, of] = quantitiesOf(blade, "position");
  const length = numberOf(blade, "length");
  if (thickness === undefined || width === undefined || length === undefined || position === undefined) {
    return lawless("its blade needs position, section and length");
  }
  if (of === undefined) return lawless("the position of its blade does not say out of how many (`position 3 of 5`)");
  if (!(position.value >= 1 && position.value <= of.value)) {
    return lawless(
      `its blade is at position ${position.value} of ${of.value}, which it has not`,
      true,
      "blade.position",
    );
  }
  return {
    section: [thickness.value, width.value],
    length,
    modulus: numberOf(blade, "modulus") ?? YOUNGS_MODULUS,
    angle: bladeAngle(position.value, of.value, numberOf(blade, "soft") ?? FLAT, numberOf(blade, "stiff") ?? ON_EDGE),
  };
}
