import { readFileSync } from 'node:fs';
import { type CoverProblem, coverageOf, coverProblemOf, findKit, kitCurve, solveCover } from '@twistwright/planner';
import { inventedKit } from '@twistwright/planner/testing';
import { Chance, money } from '@twistwright/units';
import { type Measured, median } from '../measure.ts';

/** Median of CPU milliseconds over `runs` calls, the first one (cold) left out: other work on the machine counts little. */
function medianMs(runs: number, work: () => void): number {
  work();
  const times = Array.from({ length: runs }, () => {
    const before = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  });
  return median(times);
}

function coverageCase(name: string): { readonly problem: CoverProblem; readonly best: number } {
  const json = JSON.parse(readFileSync(new URL(`../../cases/coverage/${name}.json`, import.meta.url), 'utf8'));
  const coverage = coverageOf(json);
  if (!coverage.ok) throw new Error(coverage.error.map((one) => one.sentence).join(' '));
  return { problem: coverProblemOf(coverage.value), best: json.expects.value };
}

/** A coverage problem of the same make as the recorded ones: a long tail of values, one to four bag sets of one to four bags, skewed to some bags. */
export function longTail(figures: number, bags: number, seed: number): CoverProblem {
  const chance = new Chance(seed);
  const popular = (): number => Math.floor(bags * chance.uniform() * chance.uniform());
  const costs = Array.from({ length: bags }, () => 350 + (chance.next() % 1150));
  const goals = Array.from({ length: figures }, (_, f) => ({
    value: Math.max(1, Math.round(1000 / (f + 1) ** 0.8)),
    alternatives: Array.from({ length: 1 + (chance.next() % 4) }, () => Array.from({ length: 1 + (chance.next() % 4) }, () => [popular()])),
  }));
  return { costs, goals, budget: Math.round(0.22 * costs.reduce((sum, cost) => sum + cost, 0)) };
}

/** The figures of PERFORMANCE "Coverage" and of the First kit page. */
export async function benchKit(): Promise<readonly Measured[]> {
  const measured: Measured[] = [];
  for (const name of ['40x25', '150x80', '400x200']) {
    const { problem, best } = coverageCase(name);
    let proven = true;
    const ms = medianMs(5, () => {
      const answer = solveCover(problem);
      proven &&= answer.proven && answer.value === best;
    });
    measured.push({ what: `coverage ${name}: proven optimum`, value: ms, unit: 'ms', goal: 'at most 500 ms', met: proven && ms <= 500 });
    const seeds = [1, 2, 3, 4, 5, 6, 7, 8].map((seed) => medianMs(1, () => solveCover(problem, { seed })));
    measured.push({ what: `coverage ${name}: proven optimum, slowest of eight seeds`, value: Math.max(...seeds), unit: 'ms' });
    let share = 0;
    const soon = medianMs(5, () => {
      share = (100 * solveCover(problem, { nodes: 0, rounds: 150 }).value) / best;
    });
    measured.push({
      what: `coverage ${name}: first answer`,
      value: share,
      unit: '% of the optimum',
      goal: 'at least 99 %',
      met: share >= 99,
    });
    measured.push({
      what: `coverage ${name}: time to the first answer`,
      value: soon,
      unit: 'ms',
      goal: 'at most 100 ms',
      met: soon <= 100,
    });
  }
  const large = longTail(1000, 400, 1);
  const start = performance.now();
  const answer = solveCover(large, { now: () => performance.now(), milliseconds: 4500 });
  const seconds = (performance.now() - start) / 1000;
  measured.push({
    what: 'coverage 1000x400: time, with a limit of 4.5 s',
    value: seconds,
    unit: 's',
    goal: 'at most 5 s',
    met: seconds <= 5,
  });
  measured.push({ what: 'coverage 1000x400: proven within', value: (100 * (answer.bound - answer.value)) / answer.value, unit: '%' });
  for (const budget of [8000, 15_000]) {
    const problem = inventedKit(40, 80, 1, { budget: money(budget) });
    const soon = medianMs(7, () => void findKit(problem, { effort: 'soon' }));
    measured.push({
      what: `first kit 40 figures x 80 offers, budget ${budget / 100}: slider`,
      value: soon,
      unit: 'ms',
      goal: 'at most 100 ms',
      met: soon <= 100,
    });
    const full = medianMs(3, () => void findKit(problem));
    measured.push({ what: `first kit 40 figures x 80 offers, budget ${budget / 100}: full`, value: full, unit: 'ms' });
    const found = findKit(problem);
    if (found.ok)
      measured.push({
        what: `first kit 40 figures x 80 offers, budget ${budget / 100}: within`,
        value: (100 * (found.value.answer.bound - found.value.answer.value)) / found.value.model.requests,
        unit: '% of the requests',
      });
  }
  const curve = medianMs(3, () => void kitCurve(inventedKit(40, 80), 20));
  measured.push({
    what: 'first kit 40 figures x 80 offers: curve of 20 budgets',
    value: curve,
    unit: 'ms',
    goal: 'at most 2000 ms',
    met: curve <= 2000,
  });
  return measured;
}
