"""One corner whose joints lie in the transverse plane of the wheel centre, by its constraint equations.

In:  joints (y, z) of a left corner in mm (see the *-points.json files beside this one).
Out: for a wheel travel in mm, the position of every joint, the rocker's angle and its eyes.

Method. As in mechanism.py, nothing is eliminated: the unknowns are the coordinates of the lower and upper
outer joints (four fixed conditions: two wishbone lengths, the upright's length, the height of the wheel
centre), then those of the rod's inner end (its distance to the pivot and to the rod's outer end).
`scipy.optimize.root` finds them on the branch that goes on from design, Newton steps carry them to 50
digits. Everything keeps its x, so that eyes come back as (x, y, z) with the wheel centre's x.
"""

import math

import mpmath as mp

from mechanism import solve, vec

FLOAT_STEP = 4.0  # mm of travel between continuation points


def sub2(a, b):
    return [a[0] - b[0], a[1] - b[1]]


def dot2(a, b):
    return a[0] * b[0] + a[1] * b[1]


def turn2(a, angle):
    c, s = mp.cos(angle), mp.sin(angle)
    return [c * a[0] - s * a[1], s * a[0] + c * a[1]]


def angle2(a, b):
    """From a to b, within half a turn."""
    return mp.atan2(a[0] * b[1] - a[1] * b[0], dot2(a, b))


