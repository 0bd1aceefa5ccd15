"""A browser opens the course for staff: axe-core finds no barrier in either language, a round
of the practice is done by keyboard alone, the page reckons agreement as the room does and as
the paper's formula has it, nothing is stored or sent, less motion is respected.

The page is the one that the room's own example writes (crates/screen/examples/course.rs)."""

import json
import math
import os
import re
import subprocess

import pytest
from axe_playwright_python.sync_playwright import Axe

from conftest import ROOT

LANGUAGES = ["en", "es"]


@pytest.fixture(scope="session")
def pages(tmp_path_factory):
    target = ROOT / os.environ.get("CARGO_TARGET_DIR", "target")
    program = target / "release" / "examples" / "course"
    if not program.exists():
        build = ["cargo", "build", "--release", "-p", "screen", "--example", "course"]
        subprocess.run(build, cwd=ROOT, check=True, capture_output=True, timeout=1800)
    folder = tmp_path_factory.mktemp("course")
    for language in LANGUAGES:
        done = subprocess.run([program, language], check=True, capture_output=True, timeout=60)
        (folder / f"{language}.html").write_bytes(done.stdout)
    return folder


@pytest.fixture
def opened(chromium, pages):
    """Opens the page and, at the end, holds it to silence: no error, no request, no store."""
    contexts, faults = [], []

    def open_(language="en", size=(1280, 900), dark=False, less=False):
        context = chromium.new_context(
            viewport={"width": size[0], "height": size[1]},
            color_scheme="dark" if dark else "light",
            reduced_motion="reduce" if less else "no-preference",
            accept_downloads=True,
        )
        contexts.append(context)
        page = context.new_page()
        page.add_init_script("window.print = () => { window.printed = (window.printed ?? 0) + 1; };")
        page.on("console", lambda message: faults.append(message.text))
        page.on("pageerror", lambda error: faults.append(str(error)))
        page.on(
            "request",
            lambda request: request.url.startswith(("file:", "data:", "blob:"))
            or faults.append(request.url),
        )
        page.goto((pages / f"{language}.html").as_uri())
        return page

    yield open_
    for context in contexts:
        for page in context.pages:
            kept = page.evaluate("[localStorage.length, sessionStorage.length, document.cookie]")
            assert kept == [0, 0, ""]
        context.close()
    assert not faults


def data(page):
    return json.loads(page.locator("#data").text_content())


def barriers(page):
    found = Axe().run(page).response
    assert any(rule["id"] == "color-contrast" for rule in found["passes"])
    return [(one["id"], one["nodes"][0]["html"][:200]) for one in found["violations"]]


def mark(page, wrong=0):
    """Marks the clip on show by the truth, the first `wrong` lines against it; by script."""
    page.evaluate(
        """([wrong]) => {
          const D = JSON.parse(document.getElementById('data').textContent);
          const [, round] = document.getElementById('round').textContent.match(/(\\d+)/);
          const [, clip] = document.getElementById('which').textContent.match(/(\\d+)/);
          D.rounds[round - 1][clip - 1].met.forEach((met, nth) => {
            const say = nth < wrong ? !met : met;
            document.querySelector(`input[name=mark-${nth}][value="${say ? 1 : 0}"]`).checked = true;
          });
          document.getElementById('next').click();
        }""",
        [wrong],
    )


def round_(page, wrong=lambda clip: 0):
    for clip in range(len(data(page)["rounds"][0])):
        mark(page, wrong(clip))


def cohen(table):
    """Kappa and its error (Fleiss, Cohen and Everitt 1969), written anew from the paper's form."""
    n = sum(table)
    p = [[table[0] / n, table[1] / n], [table[2] / n, table[3] / n]]
    r, c = [sum(row) for row in p], [sum(col) for col in zip(*p)]
    po, pe = p[0][0] + p[1][1], r[0] * c[0] + r[1] * c[1]
    k = (po - pe) / (1 - pe)
    a = sum(p[i][i] * (1 - (r[i] + c[i]) * (1 - k)) ** 2 for i in (0, 1))
    b = (1 - k) ** 2 * sum(p[i][j] * (c[i] + r[j]) ** 2 for i in (0, 1) for j in (0, 1) if i != j)
    d = (k - pe * (1 - k)) ** 2
    return k, math.sqrt(max(0, (a + b - d) / (n * (1 - pe) ** 2)))


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("dark", [False, True])
def test_axe_finds_no_barrier(opened, language, dark):
    page = opened(language, dark=dark)
    assert page.locator("html").get_attribute("lang") == language
    for skill in page.locator(".skill summary").all():
        skill.click()
    assert barriers(page) == []
    # with a question left open, then with results, the whys, and a second look
    page.click("#next")
    page.click("#keep")
    round_(page, lambda clip: clip % 2)
    answer_all(page)
    page.click("#compare")
    page.locator(".look").first.click()
    page.locator("footer summary").click()
    assert barriers(page) == []
    # every gap of a sentence is filled
    said = page.locator("main").inner_text()
    assert not re.search(r"%\d|undefined|NaN|null", said)


