"""The committed JSON Schemas against documents that the library reads and writes, with a general-purpose validator."""

import copy
import json
from pathlib import Path

import jsonschema
import pytest
from seamwright.job import Job

ROOT = Path(__file__).resolve().parents[2]
DEMO = json.loads((ROOT / "core/examples/demo_job.json").read_text(encoding="utf-8"))


def schema(name):
    document = json.loads((ROOT / "docs/schemas" / f"{name}.json").read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(document)
    return document


@pytest.fixture(scope="module")
def of_job():
    return jsonschema.Draft202012Validator(schema("seamwright-job-1"))


@pytest.fixture(scope="module")
def of_packet():
    return jsonschema.Draft202012Validator(schema("seamwright-packet-1"))


def objects(node):
    """Every schema of an object with fields, inside this schema."""
    if isinstance(node, dict):
        if isinstance(node.get("properties"), dict) and node.get("type") == "object":
            yield node
        for value in node.values():
            yield from objects(value)
    elif isinstance(node, list):
        for value in node:
            yield from objects(value)


def changed(change):
    job = copy.deepcopy(DEMO)
    change(job)
    return job


def test_the_demo_job_is_a_job(of_job):
    assert list(of_job.iter_errors(DEMO)) == []


def test_a_job_that_the_library_wrote_is_a_job(of_job):
    assert list(of_job.iter_errors(json.loads(Job.from_dict(DEMO).to_json()))) == []


def test_every_object_of_a_job_refuses_fields_that_are_not_known(of_job):
    found = list(objects(of_job.schema))
    assert len(found) > 80
    assert [o for o in found if o.get("additionalProperties") is not False] == []


@pytest.mark.parametrize(
    ("change", "place"),
    [
        (lambda j: j.update(colour="red"), "$"),
        (lambda j: j["roof"]["planes"][0].update(hue=1), "$.roof.planes[0]"),
        (lambda j: j["metals"]["panel"].update(hue=1), "$.metals.panel"),
        (lambda j: j.pop("supplies"), "$"),
        (lambda j: j.update(version=2), "$.version"),
        (lambda j: j.update(format="job"), "$.format"),
        (lambda j: j["levels"].update(tape=3.2), "$.levels.tape"),
        (lambda j: j["paperwork"].update(paper="a5"), "$.paperwork.paper"),
    ],
)
def test_schema_and_library_refuse_the_same(of_job, change, place):
    job = changed(change)
    assert [e.json_path for e in of_job.iter_errors(job)] == [place]
    with pytest.raises(ValueError):
        Job.from_dict(job).compute()


def test_the_demo_packet_is_a_packet(of_packet):
    packet = json.loads(Job.from_dict(DEMO).compute().to_json())
    assert list(of_packet.iter_errors(packet)) == []
    del packet["summary"]["panels"]
    packet["planes"][0]["laid"]["panels"][0]["left"] = 1.5
    assert sorted(e.json_path for e in of_packet.iter_errors(packet)) == ["$.planes[0].laid.panels[0].left", "$.summary"]
