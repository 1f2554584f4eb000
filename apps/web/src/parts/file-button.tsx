import type { ChangeEvent, ReactElement } from 'react';

/** A file that somebody chose. */
export interface ChosenFile {
  readonly name: string;
  readonly text: string;
}

/** A button that chooses a file of text and hands it on. */
export function FileButton({
  label,
  accept,
  onFile,
}: {
  readonly label: string;
  /** Endings that can be chosen, such as `.yaml,.json`. */
  readonly accept: string;
  readonly onFile: (file: ChosenFile) => void;
}): ReactElement {
  const choose = async (event: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const file = event.target.files?.[0];
    if (file === undefined) return;
    const text = await file.text();
    event.target.value = '';
    onFile({ name: file.name, text });
  };
  return (
    <label className="btn filebutton">
      {label}
      <input type="file" accept={accept} onChange={(event) => void choose(event)} />
    </label>
  );
}
