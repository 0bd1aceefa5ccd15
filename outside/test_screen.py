"""A browser opens the pages of moving feet: nothing is fetched, nothing is wrong, all can be
reached by keyboard, less motion is respected. axe-core looks for barriers, and the times are
reckoned again from the ledger."""

import json
import os
import re
import subprocess
import tomllib

import pytest
from axe_playwright_python.sync_playwright import Axe

from conftest import ROOT

AGES = ["3", "4", "5", "6"]
GALLOP = ["gallop", "feet", "R", "well", "5"]
# what stands in for a skill on wheels or with a walker: as programme.md 4 has it (common
# practice, no source), pushes from mark to mark, whether quick, what comes after
ADAPTED = {
    "jump": (2, False, "still"),
    "hop": (1, False, None),
    "leap": (1, True, None),
    "gallop": (2, False, None),
    "slide": (1, False, None),
    "skip": (1, False, "wait"),
    "run": (1, True, None),
    "walk": (1, False, None),
}
# what a page asks a browser to play, written down instead of heard
EAR = """
window.heard = [];
const start = OscillatorNode.prototype.start;
OscillatorNode.prototype.start = function (at) {
  window.heard.push(at);
  return start.call(this, at);
};
"""


@pytest.fixture(scope="session")
def example():
    """The room's own program: the workspace's tests have built it, else it is built now."""
    target = ROOT / os.environ.get("CARGO_TARGET_DIR", "target")
    program = target / "release" / "examples" / "skills"
    if not program.exists():
        build = ["cargo", "build", "--release", "-p", "screen", "--example", "skills"]
        subprocess.run(build, cwd=ROOT, check=True, capture_output=True, timeout=900)
    return program


@pytest.fixture(scope="session")
def written(example, tmp_path_factory):
    folder = tmp_path_factory.mktemp("screen")

    def write(*words):
        path = folder / ("-".join(words) + (".html" if words[1] in ("skills", "plan") else ".svg"))
        if not path.exists():
            done = subprocess.run([example, *words], check=True, capture_output=True, timeout=60)
            path.write_bytes(done.stdout)
        return path

    return write


@pytest.fixture
def opened(chromium, written):
    """Opens a page and, at the end, holds it to silence: no error, no request."""
    contexts, faults = [], []

    def open_(*words, size=(1280, 720), dark=False, less=False):
        context = chromium.new_context(
            viewport={"width": size[0], "height": size[1]},
            color_scheme="dark" if dark else "light",
            reduced_motion="reduce" if less else "no-preference",
        )
        contexts.append(context)
        page = context.new_page()
        page.add_init_script(EAR)
        page.on("console", lambda message: faults.append(message.text))
        page.on("pageerror", lambda error: faults.append(str(error)))
        page.on(
            "request",
            lambda request: request.url.startswith(("file:", "data:"))
            or faults.append(request.url),
        )
        page.goto(written(*words).as_uri())
        return page

    yield open_
    for context in contexts:
        context.close()
    assert not faults


def data(page):
    return json.loads(page.locator("#data").text_content())


def pick(page, **values):
    for name, value in values.items():
        page.check(f"input[name={name}][value='{value}']")


@pytest.mark.parametrize("words", [("en", "skills"), ("es", "skills"), ("en", "plan"), ("es", "plan")])
@pytest.mark.parametrize("dark", [False, True])
def test_axe_finds_no_barrier(opened, words, dark):
    page = opened(*words, dark=dark)
    assert page.locator("html").get_attribute("lang") == words[0]
    page.click("#on")
    page.click("summary")
    found = Axe().run(page).response
    assert not found["violations"], [(one["id"], one["nodes"][0]["html"]) for one in found["violations"]]
    assert any(rule["id"] == "color-contrast" for rule in found["passes"])


@pytest.mark.parametrize("size", [(1280, 720), (768, 1024), (390, 844)])
def test_nothing_is_cut_off_and_every_target_is_large_enough(opened, size):
    page = opened("es", "skills", size=size)
    assert page.evaluate("document.documentElement.scrollWidth") <= size[0]
    boxes = page.eval_on_selector_all(
        "button, .switch:not([hidden]), input[type=range], summary",
        "all => all.map(one => [one.id || one.textContent, one.getBoundingClientRect()])"
        ".filter(([, box]) => box.width > 0).map(([name, box]) => [name, box.width, box.height])",
    )
    assert len(boxes) > 15
    assert [box for box in boxes if box[1] < 48 or box[2] < 48] == []


