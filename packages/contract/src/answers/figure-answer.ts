import type { Book, Colourway } from '@twistwright/books';
import {
  airOptionsOf,
  balloonsTaken,
  colourNames,
  type FigureFacts,
  finished,
  type MakeableFigure,
  type MakeableWay,
  withoutEnd,
} from '@twistwright/planner';
import { type RecipeAir, type Step, stepsOf } from '@twistwright/repertoire';
import type { Problem } from '@twistwright/units';
import { z } from 'zod';
import { id } from '../book/basic-values.ts';
import { colourwaySchema, figureSchema } from '../book/figure-schema.ts';
import { problemSchema } from '../http/problem-details.ts';
import { whole } from './answer-values.ts';

/** A figure as it is shown: what it takes, air and tail of every balloon, the steps. */
export interface FigureAnswer extends Pick<FigureFacts, 'figure' | 'air' | 'minutes' | 'balloons' | 'bubbles' | 'techniques' | 'roles'> {
  readonly colourway: Colourway;
  readonly takes: ReturnType<typeof balloonsTaken>;
  readonly steps: readonly Step[];
}

export function figureAnswer(book: Book, { recipe, ...facts }: FigureFacts, colourway: Colourway): FigureAnswer {
  return {
    ...facts,
    colourway,
    takes: balloonsTaken(book, finished(recipe, colourway), colourway),
    steps: stepsOf(recipe, { ...airOptionsOf(book, colourway), colours: colourNames(book, colourway.fill) }),
  };
}

const flat = z.number().meta({ description: 'Flat inches' });
const inflated = z.number().meta({ description: 'Inflated inches' });
const litres = z.number().min(0).meta({ description: 'Litres of air' });
const verdict = z.enum(['fits', 'tight', 'does not fit']);
const band = (of: string) =>
  z
    .strictObject({ low: z.number(), mid: z.number(), high: z.number() })
    .meta({ description: `${of}: 10th percentile, mean, 90th percentile` });
const sentence = z.string();

const changeSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('less tail'), tailInches: flat, sentence }),
  z.strictObject({
    kind: z.literal('split'),
    afterBubble: whole.meta({ description: 'Bubbles that the first of two balloons makes' }),
    label: z.exactOptional(z.string()),
    sentence,
  }),
  z.strictObject({ kind: z.literal('size'), size: z.string(), sentence }),
  z.strictObject({ kind: z.literal('smaller'), share: z.number(), sentence }),
]);

const airSchema = z
  .strictObject({
    pieces: z.array(
      z.strictObject({
        piece: whole.meta({ description: 'Which balloon of the recipe, from 0' }),
        name: z.string(),
        size: z.string(),
        count: whole,
        inflatedInches: inflated,
        tailInches: flat,
        tailFrom: z.enum(['recipe', 'worked out']),
        litres,
        strokes: z.exactOptional(z.number()),
        bubbles: whole,
        needInches: inflated,
        leftInflatedInches: band('Inflated inches left over'),
        leftFlatInches: band('Flat inches left at the tip'),
        tailNeededInches: band('Flat inches of tail that the bubbles eat'),
        bubbleLitres: litres,
        verdict,
        verdictBand: z.strictObject({ short: verdict, long: verdict }),
        runsOutAt: z.exactOptional(
          z.strictObject({
            bubble: whole.meta({ description: 'Which bubble of the balloon, from 0' }),
            label: z.exactOptional(z.string()),
          }),
        ),
        changes: z.array(changeSchema),
        cautions: z.array(z.string()),
        inches: z.array(z.number()),
      }),
    ),
    litres,
    strokes: z.exactOptional(z.number()),
    verdict,
    problems: z.array(problemSchema),
  })
  .meta({
    id: 'Air',
    description: 'Air and tail of every balloon; flat and inflated inches are two rulers',
  }) satisfies z.ZodType<RecipeAir>;

const minutesSchema = z
  .strictObject({ p10: z.number(), p50: z.number(), p90: z.number(), from: z.enum(['figure', 'recipe', 'estimate']) })
  .meta({ description: 'Minutes to make it' });