def answer_all(page):
    page.evaluate(
        """() => {
          const D = JSON.parse(document.getElementById('data').textContent);
          for (const input of document.querySelectorAll('input[type=number]')) {
            input.value = input.name.startsWith('after') ? 80 : input.name.startsWith('then') ? 30 : 40;
          }
          D.right.forEach((right, nth) => {
            document.querySelector(`input[name=before-know-${nth}][value="${nth < 4 ? right : (right + 1) % 3}"]`).checked = true;
            document.querySelector(`input[name=after-know-${nth}][value="${nth < 8 ? right : (right + 1) % 3}"]`).checked = true;
          });
        }"""
    )
    page.click("#keep")


@pytest.mark.parametrize("size", [(1280, 720), (390, 844)])
def test_nothing_is_cut_off_and_every_target_is_large_enough(opened, size):
    page = opened("es", size=size)
    for skill in page.locator(".skill summary").all():
        skill.click()
    assert page.evaluate("document.documentElement.scrollWidth") <= size[0]
    boxes = page.eval_on_selector_all(
        "button, .switch:not([hidden]), input[type=range], input[type=number], input[type=text], summary, nav a",
        "all => all.map(one => [one.id || one.textContent, one.getBoundingClientRect()])"
        ".filter(([, box]) => box.width > 0).map(([name, box]) => [name, box.width, box.height])",
    )
    assert len(boxes) > 100
    assert [box for box in boxes if box[1] < 48 or box[2] < 48] == []


def test_a_round_is_done_by_keyboard_alone(opened):
    page = opened("en")
    rounds = data(page)["rounds"]
    each = len(rounds[0])

    def tab_to(wanted):
        for _ in range(60):
            page.keyboard.press("Tab")
            it = page.evaluate("[document.activeElement.id, document.activeElement.name ?? '']")
            if wanted in it:
                return
        pytest.fail(f"{wanted} is out of the keyboard's reach, at {it}")

    # by the contents to the practice
    link = page.locator("nav a[href='#practice']")
    link.focus()
    page.keyboard.press("Enter")
    tab_to("see-back")
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.id") == "see-play"
    page.keyboard.press(" ")
    assert page.locator("#watch .show.playing").count() == 1
    page.keyboard.press(" ")
    page.keyboard.press("Shift+Tab")
    page.keyboard.press("Shift+Tab")
    assert page.evaluate("document.activeElement.id") == "see-time"
    page.keyboard.press("Home")
    page.keyboard.press("ArrowRight")
    told = page.locator("#see-status").text_content()
    assert told.startswith("Contact 1 of ")
    # place and time on the ground, as the clip has them: enough to mark without sight
    clip = rounds[0][0]["clip"]
    lands = clip["events"][0][0]
    for side, x, y, turn, from_, to, *_ in (p for p in clip["prints"] if p[4] == lands):
        name, hand = ("Right", "Left")[side == "L"], ("left", "right")[y > 0]
        said = f"{name}: on the ground from {from_ / 1000:.2f} to {(to or clip['end']) / 1000:.2f} s, "
        assert said in told
        assert f"cm {hand} of the line, toes {abs(turn)} degrees" in told

    # a clip that is not marked does not pass, and says so
    tab_to("next")
    page.keyboard.press("Enter")
    assert "left" in page.locator("#unmarked").text_content()
    assert page.evaluate("document.activeElement.name") == "mark-0"

    table = [0, 0, 0, 0]
    for clip, one in enumerate(rounds[0]):
        for nth, met in enumerate(one["met"]):
            if not (clip == 0 and nth == 0):
                tab_to(f"mark-{nth}")
            # one line in ten is marked wrong
            say = met != ((clip + nth) % 10 == 0)
            page.keyboard.press(" ")
            if not say:
                page.keyboard.press("ArrowRight")
            checked = page.evaluate(f"document.querySelector('input[name=mark-{nth}]:checked').value")
            assert checked == ("1" if say else "0")
            table[(0 if say else 2) + (0 if met else 1)] += 1
        tab_to("next")
        page.keyboard.press("Enter")
        if clip + 1 < each:
            assert page.evaluate("document.activeElement.id") == "which"
            assert page.locator("#which").text_content().startswith(f"Clip {clip + 2} of {each}")
    assert page.evaluate("document.activeElement.id") == "result-title"
    assert page.locator("#verdict").get_attribute("role") == "status"
    said = page.locator("#verdict").text_content()
    kappa, _ = cohen(table)
    assert f"{table[0] + table[3]} of {sum(table)} marks agree" in said
    assert f"{kappa:.2f}" in said
    tab_to("next-round")
    page.keyboard.press("Enter")
    assert page.locator("#round").text_content().startswith("Round 2")


