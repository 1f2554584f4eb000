import type { Figure } from '@twistwright/books';
import type { PieceNeed } from '@twistwright/repertoire';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coloursOf } from './colours-of-figure.ts';

const piece = (role: string, size = '260', count = 1): PieceNeed => ({ name: role, role, size, count });
const figure = (...fills: readonly (readonly [Record<string, string>, number])[]): Figure => ({
  id: 'f',
  name: 'figure',
  colourways: fills.map(([fill, share], w) => ({ id: `way ${w}`, name: `way ${w}`, fill, share })),
});

test('colourways that are every combination are roles, each by itself, with the shares of their colours', () => {
  const all = figure(
    [{ body: 'red', eyes: 'white' }, 3],
    [{ body: 'red', eyes: 'black' }, 1],
    [{ body: 'blue', eyes: 'white' }, 2],
    [{ body: 'blue', eyes: 'black' }, 1],
  );
  expect(coloursOf(all, [piece('body'), piece('eyes', 'round-5', 2)])).toEqual({
    roles: [
      {
        name: 'body',
        size: '260',
        pieces: 1,
        colours: [
          { colour: 'red', preference: 4 },
          { colour: 'blue', preference: 3 },
        ],
      },
      {
        name: 'eyes',
        size: 'round-5',
        pieces: 2,
        colours: [
          { colour: 'white', preference: 5 },
          { colour: 'black', preference: 2 },
        ],
      },
    ],
  });
});

test('colourways that are not stay together, and only the roles that have to', () => {
  const unicorn = figure(
    [{ body: 'white', horn: 'yellow', mane: 'pink' }, 5],
    [{ body: 'pink', horn: 'yellow', mane: 'violet' }, 3],
    [{ body: 'sky', horn: 'yellow', mane: 'white' }, 2],
  );
  const colours = coloursOf(unicorn, [piece('body'), piece('horn', '160'), piece('mane', '160')]);
  expect(colours.roles.map((role) => role.name)).toEqual(['horn']);
  expect(colours.combinations).toEqual([
    {
      name: 'body and mane',
      ways: [
        [5, 'white', 'pink'],
        [3, 'pink', 'violet'],
        [2, 'sky', 'white'],
      ].map(([preference, body, mane]) => ({
        preference,
        pieces: [
          { size: '260', colour: body, count: 1 },
          { size: '160', colour: mane, count: 1 },
        ],
      })),
    },
  ]);
});

test('a role in two sizes is one colour in both', () => {
  const { roles, combinations } = coloursOf(figure([{ body: 'red' }, 1], [{ body: 'blue' }, 1]), [
    piece('body'),
    piece('body', 'round-11'),
  ]);
  expect(roles).toEqual([]);
  expect(combinations?.[0]?.ways.map((way) => way.pieces.map((one) => `${one.size} ${one.colour}`))).toEqual([
    ['260 red', 'round-11 red'],
    ['260 blue', 'round-11 blue'],
  ]);
});

test('whatever the colourways, just these can be made', () => {
  const colour = fc.constantFrom('red', 'blue');
  const fills = fc.array(fc.tuple(colour, colour, colour, colour), { minLength: 1, maxLength: 8 });
  const names = ['a', 'b', 'c', 'd'];
  fc.assert(
    fc.property(fills, (ways) => {
      const listed = ways.map((way) => [Object.fromEntries(names.map((name, r) => [name, way[r] ?? ''])), 1] as const);
      // Each role has a size of its own, which tells the pieces apart.
      const { roles, combinations = [] } = coloursOf(
        figure(...listed),
        names.map((name, r) => piece(name, `size ${r}`)),
      );
      const parts = [
        ...roles.map((role) => role.colours.map((one) => [`${role.size} ${one.colour}`])),
        ...combinations.map((one) => one.ways.map((way) => way.pieces.map((needed) => `${needed.size} ${needed.colour}`))),
      ];
      const made = parts.reduce<string[][]>((some, part) => some.flatMap((one) => part.map((more) => [...one, ...more])), [[]]);
      const keys = (all: readonly (readonly string[])[]): readonly string[] =>
        [...new Set(all.map((one) => [...one].sort().join()))].sort();
      expect(keys(made)).toEqual(keys(ways.map((way) => way.map((of, r) => `size ${r} ${of}`))));
    }),
    { seed: 6, numRuns: 300 },
  );
});
