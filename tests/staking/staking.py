"""Reads the drawings and lists of pile-layout back and compares them with its JSON.

Every example that answers, and examples with labels that drawings and tables could take for
something else, go through the release binary: as JSON, as DXF in plan and in site coordinates,
and as CSV. ezdxf must load each drawing without recovery and find nothing to mend; units,
coordinates, layers and labels must be those of the JSON, and the plan turned by the answer's
own angle, written here anew, must give the same site coordinates.
"""

import copy
import csv
import io
import json
import math
import pathlib
import subprocess
import sys
import tempfile

import ezdxf
from ezdxf import units
from ezdxf.lldxf.encoding import decode_dxf_unicode

EXAMPLES = pathlib.Path(__file__).parent.parent.parent / "openapi/examples/pile-layout"
UNITS = {"m": units.M, "ft": units.FT, "ft_us_survey": units.InsertUnits.USSurveyFeet}
METRES = {"m": 1.0, "ft": 0.3048, "ft_us_survey": 1200.0 / 3937.0}
DECIMALS = {"m": 4, "ft": 3, "ft_us_survey": 3}
HOSTILE = ["=1+1", "-2", "@x", "+3", 'a"b', "a,b", "50%%d", "\\U+00E9", "a^Ib", "caf\u00e9 \U0001f332"]
faults = []
counts = {"drawings": 0, "piles": 0, "points": 0, "lists": 0}


def wrong(what, detail):
    faults.append(f"{what}: {detail}")


def calc(binary, request, accept, form=None):
    command = [binary, "calc", "pile-layout", "-", "--accept", accept]
    if form:
        command += ["--form", form]
    text = json.dumps(request)
    done = subprocess.run(command, input=text.encode(), capture_output=True, check=False)
    if done.returncode != 0:
        raise SystemExit(f"{accept} {form}: exit {done.returncode}\n{done.stdout.decode()[:2000]}")
    return done.stdout.decode()


def near(a, b, relative=1e-9, absolute=1e-12):
    return abs(a - b) <= max(relative * max(abs(a), abs(b)), absolute)


def plain(text):
    """A label as it stands in JSON: numbered characters by the library's own decoder, and the
    two halves of one above the first plane put together."""
    return decode_dxf_unicode(text).encode("utf-16", "surrogatepass").decode("utf-16")


def read_drawing(name, text):
    if not text.isascii():
        wrong(name, "not ASCII")
    with tempfile.NamedTemporaryFile(suffix=".dxf") as file:
        file.write(text.encode("ascii", "replace"))
        file.flush()
        drawing = ezdxf.readfile(file.name)
    if drawing.dxfversion != "AC1015":
        wrong(name, f"read as {drawing.dxfversion}")
    audit = drawing.audit()
    for entry in audit.errors + audit.fixes:
        wrong(name, f"audit: {entry.message}")
    counts["drawings"] += 1
    return drawing


def piles_of(drawing):
    """Insertion points on the layers of piles, and the texts beside them."""
    space = drawing.modelspace()
    marks = [e for e in space.query("INSERT") if e.dxf.layer.startswith("PILE")]
    labels = [plain(e.dxf.text) for e in space.query("TEXT") if e.dxf.layer == "PILE_LABEL"]
    for mark in marks:
        if mark.dxf.name not in drawing.blocks or mark.dxf.layer not in drawing.layers:
            wrong("mark", f"{mark.dxf.name} on {mark.dxf.layer} is nowhere")
    return [(m.dxf.insert.x, m.dxf.insert.y) for m in marks], labels


def units_of(name, drawing, unit):
    if drawing.header["$INSUNITS"] != UNITS[unit]:
        wrong(name, f"$INSUNITS is {drawing.header['$INSUNITS']}, not that of {unit}")
    if drawing.header["$MEASUREMENT"] != (1 if unit == "m" else 0):
        wrong(name, "$MEASUREMENT does not fit the unit")


