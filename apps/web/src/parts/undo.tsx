import type { ReactElement } from 'react';

/** What was done, and one button that takes it back; stays until the next act. */
export function Undo({
  sentence,
  action,
  onUndo,
}: {
  readonly sentence: string;
  readonly action: string;
  readonly onUndo: () => void;
}): ReactElement {
  return (
    <div className="undo" role="status">
      <p className="lead">{sentence}</p>
      <button type="button" className="btn" onClick={onUndo}>
        {action}
      </button>
    </div>
  );
}