def test_the_page_reckons_as_the_room_does(opened):
    page = opened("en")
    checks = data(page)["checks"]
    assert len(checks) >= 8
    for check in checks:
        table = check["table"]
        ours = page.evaluate(
            """table => {
              const A = window.courseAgreement, rule = {agreement: .8, kappa: .6, inRow: 1, half: .15};
              const ready = A.readyOf([table], rule);
              return {agreement: A.agreementOf(table), kappa: A.kappaOf(table), ac1: A.ac1Of(table),
                ready: ready.ready, more: ready.more};
            }""",
            table,
        )
        for name in ("agreement", "kappa", "ac1"):
            if check[name] is None:
                assert ours[name] is None, (table, name)
            else:
                assert ours[name] == pytest.approx(check[name], abs=1e-12), (table, name)
        assert (ours["ready"], ours["more"]) == (check["ready"], check["more"]), table
        if ours["kappa"] and ours["kappa"][1]:
            assert ours["kappa"][:2] == pytest.approx(cohen(table), abs=1e-12)


def test_two_good_rounds_in_a_row_make_ready(opened):
    page = opened("en")
    round_(page, lambda clip: 4)  # all against the truth
    assert "Not ready yet" in page.locator(".told-not").text_content()
    assert "at least 80 %" in page.locator("#verdict").text_content()
    page.click("#next-round")
    round_(page)
    said = page.locator("#verdict").text_content()
    assert "Not ready yet. Good rounds in a row still needed: 1." in said
    assert "Kappa, agreement beyond chance: 1.00" in said
    page.click("#next-round")
    round_(page, lambda clip: 1 if clip % 6 == 0 else 0)
    assert "Ready to observe beside" in page.locator(".told-ready").text_content()
    assert page.locator("#truth .differs").count() == len(range(0, len(data(page)["rounds"][0]), 6))


def test_what_is_to_be_found_is_not_told_before_the_end(opened):
    page = opened("en")
    rounds = data(page)["rounds"]
    phrases = data(page)["phrases"]
    first = rounds[0][0]
    watch = page.locator("#watch")
    page.click("#see-on")
    assert phrases[first["clip"]["says"]] not in watch.inner_text()
    assert phrases[first["clip"]["says"]] not in page.locator("#see-status").text_content()
    for part in ("#see-rhythm", "#see-order", "#see-says", "#see-moment", "#see-stage .print >> nth=0"):
        assert not page.locator(part).is_visible(), part
    assert page.locator("#see-feet-now").count() == 1
    round_(page)
    page.locator(".look").first.click()
    assert phrases[first["clip"]["says"]] in page.locator("#which").text_content()
    assert page.locator("#see-rhythm").is_visible()