def test_a_trainer_sees_it_all_on_a_projector(opened):
    page = opened("en", "skills", size=(1280, 720))
    for part in ("#choices", "#stage", "#moment", "#rhythm", "#time", "#play"):
        box = page.locator(part).bounding_box()
        assert box["y"] >= 0 and box["y"] + box["height"] <= 720, part


def test_the_keyboard_reaches_and_moves_everything(opened):
    page = opened("en", "skills")
    reached, rings = [], []
    for _ in range(40):
        page.keyboard.press("Tab")
        name, ring = page.evaluate(
            """() => {
              const it = document.activeElement;
              const shown = it.matches('.switch input') ? it.nextElementSibling : it;
              return [it.id || it.name || it.tagName, getComputedStyle(shown).outline];
            }"""
        )
        if name == "BODY":
            break
        reached.append(name)
        rings.append(ring)
    wanted = ["dark", "skill", "means", "lead", "form", "age", "time", "back", "play", "on", "flight", "half", "sound", "SUMMARY"]
    assert reached == wanted
    assert all("3px" in ring and "solid" in ring for ring in rings), rings

    # a radio by arrows
    page.focus("input[name=skill]:checked")
    page.keyboard.press("ArrowRight")
    assert page.evaluate("document.querySelector('input[name=skill]:checked').value") == "slide"
    # contact by contact on the time bar
    page.focus("#time")
    told = []
    for _ in range(3):
        page.keyboard.press("ArrowRight")
        told.append(page.locator("#status").text_content())
    assert len(set(told)) == 3 and told[0].startswith("Contact 1 of ")
    page.keyboard.press("ArrowLeft")
    assert page.locator("#status").text_content() == told[1]
    page.keyboard.press("f")
    assert page.locator("#moment").text_content() == "In the air"
    assert page.locator("#status").text_content() == "In the air."
    # play and pause
    page.keyboard.press(" ")
    assert page.locator(".show.playing").count() == 1
    before = page.locator("#time").input_value()
    page.wait_for_function("before => document.getElementById('time').value !== before", arg=before)
    page.keyboard.press(" ")
    assert page.locator(".show.playing").count() == 0
    still = page.locator("#time").input_value()
    page.wait_for_timeout(120)
    assert page.locator("#time").input_value() == still


def test_it_is_still_until_asked(opened):
    page = opened("en", "skills")
    page.wait_for_timeout(300)
    assert page.locator("#time").input_value() == "0"
    assert page.evaluate("document.getAnimations().length") == 0


def test_less_motion_means_numbered_prints(opened):
    page = opened("en", "skills", less=True)
    assert page.locator("#feet-now").evaluate("it => getComputedStyle(it).display") == "none"
    assert page.locator("#stage .lines").evaluate("it => getComputedStyle(it).opacity") == "1"
    rings = page.locator("#stage .count")
    most = max(count for clip in data(page)["clips"] if clip["by"] == GALLOP for count, *_ in clip["rings"])
    assert rings.count() == most
    assert rings.evaluate_all("all => all.every(it => getComputedStyle(it).opacity === '1')")
    assert page.locator(".less").is_visible()
    # asked to play, it marks the prints one by one and moves nothing
    page.click("#play")
    page.wait_for_function("document.querySelector('#stage .count.now')?.textContent === '2'")
    shapes = "all => all.map(it => it.getAttribute('transform'))"
    before = page.locator("#stage .print").evaluate_all(shapes)
    page.wait_for_timeout(200)
    assert page.locator("#stage .print").evaluate_all(shapes) == before


def test_feet_lie_on_their_prints_when_they_land(opened):
    page = opened("en", "skills")
    for skill, form in (("skip", "well"), ("slide", "crosses"), ("hop", "taps"), ("leap", "well")):
        pick(page, skill=skill, form=form)
        clip = next(c for c in data(page)["clips"] if c["by"] == [skill, "feet", "R", form, "5"])
        landings = [p for p in clip["prints"] if p[4] > 0 and not p[6]]
        for side, x, y, turn, lands, *_ in landings:
            page.evaluate(
                "time => { const bar = document.getElementById('time'); bar.step = 1; bar.value = time;"
                " bar.dispatchEvent(new Event('input')); }",
                lands,
            )
            drawn = page.locator(f"#feet-now .foot.{side}").get_attribute("transform")
            at = [float(n) for n in re.findall(r"-?[\d.]+(?:e-?\d+)?", drawn)]
            assert at[:3] == pytest.approx([x, y, turn], abs=1.0), (skill, form, lands)


