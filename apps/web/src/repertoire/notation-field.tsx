import type { RecipeWord } from '@twistwright/repertoire';
import type { Problem } from '@twistwright/units';
import { type ReactElement, type ReactNode, useId, useLayoutEffect, useRef, useState } from 'react';
import { RecipeWords } from './recipe-words.tsx';
import { type Written, writeWord } from './write-word.ts';

interface NotationFieldProps {
  readonly value: string;
  readonly problems: readonly Problem[];
  readonly onChange: (value: string) => void;
  /** A word of the list was written into it. */
  readonly onWord: (value: string) => void;
  /** What stands between the text and the list of words. */
  readonly children: ReactNode;
}

/** The recipe as text with numbered lines; lines with a mistake are marked, and the sentence that says what to do stands below. */
export function NotationField({ value, problems, onChange, onWord, children }: NotationFieldProps): ReactElement {
  const id = useId();
  const numbers = useRef<HTMLDivElement>(null);
  const field = useRef<HTMLTextAreaElement>(null);
  /** Before anybody has been in the field its cursor is nowhere, and words go to the end. */
  const wasIn = useRef(false);
  const [written, setWritten] = useState<Written>();
  const lines = value.split('\n');
  const wrong = new Set(problems.map((problem) => problem.line));
  const goTo = ({ line = 1, column = 1 }: Problem): void => {
    const element = field.current;
    if (element === null) return;
    const before = lines.slice(0, line - 1).reduce((sum, text) => sum + text.length + 1, 0);
    element.focus();
    element.setSelectionRange(before + column - 1, before + (lines[line - 1]?.length ?? 0));
  };
  const pick = (word: RecipeWord): void => {
    const cursor = wasIn.current ? field.current?.selectionEnd : undefined;
    const next = writeWord(value, cursor ?? value.length, word);
    setWritten(next);
    onWord(next.text);
  };
  useLayoutEffect(() => {
    const element = field.current;
    if (element === null || written === undefined) return;
    // A finger goes on tapping words; its keyboard would cover them.
    if (!matchMedia('(pointer: coarse)').matches) element.focus();
    element.setSelectionRange(written.from, written.to);
    wasIn.current = true;
  }, [written]);
  return (
    <>
      <div className="field">
        <label htmlFor={id}>Recipe</label>
        <div className={problems.some((problem) => problem.weight === 'error') ? 'writing bad' : 'writing'}>
          <div className="linenumbers" aria-hidden="true" ref={numbers}>
            {lines.map((_, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a line has no name but its number
              <span key={index} className={wrong.has(index + 1) ? 'wrongline' : undefined}>
                {index + 1}
              </span>
            ))}
          </div>
          <textarea
            id={id}
            ref={field}
            value={value}
            spellCheck={false}
            autoCapitalize="off"
            autoComplete="off"
            wrap="off"
            rows={Math.max(14, Math.min(34, lines.length + 1))}
            aria-describedby={`${id}-problems`}
            aria-invalid={problems.some((problem) => problem.weight === 'error') ? true : undefined}
            onScroll={(event) => {
              if (numbers.current !== null) numbers.current.scrollTop = event.currentTarget.scrollTop;
            }}
            onFocus={() => {
              wasIn.current = true;
            }}
            onChange={(event) => {
              setWritten(undefined);
              onChange(event.target.value);
            }}
          />
        </div>
        <ul className="mistakes" id={`${id}-problems`} aria-live="polite">
          {problems.slice(0, mostShown).map((problem) => (
            <li key={`${problem.line} ${problem.column} ${problem.sentence}`}>
              <button type="button" className="mistake" onClick={() => goTo(problem)}>
                {problem.line === undefined ? '' : <b>Line {problem.line}. </b>}
                {problem.sentence} {problem.todo}
              </button>
            </li>
          ))}
          {problems.length > mostShown && <li>And {problems.length - mostShown} more.</li>}
        </ul>
      </div>
      {children}
      <RecipeWords onPick={pick} said={written === undefined ? '' : `Line ${written.line}: ${(lines[written.line - 1] ?? '').trim()}`} />
    </>
  );
}
const mostShown = 8;
