"""The weeks of play, recomputed from plan.json: practice by the layout's rule, groups, worth."""

import collections

import pytest

# minutes: a programme's sums of what is rounded to 1e-6
SAME = 2e-3


@pytest.fixture(scope="session")
def teach(plan):
    return plan["teach"]


def test_nobody_plays_at_two_stations(teach):
    for session in teach["sessions"]:
        for slot in session["slots"]:
            seats = [seat["child"] for group in slot for seat in group["children"]]
            assert len(seats) == len(set(seats))
            assert set(seats) <= set(teach["outings"][session["outing"]])
            places = [group["marking"] for group in slot]
            assert len(places) == len(set(places))


def test_groups_are_no_larger_than_a_turn_bears(plan, teach):
    """LAYOUT.md: four children share a track's turn, so that nobody waits over 15 s."""
    tracks = {one["name"]: one["tracks"] for one in plan["markings"]}
    for session in teach["sessions"]:
        for slot in session["slots"]:
            for group in slot:
                assert len(group["children"]) <= 4 * tracks[group["marking"]]


def test_practice_and_worth_are_what_the_sessions_give(plan, teach):
    """e of the layout times minutes; 15 minutes a week on one figure count whole, the next 15
    half (LAYOUT.md). Z weighs first halves of targets by 1.25, second ones by .75."""
    layout = plan["layout"]
    yields = collections.defaultdict(list)
    for candidate in layout["candidates"]:
        for row in candidate["e"]:
            key = (candidate["name"], row["child"], row["activity"])
            yields[key].append((row["skill"], row["foot"], row["e"]))
    of_marking = {one["name"]: one["candidate"] for one in plan["markings"]}
    got = collections.defaultdict(float)
    stayed = collections.defaultdict(float)
    for session in teach["sessions"]:
        for slot in session["slots"]:
            for group in slot:
                for seat in group["children"]:
                    visit = (session["week"], seat["child"], group["marking"])
                    for activity, share in seat["parts"]:
                        minutes = share * teach["slot_minutes"]
                        before = stayed[visit]
                        whole = max(0.0, min(15.0, before + minutes) - min(15.0, before))
                        half = max(0.0, min(30.0, before + minutes) - min(30.0, before)) - whole
                        stayed[visit] += minutes
                        for skill, foot, e in yields[of_marking[group["marking"]], seat["child"], activity]:
                            got[seat["child"], skill, foot] += e * (whole + 0.5 * half)
    worth = wanted = 0.0
    for row in teach["practice"]:
        ours = got[row["child"], row["skill"], row["foot"]]
        assert min(ours, row["target"]) == pytest.approx(min(row["got"], row["target"]), abs=SAME), row
        first = min(ours, row["target"] / 2)
        second = min(max(ours - row["target"] / 2, 0.0), row["target"] / 2)
        worth += 1.25 * first + 0.75 * second
        wanted += row["target"]
        assert (row["why"] is None) == (row["got"] >= row["target"] - SAME)
    assert worth / wanted == pytest.approx(teach["value"], abs=1e-4)


def test_the_plan_is_within_three_per_cent_of_its_bound(teach):
    assert teach["value"] <= teach["bound"] + 1e-9
    gap = (teach["bound"] - teach["value"]) / teach["bound"]
    assert gap == pytest.approx(teach["gap"], abs=2e-6)
    assert gap <= 0.03


def test_a_game_is_played_where_it_belongs(teach):
    """No game for a figure that the yard lacks; each that is played is on the list."""
    for session in teach["sessions"]:
        for slot in session["slots"]:
            for group in slot:
                assert group["game"] is None or group["game"] in teach["games"]
