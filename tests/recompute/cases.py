"""Reference cases with known figures, asked of the service one by one.

Each case is a request made from the numbers of the case, what to read from the answer, and the
figure with its tolerance. The whole answer is compared with the recomputation as well.
"""

import math
from dataclasses import dataclass
from typing import Callable

import tables
from units import base, quantity


@dataclass(frozen=True)
class Case:
    """One figure of a case; the tolerance is relative, or absolute where small and printed so."""

    id: str
    request: dict
    read: Callable
    figure: float
    relative: float
    absolute: float = 0.0

    def differs(self, answer):
        """The figure as answered, where it is not that of the case."""
        got = self.read(answer["result"])
        close = math.isclose(got, self.figure, rel_tol=self.relative, abs_tol=self.absolute)
        return None if close else got


def _request(soil, weight, helices, shaft=0.073, **more):
    layer = {
        "top": quantity(0, "m"),
        "bottom": quantity(40, "m"),
        "unit_weight": quantity(weight, "kN_per_m3"),
        "soil": soil,
    }
    return {
        "soil": {"layers": [layer]},
        "pile": {
            "shaft": {"round": {"outside_diameter": quantity(shaft, "m")}},
            "helices": [
                {"diameter": quantity(d, "m"), "depth": quantity(z, "m")} for d, z in helices
            ],
        },
        **more,
    }


def _sand(phi):
    return {"sand": {"friction_angle": quantity(phi, "deg")}}


def _clay(su):
    return {"clay": {"undrained_strength": quantity(su, "kPa")}}


def _helix(result, side, number=0):
    return result[side]["individual_bearing"]["helices"][number]


def _factor(side):
    """Bearing factor of the first soil of the first helix."""
    return lambda result: _helix(result, side)["zone"][0]["bearing_factor"]


def _total(side, mode):
    return lambda result: base(result[side][mode]["total"])


def _width_factor(stress, weight, diameter):
    """N_gamma from the bearing: q = s'_v N_q + 0.5 gamma' D N_gamma 0.6."""

    def read(result):
        part = _helix(result, "compression")["zone"][0]
        rest = base(part["bearing"]) - stress * part["bearing_factor"]
        return rest / (0.5 * weight * diameter * 0.6)

    return read


def _table(name, family, rows, relative):
    """N_q, and N_gamma where printed, of a helix of 0.4 m at 5 m in sand of 18 kN/m3."""
    for phi, nq, *ngamma in rows:
        methods = {"drained_bearing": family}
        if ngamma:
            methods["width_term"] = "include"
        request = _request(_sand(phi), 18.0, [(0.4, 5.0)], methods=methods)
        # Meyerhof's depth factor of one diameter stands on the printed N_q
        if family == "meyerhof_1963":
            nq *= 1.0 + 0.1 * math.tan(math.radians(45.0 + phi / 2.0))
        yield Case(name, request, _factor("compression"), nq, relative, 0.06)
        for figure in ngamma:
            read = _width_factor(90.0, 18.0, 0.4)
            yield Case(name, request, read, figure, relative, 0.06 if relative > 1e-4 else 0.0)


def _bearing_factors():
    yield from _table("BF-01", "terzaghi_1943", tables.TERZAGHI, 0.01)
    yield from _table("BF-02", "meyerhof_1963", tables.MEYERHOF, 0.015)
    yield from _table("BF-03", "vesic_1973", tables.VESIC, 0.015)
    yield from _table("BF-04", "hansen_1970", tables.HANSEN, 0.015)
    yield from _table("BF-05", "vesic_1973", tables.VESIC_FINE, 0.003)
    for phi, nq, vesic, meyerhof in tables.CLOSED:
        yield from _table("BF-07", "vesic_1973", [(phi, nq, vesic)], 1e-5)
        yield from _table("BF-07", "meyerhof_1963", [(phi, nq, meyerhof)], 1e-5)
    # an example of a general package of R, Terzaghi with local shear
    methods = {"drained_bearing": "terzaghi_1943", "local_shear": "two_thirds"}
    request = _request(_sand(20), 17.0, [(0.3, 5.0)], methods=methods)
    yield Case("BF-08", request, _factor("compression"), 3.875274, 1e-5)


