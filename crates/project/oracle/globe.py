"""Local metres from degrees, by another program: the oracle of `globe.rs`.

    python3 globe.py > globe.json

Made with Python 3.11, pyproj 3.7.2 (PROJ 9.5.1). `xy` is PROJ's `tmerc` (its exact method)
about the centre with scale 1 on WGS 84; `geodesic` is the length of the geodesic between
the two ends of the pair (Karney's method), which a plane can keep only nearly.
"""
import json, random, sys
import pyproj

random.seed(20260901)
cases = []
for lat0, lon0 in [(60.17425, 24.9438), (42.1, -75.9), (-33.9, 151.2), (0.0, 0.0), (78.2, 15.6), (-54.8, -68.3), (19.4, -99.1), (64.1, 179.9999)]:
    local = pyproj.Proj(proj="tmerc", lat_0=lat0, lon_0=lon0, k=1, x_0=0, y_0=0, ellps="WGS84", algo="poder_engsager")
    geod = pyproj.Geod(ellps="WGS84")
    ends = []
    for spread in (0.0002, 0.002, 0.009):
        for _ in range(4):
            lat = lat0 + random.uniform(-spread, spread)
            lon = lon0 + random.uniform(-spread, spread)
            lon = (lon + 180.0) % 360.0 - 180.0
            lat, lon = round(lat, 7), round(lon, 7)
            x, y = local(lon, lat)
            ends.append({"lat": lat, "lon": lon, "x": x, "y": y})
    pairs = []
    for a, b in zip(ends, ends[1:]):
        _, _, s = geod.inv(a["lon"], a["lat"], b["lon"], b["lat"])
        pairs.append(s)
    cases.append({"lat": lat0, "lon": lon0, "points": ends, "geodesic": pairs})
json.dump({"pyproj": pyproj.__version__, "proj": pyproj.proj_version_str, "cases": cases}, sys.stdout, indent=1)
print()
