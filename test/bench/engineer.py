"""The bench's evaluation of one car as an engineer would write it with NumPy and SciPy: how many a second.

The sample car from its hardpoints (test/oracle/quill-*-points.json). Corners are closed forms in the angle of the driven
wishbone: circles met by spheres, all four corners in one array and as many positions as are wanted. Velocities are central
differences of positions, in the same call. Trim and six load cases by scipy.optimize.root on height, roll, pitch and the four
angles, with a Jacobian by differences whose eight states are one array; modes by scipy.linalg.eig of the 14-state matrix; road
response by solving the seven freedoms at 200 frequencies in one batched call, with the dampers' damping found in rounds.

It does a little less than the engine: no bump stops, dampers with a knee in place of tables, no lag of the air.

Prints JSON: {"evaluations": n, "seconds": s, "perSecond": r, "cases": {name: [front height, rear height, four loads]}}.
"""
import json
import pathlib
import sys
import time

import numpy as np
from scipy.linalg import eig
from scipy.optimize import root
from scipy.special import erf, kv

ORACLE = pathlib.Path(__file__).parent.parent / "oracle"
sys.path.insert(0, str(ORACLE))
from axle import Axle  # noqa: E402  (rates and seats, worked out once)

G = 9.80665
DENSITY = 101325 / (287.05287 * 288.15)
H = 1e-6  # rad, for velocities
CASES = {
    "top-speed": (195 / 3.6, 0.0, 0.0),
    "hairpin": (70 / 3.6, 1.5, 0.0),
    "braking": (50.0, 0.0, -1.7),
    "faster-bend": (30.0, 17.6 / G, 0.0),
    "trail": (40.0, 11.8 / G, -7.8 / G),
    "exit": (25.0, 7.8 / G, 4.9 / G),
}
AREA, SLOPES = np.array([0.85, 1.2]), np.array([[-6.0, 2.0], [0.0, 0.0]])
DRAG, DRAG_HEIGHT = 0.95, 0.46
PITCH_INERTIA = 390.0


def dot(a, b):
    return np.einsum("...k,...k->...", a, b)


def turned(axis, arm, angle):
    """Rodrigues; `axis` of unit length."""
    c, s = np.cos(angle)[..., None], np.sin(angle)[..., None]
    return arm * c + np.cross(axis, arm) * s + axis * (dot(axis, arm) * (1 - np.cos(angle)))[..., None]


class Circle:
    """A joint that turns about an axis at a given distance from a driven point; one a corner."""

    def __init__(self, pivot, axis, joint, driven):
        self.axis = axis / np.linalg.norm(axis, axis=-1, keepdims=True)
        self.foot = pivot + self.axis * dot(joint - pivot, self.axis)[..., None]
        self.e1 = joint - self.foot
        self.e2 = np.cross(self.axis, self.e1)
        self.least = dot(self.e1, self.e1) - dot(joint - driven, joint - driven)
        self.sign = 1.0
        self.sign = np.where(np.abs(self.angle(driven)) < 1e-9, 1.0, -1.0)

    def angle(self, driven):
        w = driven - self.foot
        a, b = dot(w, self.e1), dot(w, self.e2)
        return np.arctan2(b, a) + self.sign * np.arccos((self.least + dot(w, w)) / 2 / np.hypot(a, b))

    def at(self, angle):
        return self.foot + self.e1 * np.cos(angle)[..., None] + self.e2 * np.sin(angle)[..., None]

    def carry(self, point, angle):
        return self.foot + turned(self.axis, point - self.foot, angle)


class Frame:
    """A point fixed to three others, by its design position."""

    def __init__(self, points, point):
        a, e1, e2, e3 = self.basis(points)
        self.k = np.linalg.solve(np.stack([e1, e2, e3], axis=-1), (point - a)[..., None])[..., 0]

    @staticmethod
    def basis(points):
        a, b, c = points
        return a, b - a, c - a, np.cross(b - a, c - a)

    def at(self, points):
        a, e1, e2, e3 = self.basis(points)
        k = self.k
        return a + k[:, :1] * e1 + k[:, 1:2] * e2 + k[:, 2:] * e3


