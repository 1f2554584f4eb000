import type { ReactElement } from 'react';
import { Mark, type MarkKind, type MarkState } from '../pictures/mark.tsx';

export interface GigMark {
  readonly kind: MarkKind;
  readonly state: MarkState;
  readonly word: string;
}

/** The four marks of a gig, each with its word. */
export function Marks({ marks }: { readonly marks: readonly GigMark[] }): ReactElement {
  return (
    <ul className="marks">
      {marks.map((mark) => (
        <li key={mark.kind} className={mark.state}>
          <Mark kind={mark.kind} state={mark.state} />
          <span>{mark.word}</span>
        </li>
      ))}
    </ul>
  );
}
