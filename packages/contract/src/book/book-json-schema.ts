import { z } from 'zod';
import { bookSchema } from './book-schema.ts';

/** JSON Schema (draft 2020-12) of the book file; `docs/book.schema.json` is this. */
export const bookJsonSchema = (): Readonly<Record<string, unknown>> => z.toJSONSchema(bookSchema, { io: 'input', target: 'draft-2020-12' });
