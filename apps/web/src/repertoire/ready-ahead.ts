import { canTurn } from './can-turn.ts';
import { drawings } from './drawing-door.ts';

/** Begins with what draws a figure, flat and as a body, while the code of its page is still on the way. */
export function figureReady(): void {
  drawings.warm();
  if (canTurn()) void import('./turned-figure.tsx');
}

/** Gets the page of a figure and what turns it while nothing else is to be done, so that the first figure that is opened is there at once. */
export function readyAhead(): () => void {
  const get = (): void => {
    void import('./figure-page.tsx');
    if (canTurn()) void import('./turned-figure.tsx');
  };
  // Not every browser says when it is idle.
  if (!('requestIdleCallback' in globalThis)) {
    const wait = setTimeout(get, 1500);
    return () => clearTimeout(wait);
  }
  const wait = requestIdleCallback(get, { timeout: 4000 });
  return () => cancelIdleCallback(wait);
}
