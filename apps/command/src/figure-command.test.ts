import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { openSolver } from '@twistwright/solver/node';
import { date } from '@twistwright/units';
import { describe, expect, test } from 'vitest';
import { NotWritten, type Outside } from './outside.ts';
import { runCommand } from './run-command.ts';

interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  readonly files: ReadonlyMap<string, string | Uint8Array>;
}
const demo = readFileSync(join(import.meta.dirname, '../../../demo/book.yaml'), 'utf8');

async function run(words: string, given: Readonly<Record<string, string>> = {}, other: Partial<Outside> = {}): Promise<Ran> {
  const files = new Map<string, string | Uint8Array>();
  let [out, err] = ['', ''];
  const readable: Readonly<Record<string, string>> = { 'book.yaml': demo, ...given };
  const code = await runCommand(
    words.split(' ').map((word) => word.replaceAll('_', ' ')),
    {
      readFile: async (path) => {
        const text = readable[path];
        if (text === undefined) throw new Error('no such file');
        return text;
      },
      writeFile: async (path, content) => void files.set(path, content),
      out: (text) => {
        out += text;
      },
      err: (text) => {
        err += text;
      },
      isTerminal: false,
      today: () => date('2026-06-01'),
      now: () => 0,
      solver: () => openSolver(),
      ...other,
    },
  );
  return { code, out, err, files };
}

