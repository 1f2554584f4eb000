import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '..');
const page = join(root, 'docs/worked-example.md');

interface Claim {
  readonly line: number;
  readonly expression: string;
  readonly says: string;
}

/** The blocks of the page as one module whose last statement before each `// ->` line is kept as a value. */
function moduleOf(markdown: string): { readonly source: string; readonly claims: readonly Claim[] } {
  const claims: Claim[] = [];
  const source: string[] = ['export const values: unknown[] = [];'];
  let inside = false;
  let statement: string[] = [];
  for (const [index, line] of markdown.split('\n').entries()) {
    if (line.startsWith('```')) {
      inside = line === '```ts';
      statement = [];
      continue;
    }
    if (!inside) continue;
    if (line.startsWith('// ->')) {
      const expression = statement.join('\n').replace(/;\s*$/, '');
      source.splice(source.length - statement.length, statement.length, `values.push(${expression});`);
      claims.push({ line: index + 1, expression, says: line.slice(6) });
      statement = [];
      continue;
    }
    source.push(line);
    statement = line === '' || /^(import|const|if|await|throw)\b/.test(line) ? [] : [...statement, line];
  }
  return { source: source.join('\n'), claims };
}

test('every claim of the worked example holds', async () => {
  const markdown = readFileSync(page, 'utf8');
  const { source, claims } = moduleOf(markdown);
  const file = join(root, 'test/worked-example.generated.ts');
  writeFileSync(file, source);
  try {
    const { values } = (await import(file)) as { values: readonly unknown[] };
    if (process.env.UPDATE_DOCS === '1') {
      const lines = markdown.split('\n');
      for (const [i, claim] of claims.entries()) lines[claim.line - 1] = `// -> ${shown(values[i])}`;
      writeFileSync(page, lines.join('\n'));
      return;
    }
    expect(claims.length).toBe(8);
    for (const [i, claim] of claims.entries())
      expect(`${claim.expression} // -> ${shown(values[i])}`).toBe(`${claim.expression} // -> ${claim.says}`);
  } finally {
    rmSync(file);
  }
});

const shown = (value: unknown): string => (typeof value === 'string' ? `'${value}'` : JSON.stringify(value));
