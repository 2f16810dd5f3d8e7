/** Vector identities, on random vectors. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { add, cross, distance, dot, mirror, norm, scale, sub, unit, type Vec3 } from "../../server/maths/vec3.js";
import { CLOSED_FORM } from "../support/tolerances.js";

const number = fc.double({ min: -10, max: 10, noNaN: true });
const vector: fc.Arbitrary<Vec3> = fc.tuple(number, number, number);

describe("vectors", () => {
  it("obey the identities of Lagrange and Jacobi", () => {
    fc.assert(
      fc.property(vector, vector, vector, (a, b, c) => {
        const lagrange = dot(cross(a, b), cross(a, b)) - (dot(a, a) * dot(b, b) - dot(a, b) ** 2);
        expect(Math.abs(lagrange)).toBeLessThan(CLOSED_FORM * 1e5);
        const jacobi = add(add(cross(a, cross(b, c)), cross(b, cross(c, a))), cross(c, cross(a, b)));
        expect(norm(jacobi)).toBeLessThan(CLOSED_FORM * 1e3);
      }),
    );
  });

  it("turn right-handed: forward × left = up", () => {
    expect(cross([1, 0, 0], [0, 1, 0])).toEqual([0, 0, 1]);
  });

  it("mirror in the centre plane, which turns every cross product round", () => {
    fc.assert(
      fc.property(vector, vector, (a, b) => {
        expect(mirror(mirror(a))).toEqual(a);
        expect(distance(mirror(a), mirror(b))).toBe(distance(a, b));
        expect(norm(add(mirror(cross(a, b)), cross(mirror(a), mirror(b))))).toBeLessThan(CLOSED_FORM);
      }),
    );
  });

  it("have a direction, except the zero vector", () => {
    expect(unit([0, 0, 0])).toEqual([0, 0, 0]);
    fc.assert(
      fc.property(vector, (a) => {
        fc.pre(norm(a) > 1e-6);
        expect(norm(unit(a))).toBeCloseTo(1, 14);
        expect(norm(sub(scale(unit(a), norm(a)), a))).toBeLessThan(CLOSED_FORM);
      }),
    );
  });
});
