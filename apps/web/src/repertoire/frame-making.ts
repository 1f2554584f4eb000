import { type FramePlan, planFrame, readFrame, readyFrame, recipeOfFrame, writeRecipe } from '@twistwright/repertoire';
import { counted, sentence } from '../words/counted.ts';

/** What is wanted of a frame, as it stands in the fields. */
export interface FrameWish {
  /** A ready-made frame, or `text` where there is none. */
  readonly ready: string | undefined;
  readonly edgeInches: number;
  readonly text: string;
  /** Inches that one balloon gives; left out, as long as needed. */
  readonly balloonInches?: number;
  readonly pops: boolean;
}

export interface MadeFrame {
  readonly sentence: string;
  readonly recipe?: string;
  /** Whether a longer look could find fewer balloons. */
  readonly mayImprove: boolean;
}

/** Edges that are planned while somebody waits; more are for the command line. */
const mostEdges = 400;

/** The frame of a wish as a recipe, and what there is to say about it. `quick` leaves out the complete search. */
export function makeFrame({ ready, edgeInches, text, balloonInches, pops }: FrameWish, quick: boolean): MadeFrame {
  const frame = ready === undefined ? readFrame(text) : readyFrame(ready, edgeInches);
  if (!frame.ok) return refused(problemWords(frame.error[0]));
  const edges = frame.value.edges.length;
  if (edges > mostEdges) return refused(`It has ${edges} edges; here it may have ${mostEdges}. The command line takes more.`);
  const plan = planFrame(frame.value, {
    quick,
    ...(balloonInches === undefined ? {} : { balloonInches }),
    ...(pops ? { pops: {} } : {}),
  });
  if (!plan.ok) return refused(problemWords(plan.error[0]));
  const recipe = recipeOfFrame(frame.value, plan.value);
  if (!recipe.ok) return refused(problemWords(recipe.error[0]));
  const mayImprove = quick && !plan.value.proven;
  return { sentence: answerWords(edges, plan.value, mayImprove), recipe: writeRecipe(recipe.value), mayImprove };
}

const refused = (words: string): MadeFrame => ({ sentence: words, mayImprove: false });

function answerWords(edges: number, { trails, proven, leastBalloons, poppedInches, totalInches }: FramePlan, looking: boolean): string {
  const unproven = `no order takes fewer than ${leastBalloons}${looking ? '; looking for fewer' : ''}`;
  const known = proven ? 'fewer are not possible' : unproven;
  const popped = poppedInches === 0 ? '' : ` ${inches(poppedInches)} of ${inches(totalInches)} inches are popped.`;
  return `${sentence(counted(edges, 'edge'))}, ${counted(trails.length, 'balloon')}; ${known}.${popped}`;
}

const inches = (value: number): string => `${Number(value.toFixed(1))}`;

const problemWords = (problem: { readonly sentence: string; readonly todo?: string; readonly line?: number } | undefined): string =>
  problem === undefined
    ? ''
    : `${problem.line === undefined ? '' : `Line ${problem.line}: `}${problem.sentence} ${problem.todo ?? ''}`.trim();
