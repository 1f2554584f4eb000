import { type RecipeWord, recipeWords } from '@twistwright/repertoire';
import { type ReactElement, useId, useState } from 'react';

interface RecipeWordsProps {
  readonly onPick: (word: RecipeWord) => void;
  /** The line that was written last, if any. */
  readonly said: string;
}
/** The words of the notation by kind; a tap writes one down. */
export function RecipeWords({ onPick, said }: RecipeWordsProps): ReactElement {
  const [kind, setKind] = useState(recipeWords[1]?.name);
  const group = useId();
  return (
    <div className="recipewords">
      <fieldset className="ways">
        <legend>Words of a recipe</legend>
        {recipeWords.map(({ name }) => (
          <label className="way" key={name}>
            <input type="radio" name={group} checked={name === kind} onChange={() => setKind(name)} />
            <span className="wayname">{name}</span>
          </label>
        ))}
      </fieldset>
      <p className="note" role="status">
        {said === '' ? 'Tap one to write it where the cursor is.' : said}
      </p>
      <ul>
        {recipeWords
          .find(({ name }) => name === kind)
          ?.words.map((word) => (
            <li key={word.example}>
              <button type="button" className="recipeword" onClick={() => onPick(word)}>
                <code>
                  <Example word={word} />
                </code>
                <span>{word.says}</span>
              </button>
            </li>
          ))}
      </ul>
    </div>
  );
}

/** The example line, the word's own part of it strong. */
function Example({ word: { word, example, writes, stands } }: { readonly word: RecipeWord }): ReactElement {
  const strong = stands === 'line' ? word : writes;
  const at = example.indexOf(strong);
  return (
    <>
      {example.slice(0, at)}
      <b>{strong}</b>
      {example.slice(at + strong.length)}
    </>
  );
}
