/** Writes docs/problems.md from the codes that are declared: `npx node scripts/problems.ts`. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { problemsPage } from './problems-page.ts';

writeFileSync(join(import.meta.dirname, '../docs/problems.md'), problemsPage());
