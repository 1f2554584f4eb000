/**
 * The urn of F. Eggenberger and G. Polya, "Ueber die Statistik verketteter Vorgaenge", Zeitschrift fuer angewandte Mathematik und Mechanik 3 (1923)
 * 279-289: start with share s of a kind, add a after each draw of it; after n draws its count has mean n s and variance n s (1 - s) (b + n) / (b + 1) with
 * b = 1 / a (the beta-binomial law; from memory). Copycat demand that never forgets is this urn.
 */
import { runLine } from '@twistwright/planner';
import { spreadOf, standardDeviation } from '@twistwright/units';
import { expect, test } from 'vitest';
import { gigWith, standardErrorsApart } from './textbook-queue.ts';

for (const [share, added, draws] of [
  [0.3, 0.2, 60],
  [0.5, 1, 25],
] as const)
  test(`share ${share}, ${added} added, ${draws} handed out`, () => {
    const base = gigWith(
      { servers: 1, service: { kind: 'fixed', minutes: 1 }, minutes: 200, warmUp: 0 },
      { kind: 'at start', guests: draws },
    );
    const [figure] = base.figures;
    if (figure === undefined) throw new Error('no figure');
    const samples = runLine(
      {
        ...base,
        figures: [
          { ...figure, share },
          { ...figure, share: 1 - share },
        ],
        copycat: { figures: { added, keeps: 1 } },
      },
      { seed: 9, runs: 4000 },
    );
    const first = Float64Array.from({ length: samples.runs }, (_, run) => samples.figures[2 * run] ?? 0);
    const b = 1 / added;
    const variance = (draws * share * (1 - share) * (b + draws)) / (b + 1);
    expect(standardErrorsApart(spreadOf(first), draws * share)).toBeLessThan(3);
    expect(Math.abs(standardDeviation(first) ** 2 / variance - 1)).toBeLessThan(0.08);
  });