def test_clips_show_their_faults(opened):
    """From the page's numbers alone: feet of clips whose truth is told by prints and times."""
    seen = set()
    for one in [clip for round_ in data(opened("en"))["rounds"] for clip in round_]:
        clip, truth = one["clip"], dict(zip(one["lines"], one["met"]))
        lands = sorted((print_[4], print_[0]) for print_ in clip["prints"] if print_[4] > 0)
        if "Both feet land at the same moment." in truth:
            times = [t for t, _ in lands]
            together = all(
                any(abs(a - b) <= 40 and s != r for b, r in lands if (b, r) != (a, s)) for a, s in lands[:2]
            )
            assert truth["Both feet land at the same moment."] == together, times
            seen.add("jump")
        if "The same foot lands from the first hop to the last." in truth:
            hops = {e[1] for e in clip["events"] if e[5] == 2}
            assert truth["The same foot lands from the first hop to the last."] == (len(hops) == 1)
            seen.add("hop")
        if "The hops change sides each time: right, left, right, left." in truth:
            hops = [e[1] for e in clip["events"] if e[5] == 1]
            alternate = all(a != b for a, b in zip(hops, hops[1:]))
            assert truth["The hops change sides each time: right, left, right, left."] == alternate
            seen.add("skip")
        if "Each step comes out of the air." in truth:
            flies = {round(to) for _, to in clip["flights"]}
            steps = [e[0] for e in clip["events"] if e[5] == 2][1:]
            assert truth["Each step comes out of the air."] == all(t in flies for t in steps)
            seen.add("run")
    assert seen == {"jump", "hop", "skip", "run"}


def test_before_and_after_claim_the_smaller_gain(opened):
    page = opened("en")
    page.click("#compare")
    assert "missing" in page.locator("#compared").text_content()
    assert page.locator(".why:visible").count() == 0
    answer_all(page)
    assert "Kept" in page.locator("#kept").text_content()
    page.click("#compare")
    said = page.locator("#compared").text_content()
    # 40 before, 80 now, 30 as seen today: 40 and 50, the smaller is 40
    assert "40 before, 80 now: 40 more" in said and "Claim the smaller: 40" in said
    assert "Questions right: 4 before, 8 now, of 9" in said
    assert page.locator(".why:visible").count() == 9


def test_a_name_is_printed_and_not_kept(opened):
    page = opened("en")
    page.fill("#who", "Robin Example")
    assert page.locator("#said-who").text_content() == "Robin Example"
    page.click(".print[data-paper=award]")
    assert page.evaluate("window.printed") == 1
    round_(page)
    answer_all(page)
    with page.expect_download() as waiting:
        page.click("#save")
    saved = json.loads(open(waiting.value.path()).read())
    assert "Robin" not in json.dumps(saved)
    assert saved["practice"][0]["table"][1:3] == [0, 0]
    assert saved["before"]["confidence"] == [40] * 6
    page.reload()
    assert page.input_value("#who") == "" and page.locator("#said-who").text_content() == ""
    assert page.locator("input[type=number]").first.input_value() == ""


def test_one_paper_is_printed_at_a_time(opened):
    page = opened("en")
    page.emulate_media(media="print")
    page.evaluate(
        "document.body.classList.add('one-paper'); document.getElementById('fidelity').classList.add('printed')"
    )
    assert page.locator("#fidelity").is_visible()
    for other in ("#visit", "#award", "#induction", "nav", "#asked-before", "#watch"):
        assert not page.locator(other).is_visible(), other


def test_papers_say_what_the_room_reckons(opened):
    page = opened("en")
    order = page.locator("#order tbody th").all_text_contents()
    assert [line.split(". ")[1] for line in order] == ["trail", "court", "brook", "spots", "wave"]
    visits = page.locator("#visit li").all_text_contents()
    assert visits[0] == "First session, led together: 7 September 2026"
    assert visits[-1] == "Visit after 6 months: 8 March 2027"
    free = page.locator("#free").inner_text()
    assert "stands at D" in free and "trail: its fast way meets another" in free
    minutes = [int(text.split()[0]) for text in page.locator("#induction strong").all_text_contents()]
    assert sum(minutes) == 15


def test_less_motion_means_numbered_prints(opened):
    page = opened("en", less=True)
    page.locator(".skill summary").first.click()
    assert page.locator("#jump-feet-now").evaluate("it => getComputedStyle(it).display") == "none"
    assert page.locator("#jump-stage .count").first.is_visible()
    assert page.locator("#see-stage .print").first.is_visible()
    assert page.evaluate("document.getAnimations().length") == 0


def test_one_player_stops_the_others(opened):
    page = opened("en")
    page.locator(".skill summary").first.click()
    page.click("#jump-play")
    assert page.locator(".show.playing").count() == 1
    page.click("#see-play")
    assert page.locator(".show.playing").count() == 1
    assert page.locator("#watch .show.playing").count() == 1
    page.click("#see-play")
