import {
  type Frame,
  type FrameWishes,
  planFrame,
  readFrame,
  readFrameJson,
  readyFrame,
  readyFrames,
  recipeOfFrame,
  verifyTrails,
  writeRecipe,
} from '@twistwright/repertoire';
import { fail, type Problem, type Result } from '@twistwright/units';
import type { Arguments } from './arguments.ts';
import { writeFrame } from './figure-pages.ts';
import { problemText } from './open-book.ts';
import type { Outside } from './outside.ts';
import { pageFor } from './page.ts';
import type { Command } from './run-command.ts';

export const frameCommand: Command = {
  name: 'frame',
  takes: 'FILE [--length INCHES] [--pops] [--balloons K] | --solid NAME [--edge INCHES]',
  says: 'the fewest balloons for a wire frame, and the order in which each is twisted',
  flags: [
    { name: 'json', takes: 'nothing', says: 'print JSON instead of a page' },
    {
      name: 'solid',
      takes: 'text',
      says: `a ready-made frame instead of a file: ${readyFrames
        .slice(0, 5)
        .map(({ name }) => name)
        .join(', ')}, "prism 6", ...`,
    },
    { name: 'edge', takes: 'number', says: 'with --solid: length of its shortest edge, inflated inches (5)' },
    { name: 'solids', takes: 'nothing', says: 'list the ready-made frames' },
    { name: 'length', takes: 'number', says: 'inflated inches that one balloon gives; without it, as long as needed' },
    { name: 'pops', takes: 'nothing', says: 'stretches may be made twice and one of the two popped' },
    { name: 'balloons', takes: 'number', says: 'with --pops: for so many balloons, the shortest total' },
    { name: 'closed', takes: 'nothing', says: 'with --pops: the balloon ends where it began' },
    { name: 'one-colour', takes: 'nothing', says: 'as if all edges were one colour' },
    { name: 'seed', takes: 'number', says: 'another answer of the same number' },
    { name: 'recipe', takes: 'nothing', says: 'print the recipe of it instead' },
    { name: 'size', takes: 'text', says: 'with --recipe: size code of the balloons (260)' },
  ],
  words: [0, 1],
  run: async (args, outside) => {
    if (args.has('solids')) {
      const page = pageFor(outside.isTerminal);
      page.table(
        ['Frame', 'kind', 'what'],
        readyFrames.map(({ name, kind, says }) => [kind === 'family' ? `${name} N` : name, kind, says]),
      );
      outside.out(args.has('json') ? `${JSON.stringify(readyFrames, undefined, 2)}\n` : page.text());
      return 0;
    }
    const [path] = args.words;
    const wrong = misuse(args, path);
    if (wrong !== undefined) {
      outside.err(`${wrong}\n`);
      return 2;
    }
    const frame = path === undefined ? readyFrame(args.text('solid') ?? '', args.number('edge') ?? 5) : await frameOfFile(path, outside);
    if (!frame.ok) return tell(frame.error, path ?? '--solid', args, outside);
    const wishes = wishesOf(args);
    const plan = planFrame(frame.value, wishes);
    if (!plan.ok) return tell(plan.error, path ?? '--solid', args, outside);
    const broken = verifyTrails(frame.value, plan.value.trails, wishes.balloonInches);
    if (broken.length > 0) throw new Error(`twisting orders that do not hold: ${broken[0]?.sentence}`);
    if (args.has('recipe')) {
      const recipe = recipeOfFrame(frame.value, plan.value, args.text('size') === undefined ? {} : { size: args.text('size') ?? '' });
      if (!recipe.ok) return tell(recipe.error, path ?? '--solid', args, outside);
      outside.out(
        args.has('json') ? `${JSON.stringify({ recipe: writeRecipe(recipe.value) }, undefined, 2)}\n` : writeRecipe(recipe.value),
      );
      return 0;
    }
    if (args.has('json')) {
      outside.out(`${JSON.stringify({ frame: frame.value, ...plan.value }, undefined, 2)}\n`);
      return 0;
    }
    const page = pageFor(outside.isTerminal);
    writeFrame(page, frame.value, plan.value);
    outside.out(page.text());
    return 0;
  },
};

function misuse(args: Arguments, path: string | undefined): string | undefined {
  if ((path === undefined) === (args.text('solid') === undefined))
    return 'Name a file of edges, or a ready-made frame with --solid NAME; one of the two.';
  if (args.has('edge') && !args.has('solid')) return '--edge goes with --solid.';
  for (const flag of ['balloons', 'closed']) if (args.has(flag) && !args.has('pops')) return `--${flag} goes with --pops.`;
  if (args.has('size') && !args.has('recipe')) return '--size goes with --recipe.';
  const seed = args.number('seed');
  if (seed !== undefined && (!Number.isSafeInteger(seed) || seed < 0 || seed > 4_294_967_295))
    return `--seed takes a whole number from 0 to 4294967295, not ${seed}.`;
  return undefined;
}

function wishesOf(args: Arguments): FrameWishes {
  const [length, balloons, seed] = [args.number('length'), args.number('balloons'), args.number('seed')];
  return {
    ...(length === undefined ? {} : { balloonInches: length }),
    ...(args.has('one-colour') ? { colours: 'ignore' as const } : {}),
    ...(args.has('pops')
      ? { pops: { ...(balloons === undefined ? {} : { balloons }), ...(args.has('closed') ? { closed: true } : {}) } }
      : {}),
    ...(seed === undefined ? {} : { seed }),
  };
}

async function frameOfFile(path: string, outside: Outside): Promise<Result<Frame>> {
  let text: string;
  try {
    text = await outside.readFile(path);
  } catch (error) {
    const sentence = `${path} cannot be read: ${error instanceof Error ? error.message : String(error)}.`;
    return fail([{ code: 'file.unreadable', path: [], sentence, weight: 'error' }]);
  }
  if (!text.trimStart().startsWith('{')) return readFrame(text);
  try {
    return readFrameJson(JSON.parse(text));
  } catch (error) {
    return fail([{ code: 'frame.json', path: [], sentence: `${path} is no JSON: ${(error as Error).message}.`, weight: 'error' }]);
  }
}

function tell(problems: readonly Problem[], file: string, args: Arguments, outside: Outside): 1 {
  if (args.has('json')) outside.out(`${JSON.stringify({ problems }, undefined, 2)}\n`);
  else for (const problem of problems) outside.err(`${problemText(problem, file)}\n`);
  return 1;
}
