import { type Frame, type FramePlan, type FrameWishes, planFrame, readyFrame, verifyTrails } from '@twistwright/repertoire';
import { type Measured, median, millisecondsOf } from '../measure.ts';
import { grid, type HardFrame, hardFrames } from './hard-frames.ts';

/** Frames: a million edges, the hard ones with balloons of limited length, and shortest pops. Every answer is verified before it counts. */
export async function benchFrames(): Promise<readonly Measured[]> {
  const hard = hardFrames();
  const rows = [await millionEdges(), met(hard)];
  rows.push(await slowest(hard, (edges) => edges <= 60, 'up to 60 edges', 50));
  rows.push(await slowest(hard, (edges) => edges > 60, 'up to 300 edges', 300));
  rows.push(await pops());
  return rows;
}

async function millionEdges(): Promise<Measured> {
  const frame = grid(708, 708);
  planned(frame, {});
  const value = median(await cpuMillisecondsOf(5, () => planFrame(frame)));
  return {
    what: `${frame.edges.length.toLocaleString('en')} edges, any length`,
    value,
    unit: 'ms CPU',
    goal: 'at most 1000',
    met: value <= 1000,
  };
}

function met(hard: readonly HardFrame[]): Measured {
  const value = hard.filter(({ frame, balloonInches }) => planned(frame, { balloonInches }).proven).length;
  return { what: `hard frames of ${hard.length} proven fewest`, value, unit: 'frames', goal: 'at least 12', met: value >= 12 };
}

async function slowest(hard: readonly HardFrame[], takes: (edges: number) => boolean, what: string, goal: number): Promise<Measured> {
  let value = 0;
  for (const { frame, balloonInches } of hard.filter((each) => takes(each.frame.edges.length))) {
    value = Math.max(value, median(await millisecondsOf(5, () => planFrame(frame, { balloonInches }))));
  }
  return { what: `slowest hard frame ${what}`, value, unit: 'ms', goal: `at most ${goal}`, met: value <= goal };
}

async function pops(): Promise<Measured> {
  const frame = readyFrame('truncated icosidodecahedron', 1);
  if (!frame.ok) throw new Error(frame.error[0]?.sentence);
  const plan = planned(frame.value, { pops: { closed: true } });
  if (Math.round(plan.totalInches) !== 240) throw new Error(`${plan.totalInches} inches instead of 240`);
  const value = median(await millisecondsOf(5, () => planFrame(frame.value, { pops: { closed: true } })));
  return { what: 'shortest closed tour with pops, 180 edges, 120 odd joints', value, unit: 'ms' };
}

function planned(frame: Frame, wishes: FrameWishes): FramePlan {
  const plan = planFrame(frame, wishes);
  if (!plan.ok) throw new Error(plan.error[0]?.sentence);
  const wrong = verifyTrails(frame, plan.value.trails, wishes.balloonInches)[0];
  if (wrong !== undefined) throw new Error(wrong.sentence);
  return plan.value;
}

/** Processor time, which does not count what else the machine does; garbage collection in other threads is in it. */
async function cpuMillisecondsOf(times: number, work: () => unknown): Promise<readonly number[]> {
  return Array.from({ length: times }, () => {
    const before = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  });
}
