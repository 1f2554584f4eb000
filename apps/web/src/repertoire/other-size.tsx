import { sizesOf } from '@twistwright/books';
import { readRecipe, rescale, sizeOf, writeRecipe } from '@twistwright/repertoire';
import { type ReactElement, useState } from 'react';
import { useBook } from '../book/use-book.ts';
import { ChoiceField } from '../parts/field.tsx';

interface OtherSizeProps {
  readonly recipe: string;
  readonly onMade: (recipe: string) => void;
}

/** The same figure from balloons of another size code: bubbles grow or shrink with them, air and tail are worked out anew. */
export function OtherSize({ recipe, onMade }: OtherSizeProps): ReactElement {
  const { book } = useBook();
  const sizes = sizesOf(book);
  const read = readRecipe(recipe, sizes);
  const used = read.ok ? [...new Set(read.value.pieces.map((piece) => piece.size))] : [];
  const [from, setFrom] = useState<string>();
  const [to, setTo] = useState<string>();
  const chosen = from !== undefined && used.includes(from) ? from : used[0];
  const shape = chosen === undefined ? undefined : sizeOf(chosen, sizes)?.shape;
  const others = sizes.filter((size) => size.shape === shape && size.code !== chosen).map((size) => size.code);
  const other = to !== undefined && others.includes(to) ? to : others[0];
  if (!read.ok || chosen === undefined || other === undefined) return <p>There is nothing to exchange while the recipe cannot be read.</p>;
  const exchange = (): void => {
    const made = rescale(read.value, chosen, other, sizes);
    if (made.ok) onMade(writeRecipe(made.value));
  };
  return (
    <div className="form">
      <ChoiceField label="Instead of" value={chosen} onChange={setFrom} options={used.map((code) => ({ value: code, text: code }))} />
      <ChoiceField label="take" value={other} onChange={setTo} options={others.map((code) => ({ value: code, text: code }))} />
      <button type="button" className="btn" onClick={exchange}>
        Make it from {other}
      </button>
    </div>
  );
}