class Corners:
    """FL, FR, RL, RR, each as a left one."""

    def __init__(self, ends):
        metres = lambda *path: 1e-3 * np.array([self.read(end, path) for end in ends for _ in range(2)], float)
        link = lambda *path: metres("linkage", *path)
        lower, upper = link("lower-wishbone", "outer"), link("upper-wishbone", "outer")
        self.inner, outer = link("track-rod", "inner"), link("track-rod", "outer")
        arm = lambda name: (link(name, "fore"), link(name, "aft") - link(name, "fore"))
        foot, axis = arm("lower-wishbone")
        self.lower = Circle(foot, axis, lower, lower + [0, 0, 1])
        self.upper = Circle(*arm("upper-wishbone"), upper, lower)
        up = (upper - lower) / np.linalg.norm(upper - lower, axis=1, keepdims=True)
        self.along = dot(outer - lower, up)[:, None]
        self.radius = np.linalg.norm(outer - lower - up * self.along, axis=1)
        self.tie2 = dot(outer - self.inner, outer - self.inner)
        self.side = np.ones(4)
        self.side = np.where(np.linalg.norm(self.track_rod(lower, upper) - outer, axis=1) < 1e-6, 1.0, -1.0)
        joints = (lower, upper, outer)
        self.centre_at = metres("wheel", "centre")
        self.centre = Frame(joints, self.centre_at)
        angles = np.radians([[end["wheel"]["camber_deg"], end["wheel"]["toe_deg"]] for end in ends for _ in range(2)])
        camber, toe = angles.T
        spin = np.stack([np.cos(camber) * np.sin(toe), np.cos(camber) * np.cos(toe), -np.sin(camber)], axis=1)
        down = spin * spin[:, 2:] - [0, 0, 1]
        down /= np.linalg.norm(down, axis=1, keepdims=True)
        self.contact = Frame(joints, self.centre_at + down * metres("wheel", "loaded_radius")[:, None])
        self.on_lower = np.array([end["linkage"]["rod"]["on"] == "lower-wishbone" for end in ends for _ in range(2)])[:, None]
        self.rod = link("rod", "outer")
        self.rocker = Circle(link("rocker", "pivot"), link("rocker", "axis"), link("rod", "inner"), self.rod)
        self.eyes = {name: link("rocker", "eyes", name) for name in ends[0]["linkage"]["rocker"]["eyes"]}
        bar = lambda *path: metres("elements", "bar", "lever", *path)
        self.lever = Circle(bar("pivot"), bar("axis"), bar("end"), self.eyes["bar"])

    @staticmethod
    def read(end, path):
        for key in path:
            end = end[key]
        return end

    def track_rod(self, lower, upper):
        up = upper - lower
        up = up / np.linalg.norm(up, axis=-1, keepdims=True)
        foot = lower + up * self.along
        w = self.inner - foot
        across = w - up * dot(w, up)[..., None]
        far = np.linalg.norm(across, axis=-1)
        e1 = across / far[..., None]
        cos = (self.radius**2 + dot(w, w) - self.tie2) / (2 * self.radius * far)
        sin = self.side * np.sqrt(1 - cos * cos)
        return foot + self.radius[:, None] * (e1 * cos[..., None] + np.cross(up, e1) * sin[..., None])

    def at(self, theta):
        """Positions at angles of the lower wishbones, (..., 4)."""
        lower = self.lower.at(theta)
        phi = self.upper.angle(lower)
        upper = self.upper.at(phi)
        joints = (lower, upper, self.track_rod(lower, upper))
        rod = np.where(self.on_lower, self.lower.carry(self.rod, theta), self.upper.carry(self.rod, phi))
        rocker = self.rocker.angle(rod)
        eyes = {name: self.rocker.carry(eye, rocker) for name, eye in self.eyes.items()}
        return {
            "contact": self.contact.at(joints),
            "centre": self.centre.at(joints),
            "rocker": rocker,
            "lever": self.lever.angle(eyes["bar"]),
            **eyes,
        }


