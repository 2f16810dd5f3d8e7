/** The whole car's stiffness against published matrices, closed forms, differences of energy, and identities. */
import { describe, expect, it } from "vitest";
import { analyseAxle } from "../../server/analyses/analyse-axle.js";
import { analyseCar, type CarQuestion } from "../../server/analyses/analyse-car.js";
import { bodyMotions } from "../../server/analyses/car-motions.js";
import type { BodyFigures, CarAnalysis, CarModal, ModalFigures } from "../../server/analyses/results.js";
import type { AxleMechanism } from "../../server/elements/mechanism.js";
import { CAR_MODES, PATTERNS } from "../../server/elements/patterns.js";
import { expectClose } from "../support/approx.js";
import { BOOK_FIVE, BOOK_ROUNDING, CLOSED_FORM, IDENTITY } from "../support/tolerances.js";
import { axleOfRates, type AxleOfRates } from "../support/two-axles.js";
import { number, reason } from "../support/written-car.js";

const analysed = (
  front: AxleMechanism | undefined,
  rear: AxleMechanism | undefined,
  more: Omit<Partial<CarQuestion<AxleMechanism>>, "axles"> = {},
): CarAnalysis => analyseCar({ axles: { front, rear }, expectations: [], ...more }, analyseAxle);

/** @param a @param b distances of the axles before and behind the centre of gravity, m */
function modalOf(front: AxleOfRates, rear: AxleOfRates, a: number, b: number): CarModal {
  return analysed(axleOfRates("front", front), axleOfRates("rear", rear), {
    wheelbase: { value: a + b },
    massFront: { value: b / (a + b) },
  }).modal;
}

const rows = (matrix: ModalFigures["patterns"]): readonly (readonly number[])[] => {
  if ("kind" in matrix) throw new Error(matrix.reason);
  return matrix;
};

describe("MOD-1, wheel patterns (Hadamard modes; from memory)", () => {
  const z = [12, -4, 7, 3];
  const amplitudes = CAR_MODES.map((mode) =>
    PATTERNS[mode].reduce((sum, sign, i) => sum + (sign * (z[i] ?? 0)) / 4, 0),
  );

  it("takes travels apart", () => {
    expect(CAR_MODES.map((mode, i) => [mode, amplitudes[i]])).toEqual([
      ["heave", 4.5],
      ["pitch", -0.5],
      ["roll", -5],
      ["warp", -3],
    ]);
  });

  it("and puts them together again", () => {
    const again = z.map((_, i) =>
      CAR_MODES.reduce((sum, mode, m) => sum + (PATTERNS[mode][i] ?? 0) * (amplitudes[m] ?? 0), 0),
    );
    expect(again).toEqual(z);
  });
});

describe("MOD-2, the body's own motions (own numbers): attitude has the opposite sign of the plane of the wheels", () => {
  it("gives the axles' mean travels and differences back", () => {
    const { heave, pitch, roll } = bodyMotions({
      wheelbase: 2.7,
      massFront: 1.45 / 2.7,
      tracks: { front: 1.52, rear: 1.5 },
    });
    if ("kind" in pitch || "kind" in roll) throw new Error("absent");
    const nose = (-0.0212206590789 * Math.PI) / 180;
    const at = (wheel: number, phi: number): number =>
      4.46296296296e-3 * (heave[wheel] ?? NaN) + nose * (pitch[wheel] ?? NaN) - phi * (roll[wheel] ?? NaN);
    const travels = [at(0, 0.0105263157895), at(1, 0.0105263157895), at(2, 0.00266666666667), at(3, 0.00266666666667)];
    for (const [i, expected] of [0.012, -0.004, 0.007, 0.003].entries())
      expectClose(travels[i] ?? NaN, expected, CLOSED_FORM);
  });

  it("says what it lacks", () => {
    const bare = bodyMotions({ wheelbase: undefined, massFront: 0.5, tracks: { front: 1.5, rear: undefined } });
    expect(reason(bare.pitch)).toBe("the car has no wheelbase");
    expect(reason(bare.roll)).toBe("the rear axle has no track");
    const mass = bodyMotions({ wheelbase: 2.5, massFront: undefined, tracks: { front: 1.5, rear: 1.5 } });
    expect(reason(mass.pitch)).toMatch(/no mass-front/);
  });
});

