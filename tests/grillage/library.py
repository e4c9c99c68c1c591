"""The same models in PyNiteFEA, a general library of frames in space."""

from Pynite import FEModel3D

from grid import Grid
from models import COMBINATIONS, KINDS


def solve(model, springs):
    """By combination: reactions of the piles; greatest sagging, hogging and shear of every beam.

    The plan lies in the plane of X and Z with Y up, as the library has it, and moves in Y only. Every
    part of a beam between two stations is a member. For grids with torsion, and for a single line:
    that is laid along X, where its roll is held and does nothing.
    """
    grid = Grid(model)
    alone = len(model.beams) == 1
    assert alone or model.torsion
    frame = FEModel3D()
    frame.add_material("unit", 1.0, 1.0, 0.3, 0.0)
    for (b, i), n in grid.node.items():
        if f"N{n}" in frame.nodes:
            continue
        s = grid.stations[b][i]
        east, north = (s, 0.0) if alone else model.beams[b].at(s)
        frame.add_node(f"N{n}", east, 0.0, -north)
        frame.def_support(f"N{n}", True, False, True, alone, True, False)
    for b, beam in enumerate(model.beams):
        frame.add_section(f"S{b}", 1e4, 1e6, beam.rigidity, beam.torsion)
        places = grid.stations[b]
        for i in range(len(places) - 1):
            ends = f"N{grid.node[b, i]}", f"N{grid.node[b, i + 1]}"
            frame.add_member(f"M{b}_{i}", *ends, "unit", f"S{b}")
            for spread in grid.over(b, i):
                start, end = spread.at(places[i]), spread.at(places[i + 1])
                frame.add_member_dist_load(f"M{b}_{i}", "FY", -start, -end, case=spread.kind)
    for f in model.forces:
        frame.add_node_load(f"N{grid.node[f.beam, grid.station(f.beam, f.s)]}", "FY", -f.load, case=f.kind)
    piles = [f"N{grid.node[b, grid.station(b, s)]}" for b, s, _ in model.piles]
    for name, (_, _, k) in zip(piles, model.piles, strict=True):
        if springs:
            frame.def_support_spring(name, "DY", k)
        else:
            frame.nodes[name].support_DY = True
    for name, factors in COMBINATIONS:
        frame.add_load_combo(name, dict(zip(KINDS, factors, strict=True)))
    frame.analyze_linear(check_stability=False)
    return {name: (_reactions(frame, model, piles, springs, name), _extremes(frame, grid, name)) for name, _ in COMBINATIONS}


def _reactions(frame, model, piles, springs, name):
    nodes = [frame.nodes[p] for p in piles]
    if springs:
        return [-k * node.DY[name] for node, (_, _, k) in zip(nodes, model.piles, strict=True)]
    return [node.RxnFY[name] for node in nodes]


def _extremes(frame, grid, name):
    out = []
    for b, places in enumerate(grid.stations):
        parts = [frame.members[f"M{b}_{i}"] for i in range(len(places) - 1)]
        highest = max(p.max_moment("Mz", name) for p in parts)
        lowest = min(p.min_moment("Mz", name) for p in parts)
        shears = [abs(v) for p in parts for v in (p.max_shear("Fy", name), p.min_shear("Fy", name))]
        out.append((max(0.0, -lowest), max(0.0, highest), max(shears)))
    return out
