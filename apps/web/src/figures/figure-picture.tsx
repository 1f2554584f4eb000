import type { Book, Colourway } from '@twistwright/books';
import { type ReactElement, useEffect, useState } from 'react';
import { shadeOf } from '../pictures/rubber.ts';
import type { PictureAnswer, PictureAsk } from './picture-worker.ts';

/** Draws figures away from the page, one after another; what was drawn once is kept. */
class Drawer {
  #worker: Worker | undefined;
  readonly #drawn = new Map<string, string | undefined>();
  readonly #waiting = new Map<string, ((svg: string | undefined) => void)[]>();

  known(key: string): string | undefined {
    return this.#drawn.get(key);
  }
  draw(ask: PictureAsk, done: (svg: string | undefined) => void): void {
    if (this.#drawn.has(ask.key)) {
      done(this.#drawn.get(ask.key));
      return;
    }
    const waiting = this.#waiting.get(ask.key);
    this.#waiting.set(ask.key, [...(waiting ?? []), done]);
    if (waiting !== undefined) return;
    this.#worker ??= this.#start();
    this.#worker.postMessage(ask);
  }
  #start(): Worker {
    const worker = new Worker(new URL('./picture-worker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', (event: MessageEvent<PictureAnswer>) => {
      const { key, svg } = event.data;
      this.#drawn.set(key, svg);
      for (const done of this.#waiting.get(key) ?? []) done(svg);
      this.#waiting.delete(key);
    });
    return worker;
  }
}
const drawer = new Drawer();

export interface FigurePictureProps {
  readonly book: Book;
  readonly name: string;
  readonly recipe: string | undefined;
  readonly colourway: Colourway | undefined;
}

/** A figure as it looks, standing on its floor line. Its place is kept while it is drawn. */
export function FigurePicture({ book, name, recipe, colourway }: FigurePictureProps): ReactElement {
  const colours = Object.fromEntries(
    Object.entries(colourway?.fill ?? {}).map(([role, colour]) => [
      role,
      shadeOf(book.colours.find((entry) => entry.id === colour) ?? { id: colour, name: colour }),
    ]),
  );
  const key = JSON.stringify([recipe, colours]);
  const [drawn, setDrawn] = useState<{ readonly key: string; readonly svg: string | undefined }>({ key, svg: drawer.known(key) });
  useEffect(() => {
    const [text, fill] = JSON.parse(key) as [string | null, Record<string, string>];
    let isWanted = true;
    if (text !== null)
      drawer.draw({ key, recipe: text, colours: fill }, (svg) => {
        if (isWanted) setDrawn({ key, svg });
      });
    return () => {
      isWanted = false;
    };
  }, [key]);
  return (
    <span className="fig">
      {drawn.svg !== undefined && (
        <img
          alt={`${name}${colourway === undefined ? '' : ` in ${colourway.name}`}`}
          src={`data:image/svg+xml,${encodeURIComponent(drawn.svg)}`}
        />
      )}
    </span>
  );
}