/** Frequencies in rad/s of heave and pitch on the body's own stiffness, lower first. */
function frequencies(body: BodyFigures, mass: number, gyration: number): readonly [number, number] {
  const k = number(body.heave) / mass;
  const c = number(body.heavePitch) / mass;
  const p = number(body.pitch) / (mass * gyration ** 2);
  const root = Math.sqrt(((k - p) / 2) ** 2 + (c * c) / gyration ** 2);
  return [Math.sqrt((k + p) / 2 - root), Math.sqrt((k + p) / 2 + root)];
}

describe("about the centre of gravity: K = [[k_f + k_r, k_f a − k_r b], [·, k_f a² + k_r b²]]", () => {
  const bounce = (kf: number, kr: number, a: number, b: number) =>
    modalOf({ wheelRate: kf / 2, track: 1.5 }, { wheelRate: kr / 2, track: 1.5 }, a, b).springs.body;

  it("BP-1, S. S. Rao, Mechanical Vibrations, Example 5.7 (inputs seen, answers from memory)", () => {
    const body = bounce(18e3, 22e3, 1, 1.5);
    expectClose(number(body.heave), 40e3, CLOSED_FORM);
    expectClose(number(body.pitch), 18e3 + 22e3 * 2.25, CLOSED_FORM);
    expectClose(number(body.heavePitch), 18e3 - 22e3 * 1.5, CLOSED_FORM);
    const [low, high] = frequencies(body, 1000, 0.9);
    expectClose(low, 5.8593, BOOK_FIVE);
    expectClose(high, 9.4341, BOOK_FIVE);
  });

  it("BP-4, J. Y. Wong, Theory of Ground Vehicles, ch. 7 (from memory)", () => {
    const body = bounce(35e3, 38e3, 1.267, 1.548);
    expectClose(number(body.heave) / 2120, 34.43, BOOK_ROUNDING);
    expectClose(-number(body.heavePitch) / 2120, 6.83, BOOK_ROUNDING);
    expectClose(number(body.pitch) / (2120 * 1.33 ** 2), 39.26, BOOK_ROUNDING);
    const [low, high] = frequencies(body, 2120, 1.33);
    expectClose(low, 5.58341010496, CLOSED_FORM);
    expectClose(high, 6.52104488563, CLOSED_FORM);
  });

  it("BP-6, dynamic index 1: each axle swings by itself (Olley; derived)", () => {
    const [low, high] = frequencies(bounce(45e3, 52e3, 1.25, 1.45), 1200, Math.sqrt(1.25 * 1.45));
    expectClose(low, Math.sqrt((45e3 * 2.7) / (1200 * 1.45)), CLOSED_FORM);
    expectClose(high, Math.sqrt((52e3 * 2.7) / (1200 * 1.25)), CLOSED_FORM);
  });
});

