'use strict';
(() => {
//PLAYER
//AGREEMENT
const D = JSON.parse(byId('data').textContent), W = D.words;
const text = (tag, said, into, at = {}) => {
  const it = document.createElement(tag);
  it.textContent = said;
  for (const key in at) it.setAttribute(key, at[key]);
  if (into) into.append(it);
  return it;
};
const decimals = (value, places) => value.toFixed(places).replace('-', '−').replace('.', W.mark);
const percent = share => Math.round(100 * share).toString();
// what the tests hold against the room's own figures
window.courseAgreement = {agreementOf, kappaOf, ac1Of, morePairs, readyOf};

// the skills: a player in each, its first clip when it is opened
for (const it of document.querySelectorAll('.skill')) {
  const word = it.dataset.skill, clips = D.taught[word];
  if (!clips) continue;
  const form = byId(word + '-choices'), shown = player(D, word + '-');
  const value = name => form.elements[word + '-' + name].value;
  const pick = () => shown.show(clips.find(clip => clip.by[0] === value('form') && clip.by[1] === value('lead')) ?? clips[0]);
  for (const name of ['form', 'lead']) {
    const inputs = [...form.querySelectorAll(`input[name="${word}-${name}"]`)];
    inputs[0].checked = true;
    inputs[0].closest('fieldset').hidden = inputs.length < 2;
  }
  form.addEventListener('change', pick);
  form.addEventListener('submit', event => event.preventDefault());
  it.addEventListener('toggle', () => { if (!it.open) shown.pause(); });
  pick();
}

// the practice
const see = player(D, 'see-'), screen = document.querySelector('#watch .show');
const marks = byId('marks');
let round = 0, at = 0, answers = [], held = [];

function watch(focus) {
  const shown = D.rounds[round], one = shown[at];
  byId('watch').hidden = false;
  byId('result').hidden = true;
  screen.classList.add('quiet');
  byId('round').textContent = fill(W.round, round + 1, D.rounds.length);
  byId('which').textContent = fill(W.clip, at + 1, shown.length, one.skill);
  byId('next').textContent = at + 1 < shown.length ? W.next : W.finish;
  byId('unmarked').textContent = '';
  marks.replaceChildren();
  one.lines.forEach((line, nth) => {
    const set = document.createElement('fieldset');
    set.className = 'asks';
    text('legend', line, set);
    const both = document.createElement('div');
    for (const [value, said] of [['1', W.yes], ['0', W.no]]) {
      const label = document.createElement('label');
      label.className = 'switch';
      const input = document.createElement('input');
      input.type = 'radio';
      input.name = 'mark-' + nth;
      input.value = value;
      label.append(input);
      text('span', said, label);
      both.append(label);
    }
    set.append(both);
    marks.append(set);
  });
  see.show(one.clip);
  if (focus) byId('which').focus();
}

function next() {
  const one = D.rounds[round][at];
  const given = one.lines.map((_, nth) => marks.querySelector(`input[name="mark-${nth}"]:checked`)?.value);
  const left = given.filter(value => value === undefined).length;
  if (left) {
    byId('unmarked').textContent = fill(W.unmarked, left);
    marks.querySelector(`input[name="mark-${given.indexOf(undefined)}"]`).focus();
    return;
  }
  answers.push(given.map(value => value === '1'));
  at += 1;
  if (at < D.rounds[round].length) watch(true); else result();
}

function result() {
  see.pause();
  const shown = D.rounds[round], table = [0, 0, 0, 0];
  shown.forEach((one, clip) => one.met.forEach((met, nth) => { table[(answers[clip][nth] ? 0 : 2) + (met ? 0 : 1)] += 1; }));
  held.push({round: round + 1, table, answers});
  byId('watch').hidden = true;
  byId('result').hidden = false;
  byId('result-title').textContent = fill(W.result, round + 1);
  const verdict = byId('verdict'), agree = agreementOf(table), kappa = kappaOf(table), ac1 = ac1Of(table);
  const told = readyOf(held.map(one => one.table), D.rule);
  verdict.replaceChildren();
  text('p', fill(W.agree, table[0] + table[3], sum(table), percent(agree[0]), percent(agree[2]), percent(agree[3])), verdict);
  const two = ([value, , low, high]) => [value, low, high].map(one => decimals(one, 2));
  if (kappa) {
    const band = kappa[0] < D.rule.bands[0] ? 0 : kappa[0] <= D.rule.bands[1] ? 1 : 2;
    text('p', fill(W.kappa, ...two(kappa), W.bands[band]), verdict);
  } else text('p', W.kappaNone, verdict);
  text('p', fill(W.ac1, ...two(ac1)), verdict);
  if (told.ready) text('p', fill(W.ready, D.rule.inRow), verdict, {class: 'told-ready'});
  else {
    text('p', fill(W.notReady, told.lacking), verdict, {class: 'told-not'});
    // floored, so that what falls short is not rounded up to what is asked
    const floor = value => Math.floor(value * 100 + 1e-9) / 100;
    if (agree[0] < D.rule.agreement) text('p', fill(W.wantAgreement, Math.floor(100 * agree[0] + 1e-9), percent(D.rule.agreement)), verdict);
    if (kappa && kappa[0] < D.rule.kappa) text('p', fill(W.wantKappa, decimals(floor(kappa[0]), 2), decimals(D.rule.kappa, 2)), verdict);
  }
  const half = decimals(D.rule.half, 2);
  if (kappaOf(told.last)) text('p', told.more ? fill(W.more, half, told.more) : fill(W.close, half), verdict);
  truth(shown);
  byId('next-round').textContent = round + 1 < D.rounds.length ? W.nextRound : W.again;
  byId('result-title').focus();
}

// marks and truth of a round, clip by clip, each with a way to look again
function truth(shown) {
  const into = byId('truth');
  into.replaceChildren();
  text('h4', W.marks, into);
  shown.forEach((one, clip) => {
    const table = text('table', '', into, {class: 'sheet'});
    text('caption', fill(W.clip, clip + 1, shown.length, one.skill), table);
    const head = table.createTHead().insertRow();
    for (const said of [W.line, W.yours, W.truth, '']) if (said) text('th', said, head, {scope: 'col'}); else text('td', '', head);
    const body = table.createTBody();
    one.lines.forEach((line, nth) => {
      const row = body.insertRow(), mine = answers[clip][nth], met = one.met[nth];
      text('th', line, row, {scope: 'row'});
      text('td', mine ? W.yes : W.no, row);
      text('td', met ? W.yes : W.no, row);
      text('td', mine === met ? W.same : W.differs, row, {class: mine === met ? 'same' : 'differs'});
    });
    const again = text('button', fill(W.look, clip + 1, one.skill), into, {type: 'button', class: 'look'});
    again.addEventListener('click', () => {
      byId('watch').hidden = false;
      screen.classList.remove('quiet');
      marks.replaceChildren();
      byId('next').hidden = true;
      byId('round').textContent = '';
      byId('which').textContent = fill(W.looking, clip + 1, D.phrases[one.clip.says]);
      see.show(one.clip);
      byId('which').focus();
    });
  });
}

byId('next').addEventListener('click', next);
byId('next-round').addEventListener('click', () => {
  round = (round + 1) % D.rounds.length;
  at = 0;
  answers = [];
  byId('next').hidden = false;
  watch(true);
});
marks.addEventListener('submit', event => event.preventDefault());
if (D.rounds.length) watch(false);

// confidence and knowledge, before and after
const kept = {};
function asked(when, ratings) {
  const form = byId('asked-' + when), missing = [];
  const numbers = name => [...form.querySelectorAll(`input[name^="${name}-can-"]`)].map(input => {
    const good = input.value !== '' && input.checkValidity();
    input.toggleAttribute('aria-invalid', false);
    if (!good) { input.setAttribute('aria-invalid', 'true'); missing.push(input); }
    return Number(input.value);
  });
  const rated = ratings.map(numbers);
  const known = D.right.map((_, nth) => {
    const picked = form.querySelector(`input[name="${when}-know-${nth}"]:checked`);
    if (!picked) missing.push(form.querySelector(`input[name="${when}-know-${nth}"]`));
    return picked ? Number(picked.value) : null;
  });
  return {rated, known, missing};
}
const mean = list => sum(list) / list.length;
const right = known => known.filter((answer, nth) => answer === D.right[nth]).length;

byId('keep').addEventListener('click', () => {
  const got = asked('before', ['before']);
  byId('kept').textContent = got.missing.length ? fill(W.lacking, got.missing.length) : W.kept;
  if (got.missing.length) got.missing[0].focus();
  else kept.before = {confidence: got.rated[0], knowledge: got.known};
});
byId('compare').addEventListener('click', () => {
  const into = byId('compared'), got = asked('after', ['after', 'then']);
  into.replaceChildren();
  if (got.missing.length) {
    text('p', fill(W.lacking, got.missing.length), into);
    got.missing[0].focus();
    return;
  }
  kept.after = {confidence: got.rated[0], then: got.rated[1], knowledge: got.known};
  for (const why of document.querySelectorAll('.why')) why.hidden = false;
  if (!kept.before) {
    text('p', W.noBefore, into);
    return;
  }
  const [before, after, then] = [kept.before.confidence, got.rated[0], got.rated[1]].map(mean);
  const plain = after - before, against = after - then, one = value => decimals(value, 0);
  text('p', fill(W.gain, one(before), one(after), one(plain)), into);
  text('p', fill(W.gainThen, one(against)), into);
  text('p', fill(W.gainClaim, one(Math.min(plain, against))), into);
  text('p', fill(W.known, right(kept.before.knowledge), right(got.known), D.right.length), into);
});
for (const form of document.querySelectorAll('.asked')) form.addEventListener('submit', event => event.preventDefault());

// certificate and papers: printed one at a time
for (const [from, to] of [['who', 'said-who'], ['where', 'said-where'], ['when', 'said-when']]) {
  byId(from).value = '';
  byId(from).addEventListener('input', () => { byId(to).textContent = byId(from).value; });
}
for (const button of document.querySelectorAll('.print')) {
  button.addEventListener('click', () => {
    const paper = byId(button.dataset.paper);
    document.body.classList.add('one-paper');
    paper.classList.add('printed');
    window.print();
    document.body.classList.remove('one-paper');
    paper.classList.remove('printed');
  });
}

// asked for, and only then: a file without a name in it
byId('save').addEventListener('click', () => {
  const told = {course: document.title, language: document.documentElement.lang, ...kept,
    practice: held.map(({round, table, answers}) => ({round, table, answers}))};
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([JSON.stringify(told, null, 1)], {type: 'application/json'}));
  link.download = 'course-answers.json';
  link.click();
  URL.revokeObjectURL(link.href);
  byId('saved').textContent = W.saved;
});
lights();
})();
