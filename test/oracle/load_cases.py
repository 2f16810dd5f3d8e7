"""Independent equilibria of the sample car in its load cases, written to test/data/quill-load-cases.json.

Run:   cd test/oracle && python3 load_cases.py
Needs: Python 3.10 or later with NumPy, SciPy and mpmath. Not part of `npm test`: the tests read the JSON.

In:  quill-front-points.json, quill-rear-points.json, and the air and cases below (the same numbers
     as in samples/quill/quill.crank).
Out: ride heights, attitude, wheel travels and loads in each case.

Nothing here comes from the TypeScript. Joints are found from the constraint equations (mechanism.py)
and interpolated over travel by Chebyshev polynomials; velocities are differences of positions. The
forces on the whole car and their moments are summed with cross products in the road's frame, each
wheel's travel gives one equation of virtual work, and scipy.optimize.root (hybr) solves the seven.
The seats are those of the axles' own trim; what they leave over at rest with the rake of the car is
set right on the flat patch, as a mechanic does. SI; x forward, y left, z up.
"""

import json
import pathlib

import mpmath as mp
import numpy as np
from numpy.polynomial import Chebyshev
from scipy.optimize import root
from scipy.spatial.transform import Rotation

from axle import Axle

HERE = pathlib.Path(__file__).parent
OUT = HERE.parent / "data" / "quill-load-cases.json"
G = 9.80665
DENSITY = 101325 / (287.05287 * 288.15)
AIR = {
    "front": 0.85, "rear": 1.2,
    "front_by_front": -6.0, "front_by_rear": 2.0, "rear_by_front": 0.0, "rear_by_rear": 0.0,  # m^2/m
    "drag": 0.95, "drag_height": 0.46,
}
CASES = {
    "top-speed": {"speed": 195 / 3.6, "lateral": 0.0, "longitudinal": 0.0},
    "hairpin": {"speed": 70 / 3.6, "lateral": 1.5 * G, "longitudinal": 0.0},
    "braking": {"speed": 180 / 3.6, "lateral": 0.0, "longitudinal": -1.7 * G},
    "trail-braking": {"speed": 100 / 3.6, "lateral": -0.9 * G, "longitudinal": -0.8 * G},
}
NODES = 22
LOW, HIGH = -32.0, 27.0
STEP = 1e-6  # m, for velocities


class Side:
    """Everything that follows one left wheel's travel, as polynomials; SI."""

    def __init__(self, axle):
        nodes = 0.5 * (LOW + HIGH) + 0.5 * (HIGH - LOW) * np.cos(np.pi * (np.arange(NODES) + 0.5) / NODES)
        rows = [axle.corner.at(mp.mpf(float(z))) for z in nodes]
        fit = lambda values: Chebyshev.fit(nodes * 1e-3, values, NODES - 1, domain=[LOW * 1e-3, HIGH * 1e-3])
        points = lambda of: [fit([float(of(r)[i]) * 1e-3 for r in rows]) for i in range(3)]
        self.contact = points(lambda r: r["contact"])
        self.centre = points(lambda r: r["centre"])
        self.third = points(lambda r: r["eyes"]["third"])
        self.rocker = fit([float(r["rocker"]) for r in rows])
        self.lever = fit([float(r["lever"]) for r in rows])

    def at(self, which, z):
        return np.array([f(z) for f in getattr(self, which)])


