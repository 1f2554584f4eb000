/** Writes docs/book.schema.json, the JSON Schema of the book file: `npx node scripts/book-schema.ts`. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { bookJsonSchema } from '@twistwright/contract';

writeFileSync(join(import.meta.dirname, '../docs/book.schema.json'), `${JSON.stringify(bookJsonSchema(), undefined, 2)}\n`);
