import { useState } from 'react';
import type { FieldProblems, FieldReader } from './field-reader.ts';

/** The entries of a draft that are texts. */
type TextNames<D> = { [K in keyof D]: D[K] extends string ? K : never }[keyof D] & string;
export interface FieldOfForm {
  readonly value: string;
  readonly problem: string | undefined;
  readonly onChange: (value: string) => void;
}
export interface Form<D> {
  readonly draft: D;
  readonly problems: FieldProblems;
  readonly set: (part: Partial<D>) => void;
  /** What a field shows, what is wrong with it, and where its text goes. A choice gives only what it offers, so its text is of the draft's kind too. */
  readonly field: (name: TextNames<D>) => FieldOfForm;
  /** Says at every field what a reader found wrong and leads to the first of them; true if nothing was. */
  readonly isFine: (read: FieldReader) => boolean;
}

/** The texts of a form while somebody fills it in. */
export function useForm<D extends object>(begin: D | (() => D)): Form<D> {
  const [draft, setDraft] = useState(begin);
  const [problems, setProblems] = useState<FieldProblems>({});
  const set = (part: Partial<D>): void => setDraft((before) => ({ ...before, ...part }));
  return {
    draft,
    problems,
    set,
    field: (name) => ({
      value: draft[name] as string,
      problem: problems[name],
      onChange: (text) => set({ [name]: text } as Partial<D>),
    }),
    isFine: (read) => {
      setProblems(read.problems);
      if (!read.isFine) requestAnimationFrame(leadToProblem);
      return read.isFine;
    },
  };
}

/** Puts the focus into the first wrong field of the form that somebody is in. */
function leadToProblem(): void {
  (document.activeElement?.closest('form') ?? document).querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
}
