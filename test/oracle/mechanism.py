"""One suspension corner by its constraint equations, independent of the TypeScript.

In:  hardpoints of a left corner in mm (see the *-points.json files beside this one).
Out: for a wheel travel in mm, the position of every joint.

Method. The unknowns are the coordinates of joints, the equations are fixed distances and
fixed planes, nothing is eliminated and no closed form is used:
  lower outer, upper outer, track-rod outer (9 unknowns): eight fixed distances and the
  demanded height of the wheel centre;
  rod inner end on the rocker (3): fixed distance to the rod's outer end, to the pivot, and
  a fixed plane across the rocker's axis;
  lever end (3): the same with the drop link.
`scipy.optimize.root` (hybr) finds the double-precision solution on the branch that is
continuous with design; Newton steps in mpmath arithmetic then carry it to 50 digits, so
that derivatives can be central differences with a step of 1e-12 mm.

Axes: x forward, y left, z up. Travel is the wheel centre's vertical movement, bump positive.
"""

import math

import mpmath as mp
import numpy as np
from scipy.optimize import root

mp.mp.dps = 50
FLOAT_STEP = 5.0  # mm of travel between continuation points


def vec(values):
    return [mp.mpf(str(v)) for v in values]


def sub(a, b):
    return [a[0] - b[0], a[1] - b[1], a[2] - b[2]]


def add(a, b):
    return [a[0] + b[0], a[1] + b[1], a[2] + b[2]]


def scale(a, k):
    return [a[0] * k, a[1] * k, a[2] * k]


def dot(a, b):
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def cross(a, b):
    return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]


def norm(a):
    return mp.sqrt(dot(a, a))


def unit(a):
    return scale(a, 1 / norm(a))


def mirror(a):
    return [a[0], -a[1], a[2]]


class Frame:
    """Affine coordinates of a body point in a body that three joints carry."""

    def __init__(self, joints, point):
        a, e1, e2, n = self.basis(joints)
        m = mp.matrix([[e1[i], e2[i], n[i]] for i in range(3)])
        self.coordinates = mp.lu_solve(m, mp.matrix(sub(point, a)))

    @staticmethod
    def basis(joints):
        a, b, c = joints
        e1, e2 = sub(b, a), sub(c, a)
        return a, e1, e2, cross(e1, e2)

    def at(self, joints):
        a, e1, e2, n = self.basis(joints)
        k = self.coordinates
        return [a[i] + k[0] * e1[i] + k[1] * e2[i] + k[2] * n[i] for i in range(3)]

    def vector(self, joints):
        """The same for a direction: without the base point."""
        return sub(self.at(joints), joints[0])


def polish(residual_and_jacobian, start, iterations=7):
    """Newton in 50 digits from a double-precision solution."""
    x = [mp.mpf(float(v)) for v in start]
    for _ in range(iterations):
        r, j = residual_and_jacobian(x)
        step = mp.lu_solve(mp.matrix(j), mp.matrix(r))
        x = [x[i] - step[i] for i in range(len(x))]
        if max(abs(s) for s in step) < mp.mpf(10) ** -(mp.mp.dps - 8):
            break
    r, _ = residual_and_jacobian(x)
    return x, max(abs(v) for v in r)


def solve(residual_and_jacobian, start):
    """scipy root first, then the polish; the double solution is kept for comparison."""

    def as_float(x):
        r, _ = residual_and_jacobian([mp.mpf(float(v)) for v in x])
        return np.array([float(v) for v in r])

    found = root(as_float, np.array([float(v) for v in start]), method="hybr", tol=1e-13)
    if max(abs(as_float(found.x))) > 1e-6:
        raise ArithmeticError(f"no solution: residual {max(abs(as_float(found.x)))}, {found.message}")
    x, residual = polish(residual_and_jacobian, found.x)
    gap = max(abs(float(x[i]) - found.x[i]) for i in range(len(x)))
    return x, residual, gap


