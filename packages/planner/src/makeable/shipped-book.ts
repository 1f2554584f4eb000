import { type Book, type Business, emptyBook, type Figure } from '@twistwright/books';
import { type FigureGroup, plainColours, type ShippedFigure, shippedFigures } from '@twistwright/repertoire';

/** A shipped figure as a figure of a book. */
export const figureOfShipped = ({ id, name, recipe, minutes, difficulty, tags, colourways }: ShippedFigure): Figure => ({
  id,
  name,
  recipe: recipe.trimStart(),
  colourways,
  minutes: { law: 'log-normal', median: minutes.median, sigma: minutes.sigma },
  difficulty,
  tags,
});

/** A book with the shipped figures and colours and nothing else: what can be asked before there is a book. */
export const shippedBook = (business: Business): Book => ({
  ...emptyBook(business),
  colours: plainColours.map((id) => ({ id, name: id })),
  figures: shippedFigures.map(figureOfShipped),
});

/** Headings of a menu board in its order; the last is for everything else. */
export const figureGroups = [
  'animals',
  'birds',
  'sea',
  'insects',
  'flowers',
  'hats',
  'swords and wands',
  'bracelets',
  'hearts',
  'vehicles',
  'toys',
  'letters and numbers',
  'more',
] as const satisfies readonly (FigureGroup | 'more')[];
export type GroupName = (typeof figureGroups)[number];

/** Words in a name or id by which a figure of one's own finds its group. */
const words: readonly (readonly [GroupName, RegExp])[] = [
  ['swords and wands', /\b(sword|foil|wand|sabre)\b/u],
  ['bracelets', /\bbracelet\b/u],
  ['hats', /\b(hat|crown|helmet|tiara)\b/u],
  ['flowers', /\b(flower|tulip|rose|daisy|bouquet|carnation)\b/u],
  ['hearts', /\bheart\b/u],
];
const shippedGroup = (id: string): GroupName | undefined => shippedFigures.find((figure) => figure.id === id)?.group;

/**
 * The heading under which a figure stands on a menu board: one of its tags if that is a heading, else that of the shipped figure of its id or
 * whose id its own ends with, else by a word in its name.
 * @example groupOfFigure({ id: 'big-elephant', name: 'Big elephant', colourways: [] }) // -> 'animals'
 */
export function groupOfFigure(figure: Figure): GroupName {
  const tagged = figureGroups.find((group) => figure.tags?.includes(group));
  if (tagged !== undefined) return tagged;
  const shipped = shippedGroup(figure.id);
  if (shipped !== undefined) return shipped;
  const text = `${figure.id.replaceAll('-', ' ')} ${figure.name}`.toLowerCase();
  const named = words.find(([, pattern]) => pattern.test(text));
  if (named !== undefined) return named[0];
  const last = figure.id.split('-').at(-1) ?? '';
  return shippedGroup(last) ?? 'more';
}
