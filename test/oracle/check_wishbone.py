"""The oracle held against an older one: test/data/wishbone-case.json, solved by another author's code.

Run:   cd test/oracle && python3 check_wishbone.py
Needs: as axle.py. Prints the largest differences and fails above 1e-9 (mm, deg).
"""

import json
import pathlib

import mpmath as mp

from mechanism import Corner

CASE = json.loads((pathlib.Path(__file__).parent.parent / "data" / "wishbone-case.json").read_text())


def main():
    p = CASE["hardpoints_mm"]
    corner = Corner({
        "wheel": {
            "centre": p["WC"], "camber_deg": CASE["static_camber_deg"], "toe_deg": CASE["static_toe_in_deg"],
            "loaded_radius": CASE["wheel_radius_mm"],
        },
        "linkage": {
            "lower-wishbone": {"fore": p["LWF"], "aft": p["LWR"], "outer": p["LBJ"]},
            "upper-wishbone": {"fore": p["UWF"], "aft": p["UWR"], "outer": p["UBJ"]},
            "track-rod": {"inner": p["TRI"], "outer": p["TRO"]},
            "rod": {"kind": "push-rod", "on": "lower-wishbone", "outer": p["PRO"], "inner": p["PRI"]},
            "rocker": {
                "pivot": p["RP"], "axis": [q - r for q, r in zip(p["RQ"], p["RP"])],
                "eyes": {"spring": p["SPR"], "bar": p["DLR"]},
            },
        },
        "elements": {"bar": {"lever": {"pivot": p["ABP"], "axis": [0, -1, 0], "end": p["DLA"]}, "drop-link": "bar"}},
    })
    worst = {}
    for row in CASE["corner_table"]:
        s = corner.at(mp.mpf(row["travel_mm"]))
        pairs = {"camber_deg": mp.degrees(s["camber"]), "toe_in_deg": mp.degrees(s["toe"]),
                 "rocker_angle_deg": mp.degrees(s["rocker"]), "arb_lever_angle_deg": mp.degrees(s["lever"])}
        points = {"WC": s["centre"], "CP_material": s["contact"], "PRI": s["rod-inner"], "SPR": s["eyes"]["spring"], "TRO": s["track-rod-outer"]}
        for key, value in pairs.items():
            worst[key] = max(worst.get(key, 0), abs(float(value) - row[key]))
        for key, value in points.items():
            worst[key] = max(worst.get(key, 0), max(abs(float(value[i]) - row[key][i]) for i in range(3)))
    for key, value in worst.items():
        print(f"{key:22s} {value:.1e}")
    assert max(worst.values()) < 1e-9, "differs from wishbone-case.json"


if __name__ == "__main__":
    main()
