"""Quarter car over half a sine, with a digressive damper and a tyre that lifts: SciPy's DOP853, for test/data/kerb-strike.json.

A front end of a car whose ends do not feel each other (pitch inertia = sprung mass * a * b) is two of these. Masses in kg,
rates in N/m, damping in N*s/m; y is up from the equilibrium. Run: python3 test/oracle/kerb_strike.py > test/data/kerb-strike.json
"""
import json

import numpy as np
from scipy.integrate import solve_ivp

G = 9.80665
CAR = {"sprung": 125.0, "unsprung": 20.0, "rate": 40e3, "tyreRate": 200e3, "tyreDamping": 150.0}
SLOW, FAST, KNEE = 4000.0, 900.0, 0.15
LOAD = (CAR["sprung"] + CAR["unsprung"]) * G


def damper(v):
    return SLOW * v if abs(v) < KNEE else np.sign(v) * (SLOW * KNEE + FAST * (abs(v) - KNEE))


def road(t, height, length, speed):
    duration = length / speed
    if not 0 <= t <= duration:
        return 0.0, 0.0
    p = np.pi / duration
    return height * np.sin(p * t), height * p * np.cos(p * t)


def tyre(t, y, kerb):
    h, rate = road(t, *kerb)
    return max(0.0, LOAD + CAR["tyreRate"] * (h - y[1]) + CAR["tyreDamping"] * (rate - y[3]))


def slopes(t, y, kerb):
    strut = CAR["rate"] * (y[1] - y[0]) + damper(y[3] - y[2])
    return [y[2], y[3], strut / CAR["sprung"], (tyre(t, y, kerb) - LOAD - strut) / CAR["unsprung"]]


def passed(height, length, speed):
    kerb = (height, length, speed)
    times = np.linspace(0, 0.4, 81)
    y0, rows = [0.0, 0.0, 0.0, 0.0], []
    edges = [0.0, length / speed, 0.4]
    for start, end in zip(edges, edges[1:]):
        found = solve_ivp(slopes, (start, end), y0, "DOP853", args=(kerb,), rtol=1e-11, atol=1e-13, max_step=2e-4,
                          dense_output=True)
        inside = times[(times >= start) & ((times < end) | (end == 0.4))]
        rows += [[float(t), *map(float, found.sol(t)), float(tyre(t, found.sol(t), kerb))] for t in inside]
        y0 = found.y[:, -1]
    return {"height": height, "length": length, "speed": speed, "rows": rows}


print(json.dumps({"car": CAR, "damper": {"slow": SLOW, "fast": FAST, "knee": KNEE},
                  "columns": ["t", "body", "wheel", "bodySpeed", "wheelSpeed", "tyre"],
                  "passes": [passed(0.01, 1.0, 20.0), passed(0.05, 0.6, 25.0)]}))