def _undrained():
    # Skempton 1951: 7.2 at one diameter, 9 from 2.5 on
    for ratio, nc in ((1.0, 7.2), (2.5, 9.0), (10.0, 9.0)):
        request = _request(_clay(50), 18.0, [(0.3, 0.3 * ratio)])
        yield Case("UC-01", request, _factor("compression"), nc, 1e-4)
    for rigidity, nc in ((50, 9.1202), (100, 10.0444), (200, 10.9686)):
        methods = {"undrained_bearing": {"cavity_expansion": {"reduced_rigidity_ratio": rigidity}}}
        request = _request(_clay(50), 18.0, [(0.3, 5.0)], methods=methods)
        yield Case("UC-02", request, _factor("compression"), nc, 1e-4)
    request = _request(_clay(75), 18.0, [(0.3, 5.0)], methods={"undrained_bearing": "fixed_nine"})
    read = lambda result: base(_helix(result, "compression")["bearing"])
    yield Case("UC-03", request, read, 675.0, 1e-4)


def _three_helices():
    helices = [(0.3048, 4.6284), (0.254, 5.3904), (0.2032, 6.0)]
    request = _request(_clay(75), 18.0, helices, design_basis={"allowable_stress": {}})
    for number, area in enumerate((0.06878, 0.046485, 0.028244)):
        read = lambda result, n=number: base(_helix(result, "compression", n)["area"])
        yield Case("HB-02", request, read, area, 5e-4)
    bearing = _total("compression", "individual_bearing")
    yield Case("HB-02", request, bearing, 96.869, 5e-4)
    gross = {**request, "methods": {"helix_area": "bottom_gross"}}
    yield Case("HB-02", gross, bearing, 99.694, 5e-4)
    yield Case("HB-04", request, lambda r: base(r["compression"]["ultimate"]), 96.869, 5e-4)
    read = lambda result: base(result["compression"]["design"]["capacity"])
    yield Case("HB-04", request, read, 48.435, 5e-4)


def _spaced(ratio, methods):
    helices = [(0.3048, 4.0 + 0.3048 * ratio * n) for n in range(3)]
    return _request(_clay(75), 18.0, helices, methods=methods)


def _bearing_governs(result):
    return float(result["compression"]["governing_mode"] == "individual_bearing")


def _transition():
    net, gross = {}, {"helix_area": "gross"}
    bearing = _total("compression", "individual_bearing")
    yield Case("HB-05", _spaced(3.0, net), bearing, 139.28, 5e-4)
    for ratio, figure in ((1.5, 112.096), (3.0, 177.765)):
        read = _total("compression", "cylindrical_shear")
        yield Case("HB-05", _spaced(ratio, net), read, figure, 5e-4)
    # the mode changes at the spacing where algebra has both equal
    for ratio, methods in ((2.25, gross), (2.1209, net)):
        for step, governs in ((-0.0005, 0.0), (0.0005, 1.0)):
            yield Case("HB-05", _spaced(ratio + step, methods), _bearing_governs, governs, 0.0)


def _layer_mean():
    request = _request(_clay(40), 18.0, [(0.3, 3.6)])
    top = request["soil"]["layers"][0]
    low = {**top, "top": quantity(4, "m"), "bottom": quantity(9, "m"), "soil": _clay(80)}
    request["soil"]["layers"] = [{**top, "bottom": quantity(4, "m")}, low]
    for side, su in (("compression", 53.333), ("tension", 40.0)):
        read = lambda result, s=side: base(_helix(result, s)["bearing"]) / 9.0
        yield Case("HB-07", request, read, su, 1e-4)


def _lateral_ratio(result):
    return result["tension"]["cylindrical_shear"]["gaps"][0]["parts"][0]["lateral_stress_ratio"]


