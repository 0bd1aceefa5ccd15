# A course for the yard's staff
# What an observer marks on a clip
course-sees-jump-leaves = Both feet leave the ground at the same moment.
course-sees-jump-flies = Every jump flies: for a moment no foot is down.
course-sees-jump-lands = Both feet land at the same moment.
course-sees-jump-stays = After the last landing the feet stay where they are.
course-sees-hop-same-foot = The same foot lands from the first hop to the last.
course-sees-hop-free-foot = The free foot never touches down.
course-sees-hop-goes-on = Every hop goes forward.
course-sees-hop-beat = Hop follows hop without a rest.
course-sees-leap-runs-up = The run-up goes into the leap without a stop.
course-sees-leap-other-foot = One foot takes off, the other lands.
course-sees-leap-floats = The leap floats: for a moment no foot is down.
course-sees-leap-runs-on = After the landing the run goes on.
course-sees-gallop-lead = The same foot leads from beginning to end.
course-sees-gallop-behind = The back foot closes up and never passes the front foot.
course-sees-gallop-spring = Each step of the front foot comes out of the air.
course-sees-gallop-beat = The beat is long, short: not even as in a run.
course-sees-slide-square = The toes stay square to the way.
course-sees-slide-uncrossed = The feet never cross.
course-sees-slide-spring = Each step of the leading foot comes out of the air.
course-sees-slide-flows = Step, close, step, close: without a stop.
course-sees-skip-step-hop = Every step has its hop on the same foot.
course-sees-skip-sides = The hops change sides each time: right, left, right, left.
course-sees-skip-beat = After each hop the other foot steps at once.
course-sees-run-floats = Each step comes out of the air.
course-sees-run-line = The feet land close to the line.
course-sees-run-even = Left and right steps take as long.

# Faults of the practice
course-fault-jump-leaves-one-first = One foot leaves the ground before the other.
course-fault-jump-steps-on = One foot steps on after the landing.
course-fault-hop-on-the-spot = After the first hop the child hops on the spot.
course-fault-hop-rests = The child rests between hops.
course-fault-leap-same-foot = It takes off and lands on the same foot.
course-fault-leap-stops-after = The child stops after the landing.
course-fault-gallop-drags = The feet drag: no spring between steps.
course-fault-slide-stops = The child stops between steps.
course-fault-skip-misses-hops = Two steps have no hop.
course-fault-skip-one-foot = One foot does every step and every hop.
course-fault-run-limps = One foot lands late each time.

# Before and after
course-can-show = I can show each skill on our markings so that children can copy it.
course-can-see = I can see which part of a skill a child does not do yet.
course-can-cue = I can give one short cue that fits what I see.
course-can-level = I can make a marking easier or harder for one child while the others go on.
course-can-wait = I can keep every child's wait under 15 seconds.
course-can-include = I can include a child on wheels, with little sight or who will not join today.
course-know-paint = A yard has new markings and nobody leads play on them. What is likely?
course-know-paint-a = Children move more for years.
course-know-paint-b = Activity hardly changes; it is adults who lead play that make the difference.
course-know-paint-c = Children move less.
course-know-paint-why = In the preschool trial we know, markings alone did not raise activity.
course-know-gallop = A child gallops and the back foot lands in front of the other. What is it?
course-know-gallop-a = Not a gallop yet: the back foot passes.
course-know-gallop-b = A gallop with the other foot leading.
course-know-gallop-c = A skip.
course-know-gallop-why = In a gallop the same foot stays in front; the back foot closes up behind it.
course-know-skip = What comes before the skip?
course-know-skip-a = Slide and leap.
course-know-skip-b = Nothing: most children skip at three.
course-know-skip-c = Gallop and a steady hop on each foot.
course-know-skip-why = A skip is step and hop in turn; few children of three or four do it, half of five-year-olds try.
course-know-hop = Most of a group are three. What fits a trail of hops?
course-know-hop-a = Ten hops, all the same.
course-know-hop-b = Two or three hops, then change foot or rest.
course-know-hop-c = Hops only on the weaker foot.
course-know-hop-why = Fewer than half of three-year-olds stand on one leg for five seconds.
course-know-cue = A child does three things not yet as they should be. What do you say?
course-know-cue-a = One cue, and the same again on the next try.
course-know-cue-b = All three, so that nothing is forgotten.
course-know-cue-c = Nothing, until the lesson is over.
course-know-cue-why = One cue at a time can be acted on; three cannot.
course-know-fit = A gap is crossed well nine times in ten, without effort. What next?
course-know-fit-a = It is right for a whole year.
course-know-fit-b = It is too hard; make it narrower.
course-know-fit-c = Offer a wider one beside it: well pitched is five to nine in ten, with some stretch.
course-know-fit-why = What always comes off trains little; what rarely comes off discourages.
course-know-runout = Two running lanes lie end to end, and children come from both sides. What do you do?
course-know-runout-a = Ask for care.
course-know-runout-b = Make it one way, or close one of them.
course-know-runout-c = Let the faster child go first.
course-know-runout-why = Two runners who meet need over ten metres to stop; small children react late.
course-know-unwilling = A child turns away, and then says "later". What do you do, and write down?
course-know-unwilling-a = Ask again until the child joins.
course-know-unwilling-b = Leave it out, so that nothing is missing.
course-know-unwilling-c = Stop for today; "did not want to" is an outcome.
course-know-unwilling-why = Two signs are a no for today. It is recorded as what it is, not as a gap.
course-know-record = Rain took half of a session, and two children were away. What do you record?
course-know-record-a = Planned, held and received, each as it was.
course-know-record-b = A held session: it had begun.
course-know-record-c = Nothing, since it did not count.
course-know-record-why = What was planned is not what happened; only the three apart tell why a result came out.

