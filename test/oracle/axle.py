"""Independent figures for both axles of the sample car, written to test/data/.

Run:   cd test/oracle && python3 axle.py
Needs: Python 3.10 or later with NumPy, SciPy and mpmath. Not part of `npm test`: the tests
read the JSON that this writes (test/data/quill-front.json, -rear.json, -car.json, -dry.json).

In:  quill-front-points.json, quill-rear-points.json (design points in mm, rates, masses).
Out: positions over a grid of left and right travel, first and second derivatives, wheel
     stiffness matrix as the second difference of the potential energy, leaks, roll centre.

Nothing here comes from the TypeScript: positions are found from the constraint equations
(mechanism.py), rates by differencing energy, derivatives by central differences in 50-digit
arithmetic. Conventions: compression positive; heave (+,+), roll (-,+) on (left, right) with
unit amplitude at each wheel; twist positive as the left wheel's bump makes it; camber ISO 8855;
toe-in positive. Standard gravity 9.80665 m/s^2. Units are in the names.
"""

import json
import pathlib

import mpmath as mp
from scipy.optimize import minimize_scalar

from mechanism import Corner, cross, dot, mirror, norm, sub, unit, vec

G0 = mp.mpf("9.80665")
SHEAR_MODULUS = mp.mpf("79300")  # N/mm^2
YOUNG_MODULUS = mp.mpf("205000")  # N/mm^2
HERE = pathlib.Path(__file__).parent
STEP = mp.mpf(10) ** -10


def number(value):
    return mp.mpf(str(value))


def torsion_rate(bar):
    """N*mm/rad: G J / L."""
    d, b = number(bar["diameter"]), number(bar.get("bore", 0))
    return SHEAR_MODULUS * mp.pi * (d**4 - b**4) / 32 / number(bar["length"])