class Circle:
    """A joint that turns about an axis and stays at a fixed distance from a driven point."""

    def __init__(self, pivot, axis, joint, driven):
        self.pivot, self.axis = pivot, unit(axis)
        arm = sub(joint, pivot)
        self.along = dot(arm, self.axis)
        self.foot = add(pivot, scale(self.axis, self.along))
        self.radial = sub(joint, self.foot)
        self.normal = cross(self.axis, self.radial)
        self.r2, self.l2 = dot(arm, arm), dot(sub(joint, driven), sub(joint, driven))

    def equations(self, driven):
        def f(x):
            a, l = sub(x, self.pivot), sub(x, driven)
            r = [(dot(a, a) - self.r2) / 2, (dot(l, l) - self.l2) / 2, dot(a, self.axis) - self.along]
            return r, [a, l, self.axis]

        return f

    def angle(self, x):
        """About the axis (right-hand), from design, continuous within half a turn."""
        a = sub(x, self.foot)
        return mp.atan2(dot(a, self.normal), dot(a, self.radial))

    def carry(self, point, angle):
        """A point fixed to the turning body, by its design position."""
        p = sub(point, self.pivot)
        along = scale(self.axis, dot(p, self.axis))
        across = sub(p, along)
        c, s = mp.cos(angle), mp.sin(angle)
        turned = add(scale(across, c), scale(cross(self.axis, across), s))
        return add(self.pivot, add(along, turned))


