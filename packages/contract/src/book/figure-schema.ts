import {
  type BalloonItem,
  type Colour,
  type Colourway,
  type Extra,
  type Figure,
  finishes,
  type Item,
  type OtherItem,
} from '@twistwright/books';
import type { Size } from '@twistwright/repertoire';
import { z } from 'zod';
import { countOrNone, id, minutes, name, weight } from './basic-values.ts';
import { timeLawSchema } from './line-schema.ts';
import { byText } from './record.ts';

const inches = z.number().gt(0).max(1000);
export const sizeSchema = z
  .strictObject({
    code: id,
    shape: z.enum(['tube', 'round', 'heart', 'flower', 'ring', 'link']),
    diameterInches: inches,
    lengthInches: z.exactOptional(inches),
    flatInches: z.exactOptional(inches),
    stretch: z.exactOptional(z.number().gt(1).max(20)),
    tailPerBubbleInches: z.exactOptional(z.number().min(0).max(10)),
    source: name,
  })
  .meta({ id: 'Size', description: 'A size of balloon; inflated and flat lengths are on two different rulers' }) satisfies z.ZodType<Size>;

export const colourSchema = z
  .strictObject({ id, name, body: z.exactOptional(z.string().regex(/^#[0-9a-fA-F]{6}$/)) })
  .meta({ id: 'Colour', description: 'A shade as the business calls it' }) satisfies z.ZodType<Colour>;

const finish = z.enum(finishes);
const balloonItemSchema = z.strictObject({
  id,
  kind: z.literal('balloon'),
  size: id,
  colour: id,
  finish: z.exactOptional(finish),
  print: z.exactOptional(name),
  maker: z.exactOptional(name),
  chanceOfPop: z.exactOptional(z.number().min(0).max(0.9)),
  shelfMonths: z.exactOptional(z.number().gt(0).max(600)),
}) satisfies z.ZodType<BalloonItem>;
const otherItemSchema = z.strictObject({ id, kind: z.enum(['tool', 'sundry']), name }) satisfies z.ZodType<OtherItem>;
export const itemSchema = z
  .discriminatedUnion('kind', [balloonItemSchema, otherItemSchema])
  .meta({ id: 'Item', description: 'One thing that is bought and counted' }) satisfies z.ZodType<Item>;

export const colourwaySchema = z.strictObject({
  id,
  name,
  share: z.exactOptional(weight),
  fill: byText(id),
  finish: z.exactOptional(finish),
}) satisfies z.ZodType<Colourway>;
/** `count` 0: used, not used up, such as a marker. */
const extraSchema = z.strictObject({ item: id, count: countOrNone, minutes: z.exactOptional(minutes) }) satisfies z.ZodType<Extra>;

export const figureSchema = z
  .strictObject({
    id,
    name,
    recipe: z.exactOptional(z.string().max(200_000)),
    colourways: z.array(colourwaySchema).max(1000),
    minutes: z.exactOptional(timeLawSchema),
    extras: z.exactOptional(z.array(extraSchema).max(100)),
    difficulty: z.exactOptional(z.number().min(1).max(5)),
    tags: z.exactOptional(z.array(name).max(100)),
    worth: z.exactOptional(weight),
  })
  .meta({ id: 'Figure', description: 'Something that can be made; its recipe is notation text' }) satisfies z.ZodType<Figure>;
