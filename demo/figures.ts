import type { Colourway, Figure } from '@twistwright/books';

type Ways = Readonly<Record<string, string>>;
/** "body brown, nose black" -> {body: 'brown', nose: 'black'}. */
const fill = (text: string): Readonly<Record<string, string>> =>
  Object.fromEntries(text.split(', ').map((part) => part.split(' ') as [string, string]));
/** Colourways by name; a name that ends in "xN" is asked for N times as often as the others. */
const waysOf = (ways: Ways): readonly Colourway[] =>
  Object.entries(ways).map(([title, colours]) => {
    const [, name = title, share] = /^(.*?)(?: x([\d.]+))?$/.exec(title) ?? [];
    return { id: name.replaceAll(' ', '-'), name, ...(share === undefined ? {} : { share: Number(share) }), fill: fill(colours) };
  });
const one = (role: string, names: string): Ways =>
  Object.fromEntries(names.split(' ').map((name) => [name.replace('*', ' x'), `${role} ${name.replace(/\*.*/, '')}`]));

const figure = (
  id: string,
  name: string,
  pieces: readonly string[],
  minutes: number,
  difficulty: number,
  tags: string,
  ways: Ways,
  more: Partial<Figure> = {},
): Figure => ({
  id,
  name,
  recipe: `${pieces.map((piece) => `balloon ${piece}`).join('\n')}\n`,
  colourways: waysOf(ways),
  minutes: { law: 'log-normal', median: minutes, sigma: 0.3 },
  difficulty,
  tags: tags.split(', '),
  ...more,
});
const drawn = { extras: [{ item: 'marker-black', count: 0, minutes: 0.2 }] } as const;
const onAStick = { extras: [{ item: 'stick', count: 1, minutes: 0.1 }] } as const;

