// Agreement of yes/no marks, as the room `course` reckons it (agreement.rs, ready.rs): the page's
// tests hold both against each other. A table is [both yes, only first, only second, neither].
const Z95 = 1.959963984540054, NOUGHT = 1e-12;
const sum = list => list.reduce((a, b) => a + b, 0);

const wilson = (met, of) => {
  if (of <= 0) return [0, 1];
  const share = met / of, z2 = Z95 * Z95;
  const middle = (share + z2 / (2 * of)) / (1 + z2 / of);
  const half = Z95 * Math.sqrt(share * (1 - share) / of + z2 / (4 * of * of)) / (1 + z2 / of);
  return [Math.max(0, middle - half), Math.min(1, middle + half)];
};

const estimate = (value, variance, seen, chance, pairs) => {
  const se = variance > NOUGHT ? Math.sqrt(variance) : 0;
  const ends = se > 0 ? [value - Z95 * se, value + Z95 * se]
    : wilson(seen * pairs, pairs).map(end => (end - chance) / (1 - chance));
  return [value, se, Math.max(-1, Math.min(value, ends[0])), Math.min(1, Math.max(value, ends[1]))];
};

const agreementOf = ([both, first, second, neither]) => {
  const pairs = both + first + second + neither;
  if (!pairs) return null;
  const value = (both + neither) / pairs;
  return [value, Math.sqrt(value * (1 - value) / pairs), ...wilson(both + neither, pairs)];
};

const kappaOf = table => {
  const pairs = sum(table);
  if (!pairs) return null;
  const [a, b, c, d] = table.map(n => n / pairs);
  const p = [[a, b], [c, d]], rows = [a + b, c + d], columns = [a + c, b + d];
  const seen = a + d, chance = rows[0] * columns[0] + rows[1] * columns[1], room = 1 - chance, miss = 1 - seen;
  if (room <= NOUGHT) return null;
  let all = 0;
  for (const i of [0, 1]) for (const j of [0, 1]) {
    const term = i === j ? room - (columns[i] + rows[i]) * miss : miss * (columns[i] + rows[j]);
    all += p[i][j] * term * term;
  }
  const last = seen * chance - 2 * chance + seen;
  return estimate((seen - chance) / room, (all - last * last) / (pairs * room ** 4), seen, chance, pairs);
};

const ac1Of = table => {
  const pairs = sum(table);
  if (!pairs) return null;
  const [a, b, c, d] = table.map(n => n / pairs);
  const p = [[a, b], [c, d]], mean = [a + (b + c) / 2, d + (b + c) / 2];
  const seen = a + d, chance = sum(mean.map(m => m * (1 - m))), room = 1 - chance, value = (seen - chance) / room, left = 1 - value;
  const own = a * (1 - mean[0]) + d * (1 - mean[1]);
  let cross = 0;
  for (const k of [0, 1]) for (const l of [0, 1]) cross += p[k][l] * (1 - (mean[k] + mean[l]) / 2) ** 2;
  const variance = (seen * (1 - seen) - 4 * left * (own - seen * chance) + 4 * left * left * (cross - chance * chance)) / (pairs * room * room);
  return estimate(value, variance, seen, chance, pairs);
};

// pairs of marks more that would tell kappa to within `half`; what so few could hide counts as .9
const morePairs = (table, half) => {
  const kappa = kappaOf(table);
  if (!kappa) return 0;
  const pairs = sum(table), likely = Math.min(kappa[0], 0.9), yes = (2 * table[0] + table[1] + table[2]) / (2 * pairs), no = 1 - yes;
  if (!(yes > 0 && yes < 1)) return 0;
  const apart = yes * no * (1 - likely), shares = [yes * yes + likely * yes * no, apart, apart, no * no + likely * yes * no];
  if (shares.some(share => share < 0)) return 0;
  const wide = Z95 * kappaOf(shares)[1] / half;
  return Math.max(0, Math.ceil(wide * wide - 1e-9) - pairs);
};

const passes = (table, rule) => {
  const agree = agreementOf(table), kappa = kappaOf(table);
  return agree !== null && kappa !== null && agree[0] >= rule.agreement && kappa[0] >= rule.kappa;
};

// rounds in the order in which they were held: whether the last ones in a row are good enough
const readyOf = (rounds, rule) => {
  let run = 0;
  while (run < rounds.length && passes(rounds[rounds.length - 1 - run], rule)) run += 1;
  const last = rounds.slice(-rule.inRow).reduce((all, one) => all.map((n, at) => n + one[at]), [0, 0, 0, 0]);
  return {ready: run >= rule.inRow, lacking: Math.max(0, rule.inRow - run), last, more: morePairs(last, rule.half)};
};
