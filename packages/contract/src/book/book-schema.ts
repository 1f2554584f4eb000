import type { Book } from '@twistwright/books';
import { z } from 'zod';
import { balloonTestSchema } from './balloon-test-schema.ts';
import { localDate } from './basic-values.ts';
import { businessSchema, settingsSchema } from './business-schema.ts';
import { colourSchema, figureSchema, itemSchema, sizeSchema } from './figure-schema.ts';
import { gigSchema } from './gig-schema.ts';
import { artistSchema, clientSchema } from './people-schema.ts';
import { savedKitSchema } from './saved-kit-schema.ts';
import { needSchema, offerSchema, orderSchema, placeSchema, stockMoveSchema, supplierSchema } from './supply-schema.ts';

/** Most entries of any list of the book but the ledger. */
const most = 50_000;
/** Most lines of the ledger. */
const mostMoves = 1_000_000;

/** The content of the book file. Keys stand in the order in which the file is written. */
export const bookSchema = z
  .strictObject({
    book: z.literal(1).meta({ description: "Version of the file's form" }),
    laidOn: z.exactOptional(localDate),
    business: businessSchema,
    settings: z.exactOptional(settingsSchema),
    sizes: z.exactOptional(z.array(sizeSchema).max(most)),
    colours: z.array(colourSchema).max(most).default([]),
    items: z.array(itemSchema).max(most).default([]),
    figures: z.array(figureSchema).max(most).default([]),
    artists: z.array(artistSchema).max(most).default([]),
    places: z.array(placeSchema).max(most).default([]),
    suppliers: z.array(supplierSchema).max(most).default([]),
    offers: z.array(offerSchema).max(most).default([]),
    clients: z.array(clientSchema).max(most).default([]),
    gigs: z.array(gigSchema).max(most).default([]),
    needs: z.array(needSchema).max(most).default([]),
    orders: z.array(orderSchema).max(most).default([]),
    moves: z.array(stockMoveSchema).max(mostMoves).default([]),
    kits: z.exactOptional(z.array(savedKitSchema).max(most)),
    balloonTests: z.exactOptional(z.array(balloonTestSchema).max(most)),
  })
  .meta({ id: 'Book', title: 'Twistwright book', description: 'Everything of one business' }) satisfies z.ZodType<Book>;
