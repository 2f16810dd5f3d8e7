"""Independent figures of linear whole cars, written to test/data/whole-cars.json.

Run:   cd test/oracle && python3 whole_car.py
Needs: Python 3.10 or later with NumPy and SciPy. Not part of `npm test`: the tests read the JSON.

In:  cars made up here (a fixed seed), SI, wheels in the order FL, FR, RL, RR.
Out: eigenvalues (scipy.linalg.eigvals of the generalised first-order problem, the masses never
     inverted), undamped frequencies (scipy.linalg.eigh), mean squares on a random road
     (scipy.integrate.quad over H S H* with the full 4 x 4 cross spectrum of the road), and
     values of x K1(x) (scipy.special).

Nothing here comes from the TypeScript. Body coordinates z up, phi left side up, theta nose down,
of the sprung centre of gravity; its point (x, y) rises by z + y phi - x theta. The air pulls each
axle line down by slopes * (height over the mean of the road below), first order late.
"""

import json
import pathlib

import numpy as np
from scipy import integrate, linalg, special

OUT = pathlib.Path(__file__).parent.parent / "data" / "whole-cars.json"
N0 = 0.1


def mirrored(own, between=0.0):
    return [[own + between, -between], [-between, own + between]]


def axle(track, mass, tyre, stiffness, damping, inertance=0.0, between=0.0, tyre_damping=0.0):
    wheel = {"unsprungMass": mass, "tyreRate": tyre, "tyreDamping": tyre_damping}
    return {
        "track": track,
        "left": wheel,
        "right": dict(wheel),
        "stiffness": mirrored(stiffness, between),
        "damping": mirrored(damping),
        "inertance": mirrored(inertance),
    }


def car7():
    """CAR7 of the check values: invented numbers."""
    return {
        "wheelbase": 2.7,
        "sprung": {"mass": 1200.0, "rollInertia": 450.0, "pitchInertia": 1900.0, "behindFront": 1.25},
        "front": axle(1.52, 40.0, 220e3, 30e3, 2400.0, between=9e3),
        "rear": axle(1.5, 45.0, 220e3, 32e3, 2600.0, between=4e3),
    }


def symmetric_positive(random, size, scale):
    root = random.normal(size=(size, size))
    return (scale * (root @ root.T / size + 0.3 * np.eye(size))).tolist()


def random_car(random, mirror):
    def one_axle():
        if mirror:
            return axle(
                random.uniform(1.2, 1.7),
                random.uniform(12, 45),
                random.uniform(150e3, 300e3),
                random.uniform(30e3, 150e3),
                random.uniform(1.5e3, 6e3),
                inertance=random.uniform(0, 40),
                between=random.uniform(0, 40e3),
                tyre_damping=random.uniform(0, 500),
            )
        wheel = lambda: {
            "unsprungMass": random.uniform(12, 45),
            "tyreRate": random.uniform(150e3, 300e3),
            "tyreDamping": random.uniform(0, 500),
        }
        return {
            "track": random.uniform(1.2, 1.7),
            "left": wheel(),
            "right": wheel(),
            "stiffness": symmetric_positive(random, 2, 60e3),
            "damping": symmetric_positive(random, 2, 3e3),
            "inertance": symmetric_positive(random, 2, 10.0),
        }

    wheelbase = random.uniform(2.3, 3.0)
    car = {
        "wheelbase": wheelbase,
        "sprung": {
            "mass": random.uniform(350, 1300),
            "rollInertia": random.uniform(50, 450),
            "pitchInertia": random.uniform(300, 2000),
            "behindFront": wheelbase * random.uniform(0.42, 0.58),
        },
        "front": one_axle(),
        "rear": one_axle(),
        "rollGravity": random.uniform(500, 3500),
        "air": {
            "slopes": random.uniform(-20e3, 5e3, size=(2, 2)).tolist(),
            "lag": random.choice([0.0, 0.015, 0.05]),
        },
    }
    if not mirror:
        car["sprung"]["left"] = random.uniform(-0.05, 0.05)
        car["cross"] = {
            "stiffness": symmetric_positive(random, 4, 3e3),
            "damping": symmetric_positive(random, 4, 100.0),
            "inertance": symmetric_positive(random, 4, 2.0),
        }
    return car


def wheels_of(car):
    return [car[a][s] for a in ("front", "rear") for s in ("left", "right")]


def matrices(car):
    """M, C, K without air, force of the road's heights and speeds, heights and their road part."""
    sprung = car["sprung"]
    left = sprung.get("left", 0.0)
    travel = np.zeros((4, 7))
    for i in range(4):
        track = car["front" if i < 2 else "rear"]["track"]
        x = sprung["behindFront"] - (0 if i < 2 else car["wheelbase"])
        y = (track / 2 if i % 2 == 0 else -track / 2) - left
        travel[i, :3] = [-1.0, -y, x]
        travel[i, 3 + i] = 1.0

    def wheel_matrix(of):
        whole = linalg.block_diag(np.array(car["front"][of]), np.array(car["rear"][of]))
        return whole + (np.array(car["cross"][of]) if "cross" in car else 0.0)

    own = np.diag([sprung["mass"], sprung["rollInertia"], sprung["pitchInertia"]] + [w["unsprungMass"] for w in wheels_of(car)])
    tyre_k = np.diag([0.0, 0.0, 0.0] + [w["tyreRate"] for w in wheels_of(car)])
    tyre_c = np.diag([0.0, 0.0, 0.0] + [w["tyreDamping"] for w in wheels_of(car)])
    mass = own + travel.T @ wheel_matrix("inertance") @ travel
    damping = tyre_c + travel.T @ wheel_matrix("damping") @ travel
    stiffness = tyre_k + travel.T @ wheel_matrix("stiffness") @ travel
    stiffness[1, 1] -= car.get("rollGravity", 0.0)
    heights = np.zeros((2, 7))
    for row, x in enumerate((sprung["behindFront"], sprung["behindFront"] - car["wheelbase"])):
        heights[row, :3] = [1.0, -left, -x]
    under = np.array([[0.5, 0.5, 0, 0], [0, 0, 0.5, 0.5]])
    return mass, damping, stiffness, tyre_k[:, 3:], tyre_c[:, 3:], heights, under, travel


