import { Link } from '@tanstack/react-router';
import { type Book, type Colourway, makersOf, sizesOf, workingsOf } from '@twistwright/books';
import { isTube, type Recipe, sizeOf } from '@twistwright/repertoire';
import type { ReactElement } from 'react';
import './balloons.css';
import { weightSentence, whoseWords } from './balloon-words.ts';

interface WhoseNumbersProps {
  readonly book: Book;
  readonly recipe: Recipe;
  readonly way: Colourway | undefined;
}

/** On whose measurements air and tail of a figure rest, and where to measure. */
export function WhoseNumbers({ book, recipe, way }: WhoseNumbersProps): ReactElement | null {
  const sizes = sizesOf(book);
  const workings = workingsOf(book);
  const makerOf = makersOf(book)(way);
  const kinds = new Map(
    recipe.pieces.flatMap((piece) => {
      const size = sizeOf(piece.size, sizes);
      if (size === undefined || !isTube(size)) return [];
      const maker = makerOf(piece);
      return [[JSON.stringify([size.code, maker]), { size, maker }] as const];
    }),
  );
  const [first] = kinds.values();
  if (first === undefined) return null;
  return (
    <div className="whose">
      <ul>
        {[...kinds].map(([key, { size, maker }]) => (
          <li key={key}>
            <b>
              {size.code} {whoseWords(maker)}:
            </b>{' '}
            {weightSentence(workings(size, maker))}
          </li>
        ))}
      </ul>
      <Link
        className="btn noprint"
        to="/repertoire/your-balloons"
        search={{ size: first.size.code, ...(first.maker === undefined ? {} : { maker: first.maker }) }}
      >
        Measure your balloons
      </Link>
    </div>
  );
}