class Axle:
    def __init__(self, data):
        self.data = data
        self.corner = Corner(data)
        self.elements = data["elements"]
        self.track = number(data["track"])
        self.low, self.high = (number(v) for v in data["travel"])
        car, wheel = data["car"], data["wheel"]
        front = number(car["mass_front_percent"]) / 100
        self.axle_mass = number(car["mass"]) * (front if data["axle"] == "front" else 1 - front)
        self.unsprung = number(wheel["unsprung_mass"])
        # Virtual work of the tyre's load at the contact point, less the unsprung weight that needs no spring.
        rise = self.corner.derivative(lambda q: q["contact"][2])[0]
        self.carried = self.axle_mass / 2 * G0 * rise - self.unsprung * G0
        self.seats = {name: mp.mpf(0) for name in self.elements}
        self.design = {n: self.length(n, 0, 0) for n, e in self.elements.items() if "between" in e}

    # -- deflections ---------------------------------------------------------------------------

    def corner_only(self, name):
        return self.elements[name]["for"] == ["corner"]

    def end(self, end, travel):
        return vec(end["chassis"]) if "chassis" in end else self.corner.at(travel)["eyes"][end["eye"]]

    def length(self, name, left, right):
        """Of the left one for a corner element; across the car otherwise, the second end on the right."""
        a, b = self.elements[name]["between"]
        if self.corner_only(name):
            return norm(sub(self.end(a, left), self.end(b, left)))
        return norm(sub(self.end(a, left), mirror(self.end(b, right))))

    def deflection(self, name, left, right):
        element = self.elements[name]
        if element.get("twists"):
            return self.corner.at(left)["rocker"]
        if "lever" in element:
            return self.corner.at(left)["lever"] - self.corner.at(right)["lever"]
        return self.design[name] - self.length(name, left, right)

    def gradient(self, name):
        """(dL, dR, dLL, dLR, dRR) at design."""
        h, s = STEP, lambda l, r: self.deflection(name, l * STEP, r * STEP)
        left = (s(1, 0) - s(-1, 0)) / (2 * h)
        right = (s(0, 1) - s(0, -1)) / (2 * h)
        ll = (s(1, 0) - 2 * s(0, 0) + s(-1, 0)) / h**2
        rr = (s(0, 1) - 2 * s(0, 0) + s(0, -1)) / h**2
        lr = (s(1, 1) - s(1, -1) - s(-1, 1) + s(-1, -1)) / (4 * h**2)
        return left, right, ll, lr, rr

    # -- laws ----------------------------------------------------------------------------------

    def blade_inertia(self, blade):
        thin, high = sorted(number(v) for v in blade["section"])
        angle = mp.radians(number(blade["angle_deg"]))
        stiff, soft = thin * high**3 / 12, high * thin**3 / 12
        return 1 / (mp.sin(angle) ** 2 / stiff + mp.cos(angle) ** 2 / soft)

    def lever_arm(self, element):
        """Moment arm of the drop link about the lever's axis at design."""
        lever = element["lever"]
        pivot, axis, end = vec(lever["pivot"]), unit(vec(lever["axis"])), vec(lever["end"])
        link = unit(sub(self.corner.eyes[element["drop-link"]], end))
        return abs(dot(cross(sub(end, pivot), link), axis))

    def rate(self, name):
        """Of a spring, N/mm or N*mm/rad at design; the bar with its levers and link springs in series."""
        e = self.elements[name]
        if e["kind"] == "damper":
            return mp.mpf(0)
        if "rate" in e:
            return number(e["rate"])
        compliance = 1 / torsion_rate(e["torsion_bar"])
        if "blade" in e:
            arm, length = self.lever_arm(e), number(e["blade"]["length"])
            compliance += 2 * length**3 / (3 * YOUNG_MODULUS * self.blade_inertia(e["blade"]) * arm**2)
        if "link_spring" in e:
            compliance += 2 / (number(e["link_spring"]["rate"]) * self.lever_arm(e) ** 2)
        return 1 / compliance

    def energy(self, name, left, right):
        """Near design: stages, gaps and one-way action do not change there."""
        k = self.rate(name)
        if k == 0:
            return mp.mpf(0)
        seat = self.seats[name]
        if self.corner_only(name):
            return sum(k * (self.deflection(name, z, z) + seat) ** 2 / 2 for z in (left, right))
        return k * (self.deflection(name, left, right) + seat) ** 2 / 2

    def trim(self):
        """Seats from preloads; then the one of the trim element, so that dU/dz is what the wheel's load asks for."""
        trim = next(n for n, e in self.elements.items() if e.get("trim"))
        carried = mp.mpf(0)
        for name, e in self.elements.items():
            if "preload" in e:
                self.seats[name] = number(e["preload"]) / self.rate(name)
                carried += number(e["preload"]) * self.gradient(name)[0]
        lever = self.gradient(trim)[0]
        load = (self.carried - carried) / lever
        self.seats[trim] = load / self.rate(trim)
        return trim, load

    def second_difference(self, energy):
        h = STEP
        u = lambda l, r: energy(l * h, r * h)
        ll = (u(1, 0) - 2 * u(0, 0) + u(-1, 0)) / h**2
        rr = (u(0, 1) - 2 * u(0, 0) + u(0, -1)) / h**2
        lr = (u(1, 1) - u(1, -1) - u(-1, 1) + u(-1, -1)) / (4 * h**2)
        return ll, lr, rr

    def axle_rates(self, matrix):
        ll, lr, rr = matrix
        roll = self.track**2 / 4 * (ll - 2 * lr + rr) / 1000  # N/mm * mm^2 -> N*m/rad
        return {"heave_N_per_mm": ll + 2 * lr + rr, "roll_Nm_per_rad": roll, "roll_Nm_per_deg": mp.radians(roll), "single_N_per_mm": ll}

    def ride(self, matrix):
        """K_t - K_t (K + K_t)^-1 K_t."""
        ll, lr, rr = matrix
        k = mp.matrix([[ll, lr], [lr, rr]])
        t = number(self.data["wheel"]["tyre_rate"]) * mp.eye(2)
        r = t - t * mp.inverse(k + t) * t
        return r[0, 0], r[0, 1], r[1, 1]

    def damping(self):
        """Σ c ∇s ∇sᵀ, N*s/mm; dampers at small speed."""
        ll = lr = rr = mp.mpf(0)
        for name, e in self.elements.items():
            if e["kind"] != "damper":
                continue
            c = number(e["damping"]) / 1000
            left, right = self.gradient(name)[:2]
            if self.corner_only(name):
                ll, rr = ll + c * left**2, rr + c * left**2
            else:
                ll, lr, rr = ll + c * left**2, lr + c * left * right, rr + c * right**2
        return ll, lr, rr

    # -- envelopes -----------------------------------------------------------------------------

    def extreme(self, function, low, high, points=45):
        """Largest |f|: a grid, then a bounded search about the best point."""
        xs = [low + (high - low) * i / (points - 1) for i in range(points)]
        best = max(xs, key=lambda x: abs(function(x)))
        width = (high - low) / (points - 1)
        a, b = max(low, best - width), min(high, best + width)
        found = minimize_scalar(lambda x: -abs(float(function(mp.mpf(x)))), bounds=(float(a), float(b)), method="bounded", options={"xatol": 1e-9})
        return max(abs(function(best)), abs(function(mp.mpf(found.x))))

    def envelope(self, name):
        roll = min(-self.low, self.high)
        return {
            "heave": self.extreme(lambda q: self.deflection(name, q, q), self.low, self.high),
            "roll": self.extreme(lambda q: self.deflection(name, -q, q), -roll, roll),
        }


