import { frameAnswer } from '@twistwright/contract';
import { type Frame, type FrameWishes, planFrame, readFrame, readFrameJson, readyFrame, verifyTrails } from '@twistwright/repertoire';
import type { Result } from '@twistwright/units';
import { doneAsJson, refused } from './outcome.ts';

/** A frame as it is given: the text of a file, its JSON, or a ready-made one by name. */
export type GivenFrame = { readonly text: string } | { readonly json: unknown } | { readonly solid: string; readonly edgeInches: number };

interface FrameOrder {
  readonly frame: GivenFrame;
  readonly wishes: FrameWishes;
  readonly size?: string;
}

export function frame({ frame: given, wishes, size }: FrameOrder) {
  const read = frameOf(given);
  if (!read.ok) return refused(422, 'The frame cannot be read.', read.error);
  const plan = planFrame(read.value, wishes);
  if (!plan.ok) return refused(422, 'The frame cannot be planned.', plan.error);
  const broken = verifyTrails(read.value, plan.value.trails, wishes.balloonInches);
  if (broken.length > 0) throw new Error(`twisting orders that do not hold: ${broken[0]?.sentence}`);
  return doneAsJson(frameAnswer(read.value, plan.value, size));
}

function frameOf(given: GivenFrame): Result<Frame> {
  if ('text' in given) return readFrame(given.text);
  return 'solid' in given ? readyFrame(given.solid, given.edgeInches) : readFrameJson(given.json);
}
