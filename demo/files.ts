import { writeBook } from '@twistwright/contract';
import { demoBook } from './book.ts';
import { priceLists } from './price-lists.ts';

const heading = `# The demo book of Twistwright: an invented business in the invented town of Wrenmouth. All names, addresses, places and prices are
# invented. Its dates are laid around a Monday and move by whole weeks to the day on which it is opened.
# Made by demo/make.ts; change the data there.
`;

/** The files of the demo by name: what `make.ts` writes. */
export const demoFiles = (): Readonly<Record<string, string>> => ({
  'book.yaml': heading + writeBook(demoBook, 'yaml'),
  ...Object.fromEntries(Object.entries(priceLists).map(([name, text]) => [`prices/${name}`, text])),
});
