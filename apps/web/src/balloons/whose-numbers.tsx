import { Link } from '@tanstack/react-router';
import { type Book, type Colourway, tubesTaken, workingsOf } from '@twistwright/books';
import type { Recipe } from '@twistwright/repertoire';
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
  const workings = workingsOf(book);
  const kinds = tubesTaken(book, recipe, way);
  const [first] = kinds;
  if (first === undefined) return null;
  return (
    <div className="whose">
      <ul>
        {kinds.map(({ size, maker }) => (
          <li key={`${size.code} ${maker}`}>
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
