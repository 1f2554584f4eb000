import { type Frame, type FramePlan, recipeOfFrame, type Trail, writeRecipe } from '@twistwright/repertoire';
import { z } from 'zod';
import { whole } from './answer-values.ts';

/** The order in which one balloon is twisted, with its colour role if only one will do. */
export type TrailAnswer = Trail & { readonly colour?: string };
/** The twisting orders of a frame as they travel. */
export interface FrameAnswer extends Omit<FramePlan, 'trails' | 'colours'> {
  readonly frame: Frame;
  readonly trails: readonly TrailAnswer[];
  /** Recipe notation; missing where the frame cannot be written as a recipe. */
  readonly recipe?: string;
}

/** `size`: size code of the balloons in the recipe, 260 if missing. */
export function frameAnswer(frame: Frame, { trails, colours, ...plan }: FramePlan, size?: string): FrameAnswer {
  const recipe = recipeOfFrame(frame, { trails, colours, ...plan }, size === undefined ? {} : { size });
  return {
    frame,
    ...plan,
    trails: trails.map((trail, balloon) => {
      const colour = colours[balloon];
      return colour === undefined ? trail : { ...trail, colour };
    }),
    ...(recipe.ok ? { recipe: writeRecipe(recipe.value) } : {}),
  };
}

const inches = z.number().min(0).meta({ description: 'Inflated inches' });
const places = z.array(whole);

export const frameSchema = z
  .strictObject({
    name: z.exactOptional(z.string()),
    joints: z.array(
      z.strictObject({
        name: z.string(),
        at: z.exactOptional(z.tuple([z.number(), z.number(), z.number()])).meta({ description: 'Inches, for pictures only' }),
      }),
    ),
    edges: z.array(z.strictObject({ from: z.string(), to: z.string(), lengthInches: inches, colour: z.exactOptional(z.string()) })),
  })
  .meta({ id: 'Frame', description: 'A wire figure: joints, and edges with inflated inches' }) satisfies z.ZodType<Frame>;

export const frameAnswerSchema = z
  .strictObject({
    frame: frameSchema,
    trails: z
      .array(
        z.strictObject({
          joints: places.meta({ description: 'Places in `frame.joints`, one more than edges' }),
          edges: places.meta({ description: 'Places in `frame.edges`' }),
          popped: z.exactOptional(z.array(z.boolean())).meta({ description: 'Stretches that are popped afterwards' }),
          colour: z.exactOptional(z.string()),
        }),
      )
      .meta({ description: 'One twisting order a balloon' }),
    leastBalloons: whole.meta({ description: 'No order needs fewer balloons' }),
    proven: z.boolean().meta({ description: 'Whether `trails` is proven to be the fewest' }),
    balloonsForColours: whole.meta({ description: 'Balloons that keeping the colours costs' }),
    totalInches: inches,
    poppedInches: inches,
    leastInches: inches.meta({ description: 'So many balloons cannot take less, inflated inches' }),
    longestInches: inches,
    recipe: z.exactOptional(z.string()).meta({ description: 'Recipe notation, docs/recipes.md' }),
  })
  .meta({ id: 'FramePlan', description: 'The fewest balloons for a frame, and how each is twisted' }) satisfies z.ZodType<FrameAnswer>;