MIRROR = np.array([[1, 1, 1], [1, -1, 1]] * 2, float)
OTHER = [1, 0, 3, 2]
FRONT = np.array([True, True, False, False])


class Car:
    def __init__(self):
        self.data = [json.loads((ORACLE / f"quill-{name}-points.json").read_text()) for name in ("front", "rear")]
        self.corners = Corners(self.data)
        per_wheel = lambda values: np.repeat(np.array(values, float), 2)
        axles = [Axle(data) for data in self.data]
        for axle in axles:
            axle.trim()
        rate = lambda name, by: per_wheel([float(axle.rate(name)) * by for axle in axles])
        seat = lambda name, by: per_wheel([float(axle.seats[name]) * by for axle in axles])
        self.bar, self.bar_seat = rate("corner-bar", 1e-3), seat("corner-bar", 1.0)
        self.third, self.third_seat = rate("third", 1e3), seat("third", 1e-3)
        self.roll_bar = rate("bar", 1e-3)
        car = self.data[0]["car"]
        wheel = lambda key: per_wheel([data["wheel"][key] for data in self.data])
        self.tyre, self.tyre_damping, self.unsprung = wheel("tyre_rate") * 1e3, wheel("tyre_damping") * 1e3, wheel("unsprung_mass")
        self.mass, self.bias, self.roll_inertia = car["mass"], car["brakes_front_percent"] / 100, car["roll_inertia"]
        share = car["mass_front_percent"] / 100
        self.load = self.mass * G / 2 * np.where(FRONT, share, 1 - share)
        self.heights = np.array([data["ride_height"] for data in self.data]) * 1e-3
        self.lines = np.array([data["wheel"]["centre"][0] for data in self.data]) * 1e-3
        self.o = np.array([self.lines.mean(), 0, 0])
        self.sprung = self.mass - self.unsprung.sum()
        design = self.corners.at(np.zeros(4))
        self.design = self.across(design, "third", "third")
        rocker = self.corners.at(np.full(4, H))["rocker"] - design["rocker"]
        lever = self.corners.at(np.full(4, H))["lever"] - design["lever"]
        bump = self.corners.at(np.full(4, H))["centre"][:, 2] - design["centre"][:, 2]
        self.turns, self.twists = np.sign(rocker * bump), np.sign(lever * bump)
        rake = np.arcsin((self.heights[1] - self.heights[0]) / (self.lines[0] - self.lines[1]))
        self.rest = np.array([self.heights.mean(), 0, rake, 0, 0, 0, 0])
        self.stand(car["cg_height"] * 1e-3)

    def stand(self, cg_height):
        """Masses where they are at rest; then what the seats leave over there is set right on the flat patch."""
        q = self.rest
        contact, centre = self.on_road(q[None], self.corners.at(q[3:]))
        self.rest_contact = contact[0, :, 2]
        x = (self.load * contact[0, :, 0]).sum() / self.load.sum()
        cg = np.array([x, 0, cg_height])
        turn, up = self.turn(q[None])[0], np.array([0, 0, q[0]])
        self.cg = turn.T @ ((self.mass * cg - self.unsprung @ centre[0]) / self.sprung - up)
        self.drag_at = turn.T @ (np.array([x, 0, DRAG_HEIGHT]) - up)
        ahead, behind = contact[0, 0, 0], contact[0, 2, 0]
        self.front_share = (x - behind) / (ahead - behind)
        self.behind_front = self.lines[0] + self.o[0] - x
        self.left_over = np.zeros(4)
        work = self.residual(q[None], (0.0, 0.0, 0.0))[0, 3:]
        self.left_over = -work / self.rise(q[3:])

    def rise(self, theta):
        ends = self.corners.at(theta + np.array([[-H], [H]]))["centre"][..., 2]
        return (ends[1] - ends[0]) / (2 * H)

    @staticmethod
    def across(at, one, other):
        """From a left eye to a right one, for FL, FR, RL, RR."""
        a, b = at[one] * MIRROR, at[other] * MIRROR
        left, right = a[..., [0, 0, 2, 2], :], b[..., [1, 1, 3, 3], :]
        return np.linalg.norm(left - right, axis=-1)

    @staticmethod
    def turn(q):
        """Roll about x, then pitch about the road's y; (states, 3, 3)."""
        (cr, cp), (sr, sp) = np.cos(q[:, 1:3]).T, np.sin(q[:, 1:3]).T
        zero = np.zeros_like(cr)
        return np.stack([np.stack([cp, sp * sr, sp * cr], -1), np.stack([zero, cr, -sr], -1), np.stack([-sp, cp * sr, cp * cr], -1)], 1)

    def on_road(self, q, at):
        turn, up = self.turn(q), np.zeros((len(q), 1, 3))
        up[:, 0, 2] = q[:, 0]
        place = lambda point: np.einsum("sij,...wj->...swi" if point.ndim == 2 else "sij,swj->swi", turn, point * MIRROR - self.o) + up
        return place(at["contact"]), place(at["centre"])

    def elements(self, theta):
        """Generalised force of springs and bars on each angle, (states, 4)."""
        at = self.corners.at(theta[None] + np.array([-H, 0.0, H])[:, None, None])
        d = lambda values: (values[2] - values[0]) / (2 * H)
        rocker, lever = self.turns * at["rocker"], self.twists * at["lever"]
        force = self.bar * (rocker[1] + self.bar_seat) * d(rocker)
        eye = at["third"] * MIRROR
        span = eye[1] - eye[1][:, OTHER]
        length = np.linalg.norm(span, axis=-1)
        third = np.maximum(0, self.third * (self.design - length + self.third_seat))
        force -= third * dot(span, d(eye)) / length
        force += self.roll_bar * (lever[1] - lever[1][:, OTHER]) * d(lever)
        return force, at

    def residual(self, q, case):
        """Forces upwards, moments about x and y, virtual work of the four angles; (states, 7)."""
        speed, lateral, longitudinal = case
        pressure = DENSITY / 2 * speed**2
        body = np.array([-longitudinal * G, -lateral * G, -G])
        springs, at = self.elements(q[:, 3:])
        now = {name: at[name][1] for name in ("contact", "centre")}
        contact, centre = self.on_road(q, now)
        turn = self.turn(q)
        d = lambda name: np.einsum("sij,swj->swi", turn, (at[name][2] - at[name][0]) / (2 * H) * MIRROR)
        lines = np.einsum("sij,aj->sai", turn, np.stack([self.lines - self.o[0], [0, 0], [0, 0]], 1))
        heights = lines[..., 2] + q[:, :1]
        down = pressure * (AREA + (heights - self.heights) @ SLOPES.T)
        drag = pressure * DRAG
        loads = np.maximum(0, self.load - self.tyre * (contact[..., 2] - self.rest_contact))
        share = np.where(FRONT, self.front_share, 1 - self.front_share)
        sideways = self.mass * lateral * G * share * loads / (loads + loads[:, OTHER])
        along = self.mass * longitudinal * G + drag
        braking = along < 0
        forwards = np.broadcast_to(along / 2 * (np.where(FRONT, self.bias, 1 - self.bias) if braking else ~FRONT), loads.shape)
        tyre = np.stack([forwards, sideways, loads], -1)
        arm = centre - [0, 0, 1] * q[:, None, :1]
        ground = contact * [1, 1, 0] - [0, 0, 1] * q[:, None, :1]
        cg, pull = turn @ self.cg, turn @ self.drag_at
        moment = np.cross(ground, tyre).sum(1) + np.cross(arm, self.unsprung[:, None] * body).sum(1)
        moment += np.cross(cg, self.sprung * body) + np.cross(pull, [-drag, 0, 0])
        up = loads.sum(1) - self.mass * G - down.sum(1)
        pitch = moment[:, 1] + (lines[..., 0] * down).sum(1)
        contact_d, centre_d = d("contact"), d("centre")
        push = contact_d if braking else centre_d
        work = loads * contact_d[..., 2] + sideways * contact_d[..., 1] + forwards * push[..., 0]
        work += self.unsprung * (centre_d @ body) - springs
        work += self.left_over * (at["centre"][2] - at["centre"][0])[..., 2] / (2 * H)
        return np.concatenate([up[:, None], moment[:, :1], pitch[:, None], work], axis=1)

    def jacobian(self, q, case):
        steps = np.vstack([np.zeros(7), 1e-7 * np.eye(7)])
        found = self.residual(q + steps, case)
        return ((found[1:] - found[0]) / 1e-7).T

    def equilibrium(self, case):
        found = root(lambda q: self.residual(q[None], case)[0], self.rest, jac=lambda q: self.jacobian(q, case), tol=1e-10)
        if np.abs(found.fun).max() > 1e-3:
            raise RuntimeError(found.message)
        return found.x

    def figures(self, q):
        contact, _ = self.on_road(q[None], self.corners.at(q[3:]))
        loads = np.maximum(0, self.load - self.tyre * (contact[0, :, 2] - self.rest_contact))
        heights = q[0] + (self.turn(q[None])[0] @ np.stack([self.lines - self.o[0], [0, 0], [0, 0]]))[2]
        return [*heights, *loads]

    def linear(self, q, speed):
        """Over heave, roll, pitch of the sprung mass and the four wheels: mass, stiffness, damper rows, heights."""
        theta = q[3:]
        steps = theta + np.vstack([np.zeros(4), 1e-6 * np.eye(4)])
        force, at = self.elements(steps)
        rise = (at["centre"][2, 0, :, 2] - at["centre"][0, 0, :, 2]) / (2 * H)
        stiffness = (force[1:] - force[0]).T / 1e-6 / rise[:, None] / rise[None, :]
        dampers = self.dampers(theta) / rise
        y = np.array([data["wheel"]["centre"][1] for data in self.data for _ in range(2)]) * 1e-3 * [1, -1, 1, -1]
        wheelbase = self.lines[0] - self.lines[1]
        x = self.behind_front - np.array([0, 0, wheelbase, wheelbase])
        travel = np.column_stack([-np.ones(4), -y, x, np.eye(4)])
        heights = np.zeros((2, 7))
        heights[:, 0], heights[:, 2] = 1, [-self.behind_front, wheelbase - self.behind_front]
        mass = np.diag(np.concatenate([[self.sprung, self.roll_inertia, PITCH_INERTIA], self.unsprung]))
        k = travel.T @ stiffness @ travel + np.diag(np.concatenate([np.zeros(3), self.tyre]))
        k = k + heights.T @ (DENSITY / 2 * speed**2 * SLOPES) @ heights
        return mass, k, dampers @ travel, heights, wheelbase

    def dampers(self, theta):
        """Of sides, thirds and rolls: deflection over the four angles, (8, 4)."""
        steps = theta + np.vstack([H * np.eye(4), -H * np.eye(4)])
        at = self.corners.at(steps)
        mount = 1e-3 * np.array([data["elements"]["side"]["between"][1]["chassis"] for data in self.data for _ in range(2)])
        side = np.linalg.norm(at["side"] - mount, axis=-1)
        third, roll = self.across(at, "third", "third"), self.across(at, "roll-high", "roll-low")
        lengths = np.concatenate([side, third[:, [0, 2]], roll[:, [0, 2]]], axis=1)
        return -(lengths[:4] - lengths[4:]).T / (2 * H)


