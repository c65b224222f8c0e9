"""Whether a way leads round keep-outs from a panel to a box: mazes of rectangles, by the parts of the plane that they leave (shapely).

/usr/bin/python3 tests/outside/mazes/make.py > tests/outside/mazes/mazes.json
"""
import json
import random

from shapely.geometry import Point, box
from shapely.ops import unary_union

random.seed(41)
mazes = []
while len(mazes) < 40:
    walls = []
    for _ in range(random.randint(8, 22)):
        # Whole numbers on the one side and halves on the other: no two walls touch without overlapping.
        x, y = random.randint(-10, 90), random.randint(-10, 90)
        long, thin = random.randint(15, 60) + 0.5, random.randint(1, 3) + 0.5
        w, h = (long, thin) if random.random() < 0.5 else (thin, long)
        walls.append([x, y, x + w, y + h])
    panel, drop = (10.25, 10.25), (80.25, 80.25)
    # One in three: both ends closed in but for a gap, or shut.
    if len(mazes) % 3 == 0:
        gap = random.choice([0, 1, 2])
        walls += [[70, 70, 90.5, 71.5], [70, 89, 90.5, 90.5], [70, 70, 71.5, 90.5], [89, 70, 90.5, 90.5 - gap - 1.5]]
        if gap == 0:
            walls.append([88, 87, 90.5, 90.5])
    solid = unary_union([box(*wall) for wall in walls])
    if solid.distance(Point(panel)) < 1 or solid.distance(Point(drop)) < 1:
        continue
    free = box(-200, -200, 300, 300).difference(solid)
    parts = list(free.geoms) if free.geom_type == 'MultiPolygon' else [free]
    leads = any(part.contains(Point(panel)) and part.contains(Point(drop)) for part in parts)
    mazes.append({'walls': walls, 'leads': leads})
print(json.dumps({'panel': panel, 'drop': drop, 'mazes': mazes}))
