import type { ReactElement } from 'react';

export interface SlotProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly options: readonly (readonly [string, string])[];
}
/** One underlined word of a sentence that opens a list. */
export function Slot({ label, value, onChange, options }: SlotProps): ReactElement {
  return (
    <span className="slot">
      <select aria-label={label} value={value} onChange={(event) => onChange(event.target.value)}>
        {options.map(([id, text]) => (
          <option key={id} value={id}>
            {text}
          </option>
        ))}
      </select>
    </span>
  );
}
