import type { Book } from '@twistwright/books';
import { type ReactElement, useState } from 'react';
import { Slot } from '../parts/slot.tsx';

/** Opens the menu board to print: of one gig, or of all figures, on a paper that is chosen. */
export function BoardButton({ book }: { readonly book: Book }): ReactElement {
  const [gig, setGig] = useState('');
  const [paper, setPaper] = useState<string>(book.business.paper ?? 'A4');
  const [turned, setTurned] = useState('no');
  const query = new URLSearchParams({ paper, landscape: turned, ...(gig === '' ? {} : { gig }) });
  return (
    <details className="because board">
      <summary className="boardask">Print the menu board</summary>
      <form className="ask" aria-label="Menu board" onSubmit={(event) => event.preventDefault()}>
        <span>With</span>
        <Slot
          label="Menu"
          value={gig}
          onChange={setGig}
          options={[
            ['', 'all figures'],
            ...book.gigs.filter((entry) => entry.menu.length > 0).map((entry) => [entry.id, `the menu of ${entry.name}`] as const),
          ]}
        />
        <span>on</span>
        <Slot
          label="Paper"
          value={paper}
          onChange={setPaper}
          options={['A4', 'Letter', 'A3', 'Tabloid'].map((size) => [size, size] as const)}
        />
        <Slot
          label="Turned"
          value={turned}
          onChange={setTurned}
          options={[
            ['no', 'upright'],
            ['yes', 'lying'],
          ]}
        />
        <a className="btn" href={`/api/menu-board.pdf?${query}`} target="_blank" rel="noreferrer">
          Open the board
        </a>
      </form>
    </details>
  );
}