const techniquesSchema = z.array(
  z.enum([
    'basic twist',
    'lock',
    'pinch',
    'fold',
    'loop',
    'tulip',
    'apple',
    'roll-through',
    'split',
    'pop',
    'ring of bubbles',
    'lock to an earlier twist',
    'join two balloons',
    'tie in a round',
    'tuck',
    'bend',
    'flat gap',
    'cut and tie off',
    'draw',
  ]),
);

export const figureAnswerSchema = z
  .strictObject({
    figure: figureSchema,
    colourway: colourwaySchema,
    takes: z.array(
      z.strictObject({
        size: z.string(),
        colour: z.exactOptional(z.string()),
        print: z.exactOptional(z.string()),
        name: z.string(),
        count: whole,
      }),
    ),
    minutes: minutesSchema,
    balloons: whole,
    bubbles: whole,
    techniques: techniquesSchema,
    roles: z.array(z.string()),
    air: airSchema,
    steps: z.array(
      z.strictObject({
        number: whole,
        sentence,
        piece: z.exactOptional(whole).meta({ description: 'Which balloon of the recipe, from 0; missing for finishing' }),
        deeds: whole,
        bubbles: whole,
      }),
    ),
  })
  .meta({ id: 'FigureShown', description: 'What a figure takes, its air and tail, and how it is made' }) satisfies z.ZodType<FigureAnswer>;

/** One figure of the list of what can be made. */
export interface ListedFigure {
  readonly figure: string;
  readonly name: string;
  /** Missing where the recipe cannot be read; then `problems` says why. */
  readonly facts?: Pick<FigureFacts, 'minutes' | 'balloons' | 'bubbles' | 'techniques'> & {
    readonly verdict: RecipeAir['verdict'];
    readonly litres: number;
  };
  readonly problems: readonly Problem[];
  readonly ways: readonly (Omit<MakeableWay, 'makes'> & { readonly makes?: number })[];
  /** How many the stock gives; missing where it takes nothing, so that there is no end. */
  readonly makes?: number;
}

export function listedFigure({ figure, facts, problems, ways, makes }: MakeableFigure): ListedFigure {
  return {
    figure: figure.id,
    name: figure.name,
    ...(facts === undefined
      ? {}
      : {
          facts: {
            minutes: facts.minutes,
            balloons: facts.balloons,
            bubbles: facts.bubbles,
            techniques: facts.techniques,
            verdict: facts.air.verdict,
            litres: facts.air.litres,
          },
        }),
    problems,
    ways: ways.map(({ makes: some, ...way }) => ({ ...way, ...ending(some) })),
    ...ending(makes),
  };
}
const ending = (makes: number): { readonly makes?: number } => (makes === withoutEnd ? {} : { makes });

const takingSchema = z.strictObject({
  item: z.exactOptional(id),
  name: z.string(),
  size: z.exactOptional(z.string()),
  colour: z.exactOptional(z.string()),
  count: z.number().meta({ description: 'Pieces for one figure' }),
  have: z.number().meta({ description: 'Pieces that are there' }),
});
const makes = z.exactOptional(whole).meta({ description: 'How many the stock gives; missing where there is no end' });

export const listedFigureSchema = z
  .strictObject({
    figure: id,
    name: z.string(),
    facts: z.exactOptional(
      z.strictObject({ minutes: minutesSchema, balloons: whole, bubbles: whole, techniques: techniquesSchema, verdict, litres }),
    ),
    problems: z.array(problemSchema),
    ways: z.array(
      z.strictObject({
        colourway: id,
        takes: z.array(takingSchema),
        makes,
        lacking: z.array(takingSchema),
        substitutes: z.array(z.strictObject({ role: z.string(), from: z.string(), to: z.string() })),
        cost: z.exactOptional(z.number()).meta({ description: 'What one costs, minor units with fractions' }),
      }),
    ),
    makes,
  })
  .meta({
    id: 'ListedFigure',
    description: 'A figure, and how many of it can be made from what there is',
  }) satisfies z.ZodType<ListedFigure>;
