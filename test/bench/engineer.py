"""The bench's evaluation of one car as an engineer would write it with NumPy and SciPy: how many a second.

Corners are closed forms (motion ratios straight in travel, as rates at the wheels), taken for all four at once; trim and
six load cases by scipy.optimize.root on the seven freedoms with the analytic Jacobian; modes by scipy.linalg.eig of the
14-state matrix; road response by solving the seven freedoms at 200 frequencies in one batched numpy call, with the dampers'
damping found in rounds as scipy.special.erf says it. It does less than the engine: no hardpoints, no blades, no stops.

Prints JSON: {"evaluations": n, "seconds": s, "perSecond": r}.
"""
import json
import sys
import time

import numpy as np
from scipy.linalg import eig
from scipy.optimize import root
from scipy.special import erf, kv

G = 9.80665
WHEELBASE, BEHIND_FRONT, CG_HEIGHT = 2.54, 1.4373, 0.285
SPRUNG, ROLL_INERTIA, PITCH_INERTIA = 468.0, 60.0, 390.0
UNSPRUNG = np.array([17.0, 17.0, 19.0, 19.0])
TYRE_RATE = np.array([165e3, 165e3, 185e3, 185e3])
TYRE_DAMPING = np.array([200.0, 200.0, 220.0, 220.0])
WHEEL_RATE = np.array([80e3, 80e3, 105e3, 105e3])
BAR = np.array([12e3, 16e3])
THIRD_FREE = np.array([0.005, 0.005])
THIRD = np.array([9e3, 12e3])
Y = np.array([0.74, -0.74, 0.72, -0.72])
X = BEHIND_FRONT - np.array([0.0, 0.0, WHEELBASE, WHEELBASE])
TRAVEL = np.column_stack([-np.ones(4), -Y, X, np.eye(4)])
HEIGHTS = np.array([[1, 0, -BEHIND_FRONT, 0, 0, 0, 0], [1, 0, WHEELBASE - BEHIND_FRONT, 0, 0, 0, 0]])
MASS = np.diag(np.concatenate([[SPRUNG, ROLL_INERTIA, PITCH_INERTIA], UNSPRUNG]))
DAMPERS = np.array(
    [[1, 0, 0, 0], [0, 1, 0, 0], [0, 0, 1, 0], [0, 0, 0, 1], [0.5, 0.5, 0, 0], [0, 0, 0.5, 0.5], [1, -1, 0, 0], [0, 0, 1, -1]]
)
LOW, HIGH = np.array([1300, 1300, 1900, 1900, 1600, 2500, 500, 650.0]), np.array([500, 500, 800, 800, 700, 1100, 250, 300.0])
KNEE = 0.05
AREA, SLOPES, RHO = np.array([0.85, 1.2]), np.array([[-6.0, 2.0], [0.0, 0.0]]), 1.225
CASES = [(54.2, 0.0, 0.0), (19.4, 1.5, 0.0), (50.0, 0.0, -1.7), (30.0, 1.8, 0.0), (40.0, 1.2, -0.8), (25.0, 0.8, 0.5)]


def springs(s):
    """Forces between wheels and body over the static load, and their derivative by the travels."""
    force, rate = WHEEL_RATE * s, np.diag(WHEEL_RATE).astype(float)
    for axle in (0, 2):
        a = axle // 2
        roll = BAR[a] * (s[axle] - s[axle + 1])
        heave = s[axle] + s[axle + 1]
        seated = heave > -2 * THIRD_FREE[a]
        third = THIRD[a] * max(heave, -2 * THIRD_FREE[a])
        force[axle] += roll + third
        force[axle + 1] += third - roll
        stiff = THIRD[a] * seated
        rate[axle : axle + 2, axle : axle + 2] += BAR[a] * np.array([[1, -1], [-1, 1]]) + stiff
    return force, rate


def balance(q, pressure, lateral, longitudinal):
    force, rate = springs(TRAVEL @ q)
    heights = HEIGHTS @ q
    aero = pressure * (AREA + SLOPES @ heights)
    load = np.zeros(7)
    load[1] = -SPRUNG * lateral * G * CG_HEIGHT
    load[2] = -SPRUNG * longitudinal * G * CG_HEIGHT
    load -= HEIGHTS.T @ aero
    tyre = np.concatenate([np.zeros(3), TYRE_RATE])
    return (
        load - TRAVEL.T @ force - tyre * q,
        -TRAVEL.T @ rate @ TRAVEL - np.diag(tyre) - HEIGHTS.T @ (pressure * SLOPES) @ HEIGHTS,
    )


