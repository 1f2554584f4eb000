import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Fit, fitOf, pictureOf, readRecipe, relax, shippedFigures } from '@twistwright/repertoire';
import type { Measured } from '../measure.ts';
import { laidRings, ringsOf } from './rings.ts';

interface Rings {
  readonly rings: number;
  readonly around: number;
}

const sweeps = 200;
/** Times are processor time, the fastest of many runs on both sides: other work on the machine only ever adds. 60 capsules, and 444 in the same disorder at the same density. */
const small = { rings: 3, around: 12 } as const;
const large = { rings: 19, around: 12 } as const;

function oursMilliseconds({ rings, around }: Rings, runs: number, make = ringsOf): number {
  const taken: number[] = [];
  for (let run = 0; run < runs; run++) {
    const body = make(rings, around, (run % 5) + 1);
    const before = process.cpuUsage();
    relax(body, { sweeps });
    const { user, system } = process.cpuUsage(before);
    taken.push((user + system) / 1000);
  }
  return Math.min(...taken);
}

interface Times {
  readonly small: number;
  readonly large: number;
}

/** Runs both by turns, so that other work on the machine falls on both; `reference` is missing where there is no C++ compiler. */
function byTurns(): { readonly ours: Times; readonly reference?: Times } {
  const folder = mkdtempSync(join(tmpdir(), 'rings-'));
  const program = join(folder, 'rings');
  const reference = ({ rings, around }: Rings, runs: number): number => {
    const said = execFileSync(program, [String(rings), String(around), String(sweeps), String(runs), 'list'], { encoding: 'utf8' });
    return Number(/min ([\d.]+)\)/u.exec(said)?.[1]);
  };
  try {
    const compiled = compiles(program);
    const turns = Array.from({ length: 4 }, () => ({
      ours: { small: oursMilliseconds(small, 40), large: oursMilliseconds(large, 3) },
      ...(compiled ? { reference: { small: reference(small, 40), large: reference(large, 3) } } : {}),
    }));
    const fastest = (times: readonly Times[]): Times => ({
      small: Math.min(...times.map((one) => one.small)),
      large: Math.min(...times.map((one) => one.large)),
    });
    const theirs = turns.flatMap((turn) => (turn.reference === undefined ? [] : [turn.reference]));
    return { ours: fastest(turns.map((turn) => turn.ours)), ...(theirs.length === 0 ? {} : { reference: fastest(theirs) }) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function compiles(program: string): boolean {
  try {
    execFileSync('g++', ['-O2', '-o', program, join(import.meta.dirname, 'reference', 'rings.cpp')], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

/** 444 laid out capsules as a multiple of 60, both by turns. */
function growth(): number {
  const turns = Array.from({ length: 4 }, () => ({
    many: oursMilliseconds(large, 10, laidRings),
    few: oursMilliseconds(small, 60, laidRings),
  }));
  return Math.min(...turns.map(({ many }) => many)) / Math.min(...turns.map(({ few }) => few));
}

/** Lengths and contacts after `sweeps`, from the start that the reference measures. */
function fitOfSmall(): Fit {
  const body = ringsOf(small.rings, small.around, 1);
  relax(body, { sweeps });
  return fitOf(body);
}

/**
 * The shape solver against the C++ reference in one run, its growth with the number of capsules, and all shipped figures as flat
 * pictures from their text.
 */
export async function benchShape(): Promise<readonly Measured[]> {
  const { ours: times, reference } = byTurns();
  const { small: ours, large: many } = times;
  const multiple = growth();
  const { lengthError, penetration = Number.NaN } = fitOfSmall();
  const before = process.cpuUsage();
  let bytes = 0;
  for (const figure of shippedFigures) {
    const recipe = readRecipe(figure.recipe);
    if (recipe.ok) bytes += pictureOf(recipe.value, figure.colourways[0]?.fill ?? {}).length;
  }
  const { user, system } = process.cpuUsage(before);
  const pictures = (user + system) / 1e6;
  const share = (value: number, by: number): number => Number((value / by).toFixed(2));
  return [
    { what: '60 capsules, 200 sweeps', value: Number(ours.toFixed(2)), unit: 'ms', goal: 'at most 10', met: ours <= 10 },
    ...(reference === undefined
      ? []
      : [
          {
            what: '60 capsules against C++ -O2',
            value: share(ours, reference.small),
            unit: 'times',
            goal: 'at most 1.3',
            met: ours <= 1.3 * reference.small,
          },
          {
            what: '444 tangled capsules against C++ -O2',
            value: share(many, reference.large),
            unit: 'times',
            goal: 'at most 1.3',
            met: many <= 1.3 * reference.large,
          },
        ]),
    {
      what: '60 capsules: length error',
      value: Number((100 * lengthError).toFixed(4)),
      unit: '%',
      goal: 'at most 0.5',
      met: lengthError <= 0.005,
    },
    {
      what: '60 capsules: deepest contact, share of a radius',
      value: Number((100 * penetration).toFixed(4)),
      unit: '%',
      goal: 'at most 2',
      met: penetration <= 0.02,
    },
    { what: '444 tangled capsules as a multiple of 60 (C++ grows alike)', value: share(many, ours), unit: 'times' },
    {
      what: '444 laid out capsules as a multiple of 60',
      value: share(multiple, 1),
      unit: 'times',
      goal: 'at most 10',
      met: multiple <= 10,
    },
    {
      what: `${shippedFigures.length} figures as flat pictures`,
      value: Number(pictures.toFixed(2)),
      unit: 's',
      goal: 'at most 3',
      met: pictures <= 3,
    },
    {
      what: 'mean size of a picture',
      value: Number((bytes / shippedFigures.length / 1000).toFixed(1)),
      unit: 'kB',
      goal: 'at most 40',
      met: bytes / shippedFigures.length <= 40_000,
    },
  ];
}