class PlanarCorner:
    """The same questions as `Corner` of mechanism.py, without lever: eyes, rocker, contact, camber."""

    def __init__(self, data):
        link, wheel = data["linkage"], data["wheel"]
        low, up = link["lower-wishbone"], link["upper-wishbone"]
        self.li, self.lo = vec(low["inner"]), vec(low["outer"])
        self.ui, self.uo = vec(up["inner"]), vec(up["outer"])
        centre = vec(wheel["centre"])
        self.x, self.centre = centre[0], centre[1:]
        self.camber = mp.radians(mp.mpf(str(wheel["camber_deg"])))
        self.toe = mp.radians(mp.mpf(str(wheel.get("toe_deg", 0))))
        rod, rocker = link["rod"], link["rocker"]
        self.on = rod["on"]
        self.rod_outer, self.rod_inner = vec(rod["outer"]), vec(rod["inner"])
        self.pivot = vec(rocker["pivot"])
        self.eyes = {name: vec(point) for name, point in rocker["eyes"].items()}
        self.radius = mp.mpf(str(wheel["loaded_radius"]))
        d2 = lambda a, b: dot2(sub2(a, b), sub2(a, b))
        self.lengths = [d2(self.lo, self.li), d2(self.uo, self.ui), d2(self.uo, self.lo)]
        self.rod_lengths = [d2(self.rod_inner, self.pivot), d2(self.rod_inner, self.rod_outer)]
        # The wheel centre in the upright's own axes: along lower to upper joint, and across.
        along = sub2(self.uo, self.lo)
        across = [-along[1], along[0]]
        arm = sub2(self.centre, self.lo)
        self.local = [dot2(arm, along) / dot2(along, along), dot2(arm, across) / dot2(along, along)]
        self.known = {0.0: (self.lo + self.uo, self.rod_inner)}
        self.cache = {}
        self.worst_residual, self.worst_gap = mp.mpf(0), 0.0
        h = mp.mpf(10) ** -12
        self.sign = 1
        self.sign = 1 if self.at(h)["rocker"] > self.at(-h)["rocker"] else -1
        self.cache = {}

    def upright_equations(self, travel):
        target = self.centre[1] + travel

        def f(q):
            lo, uo = q[0:2], q[2:4]
            a, b, c = sub2(lo, self.li), sub2(uo, self.ui), sub2(uo, lo)
            m, n = self.local
            r = [(dot2(a, a) - self.lengths[0]) / 2, (dot2(b, b) - self.lengths[1]) / 2, (dot2(c, c) - self.lengths[2]) / 2]
            r.append(lo[1] + m * c[1] + n * c[0] - target)
            zero = mp.mpf(0)
            return r, [[*a, zero, zero], [zero, zero, *b], [-c[0], -c[1], c[0], c[1]], [-n, 1 - m, n, m]]

        return f

    def rocker_equations(self, outer):
        def f(q):
            a, b = sub2(q, self.pivot), sub2(q, outer)
            return [(dot2(a, a) - self.rod_lengths[0]) / 2, (dot2(b, b) - self.rod_lengths[1]) / 2], [a, b]

        return f

    def start(self, travel):
        near = min(self.known, key=lambda k: abs(k - travel))
        while abs(near - travel) > FLOAT_STEP:
            near = near + math.copysign(FLOAT_STEP, travel - near)
            if near not in self.known:
                self.solve_at(mp.mpf(near))

    def carried(self, lo, uo):
        """The rod's outer end, fixed to what carries it."""
        if self.on == "lower-wishbone":
            return self.with_arm(self.li, self.lo, lo)
        if self.on == "upper-wishbone":
            return self.with_arm(self.ui, self.uo, uo)
        turned = turn2(sub2(self.rod_outer, self.lo), angle2(sub2(self.uo, self.lo), sub2(uo, lo)))
        return [lo[0] + turned[0], lo[1] + turned[1]]

    def with_arm(self, inner, design, now):
        turned = turn2(sub2(self.rod_outer, inner), angle2(sub2(design, inner), sub2(now, inner)))
        return [inner[0] + turned[0], inner[1] + turned[1]]

    def solve_at(self, travel):
        t = float(travel)
        near = min(self.known, key=lambda k: abs(k - t))
        q0, r0 = self.known[near]
        q, res, gap = solve(self.upright_equations(travel), q0)
        lo, uo = q[0:2], q[2:4]
        outer = self.carried(lo, uo)
        inner, res_r, gap_r = solve(self.rocker_equations(outer), r0)
        raw = angle2(sub2(self.rod_inner, self.pivot), sub2(inner, self.pivot))
        eyes = {}
        for name, point in self.eyes.items():
            arm = turn2(sub2(point, self.pivot), raw)
            eyes[name] = [self.x, self.pivot[0] + arm[0], self.pivot[1] + arm[1]]
        along = sub2(uo, lo)
        m, n = self.local
        centre = [lo[0] + m * along[0] - n * along[1], lo[1] + m * along[1] + n * along[0]]
        # Turning the upright from y to z lifts the spin axis's outboard end, that is the wheel's foot outboard.
        turned = angle2(sub2(self.uo, self.lo), along)
        spin = [mp.cos(self.camber) * mp.sin(self.toe), *turn2([mp.cos(self.camber) * mp.cos(self.toe), -mp.sin(self.camber)], turned)]
        self.worst_residual = max(self.worst_residual, res, res_r)
        self.worst_gap = max(self.worst_gap, gap, gap_r)
        self.known[t] = ([float(v) for v in q], [float(v) for v in inner])
        return {
            "lower-outer": lo, "upper-outer": uo, "centre": centre, "rod-outer": outer, "rod-inner": inner,
            "rocker": self.sign * raw, "eyes": eyes, "camber": -mp.asin(spin[2]), "contact": self.contact(centre, turned),
        }

    def contact(self, centre, turned):
        """The design contact point as a point of the upright, (x, y, z)."""
        spin = [mp.cos(self.camber) * mp.sin(self.toe), mp.cos(self.camber) * mp.cos(self.toe), -mp.sin(self.camber)]
        down = [spin[2] * spin[0], spin[2] * spin[1], spin[2] ** 2 - 1]
        size = mp.sqrt(sum(v * v for v in down))
        arm = [self.radius * v / size for v in down]
        side = turn2(arm[1:], turned)
        return [self.x + arm[0], centre[0] + side[0], centre[1] + side[1]]

    def at(self, travel):
        travel = mp.mpf(travel)
        if travel not in self.cache:
            self.start(float(travel))
            self.cache[travel] = self.solve_at(travel)
        return self.cache[travel]

    def derivative(self, of, travel=0):
        """First and second derivative of a scalar of the state, by central differences in 50 digits."""
        h = mp.mpf(10) ** -10
        a, b, c = (of(self.at(mp.mpf(travel) + k * h)) for k in (-1, 0, 1))
        return (c - a) / (2 * h), (c - 2 * b + a) / h**2
