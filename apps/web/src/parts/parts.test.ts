import { createElement as h } from 'react';
import { renderToStaticMarkup as markup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { Because } from './because.tsx';
import { Empty } from './empty.tsx';
import { ChoiceField, TextField } from './field.tsx';
import { Marks } from './marks.tsx';
import { Progress } from './progress.tsx';
import { Refusal } from './refusal.tsx';
import { Slider } from './slider.tsx';
import { Tick } from './tick.tsx';
import { Undo } from './undo.tsx';

const nothing = (): void => undefined;

test('a slider is a range with a label, its value in words and its ends', () => {
  const text = markup(
    h(Slider, { label: 'Guests', min: 20, max: 140, value: 70, text: '70 guests', ends: ['20', '140'], onMove: nothing }),
  );
  expect(text).toMatch(
    /<label for="([^"]+)">Guests<\/label>.*<input id="\1" type="range" min="20" max="140" step="1" aria-valuetext="70 guests"/,
  );
  expect(text).toContain('--full:0.4166');
});
test('a slider without room stays flat', () => {
  expect(markup(h(Slider, { label: 'Artists', min: 1, max: 1, value: 1, text: '1', ends: ['1', '1'], onMove: nothing }))).toContain(
    '--full:0',
  );
});
test('a wrong field says so to everybody: edge, hatched flag, sentence, and the link between them', () => {
  const text = markup(
    h(TextField, { label: 'Guests', value: 'seventy', problem: '“seventy” is not a number. Write it as 70.', onChange: nothing }),
  );
  expect(text).toContain('aria-invalid="true"');
  expect(text).toMatch(/aria-describedby="([^"]+)".*<p id="\1" class="err">/);
});
test('a field that is right has no flag', () => {
  expect(markup(h(TextField, { label: 'Guests', value: '70', onChange: nothing }))).not.toContain('aria-invalid');
});
test('a choice has its label and its words', () => {
  expect(markup(h(ChoiceField, { label: 'Kind', value: 'line', options: [{ value: 'line', text: 'line' }], onChange: nothing }))).toContain(
    '<option value="line" selected="">line</option>',
  );
});
test('a tick is one label from edge to edge', () => {
  // biome-ignore lint/correctness/noChildrenProp: there is no JSX in a plain test file
  expect(markup(h(Tick, { checked: true, onChange: nothing, note: '1.5 min', children: 'dog' }))).toMatch(
    /^<label class="pick"><input[^>]*checked=""[^>]*\/>/,
  );
});
test('every mark has its word', () => {
  const text = markup(h(Marks, { marks: [{ kind: 'stocked', state: 'stop', word: '3 items short' }] }));
  expect(text).toContain('<span>3 items short</span>');
});
test('progress says how far it is and how to stop', () => {
  const text = markup(h(Progress, { what: 'Trying afternoons', done: 1400, of: 2000, onStop: nothing }));
  expect(text).toContain('1,400 of 2,000');
  expect(text.match(/<rect/g)).toHaveLength(7);
  expect(text).toContain('Stop and keep what there is');
});
test('refusal, undo, empty and because are read as sentences', () => {
  expect(markup(h(Refusal, { sentence: '£10 buys no kit.', instead: 'From £25 a kit meets 51.' }))).toContain(
    '<b>£10 buys no kit.</b> From £25 a kit meets 51.',
  );
  expect(markup(h(Undo, { sentence: 'Off the list.', action: 'Put it back', onUndo: nothing }))).toContain('role="status"');
  expect(markup(h(Empty, { sentence: 'No gig yet.' }))).toContain('No gig yet.');
  // biome-ignore lint/correctness/noChildrenProp: there is no JSX in a plain test file
  expect(markup(h(Because, { ask: 'Why 62?', children: 'x' }))).toMatch(/^<details class="because"><summary>Why 62\?/);
});
