"""Real hourly files, fetched from the packages that ship them, and other libraries' answers.

The files stay in their packages (pvlib 0.16.1, BSD-3; diyepw 1.3.1, BSD-2): pip fetches the
archives, nothing of them is kept or installed. The counts were made once by a short Python
program from the same files, apart from ours; `plain` below makes them again.
"""

import csv
import datetime
import io
import json
import os
import pathlib
import subprocess
import sys
import tarfile
import zipfile

import icalendar
import psychrolib
import pytest

ROOT = pathlib.Path(__file__).resolve().parent.parent
EXAMPLES = (
    pathlib.Path(os.environ.get("CARGO_TARGET_DIR", ROOT / "target")) / "release" / "examples"
)

GREENSBORO = "723170TYA.CSV"
SAND_POINT = "703165TY.csv"
CHICAGO = "USA_IL_Chicago.OHare.Intl.AP.725300_TMY3.epw"
NORTHWAY = "USA_AK_Northway.AP.702910_TMY3.epw"
MOUNT_SHASTA = "USA_CA_Mount.Shasta.725957_TMYx.epw"
REANALYSIS = "tmy_45.000_8.000_2005_2023.epw"


def example(name, *words, **more):
    """What an example of ours says."""
    program = EXAMPLES / name
    assert program.exists(), f"{program} is missing: cargo test --release builds it"
    return subprocess.run(
        [program, *map(str, words)], capture_output=True, check=True, timeout=60, **more
    ).stdout


def fetch(folder, *words):
    """An archive from the package index, without what it depends on."""
    command = [sys.executable, "-m", "pip", "download", "--quiet", "--no-deps"]
    subprocess.run(
        [*command, "--disable-pip-version-check", "--dest", folder, *words],
        check=True,
        timeout=300,
    )


@pytest.fixture(scope="session")
def files(tmp_path_factory):
    """Every file by its name."""
    folder = tmp_path_factory.mktemp("weather")
    fetch(folder, "--only-binary", ":all:", "pvlib==0.16.1", "diyepw==1.3.1")
    fetch(folder, "--no-binary", "pvlib", "pvlib==0.16.1")
    found = {}

    def keep(path, text):
        name = pathlib.PurePosixPath(path).name
        (folder / name).write_bytes(text)
        found[name] = folder / name

    for wheel in folder.glob("*.whl"):
        with zipfile.ZipFile(wheel) as archive:
            for path in archive.namelist():
                if path.endswith((GREENSBORO, SAND_POINT, CHICAGO, NORTHWAY, MOUNT_SHASTA)):
                    keep(path, archive.read(path))
    with tarfile.open(next(folder.glob("pvlib*.tar.gz"))) as archive:
        path = next(path for path in archive.getnames() if path.endswith(REANALYSIS))
        keep(path, archive.extractfile(path).read())
    return found


@pytest.fixture(scope="session")
def counts(files):
    return {name: json.loads(example("counts", path)) for name, path in files.items()}


# Hours with 10 <= T <= 35, RH <= 85, T - Td >= 3; all three; and no rain.
TABLE = [
    (GREENSBORO, 5939, 6173, 5645, 3871, 3846),
    (SAND_POINT, 1596, 6794, 6242, 1133, 1132),
    (CHICAGO, 4617, 6870, 6078, 3297, 3242),
    (NORTHWAY, 2084, 6839, 5173, 1837, 1797),
    (MOUNT_SHASTA, 3768, 7822, 7141, 3660, 3406),
    (REANALYSIS, 5459, 5342, 4793, 3842, 3842),
]


@pytest.mark.parametrize("name, air, humidity, dew, three, dry", TABLE)
def test_hours_for_painting_are_counted(counts, name, air, humidity, dew, three, dry):
    found = counts[name]
    assert found["rows"] == 8760
    assert found["air"] == air
    assert found["humidity"] == humidity
    assert found["dew"] == dew
    assert found["three"] == three
    # The table takes unknown rain for none; we say how many hours that is.
    assert found["three_dry"]["fine"] + found["three_dry"]["unknown"] == dry


def test_missing_rain_is_unknown_and_never_fine(counts):
    assert counts[SAND_POINT]["known"]["rain"] == 8760 - 8011
    assert counts[SAND_POINT]["three_dry"] == {"fine": 18, "unknown": 1114}
    assert counts[REANALYSIS]["known"]["rain"] == 0
    assert counts[REANALYSIS]["three_dry"] == {"fine": 0, "unknown": 3842}
    assert counts[REANALYSIS]["demanded"]["fine"] == 0
    for name in (GREENSBORO, CHICAGO, NORTHWAY, MOUNT_SHASTA):
        assert counts[name]["three_dry"]["unknown"] == 0


def test_months_runs_and_means(counts):
    greensboro = counts[GREENSBORO]
    assert greensboro["months"] == [32, 92, 168, 233, 241, 240, 237, 252, 242, 196, 169, 95]
    assert sum(greensboro["months"]) == 2197
    assert greensboro["longest"] == 65
    assert greensboro["mean_temperature"] == pytest.approx(14.4218, abs=5e-5)
    assert greensboro["mean_humidity"] == pytest.approx(69.5161, abs=5e-5)
    assert counts[SAND_POINT]["months"] == [0, 0, 0, 2, 0, 71, 268, 157, 47, 7, 0, 0]


