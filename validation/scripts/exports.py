"""The exported geometry read back by general-purpose libraries.

Runs the program on a demo boat, reads its STL with trimesh (watertight, volume, extent) and its DXF with ezdxf (layers, lengths of
the pitch templates' base lines and of the outline), and prints a table that `validation/data/exports.csv` keeps. Nothing of the
program's own code reads the files here. Run from the root of the repository:

    pip install trimesh==5.2.0 ezdxf==1.4.5 numpy
    python validation/scripts/exports.py PROGRAM > validation/data/exports.csv
"""

import math
import pathlib
import subprocess
import sys
import tempfile

import ezdxf
import trimesh

PROGRAM = sys.argv[1]
BOATS = ["kittiwake", "cormorant"]


def main():
    print("# STL and DXF of the demo boats, read back by trimesh and ezdxf (scripts/exports.py); mm, mm3")
    print("boat,file,quantity,value")
    for boat in BOATS:
        with tempfile.TemporaryDirectory() as folder:
            subprocess.run(
                [PROGRAM, "draw", f"examples/{boat}.toml", "--what", "propeller", "--stl", "--dxf", "-o", folder],
                check=True, stdout=subprocess.DEVNULL)
            for path in sorted(pathlib.Path(folder).glob("*.stl")):
                mesh = trimesh.load(path)
                print(f"{boat},{path.name},watertight,{int(mesh.is_watertight)}")
                print(f"{boat},{path.name},volume,{mesh.volume:.1f}")
                reach = max(math.hypot(v[1], v[2]) for v in mesh.vertices)
                print(f"{boat},{path.name},reach,{reach:.3f}")
            for path in sorted(pathlib.Path(folder).glob("*.dxf")):
                space = ezdxf.readfile(path).modelspace()
                lengths = {}
                for entity in space:
                    layer = entity.dxf.layer
                    if entity.dxftype() == "LINE":
                        length = (entity.dxf.end - entity.dxf.start).magnitude
                    elif entity.dxftype() == "POLYLINE":
                        points = [v.dxf.location for v in entity.vertices]
                        if entity.is_closed:
                            points.append(points[0])
                        length = sum((b - a).magnitude for a, b in zip(points, points[1:]))
                    else:
                        continue
                    lengths[layer] = lengths.get(layer, 0.0) + length
                for layer, length in sorted(lengths.items()):
                    print(f"{boat},{path.name},length {layer},{length:.3f}")


main()
