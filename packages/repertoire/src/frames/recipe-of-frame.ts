import { fail, ok, type Problem, type Result } from '@twistwright/units';
import { limits } from '../notation/limits.ts';
import { unfold } from '../notation/unfold.ts';
import type { Direction, Move, Piece, Recipe } from '../recipe.ts';
import { type Frame, frameProblem } from './frame.ts';
import { dot, minus, type Place, size } from './place.ts';
import type { FramePlan } from './plan-frame.ts';
import type { Trail } from './trail.ts';

/** What the recipe of a frame is made from. */
export interface FrameMaking {
  /** Size code of the balloons; left out, `260`. */
  readonly size?: string;
  /** Colour role of balloons whose colour does not matter; left out, `frame`. */
  readonly role?: string;
}

/**
 * The twisting orders of a frame as an ordinary recipe: one piece for each balloon, one bubble for each edge, joints marked where they are
 * first made and locked or joined when they come again, popped stretches popped once both ends are held. Joints with places steer the picture.
 * Problems: those of the recipe (size code, bubbles and balloons beyond its limits), `frame.recipe-too-large`.
 * @example recipeOfFrame({ joints: [{ name: 'A' }], edges: [{ from: 'A', to: 'A', lengthInches: 5 }] }, { trails: [{ joints: [0, 0], edges: [0] }], colours: ['red'] }).value.pieces[0].role // -> 'red'
 */
export function recipeOfFrame(frame: Frame, plan: Pick<FramePlan, 'trails' | 'colours'>, making: FrameMaking = {}): Result<Recipe> {
  const tooLarge = beyondLimits(frame, plan.trails);
  if (tooLarge !== undefined) return fail([tooLarge]);
  const writer = new FrameRecipe(frame, plan.trails);
  const pieces = plan.trails.map(
    (trail, index): Piece => ({
      name: `no. ${index + 1}`,
      size: making.size ?? '260',
      role: plainName(plan.colours[index] ?? making.role ?? 'frame', 'frame'),
      count: 1,
      run: writer.run(trail, index),
    }),
  );
  const recipe: Recipe = { pieces, finishing: [] };
  const { problems } = unfold(recipe);
  return problems.length === 0 ? ok(recipe) : fail(problems);
}

function beyondLimits(frame: Frame, trails: readonly Trail[]): Problem | undefined {
  const index = frame.edges.findIndex(({ lengthInches }) => lengthInches < limits.shortest || lengthInches > limits.longest);
  const edge = frame.edges[index];
  if (edge !== undefined) {
    const sentence = `The edge ${edge.from} to ${edge.to} is ${edge.lengthInches} inches long.`;
    const todo = `A bubble of a recipe has ${limits.shortest} to ${limits.longest} inches.`;
    return frameProblem('frame.recipe-too-large', ['edges', index, 'lengthInches'], sentence, todo);
  }
  const bubbles = trails.reduce((sum, trail) => sum + trail.edges.length, 0);
  if (trails.length <= limits.balloons && bubbles <= limits.bubbles) return undefined;
  const sentence = `A recipe has at most ${limits.balloons} balloons and ${limits.bubbles} bubbles; this frame takes ${trails.length} and ${bubbles}.`;
  return frameProblem('frame.recipe-too-large', ['edges'], sentence, 'Use the twisting orders as they are, or plan the frame in parts.');
}

class FrameRecipe {
  readonly #frame: Frame;
  readonly #names: readonly string[];
  /** How often the balloons come to a joint; one that is come to once needs no name. */
  readonly #visits: Uint32Array;
  /** Ends of bubbles at a joint, popped ones included. */
  readonly #ends: Uint32Array;
  /** Balloon that marked a joint. */
  readonly #markedBy = new Map<number, number>();

  constructor(frame: Frame, trails: readonly Trail[]) {
    this.#frame = frame;
    this.#names = markNames(frame);
    this.#visits = new Uint32Array(frame.joints.length);
    this.#ends = new Uint32Array(frame.joints.length);
    for (const { joints } of trails) {
      for (const [step, joint] of joints.entries()) {
        this.#visits[joint] = (this.#visits[joint] ?? 0) + 1;
        this.#ends[joint] = (this.#ends[joint] ?? 0) + (step === 0 || step === joints.length - 1 ? 1 : 2);
      }
    }
  }

