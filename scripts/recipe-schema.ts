/** Writes docs/recipe.schema.json, the JSON Schema of the model that a recipe's text stands for: `npx node scripts/recipe-schema.ts`. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { recipeJsonSchema } from '@twistwright/repertoire';

writeFileSync(join(import.meta.dirname, '../docs/recipe.schema.json'), `${JSON.stringify(recipeJsonSchema, undefined, 2)}\n`);
