import type { Artist, Business, Client, Place, Supplier } from '@twistwright/books';
import { money, time } from '@twistwright/units';

/** Everybody and everything here is invented, the town of Wrenmouth as well. Numbers and addresses lead nowhere. */
export const business: Business = {
  name: 'Pell & Otter, balloon figures',
  currency: 'GBP',
  zone: 'Europe/London',
  country: 'GB',
  town: 'Wrenmouth',
  contact: {
    person: 'Tansy Pell',
    phone: '+44 1632 960 014',
    email: 'hello@pell-and-otter.example',
    site: 'https://pell-and-otter.example',
    address: '4 Ropewalk Steps, Wrenmouth',
  },
  ruler: 'in',
  paper: 'A4',
};

export const artists: readonly Artist[] = [
  { id: 'tansy', name: 'Tansy Pell', pace: 1 },
  {
    id: 'otis',
    name: 'Otis Otter',
    pace: 1.35,
    figures:
      'dog dachshund horse giraffe rabbit mouse snake swan butterfly turtle sword flower-six smiling-flower tulip flower-bracelet spotted-bracelet helmet crown heart-wand fish parrot heart'.split(
        ' ',
      ),
  },
];

export const places: readonly Place[] = [
  { id: 'home', name: 'shelf at home', kind: 'home' },
  { id: 'car', name: 'cool box in the car', kind: 'car', room: 1500 },
  { id: 'case', name: 'refill case', kind: 'case', room: 900 },
  {
    id: 'apron',
    name: 'apron',
    kind: 'apron',
    room: 400,
    pockets: [
      '260-white',
      '260-black',
      '260-red',
      '260-orange',
      '260-yellow',
      '260-green',
      '260-blue',
      '260-violet',
      '260-pink',
      '260-brown',
      '160-green',
      '160-black',
    ],
  },
];

export const suppliers: readonly Supplier[] = [
  {
    id: 'fernhallow',
    name: 'Fernhallow Balloon Post',
    leadWorkingDays: 4,
    orderBefore: time('12:00'),
    carriage: money(395),
    freeFrom: money(4500),
    leastOrder: money(1500),
    site: 'https://fernhallow.example',
  },
  {
    id: 'brackwater',
    name: 'Brackwater Wholesale',
    leadWorkingDays: 6,
    orderBefore: time('10:30'),
    carriage: money(795),
    freeFrom: money(9000),
    leastOrder: money(3000),
    site: 'https://brackwater.example',
  },
  { id: 'ropewalk', name: 'Ropewalk Party Counter', leadWorkingDays: 0, carriage: money(0) },
];

export const clients: readonly Client[] = [
  { id: 'library', name: 'Wrenmouth Library', contact: { person: 'Ines Marlow', email: 'desk@wrenmouth-library.example' } },
  { id: 'oven', name: 'The Brass Whisk', contact: { person: 'Rafi Coyle', phone: '+44 1632 960 071' } },
  { id: 'school', name: 'Gull Lane School', contact: { person: 'the office', email: 'office@gull-lane.example' } },
  { id: 'family-arden', name: 'family Arden', contact: { person: 'Jo Arden', phone: '+44 1632 960 032' } },
  { id: 'hall', name: 'Saltings Hall', contact: { person: 'Mina Voss', email: 'events@saltings-hall.example' } },
  { id: 'harbour', name: 'Wrenmouth Harbour Committee', contact: { person: 'Piet Lowe', email: 'harbour-day@wrenmouth.example' } },
  { id: 'garden', name: 'Plumtree Garden', contact: { person: 'Anouk Field', phone: '+44 1632 960 088' } },
  { id: 'bookshop', name: 'Lamplight Books', contact: { person: 'Theo Banks', email: 'theo@lamplight.example' } },
];