  run(trail: Trail, balloon: number): readonly Move[] {
    const moves: Move[] = this.#arrive(trail.joints[0] as number, balloon);
    for (const [step, number] of trail.edges.entries()) {
      const from = trail.joints[step] as number;
      const to = trail.joints[step + 1] as number;
      const length = bubbleInches(this.#frame.edges[number]?.lengthInches as number);
      if (from === to) {
        moves.push({ kind: 'loop', length });
      } else {
        const aim = this.#aim(from, to, step === 0);
        moves.push({ kind: 'bubble', length, ...(aim.length === 0 ? {} : { aim }) }, ...this.#arrive(to, balloon));
      }
      if (trail.popped?.[step] === true) moves.push({ kind: 'pop' });
    }
    return [...moves, { kind: 'trim' }];
  }

  #arrive(joint: number, balloon: number): Move[] {
    const name = this.#names[joint] as string;
    const owner = this.#markedBy.get(joint);
    if (owner === balloon) return [{ kind: 'lock', to: name }];
    if (owner !== undefined) return [{ kind: 'join', to: name }];
    if ((this.#visits[joint] ?? 0) < 2) return [];
    this.#markedBy.set(joint, balloon);
    return [{ kind: 'mark', name }];
  }

  /** A bubble that starts a balloon at a loose tip is steered from its held end outwards, as the notation has it. */
  #aim(from: number, to: number, isFirst: boolean): readonly Direction[] {
    const start = this.#frame.joints[from]?.at;
    const end = this.#frame.joints[to]?.at;
    if (start === undefined || end === undefined) return [];
    const outwards = isFirst && this.#ends[from] === 1 && (this.#ends[to] ?? 0) > 1;
    return outwards ? directionWords(minus(start, end)) : directionWords(minus(end, start));
  }
}

/** Up to six words whose sum points most nearly along a way: third axis up, first forward, second left. */
export function directionWords(way: Place): readonly Direction[] {
  let best: Place = [0, 0, 0];
  let nearest = Number.NEGATIVE_INFINITY;
  const most = 4;
  for (let x = -most; x <= most; x++) {
    for (let y = -most; y <= most; y++) {
      for (let z = -most; z <= most; z++) {
        const words = Math.abs(x) + Math.abs(y) + Math.abs(z);
        if (words === 0 || words > 6) continue;
        const near = dot([x, y, z], way) / size([x, y, z]) - words * 1e-9;
        if (near <= nearest) continue;
        nearest = near;
        best = [x, y, z];
      }
    }
  }
  const axis = (count: number, ahead: Direction, behind: Direction) => Array<Direction>(Math.abs(count)).fill(count > 0 ? ahead : behind);
  return [...axis(best[2], 'up', 'down'), ...axis(best[0], 'forward', 'back'), ...axis(best[1], 'left', 'right')];
}

/** To the hundredth of an inch, as a person would read it off, and within what the notation takes. */
const bubbleInches = (inches: number): number => Math.min(limits.longest, Math.max(limits.shortest, Math.round(inches * 100) / 100));

/** Names of joints as the notation allows them, each its own. */
function markNames(frame: Frame): readonly string[] {
  const taken = new Set<string>(['knot']);
  return frame.joints.map(({ name }, index) => {
    let wanted = plainName(name, `joint ${index + 1}`);
    for (let again = 2; taken.has(wanted.toLowerCase()); again++)
      wanted = `${plainName(name, 'joint').slice(0, limits.name - 8)} (${again})`;
    taken.add(wanted.toLowerCase());
    return wanted;
  });
}

/** What the notation cannot have in a name is left out. */
function plainName(name: string, otherwise: string): string {
  const plain = name
    .normalize('NFC')
    .replace(/[,:#\p{Cc}\p{Cs}\u2028\u2029]/gu, ' ')
    .replace(/(?<!\S)(?:into|on)(?!\S)/giu, ' ')
    .replace(/\s+/gu, ' ')
    .trim()
    .slice(0, limits.name)
    .trim();
  return plain === '' ? otherwise : plain;
}