# Core items of a session held as designed
course-core-marking = The right marking for this group.
course-core-shown = Shown before it was told.
course-core-moving = All moving within { $seconds } seconds.
course-core-wait = Nobody waits longer than { $seconds } seconds.
course-core-cue = One cue, used twice.
course-core-levels = An easier and a harder form offered.
course-core-sight = All children in sight, all the time.
course-core-ending = Ended with praise or a choice.

# Induction
course-induction-walk = Walk every marking yourself, the way the arrows point. Say its skill aloud.
course-induction-safe = Stand at the run-outs. Say where children stop, what is closed when wet, hot or slippery, and who is told.
course-induction-lead = Lead one card with a colleague: show it, let all move, one cue, easier and harder.
course-induction-see = Watch one child for one line of a skill. Say yes or no, and compare.
course-induction-who = Where the cards hang, what is written down and what never is, whom to ask.

# The page
course-title = { $yard }: a short course for staff
course-nav = On this page
course-intro = About an hour, in parts and in any order. Your answers stay on this page: nothing is sent, nothing is stored, and closing the page forgets them. To keep them, save them to a file.
course-before = Before you begin
course-after = After the course
course-after-says = The same items again. In the second column say how it really was before the course, now that you know more.
course-rate = How sure are you? 0: I cannot do it at all. 100: I surely can.
course-item = Item
course-now = Now, 0 to 100
course-then = Before the course, as I see it today, 0 to 100
course-questions = What do you know?
course-keep = Keep as my answers before
course-kept = Kept while this page is open.
course-compare = Compare with before
course-lacking = Answers still missing: { $count }.
course-no-before = There are no answers from before to compare with.
course-gain = Confidence, mean of six: { $before } before, { $after } now: { $gain } more.
course-gain-then = Against how you see it today: { $gain } more.
course-gain-claim = Claim the smaller: { $gain }. Ratings of oneself drift as one learns.
course-known = Questions right: { $before } before, { $after } now, of { $of }.
course-right = Right: { $answer }
course-skills = The skills
course-skills-says = What each is, what it looks like early and later, and what to say. Open a skill and play its feet, well done and in early forms.
course-what = What it is
course-early = Early
course-later = With practice
course-cue = Cue
course-seen = What you see
course-say = What you say
course-easier = Easier
course-harder = Harder
course-trains = Trained here by
course-trains-none = No marking here trains it: practise it on open ground.
course-practice = Practice in seeing
course-practice-says = Watch a clip as often as you like, at full speed first. Mark for each line whether the feet do it. Up to three things may be amiss, or none. Answers are shown at the end of a round.
course-practice-words = Without sight: step with the arrow keys on the time bar. Each landing is told with its place and with how long the foot stays, so every line can be marked from the words.
course-spot = { $side ->
    [L] Left
   *[R] Right
 }: on the ground from { $from } to { $to } s, { $along } cm along the way, { $aside } cm { $hand ->
    [left] left
   *[right] right
 } of the line, toes { $toes } degrees off the way.
course-keeping = Before your marks count: { $hours } hours with clips, and { $sessions } sessions beside a trained observer, { $rounds } in a row good enough. To stay ready: two observers watch { $double } % of sessions; practise again when the last { $pairs } pairs give a kappa under { $kappa }, or after { $away } months away.
course-round-of = Round { $round } of { $of }
course-clip-of = Clip { $clip } of { $of }: { $skill }
course-leads = { $foot ->
    [R] right foot first
   *[L] left foot first
 }