describe('figure', () => {
  test('show: recipe, air, steps, minutes', async () => {
    const { code, out } = await run('figure show dog');
    expect(code).toBe(0);
    // The shipped dog may get better proportions; what is shown of it, and how, stays.
    for (const words of [
      /^Dog: 1 balloon, \d+ bubbles, 0\.6 min \(0\.4 to 0\.8\)\. It fits\./mu,
      /bubble [\d.]+ nose, forward/u,
      /[\d.]+ in/u,
      /2\. Twist a bubble of [\d.]+ in for the nose\./u,
    ])
      expect(out).toMatch(words);
  });
  test('show --json has the same numbers', async () => {
    const { code, out } = await run('figure show dog --json');
    const shown = JSON.parse(out) as {
      minutes: { p50: number };
      air: { verdict: string };
      steps: readonly unknown[];
      techniques: readonly string[];
    };
    expect([code, shown.minutes.p50, shown.air.verdict, shown.techniques]).toEqual([0, 0.6, 'fits', ['basic twist', 'lock']]);
    expect(shown.steps).toHaveLength(8);
  });
  test('a file is read where no figure has that id, in the book or out of it', async () => {
    const { code, out } = await run('figure show worm.txt', { 'worm.txt': 'balloon worm: 260 in body\n  bubble 10 worm' });
    expect([code, out.split(':')[0]]).toEqual([0, 'Worm']);
    expect((await run('figure show big-elephant --book book.yaml')).out).toContain('Big elephant');
    const missing = await run('figure show dogg');
    expect([missing.code, missing.err]).toEqual([1, 'There is no figure "dogg" (perhaps dog), and no file of that name.\n']);
  });
  test('check gives line and column, and 1 only for what cannot be made', async () => {
    const wrong = await run('figure check a.txt', { 'a.txt': 'balloon dog: 260 in body\n  bubbel 3 nose' });
    expect([wrong.code, wrong.out]).toEqual([1, expect.stringContaining('a.txt:2:3: “bubbel” does not start a line.')]);
    const long = await run('figure check a.txt', { 'a.txt': 'balloon snake: 260 in body\n  bubble 30 front\n  bubble 40 tail' });
    expect([long.code, long.out]).toEqual([0, expect.stringContaining('a.txt:3:3: note: “snake” runs out of balloon')]);
    expect((await run('figure check dog')).out).toBe('The recipe is in order.\n');
    expect((await run('figure check none.txt', { 'none.txt': '' })).out).toBe('The recipe is in order, and takes no balloon.\n');
  });
  test('picture in chosen colours, of one step, from one side', async () => {
    const { code, files } = await run('figure picture dog --svg dog.svg --colours body=#123456');
    expect(code).toBe(0);
    expect(files.get('dog.svg')).toContain('#123456');
    const step = await run('figure picture dog --svg - --step 2 --view front');
    expect(step.out.length).toBeLessThan(String(files.get('dog.svg')).length);
    expect((await run('figure picture dog --svg - --step 99')).code).toBe(2);
    expect((await run('figure picture dog --svg - --view behind')).code).toBe(2);
    expect((await run('figure picture dog --svg - --colours nose=red')).err).toBe('There is no role "nose"; the recipe has body.\n');
    expect((await run('figure picture dog')).code).toBe(2);
  });
  test('a colour that is none, and a file that cannot be written, are said in a sentence', async () => {
    expect(await run('figure picture dog --svg - --colours body=bleu')).toMatchObject({
      code: 2,
      err: '"bleu" is no colour: write one of the book, a plain name such as red, or #rrggbb.\n',
    });
    const failing = async (path: string): Promise<void> => {
      throw new NotWritten(path, Object.assign(new Error('no'), { code: 'ENOENT' }));
    };
    expect(await run('figure picture dog --svg nowhere/dog.svg', {}, { writeFile: failing })).toMatchObject({
      code: 1,
      err: 'nowhere/dog.svg cannot be written: there is no such folder.\n',
    });
  });
  test('card and board are PDFs', async () => {
    const card = await run('figure card dog --pdf dog.pdf --paper letter');
    expect([card.code, card.out]).toEqual([0, 'The card of dog is in dog.pdf.\n']);
    const board = await run('figure board --book book.yaml --gig brass-whisk --pdf board.pdf --landscape');
    expect([board.code, board.out]).toEqual([0, 'The menu board with 10 figures is in board.pdf.\n']);
    for (const content of [...card.files.values(), ...board.files.values()])
      expect(String.fromCharCode(...(content as Uint8Array).subarray(0, 5))).toBe('%PDF-');
    expect((await run('figure board --book book.yaml --gig nowhere --pdf b.pdf')).code).toBe(1);
    expect((await run('figure card dog --pdf x.pdf --paper A5')).code).toBe(2);
    expect((await run('figure card dog')).err).toBe('Say where to write it: --pdf FILE.\n');
  });
  test('list: what can be made from a place, in time, with few balloons', async () => {
    const { code, out } = await run('figure list --book book.yaml --from case --minutes 4 --balloons 1-3');
    expect(code).toBe(0);
    expect(out).toMatch(/^You can make \d+ figures; (all|\d+) of them from what is in the refill case\./u);
    const read = JSON.parse((await run('figure list --book book.yaml --from case --minutes 4 --balloons 1-3 --makeable --json')).out) as {
      figures: readonly { makes: number | null; facts: { balloons: number; minutes: { p50: number } } }[];
    };
    expect(read.figures.length).toBeGreaterThan(0);
    for (const { makes, facts } of read.figures) {
      expect(makes).not.toBe(0);
      expect(facts.balloons).toBeLessThanOrEqual(3);
      expect(facts.minutes.p50).toBeLessThanOrEqual(4);
    }
    expect((await run('figure list --balloons few')).code).toBe(2);
    expect((await run('figure list --balloons 3-1')).err).toBe('--balloons takes the smaller number first, such as 1-3.\n');
    expect((await run('figure list --book book.yaml --from attic')).code).toBe(1);
    expect((await run('figure list')).out).toMatch(/^\d\d figures\./u);
    expect((await run('figure list')).out).toMatch(/^ *Two kissing dogs +pair-of-dogs +3\.4 min/mu);
  });
  test('rescaling keeps the looks and works out air anew', async () => {
    const { code, out } = await run('figure show dog --rescale 260=160');
    expect(code).toBe(0);
    expect(out).toContain('balloon dog: 160 in body');
    expect((await run('figure show dog --rescale 260=round-5')).code).toBe(1);
    expect((await run('figure show dog --rescale 260')).code).toBe(2);
  });
  interface Calibrated {
    readonly calibrations: readonly {
      readonly maker?: string;
      readonly tests: number;
      readonly working: {
        readonly flat: { readonly mean: number; readonly prior: { readonly mean: number } };
        readonly stretch: { readonly parts: { readonly own: number } };
      };
    }[];
    readonly figures: readonly { readonly figure: string; readonly says: string }[];
    readonly saved: boolean;
  }
  test('the two-minute test moves the numbers towards what was measured, and says which figures change', async () => {
    const { code, out } = await run('figure calibrate 260 --maker Own --flat 10.2,10.3,10.4 --full 54 --twists 10,6,2.4');
    expect([code, out.split('\n')[0]]).toEqual([0, '260 of Own: 10.5 in flat, 55.7 in blown up.']);
    expect(out).toMatch(/^1 test of these balloons\.$/mu);
    expect(out).toMatch(/flat working length, in +11\.00 \(10\.36 to 11\.64\) +10\.50 \(10\.0\d to 10\.9\d\) +3 +72 % +0 %/u);
    expect(out).toMatch(/^\d+ figures change; the verdict of \S+ does\.$/mu);
    const shown = JSON.parse((await run('figure calibrate 260 --flat 10.5,10.6,10.4 --json')).out) as Calibrated;
    const [first] = shown.calibrations;
    expect(first?.working.flat.mean).toBeLessThan(first?.working.flat.prior.mean ?? 0);
    expect(first?.working.flat.mean).toBeGreaterThan(10.5);
    expect(first?.working.stretch.parts.own).toBe(0);
    expect(shown.saved).toBe(false);
  });
  const testedBook = `book: 1
business: { name: Six Turns, currency: GBP, zone: Europe/London, ruler: cm }
colours: [{ id: red, name: red }]
items: [{ id: 260-red, kind: balloon, size: 260, colour: red, maker: Larkfield }]
balloonTests:
  - { id: t1, day: 2026-05-02, size: 260, maker: Osprey, flatInches: [10.4, 10.6] }
`;
  test('tests of the book are read, by maker; one more is put into the file only with --save', async () => {
    const book = { 'own.yaml': testedBook };
    const read = await run('figure calibrate 260 --book own.yaml --json', book);
    const { calibrations } = JSON.parse(read.out) as Calibrated;
    expect(calibrations.map(({ maker, tests }) => [maker, tests])).toEqual([
      ['Osprey', 1],
      ['Larkfield', 0],
    ]);
    expect((await run('figure calibrate 260 --book own.yaml', book)).out).toMatch(/^260 of Osprey: 27\.1 cm flat, /mu);
    const more = 'figure calibrate 260 --book own.yaml --maker larkfield --flat 11,11.2 --item 260-red';
    expect((await run(more, book)).files.size).toBe(0);
    const saved = await run(`${more} --save`, book);
    expect([saved.code, saved.out.trim().split('\n').at(-1)]).toEqual([0, 'The test is in own.yaml now.']);
    expect(saved.files.get('own.yaml')).toContain(
      '- { id: 260-2026-06-01, day: 2026-06-01, size: "260", maker: larkfield, item: 260-red, flatInches: [ 11, 11.2 ] }',
    );
    const again = await run('figure calibrate 260 --book own.yaml --maker Larkfield --json', {
      'own.yaml': String(saved.files.get('own.yaml')),
    });
    expect((JSON.parse(again.out) as Calibrated).calibrations.map(({ maker, tests }) => [maker, tests])).toEqual([['larkfield', 1]]);
  });
  test('a figure says on whose measurements its air rests', async () => {
    expect((await run('figure show dog --book book.yaml --colourway red')).out).toMatch(
      /^260 of Ardle & Wynn: 3 tests of these balloons, 1 test of /mu,
    );
    expect((await run('figure show dog')).out).not.toContain('tests of these balloons');
  });
  test('a test in an example book is laid back to the days of the file', async () => {
    const example = testedBook.replace('book: 1', 'book: 1\nlaidOn: 2026-05-02');
    const { files } = await run('figure calibrate 260 --book own.yaml --flat 11 --save', { 'own.yaml': example });
    expect(files.get('own.yaml')).toContain('day: 2026-05-04, size: "260", flatInches: [ 11 ] }');
  });
  test.each([
    ['figure calibrate 260 --flat 40', 1, 'A flat length of 40 in cannot be right; expected 3.3 to 22 in.'],
    ['figure calibrate 260 --flat 11 --full 9', 1, 'A full length of 9 in is no longer than a flat balloon of the same test, 11 in.'],
    ['figure calibrate 260 --flat 11 --item gone', 1, 'names the item "gone", which the book does not have.'],
    ['figure calibrate 260 --flat long', 2, '--flat and --full take inches with commas between'],
    ['figure calibrate 260 --flat 11 --save', 2, 'Say which book to save it in: --book FILE.'],
    ['figure calibrate 260 --book book.yaml --save', 2, 'There is nothing to save: give --flat, --full or --twists.'],
    ['figure calibrate round-5', 1, '"round-5" is no size code of a tube.'],
  ])('%s ends with %i', async (words, code, sentence) => {
    const ran = await run(words);
    expect(ran.code).toBe(code);
    expect(ran.err).toContain(sentence);
  });
  test('in learning order no figure is far harder than the one before it', async () => {
    const { figures } = JSON.parse((await run('figure list --learning --json')).out) as {
      figures: readonly { facts: { techniques: readonly string[] } }[];
    };
    const known = new Set<string>();
    for (const { facts } of figures.slice(0, 12)) {
      expect(facts.techniques.filter((technique) => !known.has(technique)).length).toBeLessThanOrEqual(2);
      for (const technique of facts.techniques) known.add(technique);
    }
  });
  test('words: the notation at a glance', async () => {
    expect((await run('figure words')).out).toMatch(/^ *pinch 1 ear +a small one, its two ends turned together$/mu);
    const { words } = JSON.parse((await run('figure words --json')).out) as { words: readonly { words: readonly { word: string }[] }[] };
    expect(words.flatMap((kind) => kind.words.map(({ word }) => word))).toEqual(
      expect.arrayContaining(['balloon', 'rest', 'up', 'minutes']),
    );
  });
  test('what is not understood ends with 2', async () => {
    expect((await run('figure fly dog')).code).toBe(2);
    expect((await run('figure show')).code).toBe(2);
    expect((await run('figure show dog --landscape')).err).toBe('--landscape does not go with "figure show".\n');
  });
});

