#!/usr/bin/env python3
"""What ezdxf finds in a DXF file, in lines of plain words:

  version AC1015 units 4 measurement 1 faults 0
  layer CUT 1 70 Continuous            its color, width in 1/100 mm and line type
  path CUT closed 4 1234.500000 0 0 90 100    layer, kind, corners, area (signed), box
  text 10.000000 20.000000 3.500000 0.000000 45.000000 the words    start, height, turn, width

usage: read_dxf.py FILE"""

import math
import sys

import ezdxf
from ezdxf import path
from ezdxf.lldxf.encoding import decode_dxf_unicode
from ezdxf.math import BoundingBox2d, Vec2, bulge_radius

FLATNESS = 1e-3  # mm


def signed_area(polyline):
    """The polygon of its corners, and the segment that each bulge adds or takes."""
    corners = [(Vec2(x, y), bulge) for x, y, bulge in polyline.get_points("xyb")]
    area = 0.0
    for (a, bulge), (b, _) in zip(corners, corners[1:] + corners[:1]):
        area += 0.5 * (a.x * b.y - b.x * a.y)
        if bulge:
            angle = 4 * math.atan(bulge)
            area += 0.5 * bulge_radius(a, b, bulge) ** 2 * (angle - math.sin(angle))
    return area


document = ezdxf.readfile(sys.argv[1])
audit = document.audit()
print("version", document.dxfversion, "units", document.header["$INSUNITS"], "measurement",
      document.header["$MEASUREMENT"], "faults", len(audit.errors) + len(audit.fixes))
for fault in audit.errors + audit.fixes:
    print("fault", fault.message)
for layer in document.layers:
    print("layer", layer.dxf.name, layer.dxf.color, layer.dxf.lineweight, layer.dxf.linetype)
for entity in document.modelspace():
    if entity.dxftype() == "LWPOLYLINE":
        points = [Vec2(p) for p in path.make_path(entity).flattening(FLATNESS, 16)]
        box = BoundingBox2d(points)
        print("path", entity.dxf.layer, "closed" if entity.closed else "open", len(entity),
              f"{signed_area(entity):.6f} {box.extmin.x:.6f} {box.extmin.y:.6f} {box.extmax.x:.6f}"
              f" {box.extmax.y:.6f}")
    elif entity.dxftype() == "TEXT":
        start, end = entity.dxf.insert, entity.dxf.align_point
        print("text", f"{start.x:.6f} {start.y:.6f} {entity.dxf.height:.6f}"
              f" {entity.dxf.rotation:.6f} {(end - start).magnitude:.6f}", decode_dxf_unicode(entity.plain_text()))
    else:
        print("other", entity.dxftype())
