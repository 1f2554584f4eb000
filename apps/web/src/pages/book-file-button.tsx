import type { ChangeEvent, ReactElement } from 'react';
import type { BookText } from '../book/book-door.ts';

/** Chooses a book file and hands its text on; the server reads it and says line by line what is wrong. */
export function BookFileButton({ onFile }: { readonly onFile: (file: BookText) => void }): ReactElement {
  const choose = async (event: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const file = event.target.files?.[0];
    if (file === undefined) return;
    const text = await file.text();
    event.target.value = '';
    onFile({ name: file.name, text });
  };
  return (
    <label className="btn filebutton">
      Open a book file
      <input type="file" accept=".yaml,.yml,.json" onChange={(event) => void choose(event)} />
    </label>
  );
}