def ledger():
    figures = {}
    for room in ("children", "footfall", "motion"):
        text = (ROOT / "crates" / "ledger" / "figures" / f"{room}.toml").read_text()
        figures |= {key: row["value"] for key, row in tomllib.loads(text).items()}
    return figures


def test_times_are_the_ledgers(opened):
    """Contacts a second and long to short, from the figures' files alone."""
    figures = ledger()
    clips = {tuple(clip["by"]): clip for clip in data(opened("en", "skills"))["clips"]}
    seen = 0
    for (skill, means, _, form, age), clip in clips.items():
        if form != "well" or skill == "leap" or means != "feet":
            continue
        first = {}
        for lands, _, _, count, _, kind in clip["events"]:
            if kind == 2:
                first.setdefault(count, lands)
        lands = [first[count] for count in sorted(first)]
        rate = 1000 * (len(lands) - 1) / (lands[-1] - lands[0])
        assert rate == pytest.approx(figures[f"footfall.rate.{skill}"][AGES.index(age)], rel=2e-3)
        second = [lands for lands, _, _, _, _, kind in clip["events"] if kind == 1]
        for long, short, after in zip(lands, second, lands[1:]):
            ratio = (short - long) / (after - short)
            assert ratio == pytest.approx(figures[f"motion.beat.{skill}"], rel=0.02)
        seen += 1
    assert seen == 7 * 2 * len(AGES)


def way(clip, figures, age, skill, share=1.0):
    """Metres from mark to mark, and the speed that the child has by these means."""
    push = figures["push.m"][age] * figures[f"push.form.{skill}"] * share
    kind = "run" if ADAPTED[skill][1] else "walk"
    speed = figures[f"push.{kind}-speed"] * figures[f"children.{kind}-speed"][age]
    return figures["footfall.stride"] * push, speed


def test_pushes_carry_as_far_and_take_as_long_as_the_ledger_says(opened):
    """From the figures' files alone: the way from mark to mark, and the time of a push that
    neither starts nor stops."""
    figures, seen = ledger(), 0
    for clip in data(opened("en", "skills"))["clips"]:
        skill, means, _, _, age = clip["by"]
        if means != "wheels":
            continue
        pushes, _, then = ADAPTED[skill]
        metres, speed = way(clip, figures, AGES.index(age), skill)
        marks = [(x / 1000, lands / 1000) for _, x, _, lands in clip["rings"]]
        for (a, _), (b, _) in zip(marks, marks[1:]):
            assert b - a == pytest.approx(metres, abs=2e-3), (skill, age)
        words = [event[5] for event in clip["events"]]
        assert words.count(3) >= len(marks), "a glide after every push"
        if pushes > 1:
            continue
        time = max(metres / speed, figures["motion.push.least"])
        time += figures["motion.push.wait"] if then == "wait" else 0
        assert marks[1][1] - marks[0][1] == pytest.approx(time, abs=3e-3), (skill, age)
        seen += 1
    assert seen == (6 + 1) * len(AGES), "the hop has either hand"