class End:
    """One axle: its two sides, springs and masses."""

    def __init__(self, path, name):
        data = json.loads(path.read_text())
        axle = Axle(data)
        axle.trim()
        self.name, self.side = name, Side(axle)
        wheel, car = data["wheel"], data["car"]
        share = car["mass_front_percent"] / 100
        self.mass = car["mass"] * (share if name == "front" else 1 - share)
        self.tyre, self.unsprung = wheel["tyre_rate"] * 1e3, wheel["unsprung_mass"]
        self.height = data["ride_height"] * 1e-3
        self.load = self.mass * G / 2
        self.line = wheel["centre"][0] * 1e-3
        rate, seat = {n: float(axle.rate(n)) for n in axle.elements}, {n: float(s) for n, s in axle.seats.items()}
        self.bar, self.bar_seat = rate["corner-bar"] * 1e-3, seat["corner-bar"]
        self.third, self.third_seat = rate["third"] * 1e3, seat["third"] * 1e-3
        self.roll_bar = rate["bar"] * 1e-3
        self.third_length = self.length(0.0, 0.0)

    def length(self, left, right):
        return np.linalg.norm(self.side.at("third", left) - self.side.at("third", right) * [1, -1, 1])

    def elements(self, left, right):
        """Forces of springs and bars, as pairs (force, deflection at the travels)."""
        s = self.side
        third = lambda l, r: self.third_length - self.length(l, r)
        return [
            (self.bar * (s.rocker(left) + self.bar_seat), lambda l, r: s.rocker(l)),
            (self.bar * (s.rocker(right) + self.bar_seat), lambda l, r: s.rocker(r)),
            (max(0.0, self.third * (third(left, right) + self.third_seat)), third),
            (self.roll_bar * (s.lever(left) - s.lever(right)), lambda l, r: s.lever(l) - s.lever(r)),
        ]


def slope(f, z):
    return (f(z + STEP) - f(z - STEP)) / (2 * STEP)


