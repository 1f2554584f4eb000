import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { contrast, shippedShades } from '../pictures/rubber.ts';

const css = readFileSync(join(import.meta.dirname, 'tokens.css'), 'utf8');
const valuesIn = (text: string): ReadonlyMap<string, string> =>
  new Map([...text.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6});/g)].map((match) => [match[1] ?? '', match[2] ?? '']));
const light = valuesIn(css.slice(0, css.indexOf('@media')));
const darkAt = css.indexOf('@media (prefers-color-scheme: dark)');
const dark = new Map([...light, ...valuesIn(css.slice(darkAt, css.indexOf('@media not all', darkAt)))]);
const get = (values: ReadonlyMap<string, string>, name: string): string => {
  const value = values.get(name);
  if (value === undefined) throw new Error(`no token --${name}`);
  return value;
};

/** WCAG 2.2, success criteria 1.4.3 (text) and 1.4.11 (controls and graphics); ink is held to the enhanced 7 : 1 of 1.4.6. */
const floors = [
  ['ink', ['ground', 'sheet', 'wash'], 7],
  ['ink-2', ['ground', 'sheet', 'wash'], 7],
  ['ink-3', ['ground', 'sheet', 'wash'], 4.5],
  ['rule-strong', ['ground', 'sheet'], 3],
  ['head-2', ['ground'], 3],
  ['head-3', ['ground'], 3],
] as const;

for (const [mode, values] of [
  ['light', light],
  ['dark', dark],
] as const) {
  test(`${mode}: every ink keeps its floor of contrast on every ground`, () => {
    for (const [ink, grounds, floor] of floors)
      for (const ground of grounds)
        expect(contrast(get(values, ink), get(values, ground)), `${ink} on ${ground}`).toBeGreaterThanOrEqual(floor);
  });
  test(`${mode}: edge or body of every rubber stands out from the ground`, () => {
    expect(shippedShades).toHaveLength(14);
    for (const shade of shippedShades) {
      const ground = get(values, 'ground');
      const best = Math.max(contrast(get(values, `rim-${shade}`), ground), contrast(get(values, `b-${shade}`), ground));
      expect(best, shade).toBeGreaterThanOrEqual(3);
    }
  });
}
