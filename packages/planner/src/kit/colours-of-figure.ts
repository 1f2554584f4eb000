import type { Colourway, Figure } from '@twistwright/books';
import type { PieceNeed } from '@twistwright/repertoire';
import type { KitCombination, KitFigure, KitPieces, KitRole } from './kit-problem.ts';

/** A colour and finish of one role. */
interface Fill {
  readonly colour: string;
  readonly finish: string | undefined;
}
/** A colourway as far as the pieces of the recipe are concerned. */
interface Way {
  readonly fills: readonly Fill[];
  readonly preference: number;
}

/**
 * How the colours of a figure go together. A figure is made in one of its colourways. Where the colourways are every combination of some
 * colours (each body with each pair of eyes), those roles are filled each by itself, which says the same and is far easier to search; where
 * they are not (white with a pink mane, sky with a white one), the roles belong together and the colourways stay what they are. Roles are
 * parted as finely as the colourways allow. Preferences of parts are what the shares of the colourways sum to.
 */
export function coloursOf(figure: Figure, pieces: readonly PieceNeed[]): Pick<KitFigure, 'roles' | 'combinations'> {
  const names = [...new Set(pieces.map((piece) => piece.role))];
  const ways = waysOf(figure.colourways, names, pieces);
  // No colourway fills every role: each role for itself, so that what is missing can be said of it.
  if (ways.length === 0) return { roles: names.flatMap((name) => rolesOf(pieces, name, figure.colourways)) };
  const roles: KitRole[] = [];
  const combinations: KitCombination[] = [];
  for (const part of partsOf(ways, names.length)) {
    const own = part.map((r) => names[r] ?? '');
    const needs = own.map((name) => groupsOf(pieces, name));
    const projected = projectedOn(ways, part);
    const only = needs[0]?.[0];
    if (part.length === 1 && needs[0]?.length === 1 && only !== undefined) roles.push(roleOf(only, projected));
    else
      combinations.push({
        name: listed(own),
        ways: projected.map(({ fills, preference }) => ({
          preference,
          pieces: needs.flatMap((groups, r) => groups.map((piece) => piecesIn(piece, fills[r]))),
        })),
      });
  }
  return { roles, ...(combinations.length === 0 ? {} : { combinations }) };
}

/** The colourways that fill every role, alike ones joined. */
function waysOf(colourways: readonly Colourway[], names: readonly string[], pieces: readonly PieceNeed[]): readonly Way[] {
  const finishOf = (name: string): boolean => pieces.some((piece) => piece.role === name && piece.finish === undefined);
  const ways = colourways.flatMap((way): readonly Way[] => {
    const fills = names.flatMap((name): readonly Fill[] => {
      const colour = way.fill[name];
      return colour === undefined ? [] : [{ colour, finish: finishOf(name) ? way.finish : undefined }];
    });
    return fills.length === names.length ? [{ fills, preference: way.share ?? 1 }] : [];
  });
  return joined(ways);
}
function joined(ways: readonly Way[]): readonly Way[] {
  const byKey = new Map<string, Way>();
  for (const way of ways) {
    const key = JSON.stringify(way.fills);
    byKey.set(key, { fills: way.fills, preference: way.preference + (byKey.get(key)?.preference ?? 0) });
  }
  return [...byKey.values()];
}
const projectedOn = (ways: readonly Way[], roles: readonly number[]): readonly Way[] =>
  joined(ways.map(({ fills, preference }) => ({ preference, fills: roles.flatMap((r) => fills[r] ?? []) })));

/** Most roles for which every way to part them is tried; beyond that, roles are only taken out one by one. */
const mostRoles = 10;

/** The finest parting of the roles such that the ways are all combinations of what the parts can be. */
function partsOf(ways: readonly Way[], count: number): readonly (readonly number[])[] {
  const parts: (readonly number[])[] = [];
  let left = Array.from({ length: count }, (_, r) => r);
  while (left.length > 0) {
    const part = smallestPart(ways, left);
    parts.push(part);
    left = left.filter((r) => !part.includes(r));
  }
  return parts;
}
/** The fewest roles, the first of `roles` among them, that can be parted from the others. */
function smallestPart(ways: readonly Way[], roles: readonly number[]): readonly number[] {
  const all = projectedOn(ways, roles).length;
  const [first, ...others] = roles;
  if (first === undefined) return [];
  const tries = others.length < mostRoles ? 2 ** others.length : 1;
  let best: readonly number[] = roles;
  for (let mask = 0; mask < tries; mask++) {
    const part = [first, ...others.filter((_, k) => ((mask >> k) & 1) === 1)];
    if (part.length >= best.length) continue;
    const rest = roles.filter((r) => !part.includes(r));
    if (projectedOn(ways, part).length * projectedOn(ways, rest).length === all) best = part;
  }
  return best;
}

/** The pieces of a role by size, finish and print. */
function groupsOf(pieces: readonly PieceNeed[], role: string): readonly PieceNeed[] {
  const groups = new Map<string, PieceNeed>();
  for (const piece of pieces) {
    if (piece.role !== role) continue;
    const key = JSON.stringify([piece.size, piece.finish, piece.print]);
    groups.set(key, { ...piece, count: piece.count + (groups.get(key)?.count ?? 0) });
  }
  return [...groups.values()];
}
function rolesOf(pieces: readonly PieceNeed[], name: string, colourways: readonly Colourway[]): readonly KitRole[] {
  const ways = joined(
    colourways.flatMap((way) => {
      const colour = way.fill[name];
      return colour === undefined ? [] : [{ fills: [{ colour, finish: way.finish }], preference: way.share ?? 1 }];
    }),
  );
  return groupsOf(pieces, name).map((piece) => roleOf(piece, ways));
}
const roleOf = (piece: PieceNeed, ways: readonly Way[]): KitRole => ({
  name: piece.role,
  size: piece.size,
  pieces: piece.count,
  colours: ways.flatMap(({ fills: [fill], preference }) => {
    const finish = piece.finish ?? fill?.finish;
    return fill === undefined ? [] : [{ colour: fill.colour, preference, ...(finish === undefined ? {} : { finish }) }];
  }),
  ...(piece.finish === undefined ? {} : { finish: piece.finish }),
  ...(piece.print === undefined ? {} : { print: piece.print.toLowerCase() }),
});
function piecesIn(piece: PieceNeed, fill: Fill | undefined): KitPieces {
  const finish = piece.finish ?? fill?.finish;
  return {
    size: piece.size,
    colour: fill?.colour ?? '',
    count: piece.count,
    ...(finish === undefined ? {} : { finish }),
    ...(piece.print === undefined ? {} : { print: piece.print.toLowerCase() }),
  };
}
const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
