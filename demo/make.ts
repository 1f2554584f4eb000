/** Writes the demo's book and price lists. Run it after a change of the data beside it: `npx node demo/make.ts`. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { demoFiles } from './files.ts';

for (const [name, text] of Object.entries(demoFiles())) {
  const file = join(import.meta.dirname, name);
  mkdirSync(join(file, '..'), { recursive: true });
  writeFileSync(file, text);
}