def plan_drawing(name, binary, request, result):
    drawing = read_drawing(name, calc(binary, request, "image/vnd.dxf", "plan_dxf"))
    piles = result["piles"]
    unit = piles[0]["at"]["x"]["unit"]
    units_of(name, drawing, unit)
    places, labels = piles_of(drawing)
    if len(places) != len(piles) or labels != [p["label"] for p in piles]:
        wrong(name, f"{len(places)} marks, labels {labels}")
    for place, pile in zip(places, piles):
        counts["piles"] += 1
        want = (pile["at"]["x"]["value"], pile["at"]["y"]["value"])
        if not (near(place[0], want[0]) and near(place[1], want[1])):
            wrong(name, f"{pile['label']} at {place}, not {want}")
    centres = [e for e in drawing.modelspace().query("LWPOLYLINE") if e.dxf.layer == "BEAM_CENTRE"]
    for line, beam in zip(centres, result["beams"], strict=True):
        want = [(p["x"]["value"], p["y"]["value"]) for p in beam["points"]]
        if line.closed:
            want = want[:-1]
        got = [(x, y) for x, y in line.get_points("xy")]
        if len(got) != len(want) or not all(near(g[i], w[i]) for g, w in zip(got, want) for i in (0, 1)):
            wrong(name, f"beam {beam['label']}: {got}, not {want}")


def turned(grid, at):
    """A place of the plan on site, m: the transform of the document, written anew."""
    metres = lambda q: q["value"] * METRES[q["unit"]]
    anchor = grid["anchor"]
    angle, factor = math.radians(grid["rotation"]["value"]), grid["combined_factor"]
    dx = metres(at["x"]) - metres(anchor["plan"]["x"])
    dy = metres(at["y"]) - metres(anchor["plan"]["y"])
    site, unit = anchor["site"], METRES[grid["unit"]]
    east = float(site["easting_text"]) * unit + factor * (math.cos(angle) * dx - math.sin(angle) * dy)
    north = float(site["northing_text"]) * unit + factor * (math.sin(angle) * dx + math.cos(angle) * dy)
    return east, north


def site_drawing(name, binary, request, result):
    drawing = read_drawing(name, calc(binary, request, "image/vnd.dxf", "site_dxf"))
    staking = result.get("staking", {})
    grid = staking.get("grid")
    places, labels = piles_of(drawing)
    if grid is None:
        if places or len(drawing.modelspace()) != 1:
            wrong(name, "site coordinates without a site grid")
        return
    units_of(name, drawing, grid["unit"])
    points = staking["points"]
    if labels != [p["label"] for p in points]:
        wrong(name, f"labels {labels}")
    for place, point in zip(places, points, strict=True):
        counts["points"] += 1
        site = point["site"]
        if place != (float(site["easting_text"]), float(site["northing_text"])):
            wrong(name, f"{point['label']} at {place}, not {site}")
        for text in (site["easting_text"], site["northing_text"]):
            if len(text.partition(".")[2]) != DECIMALS[grid["unit"]]:
                wrong(name, f"{point['label']}: {text}")
        # both roundings of the texts and of the nine digits, far below 1/16 in (1.6 mm)
        east, north = turned(grid, point["at"])
        unit = METRES[grid["unit"]]
        if abs(place[0] * unit - east) > 5e-4 or abs(place[1] * unit - north) > 5e-4:
            wrong(name, f"{point['label']}: {place} is not {east / unit}, {north / unit}")


def unmarked(field):
    """A field of text without the apostrophe that keeps it from being a formula."""
    return field[1:] if field.startswith("'") else field