def test_a_walker_is_frame_step_step_each_in_its_beat(opened):
    figures, seen = ledger(), 0
    for clip in data(opened("en", "skills"))["clips"]:
        skill, means, lead, _, age = clip["by"]
        if means != "walker":
            continue
        other = "L" if lead == "R" else "R"
        kinds = [event[1] for event in clip["events"]]
        assert kinds == ["air", lead, other] * (len(kinds) // 3)
        metres, speed = way(clip, figures, AGES.index(age), skill, figures["push.walker"])
        for frame, one, two in zip(*[iter([event[0] / 1000 for event in clip["events"]])] * 3):
            assert one - frame == pytest.approx(two - one, abs=3e-3)
            assert one - frame >= figures["motion.walker.beat"] - 3e-3
            if ADAPTED[skill][0] == 1:
                beat = max(metres / speed / 3, figures["motion.walker.beat"])
                assert one - frame == pytest.approx(beat, abs=3e-3), (skill, age)
        assert not clip["flights"], "a foot is always down"
        seen += 1
    assert seen == len(ADAPTED) * 2 * len(AGES)


@pytest.mark.parametrize("means", ["wheels", "walker"])
@pytest.mark.parametrize("dark", [False, True])
def test_axe_finds_no_barrier_by_other_means(opened, means, dark):
    page = opened("en", "skills", dark=dark)
    pick(page, means=means)
    page.click("#on")
    found = Axe().run(page).response
    assert not found["violations"], [(one["id"], one["nodes"][0]["html"]) for one in found["violations"]]


def test_wheels_and_walkers_are_stepped_told_and_explained(opened):
    page = opened("en", "skills")
    legend = page.locator("#legend")
    assert not legend.is_visible()
    pick(page, skill="walk", means="wheels")
    assert page.locator("#feet").text_content().startswith("push, glide, push, glide")
    assert page.locator("#moment").text_content() == "Standing still"
    assert legend.is_visible() and "pushed" in legend.text_content()
    assert "glide" in page.locator("#rhythm").get_attribute("aria-label")
    assert "Wheels" in page.locator("#stage").get_attribute("aria-label")
    page.focus("#time")
    said = []
    for _ in range(3):
        page.keyboard.press("ArrowRight")
        said.append((page.locator("#moment").text_content(), page.locator("#status").text_content()))
    assert [moment for moment, _ in said] == ["Both hands push", "Rolling", "Both hands push"]
    assert said[0][1].startswith("To mark 1 of ")
    page.keyboard.press("f")
    assert page.locator("#moment").text_content() == "Rolling"
    assert page.locator("#flight").text_content() == "To the glide"
    pick(page, means="walker", lead="L")
    assert page.locator("#feet").text_content().startswith("frame, left, right, frame")
    assert page.locator("#flight").is_disabled()
    rows = page.locator("#rhythm text")
    assert "frame" in rows.all_text_contents()
    # nothing of them stays when feet come back
    pick(page, means="feet")
    assert page.locator("#stage .aid").count() == 0 and not legend.is_visible()
    assert "frame" not in rows.all_text_contents()
    assert page.locator("#flight").text_content() == "To the flight"


def test_a_hand_stays_on_its_wheel_while_it_pushes(opened):
    page = opened("en", "skills")
    pick(page, skill="gallop", means="wheels")
    clip = next(c for c in data(page)["clips"] if c["by"][:2] == ["gallop", "wheels"] and c["by"][4] == "5")
    numbers = lambda text: [float(n) for n in re.findall(r"-?[\d.]+(?:e-?\d+)?", text)]
    half = 1000 * ledger()["motion.wheel"] / 2
    for side, _, lands, lifts in clip["pushes"]:
        for time in (lands, (lands + lifts) / 2, lifts):
            page.evaluate(
                "time => { const bar = document.getElementById('time'); bar.step = 1; bar.value = time;"
                " bar.dispatchEvent(new Event('input')); }",
                round(time),
            )
            hand = numbers(page.locator(f"#feet-now .hand.{side}").get_attribute("transform"))
            axle = numbers(page.locator("#feet-now .aid").get_attribute("transform"))
            assert abs(hand[0] - axle[0]) <= half and 250 < abs(hand[1] - axle[1]) < 330


@pytest.mark.parametrize("means", ["wheels", "walker"])
def test_less_motion_means_numbered_marks_by_other_means_too(opened, means):
    page = opened("en", "skills", less=True)
    pick(page, skill="jump", means=means)
    assert page.locator("#feet-now").evaluate("it => getComputedStyle(it).display") == "none"
    rings = page.locator("#stage .count")
    assert rings.count() >= 2
    assert rings.evaluate_all("all => all.every(it => getComputedStyle(it).opacity === '1')")
    assert page.locator("#stage .aid").first.is_visible()
    page.click("#play")
    page.wait_for_function("document.querySelector('#stage .count.now')?.textContent === '1'")


def test_a_push_is_heard_and_a_glide_is_not(opened):
    page = opened("en", "skills")
    for means in ("wheels", "walker"):
        pick(page, skill="walk", means=means)
        clip = next(c for c in data(page)["clips"] if c["by"][:2] == ["walk", means] and c["by"][2] in ("none", "R") and c["by"][4] == "5")
        drawn = [event[0] / 1000 for event in clip["events"] if event[5] in (1, 2)]
        page.locator("#sound").set_checked(True, force=True)
        page.locator("#time").press("Home")
        page.evaluate("heard.length = 0")
        page.click("#play")
        heard = page.evaluate("heard")
        page.click("#play")
        gaps = [b - a for a, b in zip(heard, heard[1:])]
        assert gaps == pytest.approx([b - a for a, b in zip(drawn, drawn[1:])], abs=1e-6)


def test_the_beat_is_heard_as_it_is_drawn(opened):
    page = opened("en", "skills")
    clip = next(c for c in data(page)["clips"] if c["by"] == GALLOP)
    drawn = [event[0] / 1000 for event in clip["events"] if event[5]]
    page.click("#play")
    assert page.evaluate("heard.length") == 0, "no sound unless asked"
    page.click("#play")
    page.locator("#sound").check(force=True)
    for pace in (1.0, 0.5):
        page.locator("#half").set_checked(pace == 0.5, force=True)
        page.locator("#time").press("Home")
        page.evaluate("heard.length = 0")
        page.click("#play")
        heard = page.evaluate("heard")
        page.click("#play")
        assert len(heard) == len(drawn)
        gaps = [b - a for a, b in zip(heard, heard[1:])]
        wanted = [(b - a) / pace for a, b in zip(drawn, drawn[1:])]
        assert gaps == pytest.approx(wanted, abs=1e-6)


def test_choices_lead_to_what_they_say(opened):
    page = opened("en", "skills")
    pick(page, skill="gallop", lead="L", form="lead-changes")
    assert page.locator("#feet").text_content().startswith("left, right, left, right")
    assert "G1" in page.locator("#says").text_content()
    # a skill without this form falls back to done well
    pick(page, skill="walk")
    assert page.evaluate("document.querySelector('input[name=form]:checked').value") == "well"
    assert page.locator("#flight").is_disabled()
    assert page.locator("#feet").text_content().startswith("left, right, left, right")


def test_a_plan_shows_feet_on_its_paint(opened):
    page = opened("en", "plan")
    markings = page.locator("input[name=marking]")
    assert markings.count() >= 3
    for at in range(markings.count()):
        markings.nth(at).check(force=True)
        assert page.locator("#stage .paint path").count() > 3
        page.click("#on")
        foot = page.locator("#feet-now").locator(".foot, .hand").first.bounding_box()
        stage = page.locator("#stage").bounding_box()
        assert stage["x"] - 1 <= foot["x"] and foot["x"] + foot["width"] <= stage["x"] + stage["width"] + 1


def test_a_plan_shows_children_by_other_means_and_the_forms_of_a_court(opened):
    page = opened("en", "plan")
    labels = page.locator("#choice-who label").all_text_contents()
    assert labels == ["5", "5, on wheels", "5, with a walker"]
    pick(page, marking="0", gait="court")
    forms = page.locator("#choice-form label:not([hidden])").all_text_contents()
    assert forms == ["Done well", "Free foot taps", "Feet one after the other", "Two feet on a square for one"]
    for form, feet in (
        ("taps", "right, left, right, left, both"),
        ("one-after-the-other", "right, right, right, left"),
        ("two-on-one", "both, both, both"),
    ):
        pick(page, form=form)
        assert page.locator("#feet").text_content().startswith(feet), form
    pick(page, who="5 wheels")
    assert not page.locator("#choice-form").is_visible(), "no early forms are known"
    assert page.locator("#feet").text_content().startswith("right hand, glide")
    assert page.locator("#stage .paint path").count() > 3 and page.locator("#feet-now .aid").count() == 1


@pytest.mark.parametrize("means", ["wheels", "walker"])
@pytest.mark.parametrize("skill", ["hop", "jump"])
def test_drawings_of_other_means_need_no_script_either(opened, written, means, skill):
    for kind in ("animated", "strip"):
        text = written("en", kind, skill, means).read_text()
        assert "<script" not in text and "onload" not in text
        page = opened("en", kind, skill, means)
        assert (page.evaluate("document.getAnimations().length") > 0) == (kind == "animated")
        calm = opened("en", kind, skill, means, less=True)
        assert calm.evaluate("document.getAnimations().length") == 0
        assert calm.locator(".count").count() > 1 and calm.locator(".count").first.is_visible()
        assert calm.locator(".stand").first.is_visible()


@pytest.mark.parametrize("kind", ["animated", "strip"])
@pytest.mark.parametrize("skill", ["gallop", "skip", "walk"])
def test_drawings_need_no_script(opened, written, kind, skill):
    text = written("en", kind, skill).read_text()
    assert "<script" not in text and "onload" not in text
    page = opened("en", kind, skill)
    running = page.evaluate("document.getAnimations().length")
    assert (running > 0) == (kind == "animated")
    calm = opened("en", kind, skill, less=True)
    assert calm.evaluate("document.getAnimations().length") == 0
    numbers = calm.locator(".count")
    assert numbers.count() > 3
    assert numbers.first.is_visible()
    assert calm.evaluate("document.documentElement.querySelector('title').textContent") == skill
