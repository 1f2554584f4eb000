import { type ReactElement, type ReactNode, useId } from 'react';

interface Named {
  readonly label: string;
  /** How to write it, always visible. */
  readonly note?: string | undefined;
  /** A sentence that says how to write it right. */
  readonly problem?: string | undefined;
}
export interface TextFieldProps extends Named {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly type?: 'text' | 'date' | 'time' | 'email' | 'tel' | 'url';
  readonly inputMode?: 'text' | 'numeric' | 'decimal';
  readonly list?: readonly string[];
  readonly long?: boolean;
}

/** A field: sheet ground, edge below; wrong: ink edge, hatched flag and a sentence. */
export function TextField({
  label,
  note,
  problem,
  value,
  onChange,
  type = 'text',
  inputMode,
  list,
  long = false,
}: TextFieldProps): ReactElement {
  const id = useId();
  const shared = {
    id,
    value,
    className: problem === undefined ? 'in' : 'in bad',
    'aria-invalid': problem === undefined ? undefined : true,
    'aria-describedby': describedBy(id, note, problem),
  } as const;
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {long ? (
        <textarea
          {...shared}
          rows={Math.min(18, Math.max(4, value.split('\n').length + 1))}
          onChange={(event) => onChange(event.target.value)}
        />
      ) : (
        <input
          {...shared}
          type={type}
          inputMode={inputMode}
          list={list === undefined ? undefined : `${id}-list`}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
      {list !== undefined && (
        <datalist id={`${id}-list`}>
          {list.map((entry) => (
            <option key={entry} value={entry} />
          ))}
        </datalist>
      )}
      <Below id={id} note={note} problem={problem} />
    </div>
  );
}

export interface ChoiceFieldProps extends Named {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly options: readonly { readonly value: string; readonly text: string }[];
}
export function ChoiceField({ label, note, problem, value, onChange, options }: ChoiceFieldProps): ReactElement {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="chooser">
        <select
          id={id}
          className={problem === undefined ? 'in' : 'in bad'}
          value={value}
          aria-invalid={problem === undefined ? undefined : true}
          aria-describedby={describedBy(id, note, problem)}
          onChange={(event) => onChange(event.target.value)}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.text}
            </option>
          ))}
        </select>
      </span>
      <Below id={id} note={note} problem={problem} />
    </div>
  );
}

export function Group({ legend, children }: { readonly legend: string; readonly children: ReactNode }): ReactElement {
  return (
    <fieldset className="group">
      <legend>{legend}</legend>
      {children}
    </fieldset>
  );
}

const describedBy = (id: string, note: string | undefined, problem: string | undefined): string | undefined => {
  const ids = [problem === undefined ? [] : [`${id}-problem`], note === undefined ? [] : [`${id}-note`]].flat();
  return ids.length === 0 ? undefined : ids.join(' ');
};
function Below({
  id,
  note,
  problem,
}: {
  readonly id: string;
  readonly note: string | undefined;
  readonly problem: string | undefined;
}): ReactElement {
  return (
    <>
      {problem !== undefined && (
        <p id={`${id}-problem`} className="err">
          {problem}
        </p>
      )}
      {note !== undefined && (
        <p id={`${id}-note`} className="note">
          {note}
        </p>
      )}
    </>
  );
}
