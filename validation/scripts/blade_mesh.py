"""Blades drawn and weighed a second time, by general-purpose libraries.

Draws three blades from the published tables (B-series) or from their formulas (flat-faced ellipse) with numpy and scipy, closes
them to meshes, and lets trimesh integrate volume, centre, moment of inertia and surface; shapely unites the triangles seen along
the shaft to the projected area. Nothing of the program's own code is used. Run from the root of the repository:

    pip install trimesh==5.2.0 scipy==1.17.1 shapely numpy
    python validation/scripts/blade_mesh.py > validation/data/trimesh_blades.csv

Axes: x forward along the shaft, y to port, z up; angles clockwise seen from astern; density 1.
"""

import csv
import pathlib
import sys

import numpy as np
import scipy
import shapely
import trimesh
from scipy.interpolate import PchipInterpolator, interp1d

DATA = pathlib.Path(__file__).resolve().parent.parent / "data"
ROWS, COLUMNS = 240, 160
EDGE = 0.05  # thickness of the edges over the greatest thickness


def table(name):
    rows = [r for r in csv.reader(open(DATA / name)) if r and not r[0].startswith("#")]
    return rows[0], np.array([[float(c) for c in r] for r in rows[1:]])


def b_series(blades, area_ratio, pitch_ratio, diameter):
    """Functions of x = r/R: chord, mid-chord behind the generator, pitch, rake, and ordinates at a chord fraction."""
    _, outline = table("oosterveld1975_outline_z3.csv" if blades <= 3 else "oosterveld1975_outline_z4to7.csv")
    outline = outline[outline[:, 0] < 1]
    x, c, a, b = outline.T
    unit = diameter * area_ratio / blades
    w = np.sqrt(1 - x)
    chord = PchipInterpolator(np.append(0, w[::-1]), np.append(0, c[::-1]))
    mid = (0.5 - a) * c
    tip = 3 * mid[-1] - 3 * mid[-2] + mid[-3]
    middle = PchipInterpolator(np.append(x, 1), np.append(mid, tip))
    thickest = PchipInterpolator(np.append(x, 1), np.append(b, 0.5))
    _, t = table("oosterveld1975_thickness.csv")
    thick = interp1d(t[:, 0], t[:, 1] - t[:, 2] * blades, fill_value="extrapolate")
    header, v1 = table("oosterveld1975_v1.csv")
    _, v2 = table("oosterveld1975_v2.csv")
    places = np.array([float(h.split("=")[1]) for h in header[1:]])
    v1, v2 = v1[np.argsort(v1[:, 0])], v2[np.argsort(v2[:, 0])]
    drop = PchipInterpolator([0.2, 0.3, 0.4, 0.5, 0.6], [0.822, 0.887, 0.950, 0.992, 1.0])

    def ordinates(x, fraction):
        t, b = diameter * float(thick(x)), float(thickest(x))
        p = np.where(fraction < b, 1 - fraction / b, -(fraction - b) / (1 - b))
        one = PchipInterpolator(places, interp1d(v1[:, 0], v1[:, 1:], axis=0)(x))(p)
        two = PchipInterpolator(places, interp1d(v2[:, 0], v2[:, 1:], axis=0)(x))(p)
        body = t * (1 - EDGE)
        return one * body, (one + two) * body + EDGE * t

    def pitch(x):
        return pitch_ratio * diameter * (min(1.0, float(drop(min(x, 0.6)))) if blades == 4 else 1.0)

    return dict(
        diameter=diameter,
        hub=0.180 if blades <= 3 else 0.167,
        chord=lambda x: max(0.0, unit * float(chord(np.sqrt(max(0.0, 1 - x))))),
        back=lambda x: unit * float(middle(x)),
        pitch=pitch,
        rake=lambda x: 0.5 * diameter * x * np.tan(np.radians(15)),
        ordinates=ordinates,
    )