def eigenvalues(car):
    mass, damping, stiffness, _, _, heights, _, _ = matrices(car)
    air = car.get("air")
    slopes = np.array(air["slopes"]) if air else np.zeros((2, 2))
    lag = air["lag"] if air else 0.0
    size = 16 if lag > 0 else 14
    left = np.eye(size)
    left[7:14, 7:14] = mass
    right = np.zeros((size, size))
    right[:7, 7:14] = np.eye(7)
    right[7:14, 7:14] = -damping
    if lag > 0:
        right[7:14, :7] = -stiffness
        right[7:14, 14:] = -heights.T @ slopes
        left[14:, 14:] *= lag
        right[14:, :7] = heights
        right[14:, 14:] = -np.eye(2)
    else:
        right[7:14, :7] = -stiffness - heights.T @ slopes @ heights
    return linalg.eigvals(right, left)


def undamped(car):
    mass, _, stiffness, _, _, heights, _, _ = matrices(car)
    slopes = np.array(car["air"]["slopes"]) if "air" in car else np.zeros((2, 2))
    total = stiffness + heights.T @ slopes @ heights
    if not np.allclose(total, total.T):
        return None
    return (np.sqrt(linalg.eigh(total, mass, eigvals_only=True)) / (2 * np.pi)).tolist()


def common(n, track, sides):
    if sides == "same":
        return 1.0
    if sides == "independent":
        return 0.0
    x = 2 * np.pi * n * track
    return x * special.k1(x)


def response(car, road):
    mass, damping, stiffness, kr, cr, heights, under, travel = matrices(car)
    air = car.get("air")
    slopes = np.array(air["slopes"]) if air else np.zeros((2, 2))
    lag = air["lag"] if air else 0.0
    track = (car["front"]["track"] + car["rear"]["track"]) / 2
    late = np.array([0, 0, 1, 1]) * car["wheelbase"] / road["speed"]
    side = np.array([0, 1, 0, 1])
    wheels = wheels_of(car)

    def densities(log_f):
        f = np.exp(log_f)
        s = 2j * np.pi * f
        n = f / road["speed"]
        pull = heights.T @ slopes / (1 + s * lag)
        dynamic = mass * s * s + damping * s + stiffness + pull @ heights
        h = np.linalg.solve(dynamic, kr + cr * s + pull @ under)
        shared = np.where(side[:, None] == side[None, :], 1.0, common(n, track, road["sides"]))
        cross = shared * np.exp(-s * (late[:, None] - late[None, :]))
        cross = cross * road["roughness"] * (n / N0) ** -2 / road["speed"] * f
        tyres = np.array([w["tyreRate"] + s * w["tyreDamping"] for w in wheels])[:, None]
        shown = np.vstack(
            [
                tyres * (np.eye(4) - h[3:]),
                travel @ h,
                s * (travel @ h),
                heights @ h - under,
                s * s * h[:3],
            ]
        )
        return np.real(np.einsum("ij,jk,ik->i", shown, cross, shown.conj()))

    low, high = np.log(0.01 * road["speed"]), np.log(10 * road["speed"])
    edges = np.linspace(low, high, 13)
    total = sum(
        integrate.quad_vec(densities, a, b, epsrel=1e-11, norm="max", quadrature="gk21")[0]
        for a, b in zip(edges[:-1], edges[1:])
    )
    return np.sqrt(total).tolist()


def main():
    random = np.random.default_rng(20261125)
    cars = [car7()] + [random_car(random, i % 2 == 0) for i in range(6)]
    roads = [
        {"roughness": 16e-6, "speed": 40.0, "sides": "isotropic"},
        {"roughness": 64e-6, "speed": 15.0, "sides": "independent"},
        {"roughness": 4e-6, "speed": 70.0, "sides": "same"},
    ]
    told = []
    for i, car in enumerate(cars):
        roots = eigenvalues(car)
        entry = {
            "car": car,
            "eigenvalues": sorted([[root.real, root.imag] for root in roots], key=lambda p: (p[0], p[1])),
            "undamped": undamped(car),
        }
        if max(roots.real) < 0:
            road = roads[i % 3]
            entry["road"] = road
            entry["rms"] = response(car, road)
        told.append(entry)
    bessel = [[x, float(x * special.k1(x))] for x in (1e-6, 0.01, 0.3, 1.0, 1.9, 2.0, 2.1, 3.5, 8.0, 40.0, 200.0)]
    OUT.write_text(json.dumps({"cars": told, "timesK1": bessel}, indent=1) + "\n")


main()