describe('frame', () => {
  test('the fewest balloons of a ready-made frame', async () => {
    const { code, out } = await run('frame --solid cube');
    expect([code, out.split('\n')[0]]).toEqual([0, 'cube takes 4 balloons; fewer are not possible.']);
    const shown = JSON.parse((await run('frame --solid prism_6 --length 55 --json')).out) as {
      leastBalloons: number;
      trails: readonly unknown[];
    };
    expect(shown.trails.length).toBe(6);
  });
  test('a file of edges, in colours, with pops', async () => {
    const square = 'edge A B 10 red\nedge B C 10 red\nedge C D 10 blue\nedge D A 10 blue\nedge A C 12 red\n';
    const plain = await run('frame a.txt --one-colour', { 'a.txt': square });
    expect(plain.out.split('\n')[0]).toBe('This frame takes one balloon; fewer are not possible.');
    const coloured = await run('frame a.txt', { 'a.txt': square });
    expect(coloured.out).toContain('blue, 20 in: ');
    expect((await run('frame a.txt --pops --balloons 1 --closed', { 'a.txt': square })).out).toContain('(pop)');
    expect((await run('frame a.txt --recipe', { 'a.txt': square })).out).toContain('balloon ');
    expect((await run('frame a.json', { 'a.json': '{"edges":[{"from":"A","to":"B","lengthInches":5}]}' })).code).toBe(0);
  });
  test('refusals say where', async () => {
    const wrong = await run('frame a.txt', { 'a.txt': 'edge A B five' });
    expect([wrong.code, wrong.err]).toEqual([1, expect.stringContaining('a.txt:1:10: “five” is not a length.')]);
    expect((await run('frame a.json', { 'a.json': '{' })).code).toBe(1);
    expect((await run('frame --solid cube --length 2')).code).toBe(1);
    expect((await run('frame nowhere.txt')).code).toBe(1);
    for (const words of ['frame', 'frame a.txt --solid cube', 'frame --solid cube --balloons 2']) expect((await run(words)).code).toBe(2);
    expect((await run('frame --solids')).out).toContain('icosahedron');
  });
});