class Corner:
    def __init__(self, data):
        link, wheel = data["linkage"], data["wheel"]
        low, up, tie = link["lower-wishbone"], link["upper-wishbone"], link["track-rod"]
        self.lf, self.la, self.lo = vec(low["fore"]), vec(low["aft"]), vec(low["outer"])
        self.uf, self.ua, self.uo = vec(up["fore"]), vec(up["aft"]), vec(up["outer"])
        self.ti, self.to = vec(tie["inner"]), vec(tie["outer"])
        self.centre = vec(wheel["centre"])
        upright = [self.lo, self.uo, self.to]
        self.distances = [
            (0, self.lf), (0, self.la), (1, self.uf), (1, self.ua), (2, self.ti),
        ]
        self.pairs = [(0, 1), (0, 2), (1, 2)]
        self.d2 = [dot(sub(upright[i], p), sub(upright[i], p)) for i, p in self.distances]
        self.p2 = [dot(sub(upright[i], upright[j]), sub(upright[i], upright[j])) for i, j in self.pairs]
        self.centre_frame = Frame(upright, self.centre)

        camber, toe = mp.radians(mp.mpf(str(wheel["camber_deg"]))), mp.radians(mp.mpf(str(wheel["toe_deg"])))
        # Spin axis pointing outboard: top outboard is positive camber, front edge inboard is toe-in.
        self.spin = [mp.cos(camber) * mp.sin(toe), mp.cos(camber) * mp.cos(toe), -mp.sin(camber)]
        self.spin_frame = Frame(upright, add(upright[0], self.spin))
        down = unit([self.spin[2] * self.spin[0], self.spin[2] * self.spin[1], self.spin[2] ** 2 - 1])
        self.contact = add(self.centre, scale(down, mp.mpf(str(wheel["loaded_radius"]))))
        self.contact_frame = Frame(upright, self.contact)

        rod, rocker = link["rod"], link["rocker"]
        self.rod_on = rod["on"]
        self.rod_outer, self.rod_inner = vec(rod["outer"]), vec(rod["inner"])
        self.rod_frame = Frame(self.body(rod["on"], upright), self.rod_outer)
        self.rocker = Circle(vec(rocker["pivot"]), vec(rocker["axis"]), self.rod_inner, self.rod_outer)
        self.eyes = {name: vec(p) for name, p in rocker["eyes"].items()}
        self.lever = None
        bar = next((e for e in data["elements"].values() if "lever" in e), None)
        if bar:
            lever = bar["lever"]
            self.lever_eye = bar["drop-link"]
            self.lever = Circle(vec(lever["pivot"]), vec(lever["axis"]), vec(lever["end"]), self.eyes[self.lever_eye])
        self.known = {0.0: (self.lo + self.uo + self.to, self.rod_inner, self.lever and vec(bar["lever"]["end"]))}
        self.cache = {}
        self.worst_residual, self.worst_gap = mp.mpf(0), 0.0
        h = mp.mpf(10) ** -12
        self.sign = self.lever_sign = 1
        up_state, down_state = self.at(h), self.at(-h)
        self.sign = 1 if up_state["rocker"] > down_state["rocker"] else -1
        if self.lever:
            self.lever_sign = 1 if up_state["lever"] > down_state["lever"] else -1
        self.cache = {}

    def body(self, name, upright):
        if name == "upright":
            return upright
        return [self.lf, self.la, upright[0]] if name == "lower-wishbone" else [self.uf, self.ua, upright[1]]

    def upright_equations(self, travel):
        target = self.centre[2] + travel

        def f(x):
            q = [x[0:3], x[3:6], x[6:9]]
            r, j = [], []
            for k, (i, p) in enumerate(self.distances):
                d = sub(q[i], p)
                r.append((dot(d, d) - self.d2[k]) / 2)
                row = [mp.mpf(0)] * 9
                row[3 * i:3 * i + 3] = d
                j.append(row)
            for k, (a, b) in enumerate(self.pairs):
                d = sub(q[a], q[b])
                r.append((dot(d, d) - self.p2[k]) / 2)
                row = [mp.mpf(0)] * 9
                row[3 * a:3 * a + 3] = d
                row[3 * b:3 * b + 3] = scale(d, -1)
                j.append(row)
            r.append(self.centre_frame.at(q)[2] - target)
            j.append(self.height_gradient(q))
            return r, j

        return f

    def height_gradient(self, q):
        """d(wheel centre height)/d(joints): differentiating a + k0 e1 + k1 e2 + k2 e1×e2, third component."""
        k0, k1, k2 = self.centre_frame.coordinates
        e1, e2 = sub(q[1], q[0]), sub(q[2], q[0])
        d1 = [k2 * e2[1], -k2 * e2[0], k0]
        d2 = [-k2 * e1[1], k2 * e1[0], k1]
        base = [-d1[0] - d2[0], -d1[1] - d2[1], 1 - d1[2] - d2[2]]
        return base + d1 + d2

    def start(self, travel):
        """The nearest known solution, by continuation in steps so that the branch never changes."""
        t = float(travel)
        near = min(self.known, key=lambda k: abs(k - t))
        while abs(near - t) > FLOAT_STEP:
            near = near + math.copysign(FLOAT_STEP, t - near)
            if near not in self.known:
                self.solve_at(mp.mpf(near))
        return self.known[near]

    def solve_at(self, travel):
        t = float(travel)
        near = min(self.known, key=lambda k: abs(k - t))
        q0, r0, l0 = self.known[near]
        x, res, gap = solve(self.upright_equations(travel), q0)
        q = [x[0:3], x[3:6], x[6:9]]
        rod_outer = self.rod_frame.at(self.body(self.rod_on, q))
        r, res_r, gap_r = solve(self.rocker.equations(rod_outer), r0)
        raw = self.rocker.angle(r)
        eyes = {n: self.rocker.carry(p, raw) for n, p in self.eyes.items()}
        state = {
            "lower-outer": q[0], "upper-outer": q[1], "track-rod-outer": q[2],
            "centre": self.centre_frame.at(q), "spin": self.spin_frame.vector(q), "contact": self.contact_frame.at(q),
            "rod-outer": rod_outer, "rod-inner": r, "eyes": eyes, "rocker": self.sign * raw,
        }
        end = None
        if self.lever:
            end, res_l, gap_l = solve(self.lever.equations(eyes[self.lever_eye]), l0)
            state["lever-end"], state["lever"] = end, self.lever_sign * self.lever.angle(end)
            res, gap = max(res, res_l), max(gap, gap_l)
        state["camber"] = -mp.asin(state["spin"][2])
        state["toe"] = mp.atan2(state["spin"][0], state["spin"][1])
        self.worst_residual = max(self.worst_residual, res, res_r)
        self.worst_gap = max(self.worst_gap, gap, gap_r)
        self.known[t] = ([float(v) for v in x], [float(v) for v in r], end and [float(v) for v in end])
        return state

    def at(self, travel):
        travel = mp.mpf(travel)
        if travel not in self.cache:
            self.start(travel)
            self.cache[travel] = self.solve_at(travel)
        return self.cache[travel]

    def derivative(self, of, travel=0):
        """First and second derivative of a scalar of the state, by central differences in 50 digits."""
        h = mp.mpf(10) ** -10
        a, b, c = (of(self.at(mp.mpf(travel) + k * h)) for k in (-1, 0, 1))
        return (c - a) / (2 * h), (c - 2 * b + a) / h**2