describe("CAR7, the body's block of the seven-freedom car (own numbers, model of any text)", () => {
  const front = { wheelRate: 30e3, cross: 9e3, track: 1.52 };
  const rear = { wheelRate: 32e3, cross: 4e3, track: 1.5 };
  const modal = modalOf(front, rear, 1.25, 1.45);
  const { springs, withTyres } = modal;

  it("has its heave, pitch, roll and couplings; heave is positive down here", () => {
    expectClose(number(springs.body.heave), 124000, CLOSED_FORM);
    expectClose(number(springs.body.pitch), 228310, CLOSED_FORM);
    expectClose(number(springs.body.roll), 55449.6 + 45000, CLOSED_FORM);
    expectClose(number(springs.body.heavePitch), -17800, CLOSED_FORM);
    expect([springs.body.heaveRoll, springs.body.pitchRoll]).toEqual([0, 0]);
  });

  it("has wheel rates k + k_b, and −k_b across", () => {
    const wheels = rows(modal.wheels);
    expectClose(wheels[0]?.[0] ?? NaN, 39e3, CLOSED_FORM);
    expectClose(wheels[0]?.[1] ?? NaN, -9e3, CLOSED_FORM);
    expectClose(wheels[3]?.[3] ?? NaN, 36e3, CLOSED_FORM);
    expect(wheels[0]?.[2]).toBe(0);
  });

  it("with tyres in series, each axle in heave and in roll for itself", () => {
    const series = (k: number): number => (k * 220e3) / (k + 220e3);
    expectClose(number(withTyres.body.heave), 2 * series(30e3) + 2 * series(32e3), CLOSED_FORM);
    const roll = (k: number, t: number): number => (series(k) * t * t) / 2;
    expectClose(number(withTyres.body.roll), roll(48e3, 1.52) + roll(40e3, 1.5), CLOSED_FORM);
  });

  it("decouples heave and pitch from roll and warp, since it is symmetric", () => {
    for (const { patterns } of [springs, withTyres]) {
      const k = rows(patterns);
      for (const [i, j] of [
        [0, 2],
        [0, 3],
        [1, 2],
        [1, 3],
      ] as const) {
        expect(k[i]?.[j]).toBe(0);
        expect(k[j]?.[i]).toBe(0);
      }
      expect(k[0]?.[1]).not.toBe(0);
    }
  });

  it("has heave and pitch patterns of both axles' sum and their coupling of the difference", () => {
    const k = rows(springs.patterns);
    expectClose(k[0]?.[0] ?? NaN, 2 * 30e3 + 2 * 32e3, CLOSED_FORM);
    expectClose(k[1]?.[1] ?? NaN, 2 * 30e3 + 2 * 32e3, CLOSED_FORM);
    expectClose(k[0]?.[1] ?? NaN, 2 * 30e3 - 2 * 32e3, CLOSED_FORM);
    expectClose(k[2]?.[2] ?? NaN, 2 * 48e3 + 2 * 40e3, CLOSED_FORM);
  });

  it("keeps the sum of wheel rates: the patterns' trace is four times theirs, their sums the shares'", () => {
    const k = rows(springs.patterns);
    const trace = (matrix: readonly (readonly number[])[]): number =>
      matrix.reduce((sum, row, i) => sum + (row[i] ?? 0), 0);
    expectClose(trace(k), 4 * trace(rows(modal.wheels)), IDENTITY);
    for (const [i, mode] of CAR_MODES.entries()) {
      expectClose(
        modal.shares.reduce((sum, share) => sum + share[mode], 0),
        k[i]?.[i] ?? NaN,
        IDENTITY,
      );
    }
    expect(modal.shares.map(({ path }) => path)).toEqual(["front", "rear"]);
  });
});

describe("figures that are not to be had say why", () => {
  const front = axleOfRates("front", { wheelRate: 30e3, track: 1.5 });
  const rear = axleOfRates("rear", { wheelRate: 30e3, track: 1.5 });

  it("one axle only", () => {
    const { modal } = analysed(front, undefined);
    expect(reason(modal.springs.patterns)).toBe("the car has one axle only");
    expect(reason(modal.damping.body.heave)).toBe("the car has one axle only");
    expect(modal.shares).toEqual([]);
  });

  it("no tyres, no wheelbase, an axle without its rate", () => {
    const bare = { left: { unsprungMass: 18, tyreRate: undefined }, right: { unsprungMass: 18, tyreRate: undefined } };
    const { modal } = analysed(front, { ...rear, wheels: bare });
    expect(reason(modal.withTyres.patterns)).toBe("the rear wheels have no tyre-rate");
    expect(reason(modal.springs.body.pitch)).toBe("the car has no wheelbase");
    expect(number(modal.springs.body.heave)).toBeGreaterThan(0);
    const [side] = front.elements;
    if (side === undefined) throw new Error("no spring");
    const lawless = { ...side, law: undefined, lawMissing: "it has no rate" };
    expect(reason(analysed({ ...front, elements: [lawless] }, rear).modal.wheels)).toMatch(
      /takes part and it has no rate/,
    );
  });

  it("tyres exactly as stiff as springs are negative", () => {
    const loose = axleOfRates("front", { wheelRate: -220e3, track: 1.5 });
    const { modal } = analysed(loose, rear);
    expect(reason(modal.withTyres.patterns)).toMatch(/cancel each other/);
  });
});
