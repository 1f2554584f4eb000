import type { ReactElement } from 'react';

/** Text in which a code such as "heart-6" is not parted at the end of a line. */
export function Unbroken({ text }: { readonly text: string }): ReactElement {
  return (
    <>
      {text.split(/(\b[a-z]+-\d+\b)/).map((part, index) =>
        index % 2 === 0 ? (
          part
        ) : (
          // biome-ignore lint/suspicious/noArrayIndexKey: parts of one text, in order
          <span key={index} className="nobreak">
            {part}
          </span>
        ),
      )}
    </>
  );
}
