import type { ReactElement } from 'react';
import { NotAccepted } from '../book/book-door.ts';
import { Refusal } from '../parts/refusal.tsx';

const shown = 12;

/** What the server said to a change that it did not keep. */
export function NotSaved({
  error,
  what = 'Nothing was saved.',
}: {
  readonly error: Error | null;
  readonly what?: string;
}): ReactElement | null {
  if (error === null) return null;
  const problems = error instanceof NotAccepted ? error.problems : [];
  return (
    <div style={{ marginTop: 24 }}>
      <Refusal sentence={what} instead={problems.length === 0 ? error.message : ''}>
        {problems.length > 0 && (
          <ul className="problems">
            {problems.slice(0, shown).map((problem) => (
              <li key={`${problem.line} ${problem.path.join('.')} ${problem.sentence}`}>
                {problem.line === undefined ? '' : `Line ${problem.line}: `}
                {problem.sentence} {problem.todo}
              </li>
            ))}
            {problems.length > shown && <li>And {problems.length - shown} more.</li>}
          </ul>
        )}
      </Refusal>
    </div>
  );
}