LOW, HIGH = np.array([2400, 2400, 3600, 3600, 3000, 4600, 1200, 1600.0]), np.array([1200, 1200, 1800, 1800, 1500, 2300, 700, 950.0])
KNEE = 0.05


def damped(rows, damping, tyre_damping):
    return rows.T @ (damping[:, None] * rows) + np.diag(np.concatenate([np.zeros(3), tyre_damping]))


def modes(car, q):
    mass, k, rows, _, _ = car.linear(q, 0.0)
    over = np.linalg.inv(mass)
    return eig(np.block([[np.zeros((7, 7)), np.eye(7)], [-over @ k, -over @ damped(rows, LOW, car.tyre_damping)]]))


NODES, WEIGHTS = np.polynomial.legendre.leggauss(200)


def road(car, q, speed, roughness):
    mass, k, rows, heights, wheelbase = car.linear(q, speed)
    low, high = np.log(0.01 * speed), np.log(10 * speed)
    f = np.exp((low + high) / 2 + (high - low) / 2 * NODES)
    w = 2 * np.pi * f
    density = roughness * (0.1 / (f / speed)) ** 2 / speed * f * WEIGHTS * (high - low) / 2
    x = w / speed * 1.46
    common = x * kv(1, x)
    delay = np.exp(-1j * w * wheelbase / speed)
    together = np.stack([np.ones_like(delay), np.ones_like(delay), delay, delay], axis=1)
    roads = np.stack([together, together * np.array([1, -1, 1, -1])], axis=2)
    shares = np.stack([(1 + common) / 2, (1 - common) / 2], axis=1) * density[:, None]
    tyre = car.tyre[None, :] + 1j * w[:, None] * car.tyre_damping[None, :]
    right = np.zeros((len(f), 7, 2), complex)
    right[:, 3:, :] = tyre[:, :, None] * roads
    damping = LOW.copy()
    for _ in range(30):
        c = damped(rows, damping, car.tyre_damping)
        left = k[None] - (w**2)[:, None, None] * mass[None] + 1j * w[:, None, None] * c[None]
        answer = np.linalg.solve(left, right)
        speeds = rows @ answer * w[:, None, None]
        sigma = np.sqrt(np.einsum("fch,fh->c", np.abs(speeds) ** 2, shares))
        now = HIGH + (LOW - HIGH) * erf(KNEE / (sigma * np.sqrt(2)))
        settled = np.all(np.abs(now - damping) < 1e-3 * now)
        damping = now
        if settled:
            break
    load = tyre[:, :, None] * (roads - answer[:, 3:, :])
    height = heights @ answer - 0.5 * (roads[:, [0, 2]] + roads[:, [1, 3]])
    mean = lambda values: np.sqrt(np.einsum("fch,fh->c", np.abs(values) ** 2, shares))
    return mean(load), mean(height)


def evaluate(car):
    trim = car.equilibrium((0.0, 0.0, 0.0))
    solved = {name: car.equilibrium(case) for name, case in CASES.items()}
    modes(car, trim)
    return solved, road(car, car.equilibrium((100 / 3, 0.0, 0.0)), 100 / 3, 64e-6)


if __name__ == "__main__":
    seconds = float(sys.argv[1]) if len(sys.argv) > 1 else 3.0
    car = Car()
    for _ in range(3):
        solved, (load, height) = evaluate(car)
    count, start = 0, time.perf_counter()
    while time.perf_counter() - start < seconds:
        evaluate(car)
        count += 1
    taken = time.perf_counter() - start
    print(
        json.dumps(
            {
                "evaluations": count,
                "seconds": taken,
                "perSecond": count / taken,
                "cases": {name: car.figures(q) for name, q in solved.items()},
                "tyreLoad": load.tolist(),
                "platform": height.tolist(),
            }
        )
    )
