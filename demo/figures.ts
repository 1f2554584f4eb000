import type { Figure } from '@twistwright/books';
import { type ShippedFigure, shippedFigures } from '@twistwright/repertoire';
import { ownFigures } from './own-figures.ts';

/** The shipped figures that the business makes, by id. */
const made =
  'dog dachshund poodle horse unicorn giraffe rabbit mouse cat elephant bear lion monkey pig snake turtle swan parrot penguin hummingbird fish octopus butterfly bee ladybird caterpillar flower-six flower-eight tulip helmet crown antenna-hat rabbit-ears-hat sword foil heart-wand star-wand flower-bracelet heart-bracelet heart car rocket'.split(
    ' ',
  );

const figureOf = ({ id, name, recipe, colourways, minutes, difficulty, tags }: ShippedFigure): Figure => ({
  id,
  name,
  recipe: recipe.trimStart(),
  colourways,
  minutes: { law: 'log-normal', ...minutes },
  difficulty,
  tags,
});

export const figures: readonly Figure[] = [...shippedFigures.filter((figure) => made.includes(figure.id)).map(figureOf), ...ownFigures];