class Car:
    def __init__(self):
        self.ends = [End(HERE / f"quill-{n}-points.json", n) for n in ("front", "rear")]
        data = json.loads((HERE / "quill-front-points.json").read_text())["car"]
        self.mass, self.cg_height, self.bias = data["mass"], data["cg_height"] * 1e-3, data["brakes_front_percent"] / 100
        front, rear = self.ends
        self.rake = np.arcsin((rear.height - front.height) / (front.line - rear.line))
        # Reference point of the body, on z = 0 between the axles, and its height.
        self.o = np.array([0.5 * (front.line + rear.line), 0, 0])
        self.rest = np.array([0.5 * (front.height + rear.height), 0, self.rake, 0, 0, 0, 0])
        place = self.places(self.rest)
        loads = np.array([front.load, front.load, rear.load, rear.load])
        self.rest_contact = [p["contact"][2] for p in place]
        x = sum(n * p["contact"][0] for n, p in zip(loads, place)) / loads.sum()
        cg = np.array([x, 0, self.cg_height])
        unsprung = [front.unsprung] * 2 + [rear.unsprung] * 2
        self.unsprung = unsprung
        self.sprung = self.mass - sum(unsprung)
        cg_sprung = (self.mass * cg - sum(m * p["centre"] for m, p in zip(unsprung, place))) / self.sprung
        body = self.turn(self.rest).inv()
        self.cg_sprung = body.apply(cg_sprung - [0, 0, self.rest[0]])
        self.drag_at = body.apply([x, 0, AIR["drag_height"] - self.rest[0]])
        ahead, behind = place[0]["contact"][0], place[2]["contact"][0]
        self.front_share = (x - behind) / (ahead - behind)
        self.left_over = np.zeros(7)
        self.left_over = -self.residual(self.rest, {"speed": 0.0, "lateral": 0.0, "longitudinal": 0.0})
        self.left_over[:3] = 0

    @staticmethod
    def turn(q):
        return Rotation.from_euler("xy", [q[1], q[2]])  # extrinsic: about x first, then about the road's y

    def place(self, q, i, z):
        end, sign = self.ends[i // 2], (1 if i % 2 == 0 else -1)
        on_road = lambda which: self.turn(q).apply(end.side.at(which, z) * [1, sign, 1] - self.o) + [0, 0, q[0]]
        return {"contact": on_road("contact"), "centre": on_road("centre")}

    def places(self, q):
        return [self.place(q, i, q[3 + i]) for i in range(4)]

    def line_points(self, q):
        return [self.turn(q).apply(np.array([e.line, 0, 0]) - self.o) + [0, 0, q[0]] for e in self.ends]

    def residual(self, q, case):
        pressure = 0.5 * DENSITY * case["speed"] ** 2
        body = np.array([-case["longitudinal"], -case["lateral"], -G])
        places = self.places(q)
        lines = self.line_points(q)
        h = [p[2] - e.height for p, e in zip(lines, self.ends)]
        area = [
            AIR["front"] + AIR["front_by_front"] * h[0] + AIR["front_by_rear"] * h[1],
            AIR["rear"] + AIR["rear_by_front"] * h[0] + AIR["rear_by_rear"] * h[1],
        ]
        drag = pressure * AIR["drag"]
        loads = [
            max(0.0, self.ends[i // 2].load - self.ends[i // 2].tyre * (places[i]["contact"][2] - self.rest_contact[i]))
            for i in range(4)
        ]
        across = self.mass * case["lateral"]
        along = self.mass * case["longitudinal"] + drag
        braking = along < 0
        forces = []
        for i in range(4):
            front = i < 2
            both = loads[i] + loads[i ^ 1]
            lateral = across * (self.front_share if front else 1 - self.front_share) * loads[i] / both
            part = (self.bias if front else 1 - self.bias) if braking else (0.0 if front else 1.0)
            forces.append(np.array([along * part / 2, lateral, loads[i]]))
        o = np.array([0, 0, q[0]])
        force, moment = np.zeros(3), np.zeros(3)

        def add(f, at):
            nonlocal force, moment
            force, moment = force + f, moment + np.cross(at - o, f)

        for f, p in zip(forces, places):
            add(f, np.array([p["contact"][0], p["contact"][1], 0.0]))
        for m, p in zip(self.unsprung, places):
            add(m * body, p["centre"])
        turned = self.turn(q)
        add(self.sprung * body, turned.apply(self.cg_sprung) + o)
        for a, p in zip(area, lines):
            add(np.array([0, 0, -pressure * a]), p)
        add(np.array([-drag, 0, 0]), turned.apply(self.drag_at) + o)
        result = [force[2], moment[0], moment[1]]
        for i in range(4):
            z = q[3 + i]
            contact = slope(lambda t: self.place(q, i, t)["contact"], z)
            centre = slope(lambda t: self.place(q, i, t)["centre"], z)
            push = contact if braking else centre  # outboard brakes; drive by shafts
            f = forces[i]
            work = f[2] * contact[2] + f[1] * contact[1] + f[0] * push[0] + self.unsprung[i] * body @ centre
            left, right = (z, q[3 + (i ^ 1)]) if i % 2 == 0 else (q[3 + (i ^ 1)], z)
            for strength, s in self.ends[i // 2].elements(left, right):
                moved = (lambda t: s(t, right)) if i % 2 == 0 else (lambda t: s(left, t))
                work -= strength * slope(moved, z)
            result.append(work)
        return np.array(result) + self.left_over

    def solve(self, case):
        scale = np.array([1, 1, 1, 1, 1, 1, 1.0])
        found = root(lambda q: self.residual(q, case) / scale, self.rest, method="hybr", tol=1e-13)
        worst = np.abs(self.residual(found.x, case)).max()
        if worst > 1e-5:
            raise ArithmeticError(f"residual {worst}: {found.message}")
        return found.x, worst


def main():
    car = Car()
    out = {"about": "Equilibria of the Quill by load_cases.py; SI, wheels FL, FR, RL, RR.", "cases": {}}
    for name, case in CASES.items():
        q, worst = car.solve(case)
        places, lines = car.places(q), car.line_points(q)
        loads = [
            max(0.0, car.ends[i // 2].load - car.ends[i // 2].tyre * (places[i]["contact"][2] - car.rest_contact[i]))
            for i in range(4)
        ]
        out["cases"][name] = {
            **case,
            "residual": worst,
            "ride_heights": [float(p[2]) for p in lines],
            "roll": float(q[1]),
            "pitch": float(q[2] - car.rake),
            "travels": [float(z) for z in q[3:]],
            "loads": [float(n) for n in loads],
        }
    OUT.write_text(json.dumps(out, indent=2) + "\n")
    print(json.dumps(out, indent=1))


if __name__ == "__main__":
    main()