def report(value):
    """Fifteen significant digits; an exact zero (below the differencing noise) as 0."""
    if isinstance(value, mp.mpf):
        return 0.0 if abs(value) < mp.mpf(10) ** -20 else float(mp.nstr(value, 17))
    if isinstance(value, dict):
        return {k: report(v) for k, v in value.items()}
    if isinstance(value, (list, tuple)):
        return [report(v) for v in value]
    return value


def corner_row(axle, travel):
    corner = axle.corner
    s = corner.at(travel)
    rocker, lever = (corner.derivative(lambda q, key=key: q[key], travel) for key in ("rocker", "lever"))
    out = {
        "travel_mm": mp.mpf(travel), "centre_mm": s["centre"], "contact_mm": s["contact"],
        "lower_outer_mm": s["lower-outer"], "upper_outer_mm": s["upper-outer"], "track_rod_outer_mm": s["track-rod-outer"],
        "rod_outer_mm": s["rod-outer"], "rod_inner_mm": s["rod-inner"], "lever_end_mm": s["lever-end"], "eyes_mm": s["eyes"],
        "camber_deg": mp.degrees(s["camber"]), "toe_deg": mp.degrees(s["toe"]),
        "rocker_deg": mp.degrees(s["rocker"]), "rocker_rad_per_mm": rocker[0], "rocker_rad_per_mm2": rocker[1],
        "lever_deg": mp.degrees(s["lever"]), "lever_rad_per_mm": lever[0], "lever_rad_per_mm2": lever[1],
    }
    for key, axis in (("contact_x", 0), ("contact_y", 1), ("contact_z", 2)):
        out[f"d_{key}"], out[f"dd_{key}_per_mm"] = corner.derivative(lambda q, i=axis: q["contact"][i], travel)
    out["d_centre_x"], out["dd_centre_x_per_mm"] = corner.derivative(lambda q: q["centre"][0], travel)
    out["d_centre_y"], out["dd_centre_y_per_mm"] = corner.derivative(lambda q: q["centre"][1], travel)
    for name, key in (("d_camber_deg_per_mm", "camber"), ("d_toe_deg_per_mm", "toe")):
        out[name] = mp.degrees(corner.derivative(lambda q, k=key: q[k], travel)[0])
    mount = next(n for n in axle.elements if n == "side")
    h = STEP
    f = lambda z: axle.deflection(mount, z, z)
    z = mp.mpf(travel)
    out["side_motion_ratio"] = (f(z + h) - f(z - h)) / (2 * h)
    out["side_motion_ratio_per_mm"] = (f(z + h) - 2 * f(z) + f(z - h)) / h**2
    return out


def geometry(axle):
    """Roll centre height over the ground and anti figures from the motion of the contact point (virtual work)."""
    car, data, corner = axle.data["car"], axle.data, axle.corner
    d = [corner.derivative(lambda q, i=i: q["contact"][i])[0] for i in range(3)]
    dx = corner.derivative(lambda q: q["centre"][0])[0]
    ratio = number(car["wheelbase"]) / number(car["cg_height"])
    front = number(car["brakes_front_percent"]) / 100
    out = {
        "ground_z_mm": corner.contact[2], "contact_y_mm": corner.contact[1],
        "roll_centre_height_mm": corner.contact[1] * d[1] / d[2],
    }
    if data["axle"] == "front":
        out["anti_dive_percent"] = 100 * front * ratio * d[0] / d[2]
    else:
        out["anti_lift_percent"] = -100 * (1 - front) * ratio * d[0] / d[2]
        out["anti_squat_percent"] = -100 * ratio * dx
    top, bottom = corner.uo, corner.lo
    out["kingpin_deg"] = mp.degrees(mp.atan2(bottom[1] - top[1], top[2] - bottom[2]))
    out["caster_deg"] = mp.degrees(mp.atan2(bottom[0] - top[0], top[2] - bottom[2]))
    k = (corner.contact[2] - bottom[2]) / (top[2] - bottom[2])
    out["scrub_radius_mm"] = corner.contact[1] - (bottom[1] + k * (top[1] - bottom[1]))
    out["trail_mm"] = bottom[0] + k * (top[0] - bottom[0]) - corner.contact[0]
    return out