def _uplift_factors():
    for phi, factor in tables.BREAKOUT_DEEP:
        request = _request(_sand(phi), 17.0, [(0.3, 5.0)])
        yield Case("UP-02", request, _factor("tension"), factor, 0.005)
    for phi, largest in tables.LATERAL_LARGEST:
        request = _request(_sand(phi), 17.0, [(0.3, 5.0), (0.3, 5.9)])
        yield Case("UP-03", request, _lateral_ratio, largest, 0.003)
    for su, ratio in tables.CRITICAL_CLAY:
        request = _request(_clay(su), 17.0, [(0.3, 2.0)])
        read = lambda result: result["tension"]["embedment"]["critical_ratio"]
        yield Case("UP-04", request, read, ratio, 0.001)


def _uplift_loads():
    gross = {"helix_area": "gross"}
    bearing = _total("tension", "individual_bearing")
    clay = _request(_clay(50), 17.0, [(0.3048, 0.9)], methods=gross)
    yield Case("UP-05", clay, _factor("tension"), 3.5433, 0.001)
    yield Case("UP-05", clay, bearing, 14.043, 0.001)
    sand = _request(_sand(35), 17.0, [(0.3048, 0.9144)], methods=gross)
    yield Case("UP-06", sand, _factor("tension"), 7.9846, 0.001)
    yield Case("UP-06", sand, bearing, 9.0564, 0.001)
    two = _request(_sand(35), 17.0, [(0.3048, 2.4384), (0.3048, 3.3528)])
    yield Case("UP-07", two, _total("tension", "cylindrical_shear"), 90.794, 0.001)
    yield Case("UP-07", two, bearing, 108.12, 0.001)
    whole = {"uplift_sand": {"nq_tension": {"tension_factor": 1.0}}}
    yield Case("UP-07", {**two, "methods": whole}, bearing, 225.463, 0.001)


def _adhesion():
    """A slice of 0.2 m about the depth of the stress, in soil of 10 kN/m3, on a shaft of 0.1 m."""
    for su, stress, figure in tables.ADHESION:
        depth = stress / 10.0
        methods = {"shaft_adhesion": {"alpha": {"ignored_depth": quantity(depth - 0.1, "m")}}}
        helices = [(0.3, depth + 0.4)]
        request = _request(_clay(su), 10.0, helices, shaft=0.1, methods=methods)
        read = lambda result: base(result["compression"]["shaft_adhesion"]) / (
            math.pi * 0.1 * 0.2
        )
        yield Case("AL-01", request, read, figure, 1e-4)


def _codes():
    """Factors of the codes, on a pile that bears 178 kN and more."""
    helices = [(0.3556, 5.0), (0.3048, 6.1)]

    def based(basis):
        return _request(_clay(150), 18.0, helices, shaft=0.0889, design_basis=basis)

    others = {"torque_correlation": 178, "load_test": 210, "shaft": 300, "couplings": 260}
    others = {name: quantity(load, "kN") for name, load in others.items()}
    least = based({"allowable_stress": {"other_ultimates": others}})
    read = lambda result: base(result["compression"]["design"]["capacity"])
    yield Case("CD-01", least, read, 89.0, 1e-6)
    last = lambda result: result["factors"][1]["used_factor"]
    first = lambda result: result["factors"][0]["used_factor"]
    for name, clause, proof, factor in (
        ("CD-02", "general", "analysis", 3.0),
        ("CD-02", "general", "load_test", 2.0),
        ("CD-02", "general_wind_seismic", "analysis", 2.0),
        ("CD-02", "general_wind_seismic", "load_test", 1.5),
        ("CD-03", "new_york_city", "analysis", 3.0),
        ("CD-03", "new_york_city", "load_test", 2.0),
    ):
        basis = {"allowable_stress": {"uplift_clause": clause, "proof": proof}}
        yield Case(name, based(basis), last, factor, 1e-9)
    for proof, compression, tension in (("analysis", 0.4, 0.3), ("load_test", 0.6, 0.4)):
        basis = {"limit_states": {"proof": proof}}
        yield Case("CD-06", based(basis), first, compression, 1e-9)
        yield Case("CD-06", based(basis), last, tension, 1e-9)


def cases():
    """All of them, in order."""
    found = []
    for family in (
        _bearing_factors,
        _undrained,
        _three_helices,
        _transition,
        _layer_mean,
        _uplift_factors,
        _uplift_loads,
        _adhesion,
        _codes,
    ):
        found += family()
    return found