def equilibrium(speed, lateral, longitudinal):
    found = root(balance, np.zeros(7), args=(RHO / 2 * speed**2, lateral, longitudinal), jac=True)
    if np.abs(found.fun).max() > 1e-3:
        raise RuntimeError(found.message)
    return found.x


def linear(q, speed, damping):
    _, jacobian = balance(q, RHO / 2 * speed**2, 0.0, 0.0)
    wheels = DAMPERS.T @ (damping[:, None] * DAMPERS)
    c = TRAVEL.T @ wheels @ TRAVEL + np.diag(np.concatenate([np.zeros(3), TYRE_DAMPING]))
    return -jacobian, c


def modes(k, c):
    over = np.linalg.inv(MASS)
    a = np.block([[np.zeros((7, 7)), np.eye(7)], [-over @ k, -over @ c]])
    return eig(a)


NODES, WEIGHTS = np.polynomial.legendre.leggauss(200)


def road(q, speed, roughness):
    low, high = np.log(0.01 * speed), np.log(10 * speed)
    f = np.exp((low + high) / 2 + (high - low) / 2 * NODES)
    w = 2 * np.pi * f
    density = roughness * (0.1 / (f / speed)) ** 2 / speed * f * WEIGHTS * (high - low) / 2
    x = w / speed * 1.46
    common = x * kv(1, x)
    delay = np.exp(-1j * w * WHEELBASE / speed)
    together = np.stack([np.ones_like(delay), np.ones_like(delay), delay, delay], axis=1)
    opposed = together * np.array([1, -1, 1, -1])
    roads = np.stack([together, opposed], axis=2)
    shares = np.stack([(1 + common) / 2, (1 - common) / 2], axis=1) * density[:, None]
    tyre = TYRE_RATE[None, :] + 1j * w[:, None] * TYRE_DAMPING[None, :]
    right = np.zeros((len(f), 7, 2), complex)
    right[:, 3:, :] = tyre[:, :, None] * roads
    damping = LOW.copy()
    for _ in range(30):
        k, c = linear(q, speed, damping)
        left = k[None] - (w**2)[:, None, None] * MASS[None] + 1j * w[:, None, None] * c[None]
        answer = np.linalg.solve(left, right)
        speeds = (DAMPERS @ TRAVEL) @ answer * w[:, None, None]
        sigma = np.sqrt(np.einsum("fch,fh->c", np.abs(speeds) ** 2, shares))
        now = HIGH + (LOW - HIGH) * erf(KNEE / (sigma * np.sqrt(2)))
        settled = np.all(np.abs(now - damping) < 1e-3 * now)
        damping = now
        if settled:
            break
    load = tyre[:, :, None] * (roads - answer[:, 3:, :])
    height = HEIGHTS @ answer - 0.5 * (roads[:, [0, 2]] + roads[:, [1, 3]])
    mean = lambda values: np.sqrt(np.einsum("fch,fh->c", np.abs(values) ** 2, shares))
    return mean(load), mean(height)


def evaluate():
    trim = equilibrium(0.0, 0.0, 0.0)
    for case in CASES:
        equilibrium(*case)
    modes(*linear(trim, 0.0, LOW))
    return road(equilibrium(100 / 3, 0.0, 0.0), 100 / 3, 64e-6)


if __name__ == "__main__":
    seconds = float(sys.argv[1]) if len(sys.argv) > 1 else 3.0
    for _ in range(5):
        figures = evaluate()
    count, start = 0, time.perf_counter()
    while time.perf_counter() - start < seconds:
        evaluate()
        count += 1
    taken = time.perf_counter() - start
    load, height = figures
    print(
        json.dumps(
            {
                "evaluations": count,
                "seconds": taken,
                "perSecond": count / taken,
                "tyreLoad": load.tolist(),
                "platform": height.tolist(),
            }
        )
    )
