// A player of clips: stage, rhythm, time bar and transport. A page may have several; each finds
// its parts by the prefix of their ids, and one that plays stops the others.
const byId = id => document.getElementById(id);
const less = matchMedia('(prefers-reduced-motion: reduce)');
const SVG = 'http://www.w3.org/2000/svg';
const LABEL = 84, EDGE = 14; // pixels before and after the rhythm's bars
const HAND = 42; // millimetres: half a hand, as drawn
const players = [];

const make = (name, at = {}, into, text) => {
  const it = document.createElementNS(SVG, name);
  for (const key in at) it.setAttribute(key, at[key]);
  if (text !== undefined) it.textContent = text;
  if (into) into.append(it);
  return it;
};
const fill = (text, ...facts) => facts.reduce((said, fact, at) => said.replace('%' + (at + 1), fact), text);

function player(D, prefix = '') {
const own = id => byId(prefix + id);
const means = () => clip.means ?? 'feet', rolls = () => means() === 'wheels', walks = () => means() === 'walker';
const stage = own('stage'), rhythm = own('rhythm'), range = own('time'), root = stage.closest('.show');
// while something is to be found out, the words that tell it wait
const quiet = () => root.classList.contains('quiet');
let clip, t = 0, playing = false, last = 0, feet = {}, marks = [], head, order = [], voices = [];

function show(next) {
  clip = next;
  pause();
  t = 0;
  range.max = clip.end;
  drawStage();
  drawRhythm();
  own('says').textContent = quiet() ? '' : D.phrases[clip.says];
  const line = own('feet');
  line.replaceChildren();
  order = clip.events.map(event => {
    if (event[5] === 0) return null;
    if (line.childNodes.length) line.append(', ');
    const it = document.createElement('span');
    it.textContent = D.phrases[event[4]];
    line.append(it);
    return it;
  });
  const [seen, heard, legend] = D.words.by[means()];
  stage.setAttribute('aria-label', seen);
  rhythm.setAttribute('aria-label', heard);
  own('legend').textContent = legend;
  own('legend').hidden = !legend;
  own('flight').disabled = !clip.flights.length;
  own('flight').lastChild.textContent = rolls() ? D.words.glide : D.words.flight;
  render();
  tell();
}

const put = (x, y, turn, scale) => `translate(${x} ${y})rotate(${turn})scale(${scale})`;

// a foot in a group of its own; its halo parts it from paint and prints below
function foot(side, [x, y, turn], scale, into, kind) {
  const it = make('g', {class: `${kind} ${side}`, transform: put(x, y, turn, scale)}, into);
  const line = width => ({d: D.feet[side], 'vector-effect': 'non-scaling-stroke', 'stroke-width': width});
  if (kind !== 'shade') make('path', {class: 'halo', ...line(6)}, it);
  make('path', {class: kind === 'shade' ? 'flat' : 'sole', ...line(1.6)}, it);
  return it;
}

function drawStage() {
  const [x, y, w, h] = clip.box.map(Number), mm = clip.foot, scale = mm / 1000;
  const high = 10, under = 30;
  stage.replaceChildren();
  stage.classList.toggle('painted', clip.ground !== null);
  stage.setAttribute('viewBox', `${x} ${y - high} ${w} ${h + high + under}`);
  if (clip.ground !== null) {
    const paint = make('g', {class: 'paint', 'stroke-width': 4}, stage);
    paint.innerHTML = D.grounds[clip.ground];
  }
  const rule = make('g', {class: 'rule', 'stroke-width': 4}, stage);
  const y0 = y + h + under - 20, x0 = x + 20;
  make('path', {d: `M${x0} ${y0 - 12}V${y0 + 12}M${x0} ${y0}H${x0 + 1000}M${x0 + 1000} ${y0 - 12}V${y0 + 12}`, fill: 'none'}, rule);
  make('text', {x: x0 + 500, y: y0 - 12, 'font-size': Math.max(44, w * 0.016)}, rule, D.words.metre);
  const lines = make('g', {class: 'lines', 'stroke-width': 6}, stage);
  for (const [d, flies] of clip.lines) make('path', {d, class: flies ? 'fly' : 'step', 'stroke-dasharray': flies ? 'none' : '0 20'}, lines);
  marks = [];
  // where a frame is set is a print; where wheels stand is shown when nothing moves
  for (const [px, py, turn, lands, lifts] of clip.stands ?? []) {
    const it = carries({class: walks() ? 'print aid' : 'aid ghost', transform: put(px, py, turn, 1)}, stage);
    if (walks()) marks.push({it, base: 'print aid', lands, lifts: lifts ?? clip.end});
  }
  for (const d of clip.rolled ?? []) make('path', {d, class: 'rolled', 'stroke-width': 6}, stage);
  for (const [side, d, lands, lifts] of clip.pushes ?? []) {
    marks.push({it: make('path', {d, class: 'print pushed', 'stroke-width': 22}, stage), base: `print pushed ${side}`, lands, lifts});
  }
  for (const [side, px, py, turn, lands, lifts, stands] of clip.prints) {
    if (!stands && !rolls()) marks.push({it: foot(side, [px, py, turn], scale, stage, 'print'), base: `print ${side}`, lands, lifts: lifts ?? clip.end});
  }
  for (const [count, cx, cy, lands] of clip.rings) {
    const it = make('g', {class: 'count', 'stroke-width': 5}, stage);
    make('circle', {cx, cy, r: mm * 0.27}, it);
    make('text', {x: cx, y: cy + mm * 0.125, 'font-size': mm * 0.36}, it, count);
    marks.push({it, base: 'count', lands, count, ring: true});
  }
  const now = make('g', {id: prefix + 'feet-now', class: 'feet-now'}, stage);
  feet = {};
  if (clip.means) feet.A = {it: carries({class: 'aid'}, now), scale: 1};
  if (rolls()) {
    for (const side of ['R', 'L']) {
      feet[side] = {it: make('g', {class: `hand ${side}`}, now), scale: 1};
      make('circle', {class: 'halo', r: HAND, 'stroke-width': 24}, feet[side].it);
      make('circle', {class: 'sole', r: HAND, 'stroke-width': 10}, feet[side].it);
    }
    return;
  }
  for (const side of ['R', 'L']) feet[side] = {shade: foot(side, [0, 0, 0], scale, now, 'shade'), scale};
  for (const side of ['R', 'L']) feet[side].it = foot(side, [0, 0, 0], scale, now, 'foot');
}

// the chair or the frame, from above
function carries(at, into) {
  const it = make('g', at, into);
  it.innerHTML = D.shapes[means()];
  return it;
}

// a page that is not laid out yet has no width: it is drawn again when it has
const wide = () => Math.max(LABEL + EDGE + 80, rhythm.getBoundingClientRect().width);
const along = time => LABEL + (wide() - LABEL - EDGE) * time / clip.end;

function drawRhythm() {
  // a walker's frame has a row of its own above the feet
  const more = walks() ? 28 : 0, row = {A: 34, L: 34 + more, R: 62 + more}, tall = 20, base = 88 + more, high = 106 + more;
  rhythm.replaceChildren();
  rhythm.setAttribute('viewBox', `0 0 ${wide()} ${high}`);
  rhythm.style.height = `${high}px`;
  const defs = make('defs', {}, rhythm);
  const slant = make('pattern', {id: prefix + 'slant', width: 7, height: 7, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(35)'}, defs);
  make('path', {d: 'M0 0V7', class: 'slant'}, slant);
  for (const side of ['L', 'R']) make('text', {x: 0, y: row[side] + 16}, rhythm, side === 'L' ? D.words.left : D.words.right);
  if (more) {
    make('text', {x: 0, y: row.A + 16}, rhythm, D.words.frame);
    for (const [, , , lands, lifts] of clip.stands) {
      make('rect', {class: 'bar L', x: along(lands), y: row.A, width: along(lifts ?? clip.end) - along(lands), height: tall, rx: 4}, rhythm);
    }
  }
  for (const [from, to] of clip.flights) {
    make('rect', {class: 'gap', fill: `url(#${prefix}slant)`, x: along(from), y: 28, width: along(to) - along(from), height: base - 28}, rhythm);
  }
  for (const [side, , , , lands, lifts, stands] of clip.prints) {
    // hands that only hold the wheels still push nothing
    if (stands === 2) make('path', {class: 'hold', d: `M${along(lands)} ${row[side] + tall / 2}H${along(lifts ?? clip.end)}`}, rhythm);
    else make('rect', {class: `bar ${side}`, x: along(lands), y: row[side], width: along(lifts ?? clip.end) - along(lands), height: tall, rx: 4}, rhythm);
  }
  for (let second = 0; second * 1000 <= clip.end; second++) {
    make('path', {class: 'tick', d: `M${along(second * 1000)} ${base}v6`}, rhythm);
    make('text', {class: 'axis', x: along(second * 1000), y: high - 1}, rhythm, second ? second : fill(D.words.seconds, 0));
  }
  const numbered = (count, lands) => {
    const it = make('g', {class: 'count'}, rhythm);
    make('circle', {cx: along(lands), cy: 13, r: 11, 'stroke-width': 1.5}, it);
    make('text', {x: along(lands), y: 18}, it, count);
  };
  let before = -1;
  for (const [lands, , , count, , kind] of clip.means ? [] : clip.events) {
    if (kind === 2 && count && count !== before) {
      numbered(count, lands);
      before = count;
    } else if (kind === 1) {
      make('path', {class: 'beat', d: `M${along(lands)} 8v10`}, rhythm);
    }
  }
  // with wheels or a walker the number stands where the mark is reached
  if (clip.means) for (const [count, , , lands] of clip.rings) numbered(count, lands);
  head = make('path', {class: 'head', d: `M0 24V${base + 6}`}, rhythm);
  range.style.marginLeft = `${LABEL - 12}px`;
  range.style.width = `${wide() - LABEL - EDGE + 24}px`;
}

// a foot at a time, between two keys
function pose(side, time) {
  const keys = clip[side];
  let low = 0, high = keys.length - 1;
  while (high - low > 1) {
    const mid = (low + high) >> 1;
    if (keys[mid][0] <= time) low = mid; else high = mid;
  }
  const a = keys[low], b = keys[high], share = b[0] > a[0] ? Math.min(1, Math.max(0, (time - a[0]) / (b[0] - a[0]))) : 0;
  return [1, 2, 3, 4].map(at => a[at] + (b[at] - a[at]) * share);
}

const isDown = (side, time) => clip.prints.some(print => print[0] === side && print[4] <= time && time < (print[5] ?? Infinity));
const word = time => {
  if (clip.moments) return clip.moments.reduce((found, one) => one[0] <= time + 0.5 ? one : found)[1];
  const right = isDown('R', time), left = isDown('L', time);
  return right ? (left ? 'B' : 'R') : (left ? 'L' : 'air');
};
const event = time => clip.events.reduce((found, one) => one[0] <= time + 0.5 ? one : found, null);

function render() {
  const time = less.matches ? (event(t)?.[0] ?? 0) : t;
  for (const side in feet) {
    const [x, y, turn, height] = pose(side, t), {it, shade, scale} = feet[side];
    it.setAttribute('transform', put(x, y - height, turn, scale));
    if (!shade) continue;
    shade.setAttribute('transform', put(x, y, turn, scale));
    shade.style.display = height > 0.5 ? '' : 'none';
  }
  const current = event(time);
  for (const mark of marks) {
    const past = mark.lands <= time, now = past && (mark.ring ? current?.[3] === mark.count : time < mark.lifts);
    mark.it.setAttribute('class', mark.base + (now ? ' now' : past ? ' past' : ''));
  }
  const down = word(t), drawn = means() + down;
  own('moment').textContent = D.moments[down];
  const sign = own('sign');
  if (sign.dataset.down !== drawn) {
    sign.dataset.down = drawn;
    sign.replaceChildren();
    for (const [side, x] of [['L', -22], ['R', 22]]) {
      if (rolls()) {
        const on = down === 'push-B' || down === 'push-' + side, at = on ? -12 : down === 'still' ? 0 : 16;
        make('rect', {class: 'wheel', x: x - 4, y: -38, width: 8, height: 76, rx: 4}, sign);
        make('circle', {class: `palm ${side}${on ? ' on' : ''}`, cx: on ? x : x + (side === 'L' ? -14 : 14), cy: at, r: 11}, sign);
        continue;
      }
      const up = down !== 'B' && down !== side && down !== 'frame';
      foot(side, [x, walks() ? 12 : 0, -90], walks() ? 0.055 : 0.078, sign, up ? 'up' : 'foot');
    }
    if (walks()) make('path', {class: `arch${down === 'frame' ? ' moves' : ''}`, d: 'M-44 36V-14Q-44-36-22-36H22Q44-36 44-14V36'}, sign);
  }
  head.setAttribute('transform', `translate(${along(time)} 0)`);
  range.value = t;
  range.setAttribute('aria-valuetext', `${seconds(t)}, ${D.moments[down]}`);
  const at = current ? clip.events.indexOf(current) : -1;
  order.forEach((it, nth) => it && it.classList.toggle('now', nth === at));
}

const seconds = time => fill(D.words.seconds, (time / 1000).toFixed(2).replace('.', D.words.mark));
const spoken = () => [...own('feet').childNodes].map(node => node.textContent).join('');

// where and for how long the feet stay that land at a time: for who marks a clip by its words
function places(lands) {
  if (!quiet() || !D.words.spots) return '';
  const second = time => (time / 1000).toFixed(2).replace('.', D.words.mark), cm = mm => Math.round(mm / 10);
  return clip.prints.filter(print => print[4] === lands).map(([side, x, y, turn, from, to]) =>
    ' ' + fill(D.words.spots[side][y > 0 ? 1 : 0], second(from), second(to ?? clip.end), cm(x), cm(Math.abs(y)), Math.abs(turn))).join('');
}

// said aloud when a person steps, not while feet run
function tell() {
  const current = event(t), most = Math.max(0, ...clip.events.map(one => one[3]));
  const down = D.moments[word(t)];
  let text;
  if (playing) text = fill(D.words.playing, spoken());
  else if (!current) text = `${quiet() ? '' : D.phrases[clip.says] + ' '}${rolls() ? D.words.startStill : D.words.start}. ${spoken()}.`;
  else if (word(t) === 'air') text = `${down}.`;
  else text = `${fill(clip.means ? D.words.ofMark : D.words.of, current[3], most, D.phrases[current[2]])}. ${down}.${places(current[0])}`;
  own('status').textContent = text;
}

function go(time) {
  pause();
  t = Math.max(0, Math.min(clip.end, time));
  render();
  tell();
}
const stops = () => [0, ...clip.events.map(one => one[0])];
const on = () => go(stops().find(time => time > t + 0.5) ?? clip.end);
const back = () => go(stops().reverse().find(time => time < t - 0.5) ?? 0);
function flight() {
  const mids = clip.flights.map(([from, to]) => (from + to) / 2);
  if (mids.length) go(mids.find(time => time > t + 0.5) ?? mids[0]);
}

// sound: a beat a landing, low for the right foot, high for the left, softer for a closing foot;
// a push sounds as both feet do, a frame lowest; a glide is silent
let ear = null;
const TONE = {R: 196, L: 294, B: 147, air: 110};
function hush() {
  for (const voice of voices) voice.stop();
  voices = [];
}
function voice() {
  hush();
  if (!playing || !own('sound').checked) return;
  ear ??= new AudioContext();
  ear.resume();
  const pace = rate(), now = ear.currentTime;
  for (const [lands, down, , , , kind] of clip.events) {
    if (lands < t || kind === 0 || kind === 3) continue;
    const at = now + (lands - t) / pace / 1000;
    const tone = ear.createOscillator(), loud = ear.createGain();
    tone.type = 'triangle';
    tone.frequency.value = TONE[down];
    loud.gain.setValueAtTime(0, at);
    loud.gain.linearRampToValueAtTime(kind === 1 ? 0.3 : 0.7, at + 0.006);
    loud.gain.exponentialRampToValueAtTime(0.001, at + 0.16);
    tone.connect(loud).connect(ear.destination);
    tone.start(at);
    tone.stop(at + 0.18);
    voices.push(tone);
  }
}

const rate = () => own('half').checked ? 0.5 : 1;
function play() {
  for (const other of players) if (other !== self) other.pause();
  if (t >= clip.end) t = 0;
  playing = true;
  last = performance.now();
  root.classList.add('playing');
  own('play').lastChild.textContent = D.words.pause;
  tell();
  voice();
  requestAnimationFrame(frame);
}
function pause() {
  playing = false;
  hush();
  root.classList.remove('playing');
  own('play').lastChild.textContent = D.words.play;
}
function frame(now) {
  if (!playing) return;
  t += Math.max(0, now - last) * rate();
  last = now;
  if (t >= clip.end) {
    t = 0;
    voice();
  }
  render();
  requestAnimationFrame(frame);
}
const toggle = () => { if (playing) { pause(); tell(); } else play(); };

own('play').addEventListener('click', toggle);
own('back').addEventListener('click', back);
own('on').addEventListener('click', on);
own('flight').addEventListener('click', flight);
own('half').addEventListener('change', voice);
own('sound').addEventListener('change', voice);
range.addEventListener('input', () => go(Number(range.value)));
range.addEventListener('keydown', event => {
  const act = {ArrowRight: on, ArrowUp: on, ArrowLeft: back, ArrowDown: back, Home: () => go(0), End: () => go(clip.end),
    ' ': toggle, f: flight, F: flight}[event.key];
  if (!act || event.ctrlKey || event.altKey || event.metaKey) return;
  event.preventDefault();
  act();
});
rhythm.addEventListener('click', event => {
  const left = event.clientX - rhythm.getBoundingClientRect().left;
  go((left - LABEL) / (wide() - LABEL - EDGE) * clip.end);
});
document.addEventListener('visibilitychange', () => { if (document.hidden) pause(); });
new ResizeObserver(() => { if (clip) { drawRhythm(); render(); } }).observe(rhythm);

const self = {show, pause, again: () => { if (clip) go(t); }, reveal: () => { if (clip) show(clip); }};
players.push(self);
return self;
}

// light or dark, and less motion, for the whole page
function lights() {
  const dark = byId('dark'), wants = matchMedia('(prefers-color-scheme: dark)');
  dark.checked = wants.matches;
  const tint = () => {
    document.documentElement.classList.toggle('dark', dark.checked);
    document.documentElement.classList.toggle('light', !dark.checked);
  };
  dark.addEventListener('change', tint);
  wants.addEventListener('change', () => { dark.checked = wants.matches; tint(); });
  const calm = () => document.body.classList.toggle('still', less.matches);
  less.addEventListener('change', () => { calm(); for (const one of players) one.again(); });
  calm();
}