def test_hours_fit_for_play_are_counted(counts):
    greensboro = counts[GREENSBORO]
    morning, afternoon = greensboro["morning"], greensboro["afternoon"]
    assert morning["heat_90"] == [0, 0, 0, 0, 0, 6, 16, 7, 0, 0, 0, 0]
    assert morning["chill_32"] == [38, 24, 5, 0, 0, 0, 0, 0, 0, 0, 0, 19]
    assert morning["wet"] == [3, 0, 5, 1, 6, 1, 2, 0, 1, 3, 8, 6]
    assert afternoon["heat_90"] == [0, 0, 0, 0, 0, 11, 35, 16, 0, 0, 0, 0]
    assert [greensboro[f"heat_{band}"] for band in (80, 90, 100)] == [920, 255, 30]
    for part in (morning, afternoon):
        assert all(fit <= hours for fit, hours in zip(part["fit"], part["hours"]))


def rows_of(path):
    """Month, clock hour, temperature, dew point, humidity, rain (None: missing)."""
    rows = list(csv.reader(io.StringIO(path.read_text(encoding="latin-1"))))
    if path.suffix == ".epw":
        for row in rows[8:]:
            rain = float(row[33])
            yield int(row[1]), int(row[3]), *map(float, row[6:9]), None if rain == 999 else rain
        return
    head = rows[1]
    columns = [
        head.index(name)
        for name in ("Dry-bulb (C)", "Dew-point (C)", "RHum (%)", "Lprecip depth (mm)")
    ]
    for row in rows[2:]:
        *three, rain = (float(row[column]) for column in columns)
        yield int(row[0][:2]), int(row[1][:2]), *three, None if rain == -9900 else rain


@pytest.mark.parametrize("name", [row[0] for row in TABLE])
def test_a_plain_reading_of_the_file_says_the_same(files, counts, name):
    """Every demanded rule but the wind, by the slow and simple way."""
    rows = list(rows_of(files[name]))
    found = counts[name]
    months = [0] * 12
    for month, hour, temperature, dew, humidity, _ in rows:
        fine = 10 <= temperature <= 35 and humidity <= 85 and temperature - dew >= 3
        months[month - 1] += fine and 9 <= hour <= 17
    assert found["months"] == months
    rain = [row[5] for row in rows]
    assert found["known"]["rain"] == sum(value is not None for value in rain)
    # A margin of just 3.0 in the file may fall a hair below it in binary: never the other way.
    exact = sum(round(row[2] - row[3], 6) >= 3 for row in rows)
    assert found["dew"] <= exact <= found["dew"] + 10


def air(*lines):
    said = example("air", input="\n".join(lines).encode())
    return [float(word) for word in said.decode().split()]


def test_dew_points_are_those_of_the_ashrae_formulas():
    """psychrolib; below freezing it gives the frost point, another thing."""
    psychrolib.SetUnitSystem(psychrolib.SI)
    asked, wanted = [], []
    for temperature in range(0, 46):
        for humidity in range(10, 101):
            dew = psychrolib.GetTDewPointFromRelHum(temperature, humidity / 100)
            if dew >= 0:
                asked.append(f"dew {temperature} {humidity}")
                wanted.append(dew)
    assert len(wanted) > 2500
    # Two formulas of one thing; the rule of painting asks for 3 C.
    assert air(*asked) == pytest.approx(wanted, abs=0.035)


FORECAST = "# invented\ntime,temperature_c,dew_point_c,wind_m_s,rain_mm\n" + "".join(
    f"2026-09-{day:02} {hour:02}:00,{22 - abs(hour - 12) * 8 // 12},8,2,0\n"
    for day in range(1, 5)
    for hour in range(0, 24)
)


@pytest.mark.parametrize("language", ["en", "es"])
def test_a_calendar_library_reads_the_windows(tmp_path, language):
    """icalendar (PyPI), which checks names, types and folding."""
    path = tmp_path / "forecast.csv"
    path.write_text(FORECAST)
    words = ("windows", path, 3, 2, "2026-09-01", language)
    written = example(*words)
    assert written == example(*words), "the same forecast, other bytes"
    assert all(len(line) <= 75 for line in written.split(b"\r\n"))
    assert written.count(b"\n") == written.count(b"\r\n")
    calendar = icalendar.Calendar.from_ical(written)
    assert calendar["VERSION"] == "2.0" and "PRODID" in calendar
    assert calendar.errors == []
    events = calendar.walk("VEVENT")
    spans = [(event.decoded("DTSTART"), event.decoded("DTEND")) for event in events]
    day = lambda day, hour: datetime.datetime(2026, 9, day, hour)  # noqa: E731
    # Rain before the first day is not known: no window is fine there.
    assert spans == [(day(n, 8), day(n, 17)) for n in (2, 3, 4)]
    assert len({event["UID"] for event in events}) == len(events)
    for event in events:
        assert event.errors == []
        stamp = event.decoded("DTSTAMP")
        assert stamp == datetime.datetime(2026, 9, 1, tzinfo=datetime.timezone.utc)
        assert "24" in event["DESCRIPTION"] and "\n" in event["DESCRIPTION"]