def solve_axle(data):
    axle = Axle(data)
    trim, load = axle.trim()
    total = axle.second_difference(lambda l, r: sum((axle.energy(n, l, r) for n in axle.elements), mp.mpf(0)))
    rates = axle.axle_rates(total)
    elements = {}
    for name, e in axle.elements.items():
        left, right, ll, lr, rr = axle.gradient(name)
        entry = {"kind": e["kind"], "for": e["for"], "gradient": [left, right], "hessian_per_mm": [ll, lr, rr], "envelope": axle.envelope(name)}
        if axle.corner_only(name):
            entry["motion_ratio"] = left
        else:
            entry["sensitivity"] = {"heave": left + right, "roll": right - left}
            own, other = ("heave", "roll") if e["for"] == ["heave"] else ("roll", "heave")
            entry["leak"] = {"mode": other, "first_order": abs(entry["sensitivity"][other]) / abs(entry["sensitivity"][own]), "finite": entry["envelope"][other] / entry["envelope"][own]}
        if e["kind"] != "damper":
            entry["rate"] = axle.rate(name)
            entry["load"] = axle.rate(name) * axle.seats[name]
            entry["share"] = axle.axle_rates(axle.second_difference(lambda l, r, n=name: axle.energy(n, l, r)))
            if not axle.corner_only(name):
                key = "roll_Nm_per_rad" if entry["leak"]["mode"] == "roll" else "heave_N_per_mm"
                entry["leak"]["rate"] = entry["share"][key] / rates[key]
        elements[name] = entry
    c = axle.damping()
    damping = {"heave_Ns_per_mm": c[0] + 2 * c[1] + c[2], "roll_Nms_per_rad": axle.track**2 / 4 * (c[0] - 2 * c[1] + c[2]) / 1000}
    ride = axle.axle_rates(axle.ride(total))
    sprung = axle.axle_mass - 2 * axle.unsprung
    frequency = mp.sqrt(ride["heave_N_per_mm"] * 1000 / sprung) / (2 * mp.pi)
    travels = [-40, -30, -20, -10, -5, 0, 5, 10, 20, 25, 30, 40]
    states = []
    for heave in (-30, -20, -10, 0, 10, 20, 25):
        for roll in (-20, -10, -5, 0, 5, 10, 20):
            l, r = mp.mpf(heave - roll), mp.mpf(heave + roll)
            if max(abs(l), abs(r)) <= 40:
                states.append({
                    "left_mm": l, "right_mm": r, "heave_mm": mp.mpf(heave), "roll_amplitude_mm": mp.mpf(roll),
                    "elements": {n: ([axle.deflection(n, l, l), axle.deflection(n, r, r)] if axle.corner_only(n) else axle.deflection(n, l, r)) for n in axle.elements},
                })
    result = {
        "about": "Written by test/oracle/axle.py; independent of the TypeScript. Deflections mm (compression positive) or rad; "
        "for a corner element [left, right], each as its own wheel's bump makes it; twist of the bar left minus right.",
        "input": data,
        "verification": {},
        "geometry": geometry(axle),
        "design_lengths_mm": axle.design,
        "corner": [corner_row(axle, t) for t in travels],
        "states": states,
        "elements": elements,
        "trim": {"element": trim, "carried_N": axle.carried, "load": load, "seat": axle.seats[trim]},
        "stiffness_N_per_mm": [[total[0], total[1]], [total[1], total[2]]],
        "rates": rates, "ride": ride, "damping": damping,
        "sprung_mass_kg": sprung, "heave_frequency_Hz": frequency,
        "heave_damping_ratio_on_axle_rate": damping["heave_Ns_per_mm"] * 1000 / (2 * mp.sqrt(rates["heave_N_per_mm"] * 1000 * sprung)),
    }
    # mm^2 halved for the squared distances, mm for the height: text, since it is far below a double's smallest step.
    result["verification"] = {
        "largest_equation_residual": mp.nstr(axle.corner.worst_residual, 2),
        "largest_change_from_scipy_root_to_50_digits_mm": mp.mpf(axle.corner.worst_gap),
    }
    return result


