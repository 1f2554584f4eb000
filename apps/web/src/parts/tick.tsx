import type { ReactElement, ReactNode } from 'react';

export interface TickProps {
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
  readonly children: ReactNode;
  /** Stands at the right, in small type. */
  readonly note?: ReactNode;
  readonly disabled?: boolean;
}

/** A round to tick, in a row that is all one label. */
export function Tick({ checked, onChange, children, note, disabled = false }: TickProps): ReactElement {
  return (
    <label className="pick">
      <input type="checkbox" className="tick" checked={checked} disabled={disabled} onChange={(event) => onChange(event.target.checked)} />
      <span className="picked">{children}</span>
      {note !== undefined && <span className="note">{note}</span>}
    </label>
  );
}