/** Folk figures in general circulation; minutes are the pace of an experienced pair of hands, common practice without a published source. */
export const figures: readonly Figure[] = [
  figure('dog', 'dog', ['dog: 260 in body'], 0.8, 1, 'animal, stands', one('body', 'brown*2 white black blue pink red')),
  figure('dachshund', 'sausage dog', ['dog: 260 in body'], 0.7, 1, 'animal, stands', one('body', 'brown*2 black orange')),
  figure('horse', 'horse', ['horse: 260 in body'], 0.9, 1, 'animal, stands', one('body', 'brown*2 white grey')),
  figure('unicorn', 'unicorn', ['horse: 260 in body', 'horn: 160 in horn', 'mane: 160 in mane'], 2.2, 3, 'animal', {
    'white and pink x3': 'body white, horn yellow, mane pink',
    'pink and white': 'body pink, horn white, mane violet',
    violet: 'body violet, horn yellow, mane white',
  }),
  figure('giraffe', 'giraffe', ['giraffe: 260 in body'], 1, 2, 'animal, stands', one('body', 'yellow*3 orange'), drawn),
  figure('poodle', 'poodle', ['poodle: 260 in body'], 1.4, 3, 'animal, stands', one('body', 'white*2 pink black')),
  figure('rabbit', 'rabbit', ['rabbit: 260 in body'], 1, 2, 'animal', one('body', 'white*2 grey brown pink')),
  figure('mouse', 'mouse', ['mouse: 260 in body'], 0.5, 1, 'animal, small', one('body', 'grey*2 white pink')),
  figure('cat', 'cat', ['cat: 260 in body', 'face: heart-6 in face'], 1.6, 3, 'animal', {
    'brown x2': 'body brown, face blush',
    black: 'body black, face white',
    grey: 'body grey, face white',
  }),
  figure('elephant', 'elephant', ['elephant: 350 in body', 'eyes: round-5 in eyes, printed eyes'], 1.5, 3, 'animal', {
    'grey x3': 'body grey, eyes white',
    pink: 'body pink, eyes white',
  }),
  figure('bear', 'bear', ['bear: 260 in body', 'muzzle: 260 in muzzle'], 2.6, 4, 'animal, hug', {
    'brown x3': 'body brown, muzzle blush',
    white: 'body white, muzzle black',
    pink: 'body pink, muzzle white',
  }),
  figure('monkey', 'monkey', ['monkey: 260 in body', 'face: 321 in face'], 2.4, 4, 'animal', {
    brown: 'body brown, face blush',
    black: 'body black, face brown',
  }),
  figure(
    'monkey-palm',
    'monkey in a palm',
    ['palm: 260 in leaves', 'trunk: 260 in trunk', 'monkey: 160 in monkey'],
    3.8,
    5,
    'animal, show-piece',
    {
      usual: 'leaves green, trunk brown, monkey brown',
    },
  ),
  figure('snake', 'snake', ['snake: 260 in body', 'tongue: 160 in tongue'], 0.7, 1, 'animal, wearable', {
    'green x3': 'body green, tongue red',
    orange: 'body orange, tongue black',
    black: 'body black, tongue red',
  }),
  figure('swan', 'swan', ['swan: 260 in body'], 1, 2, 'bird', one('body', 'white*4 pink black')),
  figure('parrot', 'parrot on a perch', ['parrot: 260 in body', 'tail: 260 in tail'], 1.2, 2, 'bird', {
    'red x2': 'body red, tail yellow',
    blue: 'body blue, tail yellow',
    green: 'body green, tail red',
  }),
  figure('hummingbird', 'hummingbird', ['bird: 260 in body'], 0.9, 2, 'bird', one('body', 'green violet blue')),
  figure('penguin', 'penguin', ['coat: 260 in coat', 'belly: 260 in belly', 'beak: 160 in beak'], 2.4, 4, 'bird, stands', {
    usual: 'coat black, belly white, beak orange',
  }),
  figure('butterfly', 'butterfly', ['wings: 260 in wings', 'body: 160 in body'], 1.1, 2, 'insect, wearable', {
    'pink x2': 'wings pink, body black',
    violet: 'wings violet, body black',
    sky: 'wings sky, body black',
    yellow: 'wings yellow, body black',
  }),
  figure('bee', 'bee bracelet', ['bee: 321 in body', 'wings: 160 in wings', 'band: 260 in band'], 1.3, 2, 'insect, wearable', {
    usual: 'body yellow, wings white, band black',
  }),
  figure('ladybird', 'ladybird bracelet', ['back: round-5 in back, printed spots', 'band: 260 in band'], 0.8, 1, 'insect, wearable', {
    usual: 'back red, band black',
  }),
  figure('turtle', 'turtle', ['turtle: 260 in body'], 0.8, 2, 'animal, small', one('body', 'green*3 brown')),
  figure(
    'octopus',
    'octopus',
    ['head: round-11 in head', 'arms: 260 in arms, x 4', 'eyes: round-5 in eyes, printed eyes'],
    3,
    3,
    'animal, show-piece',
    {
      red: 'head red, arms red, eyes white',
      yellow: 'head yellow, arms orange, eyes white',
    },
  ),
  figure(
    'sword',
    'sword',
    ['sword: 260 in blade'],
    0.6,
    1,
    'toy, not where swords are unwelcome',
    one('blade', 'blue*2 red*2 green black orange sky'),
  ),
  figure(
    'sword-mirror',
    'knight’s sword',
    ['blade: 260 in blade, finish mirror', 'grip: 260 in grip'],
    1.3,
    2,
    'toy, not where swords are unwelcome',
    {
      silver: 'blade silver, grip black',
      gold: 'blade gold, grip red',
    },
  ),
  figure('flower', 'flower', ['petals: 260 in petals', 'stem: 260 in stem'], 1.1, 2, 'flower', {
    'pink x2': 'petals pink, stem green',
    red: 'petals red, stem green',
    yellow: 'petals yellow, stem green',
    violet: 'petals violet, stem green',
    white: 'petals white, stem green',
    orange: 'petals orange, stem green',
  }),
  figure('daisy', 'daisy', ['outer: 260 in outer', 'inner: 260 in inner', 'stem: 260 in stem'], 1.7, 3, 'flower', {
    'white x2': 'outer white, inner yellow, stem green',
    rose: 'outer rose, inner pink, stem green',
  }),
  figure('tulip', 'tulip', ['tulip: 260 in petals', 'leaf: 160 in leaf'], 0.6, 1, 'flower', {
    red: 'petals red, leaf green',
    yellow: 'petals yellow, leaf green',
    rose: 'petals rose, leaf green',
  }),
  figure('posy', 'flower bracelet', ['flower: flower-6 in flower', 'band: 160 in band'], 0.8, 1, 'flower, wearable', {
    'pink x2': 'flower pink, band green',
    white: 'flower white, band green',
    violet: 'flower violet, band green',
  }),
  figure('helmet', 'helmet hat', ['helmet: 260 in band'], 0.8, 1, 'hat, wearable', one('band', 'red blue green orange violet')),
  figure('spiral-hat', 'spiral hat', ['band: 260 in band', 'spiral: 260 in spiral'], 1.4, 2, 'hat, wearable', {
    'red and yellow': 'band red, spiral yellow',
    'blue and sky': 'band blue, spiral sky',
    'violet and pink': 'band violet, spiral pink',
    'green and orange': 'band green, spiral orange',
  }),
  figure(
    'antenna-hat',
    'antenna hat',
    ['band: 260 in band', 'antennae: 160 in antennae, x 2', 'balls: round-5 in balls, x 2'],
    1.8,
    2,
    'hat, wearable',
    {
      green: 'band green, antennae yellow, balls red',
      sky: 'band sky, antennae white, balls orange',
    },
  ),
  figure('crown', 'crown', ['crown: 260 in crown', 'jewel: 160 in jewel'], 2, 3, 'hat, wearable', {
    'yellow x2': 'crown yellow, jewel red',
    pink: 'crown pink, jewel white',
  }),
  figure(
    'heart-wand',
    'heart wand',
    ['heart: heart-6 in heart', 'wand: 260 in wand'],
    0.9,
    1,
    'wand',
    {
      'red x2': 'heart red, wand white',
      pink: 'heart pink, wand white',
    },
    onAStick,
  ),
  figure('star-wand', 'star wand', ['star: 160 in star', 'wand: 260 in wand'], 1.9, 3, 'wand', {
    yellow: 'star yellow, wand blue',
    pink: 'star pink, wand white',
  }),
  figure('rocket', 'rocket', ['body: 646 in body', 'fins: 260 in fins, x 2', 'window: round-5 in window'], 2.2, 3, 'vehicle, show-piece', {
    red: 'body red, fins white, window yellow',
    blue: 'body blue, fins orange, window white',
  }),
  figure('fish', 'fish', ['fish: 350 in body', 'eyes: round-5 in eyes, printed eyes'], 1.3, 2, 'animal', {
    'blue x2': 'body blue, eyes white',
    yellow: 'body yellow, eyes white',
    red: 'body red, eyes white',
  }),
  figure(
    'table-flower',
    'bunch for a table',
    ['petals: 260 in petals, x 3', 'hearts: 260 in hearts, x 3', 'stems: 260 in stems, x 3', 'foot: round-11 in foot'],
    7,
    4,
    'flower, stands, show-piece',
    {
      'rose and white': 'petals rose, hearts white, stems green, foot white',
      'violet and white': 'petals violet, hearts white, stems green, foot white',
    },
  ),
];
