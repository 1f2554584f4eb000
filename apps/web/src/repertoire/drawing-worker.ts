import { airOptionsOf } from '@twistwright/planner';
import {
  airOf,
  checkRecipe,
  marksOf,
  minutesOf,
  type Piece,
  pictureOfShape,
  piecesOf,
  type Recipe,
  readRecipe,
  type Shape,
  shapeOf,
  stepsOf,
} from '@twistwright/repertoire';
import { bodyOf, buffersOf } from './bodies-of.ts';
import type { Design, DesignAsk, DrawingAnswer, DrawingAsk } from './drawing-ask.ts';

interface Drawn {
  readonly recipe: Recipe;
  readonly shape: Shape;
}
/** Shapes that were solved last; colours and steps of one figure need it solved once. */
const kept = new Map<string, Drawn | undefined>();
const mostKept = 120;

function drawnOf(ask: DrawingAsk): Drawn | undefined {
  const key = JSON.stringify([ask.recipe, ask.finish ?? '', ask.sizes.length]);
  if (kept.has(key)) return kept.get(key);
  const read = readRecipe(ask.recipe, ask.sizes);
  const drawn = read.ok ? solved(ask, read.value) : undefined;
  if (kept.size >= mostKept) for (const oldest of [...kept.keys()].slice(0, mostKept / 4)) kept.delete(oldest);
  kept.set(key, drawn);
  return drawn;
}
function solved({ finish, sizes }: DrawingAsk, read: Recipe): Drawn {
  const recipe = finish === undefined ? read : { ...read, pieces: read.pieces.map((piece): Piece => ({ finish, ...piece })) };
  return { recipe, shape: shapeOf(recipe, sizes) };
}

const groundOf = (dark: boolean): 'light' | 'dark' => (dark ? 'dark' : 'light');

function answerTo(ask: DrawingAsk): DrawingAnswer {
  const { key } = ask;
  if (ask.kind === 'design') return { key, kind: 'design', design: designOf(ask) };
  const drawn = drawnOf(ask);
  if (ask.kind === 'shape')
    return drawn === undefined
      ? { key, kind: 'shape' }
      : { key, kind: 'shape', body: bodyOf(drawn.shape, marksOf(drawn.recipe.finishing, drawn.shape)) };
  if (drawn === undefined) return { key, kind: 'picture' };
  const { upToMove, view, dark, paints } = ask;
  const options = { ground: groundOf(dark), ...(upToMove === undefined ? {} : { upToMove }), ...(view === undefined ? {} : { view }) };
  return { key, kind: 'picture', svg: pictureOfShape(drawn.shape, drawn.recipe.finishing, paints, options) };
}

function designOf(ask: DesignAsk): Design {
  const options = airOptionsOf(ask.airBook, ask.colourway);
  const problems = checkRecipe(ask.recipe, options);
  const drawn = problems.some((problem) => problem.weight === 'error') ? undefined : drawnOf(ask);
  if (drawn === undefined) return { problems };
  const { recipe, shape } = drawn;
  const { pieces } = airOf(recipe, options);
  return {
    problems: [...problems, ...shape.problems],
    made: {
      svg: pictureOfShape(shape, recipe.finishing, ask.paints, { ground: groundOf(ask.dark) }),
      pieces,
      roles: [...new Set(piecesOf(recipe).map((piece) => piece.role))],
      minutes: minutesOf(recipe, ask.sizes).minutes,
      bubbles: pieces.reduce((sum, piece) => sum + piece.count * piece.bubbles, 0),
      steps: stepsOf(recipe, options),
    },
  };
}

addEventListener('message', (event: MessageEvent<DrawingAsk>) => {
  const answer = answerTo(event.data);
  postMessage(answer, { transfer: answer.kind === 'shape' && answer.body !== undefined ? buffersOf(answer.body) : [] });
});
