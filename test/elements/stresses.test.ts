/** Stresses of coils, bars and blades against published values and closed forms. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { antiRollBarRate, bladeStress, teeRate } from "../../server/elements/laws/anti-roll-bar.js";
import { coilStress, curvatureFactor, wahlFactor } from "../../server/elements/laws/coil.js";
import { torsionBarRate, torsionBarStress } from "../../server/elements/laws/torsion-bar.js";
import { expectClose } from "../support/approx.js";
import { BOOK_ROUNDING, CLOSED_FORM, IDENTITY, PRINTED_SIX } from "../support/tolerances.js";

const INCH = 0.0254;
const POUND_FORCE = 4.4482216152605;
const DEGREE = Math.PI / 180;

describe("shear stress of a coil", () => {
  it("SPR-1: Budynas & Nisbett, Shigley's Mechanical Engineering Design, Example 10-1 (value from memory)", () => {
    const coil = { wire: 0.037 * INCH, mean: 0.4005 * INCH };
    expectClose(curvatureFactor(coil), 1.12407780013, CLOSED_FORM);
    expectClose(curvatureFactor(coil), 1.124, BOOK_ROUNDING);
    // Yields at 145 887.9 psi, which is 6.446 lbf.
    const psi = POUND_FORCE / INCH ** 2;
    expectClose((coilStress(coil) * 6.44592855874 * POUND_FORCE) / psi, 145887.91625, CLOSED_FORM);
  });

  it("SPR-2: Bhandari, Design of Machine Elements, Example 10.1 (published), which takes Wahl's factor", () => {
    const coil = { wire: 0.007, mean: 0.042 };
    expectClose(wahlFactor(coil), 1.2525, PRINTED_SIX);
    const stress = (coilStress(coil) * 1250 * wahlFactor(coil)) / curvatureFactor(coil);
    expectClose(stress, 488.183427484e6, PRINTED_SIX);
  });

  it("SPR-4: EN 13906-1 form (formula from memory, own numbers)", () => {
    const coil = { wire: 0.012, mean: 0.062 };
    expectClose(curvatureFactor(coil), 1.28301886792, CLOSED_FORM);
    expectClose(coilStress(coil) * 6000, 703.351404691e6, CLOSED_FORM);
    expectClose((coilStress(coil) * 6000) / curvatureFactor(coil), 548.200359539e6, CLOSED_FORM);
    expectClose(wahlFactor(coil), 1.29903225806, CLOSED_FORM);
  });

  it("is Bergsträsser's factor in other words, and below Wahl's for every coil that can be wound", () => {
    fc.assert(
      fc.property(fc.double({ min: 3, max: 20, noNaN: true }), (w) => {
        const coil = { wire: 0.01, mean: 0.01 * w };
        expectClose(curvatureFactor(coil), (4 * w + 2) / (4 * w - 3), IDENTITY);
        expect(curvatureFactor(coil)).toBeLessThan(wahlFactor(coil));
        expect(curvatureFactor(coil)).toBeGreaterThan(1);
      }),
    );
  });
});

describe("shear stress of a torsion bar (DIN 2091, formula from memory, own numbers)", () => {
  it("TB-1 solid, TB-2 bored", () => {
    expectClose(torsionBarStress({ diameter: 0.024, bore: 0 }) * 1200, 442.097064144e6, CLOSED_FORM);
    expectClose(torsionBarStress({ diameter: 0.03, bore: 0.022 }) * 1200, 318.451420148e6, CLOSED_FORM);
    const rate = torsionBarRate({ diameter: 0.024, bore: 0, length: 0.8, shearModulus: 78500e6 });
    expectClose(1200 / rate / DEGREE, 21.5119285865, CLOSED_FORM);
  });

  it("is G r/L for each radian of twist", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.05, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        (diameter, share) => {
          const bar = { diameter, bore: share * diameter, length: 0.4, shearModulus: 79.3e9 };
          const perRadian = torsionBarStress(bar) * torsionBarRate(bar);
          expectClose(perRadian, (79.3e9 * diameter) / 2 / 0.4, IDENTITY);
        },
      ),
    );
  });
});

describe("anti-roll bar ARB-3 (beam theory, own numbers)", () => {
  const arm = 0.12;
  const blade = (angle: number) => ({ section: [0.008, 0.03] as const, length: arm, modulus: 206e9, angle });
  /** At 1 deg of roll. */
  const tipForce = 1875.4609961;

  it("tube and lever root at 1 degree of roll", () => {
    const torque = tipForce * arm;
    expectClose(torque, 225.055319531, CLOSED_FORM);
    expectClose(torsionBarStress({ diameter: 0.022, bore: 0.016 }) * torque, 149.456740559e6, CLOSED_FORM);
    expectClose(bladeStress(blade(90 * DEGREE)) * tipForce, 187.54609961e6, CLOSED_FORM);
  });

  it("a turned blade is stressed by both bendings: that of a rectangle at its corner", () => {
    const [t, h, l] = [0.008, 0.03, arm];
    for (const angle of [0, 20 * DEGREE, 45 * DEGREE, 90 * DEGREE]) {
      // Moments about both axes of the section at the corner (h/2, t/2), by second moments of area.
      const stiff = (l * Math.sin(angle) * (h / 2)) / ((t * h ** 3) / 12);
      const soft = (l * Math.cos(angle) * (t / 2)) / ((h * t ** 3) / 12);
      expectClose(bladeStress(blade(angle)), stiff + soft, CLOSED_FORM);
    }
  });

  it("a T turned against its foot is half as far from end to end as two levers of one rate against each other", () => {
    // Both ends deflect by F (2a²/k_T + l³/(3EI)) for the stem, F (a²/(2k_T) + l³/(3EI)) for the tube.
    const [k, i] = [1500, 18000e-12];
    const bend = arm ** 3 / (3 * 206e9 * i);
    expectClose(teeRate(k, arm, blade(90 * DEGREE)), (2 * arm ** 2) / ((2 * arm ** 2) / k + bend), CLOSED_FORM);
    expectClose(teeRate(k, arm, undefined), k, CLOSED_FORM);
    const tube = antiRollBarRate(k, [arm, arm], blade(90 * DEGREE));
    expectClose(tube, arm ** 2 / 2 / (arm ** 2 / (2 * k) + bend), CLOSED_FORM);
  });
});
