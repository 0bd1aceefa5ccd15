"""plan.json holds to its schema and is the same text on every run."""

import json
import pathlib

import jsonschema

from conftest import ROOT, run


def test_plan_holds_to_the_schema(plan):
    schema = json.loads((ROOT / "schema" / "plan.schema.json").read_text())
    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.validate(plan, schema)


def test_the_same_bytes_again(demo, tmp_path):
    before = {path.name: path.read_bytes() for path in sorted((demo / "out").iterdir()) if path.is_file()}
    run("plan", demo)
    after = {path.name: path.read_bytes() for path in sorted((demo / "out").iterdir()) if path.is_file()}
    assert before == after


def test_no_place_of_this_machine_is_in_it(demo):
    for path in (demo / "out").rglob("*"):
        if path.suffix in (".json", ".svg"):
            assert str(pathlib.Path.home()) not in path.read_text()
            assert str(demo) not in path.read_text()