course-yes = Yes
course-no = No
course-next = Next clip
course-finish = End the round
course-unmarked = Mark every line first: { $count } left.
course-result = Result of round { $round }
course-agree = { $met } of { $of } marks agree with the truth: { $share } %. With so few, { $low } to { $high } % would fit as well.
course-kappa = Kappa, agreement beyond chance: { $kappa } ({ $low } to { $high }): { $band }.
course-kappa-none = Kappa cannot be told: all marks are alike.
course-ac1 = AC1, steadier where nearly all marks are alike: { $ac1 } ({ $low } to { $high }).
course-band = { $band ->
    [poor] poor
    [good] fair to good
   *[excellent] excellent
 }
course-ready = Ready to observe beside a trained observer: { $rounds } rounds in a row agree well enough. After { $sessions } sessions side by side with the same agreement your marks count.
course-not-ready = Not ready yet. Good rounds in a row still needed: { $rounds }.
course-want-agreement = Agreement was { $got } %, at least { $wanted } % is asked.
course-want-kappa = Kappa was { $got }, at least { $wanted } is asked.
course-more-pairs = Kappa over the last rounds is known to within { $half } after { $pairs } marks more.
course-close = Kappa over the last rounds is known to within { $half }.
course-marks = Your marks and the truth
course-line = What the feet do
course-yours = Yours
course-truth = Truth
course-same = agrees
course-differs = differs
course-look = Look again: clip { $clip }, { $skill }
course-looking = Clip { $clip } again, with all its words: { $says }
course-next-round = Next round
course-again = Begin again with round 1
course-certificate = Certificate of attendance
course-certificate-says = The name is only printed. It is not stored and is not in the saved file.
course-name = Name
course-place = Place
course-day = Date
course-attended = took part in the course on movement skills and painted markings at { $yard }:
course-contents = the skills and their early and later forms; cues, easier and harder forms; practice in seeing with known clips; leading a station; safe use of the yard.
course-attended-only = It says that the person was there. It is no qualification, and no leave to work with children alone.
course-signature = Signature
course-print = Print
course-print-this = Print: { $what }
course-save = Save my answers to a file
course-saved = Saved by your browser, without a name.
course-papers = When the course is over
course-induction = Induction of new staff: { $minutes } minutes
course-minutes = { $minutes } min
course-visit-sheet = A coach's visit
course-visit-says = Watch { $watch } minutes, talk { $talk } minutes. Agree on one change only.
course-visits = Visits
course-visit-kind = { $kind ->
    [together] First session, led together
    [week] Visit in week { $count }
   *[month] Visit after { $count } months
 }
course-visit-no-date = No start is set: write the dates in.
course-fidelity = Held as designed
course-fidelity-says = A column for each visited session: yes, no, or a dash for what could not be seen. Good is { $core } % of what was asked, and every item in { $strict } % of sessions.
course-fidelity-parts = Good is also: { $reach } % of the children present took part, { $adherence } % of the planned sessions and minutes were held.
course-fidelity-lost = Planned, held and held as designed are three numbers. A lost session has a reason: weather, staff short, other event, yard blocked, children unwell, forgot.
course-core = Core item
course-seen-yes = Yes
course-seen-no = No
course-session = Session
course-planned = Planned
course-held = Held
course-designed = Held as designed
course-agreed = The one change agreed
course-done-last = Was the last one done?
course-next-date = Next date
course-travel = Minutes, travel
course-order = In which order markings are introduced
course-order-says = The easiest for this group first, and none before the skills that its own builds on.
course-order-first = first on open ground: { $skills }
course-marking = Marking
course-skill = Skill
course-pitched = Well pitched for
course-free = Free play, unled
course-free-stand = One adult stands at { $stand } and sees all that is open.
course-free-none = There is nowhere from which one adult sees a marking whole: lead every station, or have two adults.
course-free-open = Open
course-free-out = Left out
course-free-why = { $why ->
    [meets] its fast way meets another
    [run-out] its run-out is not free
    [hard] too hard without an adult
   *[unseen] not wholly in sight from there
 }
course-free-care = Look at the ground first: nothing is open when it is wet, hot to the hand, slippery, lifting or blocked. Local rules on staff and supervision come first.
course-footer = The clips are drawn from figures: no child was filmed. To agree with clips is a beginning; children are quicker, and hide their feet.