def point_list(name, binary, request, result):
    text = calc(binary, request, "text/csv", "staking")
    header, *rows = list(csv.reader(io.StringIO(text, newline="")))
    counts["lists"] += 1
    staking = result.get("staking", {})
    grid = staking.get("grid")
    if grid is None:
        if rows or header != ["point", "northing", "easting", "elevation", "description"]:
            wrong(name, f"{header}, {len(rows)} rows")
        return
    unit = grid["unit"]
    if header != ["point"] + [f"{n} [{unit}]" for n in ("northing", "easting", "elevation")] + ["description"]:
        wrong(name, f"{header}")
    for row, point in zip(rows, staking["points"], strict=True):
        site = point["site"]
        want = [site["northing_text"], site["easting_text"], point.get("elevation_text", "")]
        if unmarked(row[0]) != point["label"] or row[1:4] != want:
            wrong(name, f"{row}, not {point['label']} {want}")
        if row[0].startswith(("=", "+", "-", "@")):
            wrong(name, f"a formula: {row[0]}")


def pile_list(name, binary, request, result):
    text = calc(binary, request, "text/csv", "piles")
    rows = list(csv.DictReader(io.StringIO(text, newline="")))
    counts["lists"] += 1
    for row, pile in zip(rows, result["piles"], strict=True):
        unit = pile["at"]["x"]["unit"]
        if unmarked(row["pile"]) != pile["label"]:
            wrong(name, f"{row['pile']}, not {pile['label']}")
        pairs = [(f"x [{unit}]", pile["at"]["x"]), (f"y [{unit}]", pile["at"]["y"])]
        for column in ("compression", "tension"):
            demand = pile[column]["demand"]
            pairs.append((f"{column} [{demand['unit']}]", demand))
        for column, quantity in pairs:
            if float(row[column]) != quantity["value"]:
                wrong(name, f"{pile['label']} {column}: {row[column]}, not {quantity['value']}")


def tape_list(name, binary, request, result):
    rows = list(csv.DictReader(io.StringIO(calc(binary, request, "text/csv", "tape"), newline="")))
    counts["lists"] += 1
    want = 0
    staking = result.get("staking")
    if staking:
        for line in staking["string_lines"]:
            want += 1 + len(line["piles"]) + sum("from_previous" in p for p in line["piles"])
        want += sum(len(f["diagonals"]) for f in staking["frames"])
        ties = staking.get("corner_ties")
        want += 1 + 2 * len(ties["ties"]) if ties else 0
    if len(rows) != want:
        wrong(name, f"{len(rows)} distances, not {want}")


def with_labels(request):
    """The same request with labels that a drawing or a table could misread."""
    request = copy.deepcopy(request)
    for pile, label in zip(request["piles"]["given"]["positions"], HOSTILE):
        pile["label"] = label
    request["staking"].pop("pile_tops", None)
    return request


def with_rows(request):
    """The same request with its piles in rows: a table says less of each, and changes no drawing."""
    tabled = request.get("reaction_detail") == "table"
    return {k: v for k, v in request.items() if not (tabled and k == "reaction_detail")}


def main(binary):
    requests = {}
    for path in sorted(EXAMPLES.glob("*.json")):
        if not path.name.endswith(".answer.json"):
            requests[path.stem] = json.loads(path.read_text())
    staked = [n for n, r in requests.items() if (r.get("staking") or {}).get("grid")]
    if {requests[n]["staking"]["grid"]["unit"] for n in staked} != set(UNITS):
        wrong("examples", "not every unit of a site grid is among them")
    for name in ("linnet-staking", "sizerin-staking"):
        requests[f"{name} with hostile labels"] = with_labels(requests[name])
    for name, request in requests.items():
        result = json.loads(calc(binary, with_rows(request), "application/json"))["result"]
        for check in (plan_drawing, site_drawing, point_list, pile_list, tape_list):
            check(f"{name}, {check.__name__}", binary, request, result)
    print(
        f"{len(requests)} requests: {counts['drawings']} drawings read and audited, "
        f"{counts['piles']} piles on the plan, {counts['points']} on site, {counts['lists']} lists"
    )
    for fault in faults[:40]:
        print("FAULT", fault)
    if counts["points"] < 60:
        raise SystemExit("too few piles with site coordinates to prove anything")
    raise SystemExit(1 if faults else 0)


if __name__ == "__main__":
    main(sys.argv[1])