def whole_car(front, rear, data):
    """Roll gradient on ride stiffness about the roll axis, and shares; sprung mass with its own height."""
    car = data["car"]
    mass, h = number(car["mass"]), number(car["cg_height"])
    share = number(car["mass_front_percent"]) / 100
    sprung_f, sprung_r = front["sprung_mass_kg"], rear["sprung_mass_kg"]
    sprung = sprung_f + sprung_r
    radius = lambda a: number(a["input"]["wheel"]["centre"][2]) - a["geometry"]["ground_z_mm"]
    height = (mass * h - (mass - sprung) * (radius(front) + radius(rear)) / 2) / sprung
    axis = (front["geometry"]["roll_centre_height_mm"] * sprung_f + rear["geometry"]["roll_centre_height_mm"] * sprung_r) / sprung
    ride = front["ride"]["roll_Nm_per_rad"] + rear["ride"]["roll_Nm_per_rad"]
    moment = sprung * G0 * (height - axis) / 1000
    stiffness = front["rates"]["roll_Nm_per_rad"] + rear["rates"]["roll_Nm_per_rad"]
    damping = front["damping"]["roll_Nms_per_rad"] + rear["damping"]["roll_Nms_per_rad"]
    inertia = number(data["car"].get("roll_inertia", 60)) + sprung * ((height - axis) / 1000) ** 2
    roll_at = lambda a: a["geometry"]["roll_centre_height_mm"]
    transfer = {}
    for name, a, own, m in (("front", front, sprung_f, share * mass), ("rear", rear, sprung_r, (1 - share) * mass)):
        part = a["ride"]["roll_Nm_per_rad"] / (ride - moment)
        elastic = moment * part
        geometric = own * G0 * roll_at(a) / 1000
        unsprung = (m - own) * G0 * radius(a) / 1000
        transfer[name] = (elastic + geometric + unsprung) / (number(a["input"]["track"]) / 1000)
    total = transfer["front"] + transfer["rear"]
    return {
        "about": "Textbook sums on the axle figures; linear, about design position.",
        "sprung_cg_height_mm": height, "roll_axis_height_mm": axis,
        "roll_gradient_deg_per_g": mp.degrees(moment / (ride - moment)),
        "roll_stiffness_front_share_percent": 100 * front["rates"]["roll_Nm_per_rad"] / stiffness,
        "ride_roll_stiffness_front_share_percent": 100 * front["ride"]["roll_Nm_per_rad"] / ride,
        "load_transfer_front_share_percent": 100 * transfer["front"] / total,
        "load_transfer_N_per_g": transfer,
        "roll_damping_ratio_on_axle_rates": damping / (2 * mp.sqrt(stiffness * inertia)),
        "roll_frequency_Hz": mp.sqrt(ride / inertia) / (2 * mp.pi),
    }


def dry_setup(inputs):
    """Rates of samples/quill/dry.crank: heave springs, and the front blade one step stiffer (67.5 deg of 90)."""
    inputs = json.loads(json.dumps(inputs))
    inputs["front"]["elements"]["third"]["rate"] = 60
    inputs["front"]["elements"]["bar"]["blade"]["angle_deg"] = 67.5
    inputs["rear"]["elements"]["third"]["rate"] = 82
    inputs["rear"]["wheel"]["camber_deg"] = -1.7
    result = {"about": "Rates of the dry set-up, at its own trim."}
    for name, data in inputs.items():
        axle = Axle(data)
        _, load = axle.trim()
        total = axle.second_difference(lambda l, r, a=axle: sum((a.energy(n, l, r) for n in a.elements), mp.mpf(0)))
        result[name] = {"rates": axle.axle_rates(total), "ride": axle.axle_rates(axle.ride(total)), "trim_load": load}
    return result


def main():
    out = HERE.parent / "data"
    out.mkdir(exist_ok=True)
    results = {}
    for name in ("front", "rear"):
        data = json.loads((HERE / f"quill-{name}-points.json").read_text())
        results[name] = solve_axle(data)
        (out / f"quill-{name}.json").write_text(json.dumps(report(results[name]), indent=1) + "\n")
        r = results[name]
        print(name, json.dumps(report({k: r[k] for k in ("verification", "geometry", "trim", "rates", "ride", "damping", "heave_frequency_Hz", "heave_damping_ratio_on_axle_rate")}), indent=1))
        for n, e in r["elements"].items():
            print(" ", n, json.dumps(report({k: e[k] for k in e if k in ("motion_ratio", "sensitivity", "leak", "share", "load", "rate")})))
    car = whole_car(results["front"], results["rear"], results["front"]["input"])
    (out / "quill-car.json").write_text(json.dumps(report(car), indent=1) + "\n")
    dry = dry_setup({name: r["input"] for name, r in results.items()})
    (out / "quill-dry.json").write_text(json.dumps(report(dry), indent=1) + "\n")
    print(json.dumps(report(car), indent=1))


if __name__ == "__main__":
    main()