def flat_faced(mean_width_ratio, pitch_ratio, thickness_fraction, diameter, hub, rake, skew):
    quarter = scipy.integrate.quad(lambda x: np.sqrt(1 - x * x), hub, 1)[0]
    widest = mean_width_ratio * diameter * (1 - hub) / quarter

    def ordinates(x, fraction):
        t = diameter * thickness_fraction * (1 - 0.9 * x)
        return np.zeros_like(fraction), t * (EDGE + (1 - EDGE) * 4 * fraction * (1 - fraction))

    def back(x):
        r, p = 0.5 * diameter * x, pitch_ratio * diameter
        return skew * ((x - hub) / (1 - hub)) ** 2 * r / np.cos(np.arctan2(p, 2 * np.pi * r))

    return dict(
        diameter=diameter,
        hub=hub,
        chord=lambda x: widest * np.sqrt(max(0.0, 1 - x * x)),
        back=back,
        pitch=lambda x: pitch_ratio * diameter,
        rake=lambda x: 0.5 * diameter * x * np.tan(rake),
        ordinates=ordinates,
    )


def mesh(blade):
    """Rings of face and back from the hub's cylinder to just short of the tip, then a point."""
    fraction = 0.5 * (1 - np.cos(np.linspace(0, np.pi, COLUMNS + 1)))
    vertices, around = [], 2 * (COLUMNS + 1)
    for w in np.linspace(1, 0, ROWS + 1)[:-1]:
        x = 1 - (1 - blade["hub"]) * w * w
        r = 0.5 * blade["diameter"] * x
        phi = np.arctan2(blade["pitch"](x), 2 * np.pi * r)
        s = (0.5 - fraction) * blade["chord"](x) - blade["back"](x)
        for side, order in zip(blade["ordinates"](x, fraction), (1, -1)):
            axial = -blade["rake"](x) + s * np.sin(phi) + side * np.cos(phi)
            angle = (s * np.cos(phi) - side * np.sin(phi)) / r
            ring = np.column_stack([axial, -r * np.sin(angle), r * np.cos(angle)])
            vertices.append(ring[::order])
    r = 0.5 * blade["diameter"]
    phi = np.arctan2(blade["pitch"](1), 2 * np.pi * r)
    s = -blade["back"](1)
    vertices.append([[-blade["rake"](1) + s * np.sin(phi), -r * np.sin(s * np.cos(phi) / r), r * np.cos(s * np.cos(phi) / r)]])
    faces = []
    for j in range(ROWS - 1):
        for k in range(around):
            a, b = j * around + k, j * around + (k + 1) % around
            faces += [[a, b, b + around], [a, b + around, a + around]]
    last, tip = (ROWS - 1) * around, ROWS * around
    for k in range(around):
        faces.append([last + k, last + (k + 1) % around, tip])
    for k in range(COLUMNS):
        faces += [[k, around - 1 - k, around - 2 - k], [k, around - 2 - k, k + 1]]
    body = trimesh.Trimesh(np.vstack(vertices), faces, process=True)
    trimesh.repair.fix_normals(body)
    return body


def row(name, blade):
    body = mesh(blade)
    assert body.is_watertight, name
    # Moment of inertia about the shaft (x axis through the origin).
    centre, volume = body.center_mass, body.volume
    inertia = body.moment_inertia[0, 0] + volume * (centre[1] ** 2 + centre[2] ** 2)
    flat = [shapely.Polygon(t[:, 1:]) for t in body.triangles]
    projected = shapely.union_all([p for p in flat if p.area > 1e-14], grid_size=1e-9).area
    expanded = scipy.integrate.quad(blade["chord"], blade["hub"], 1, limit=400, epsabs=1e-9)[0] * 0.5 * blade["diameter"]
    return [name, volume, *centre, inertia, body.area, projected, expanded]


print(f"# One blade outside its hub, density 1, SI; trimesh {trimesh.__version__}, scipy {scipy.__version__}, "
      f"shapely {shapely.__version__}; {ROWS} x {COLUMNS} strips; validation/scripts/blade_mesh.py")
out = csv.writer(sys.stdout, lineterminator="\n")
out.writerow("blade volume centre_x centre_y centre_z inertia surface projected expanded".split())
for line in (
    row("B4-55 P/D 0.9 D 0.6", b_series(4, 0.55, 0.9, 0.6)),
    row("B3-50 P/D 0.8 D 0.5", b_series(3, 0.50, 0.8, 0.5)),
    row("flat MWR 0.33 P/D 0.75 t 0.045 D 0.45 hub 0.2 rake 10 skew 15", flat_faced(0.33, 0.75, 0.045, 0.45, 0.2, np.radians(10), np.radians(15))),
):
    out.writerow([line[0]] + [f"{v:.8g}" for v in line[1:]])
