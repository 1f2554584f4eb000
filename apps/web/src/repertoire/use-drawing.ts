import { type Book, type Colourway, sizesOf } from '@twistwright/books';
import { type AirBook, paintsOf } from '@twistwright/planner';
import type { View } from '@twistwright/repertoire';
import { useEffect, useLayoutEffect, useMemo, useState, useSyncExternalStore } from 'react';
import type { FigureBody } from './bodies-of.ts';
import type { Design, DrawingAnswer, DrawingAsk } from './drawing-ask.ts';
import { drawings } from './drawing-door.ts';

const darkness = '(prefers-color-scheme: dark)';
/** Whether the page is dark. */
export const useDark = (): boolean =>
  useSyncExternalStore(
    (changed) => {
      const query = matchMedia(darkness);
      query.addEventListener('change', changed);
      return () => query.removeEventListener('change', changed);
    },
    () => matchMedia(darkness).matches,
  );

/** The newest answer; the one before stays until there is another. What is asked `before` other things is worked out before them. */
function useAnswer(ask: DrawingAsk | undefined, before = false): DrawingAnswer | undefined {
  const [answer, setAnswer] = useState(() => (ask === undefined ? undefined : drawings.known(ask.key)));
  const key = ask?.key;
  const useWhenShown = before ? useLayoutEffect : useEffect;
  useWhenShown(() => {
    if (ask === undefined) return undefined;
    let isWanted = true;
    drawings.ask(ask, (found) => {
      if (isWanted) setAnswer(found);
    });
    return () => {
      isWanted = false;
    };
  }, [key]);
  return answer;
}

export interface Drawable {
  readonly book: Book;
  readonly recipe: string | undefined;
  readonly colourway: Colourway | undefined;
}

function useCommon({ book, recipe, colourway }: Drawable) {
  return useMemo(() => {
    const finish = colourway?.finish;
    return {
      recipe: recipe ?? '',
      sizes: sizesOf(book),
      paints: paintsOf(book, colourway?.fill ?? {}),
      ...(finish === undefined ? {} : { finish }),
    };
  }, [book, recipe, colourway]);
}

/** The figure as SVG text; undefined while it is drawn, or when it cannot be. */
export function useFlatPicture(
  drawable: Drawable,
  more: { readonly upToMove?: number | undefined; readonly view?: View | undefined } = {},
): string | undefined {
  const dark = useDark();
  const common = useCommon(drawable);
  const { upToMove, view } = more;
  const ask = useMemo(
    () => ({
      ...common,
      kind: 'picture' as const,
      dark,
      ...(upToMove === undefined ? {} : { upToMove }),
      ...(view === undefined ? {} : { view }),
      key: JSON.stringify(['picture', common.recipe, common.paints, common.finish, dark, upToMove, view]),
    }),
    [common, dark, upToMove, view],
  );
  const answer = useAnswer(ask);
  return answer?.kind === 'picture' ? answer.svg : undefined;
}

/** The figure as a body. */
export function useBody(drawable: Drawable): FigureBody | undefined {
  const common = useCommon(drawable);
  const ask = useMemo(
    () => ({ ...common, kind: 'shape' as const, key: JSON.stringify(['shape', common.recipe, common.finish]) }),
    [common],
  );
  const answer = useAnswer(ask, true);
  return answer?.kind === 'shape' && answer.key === ask.key ? answer.body : undefined;
}

/** The parts of the book that air and tail depend on; items only where something was measured of their makers. */
function airBookOf({ sizes, settings, items, balloonTests }: Book): AirBook {
  const pump = settings?.pump;
  const isMeasured = balloonTests !== undefined && balloonTests.length > 0;
  return {
    items: isMeasured ? items.filter((item) => item.kind === 'balloon') : [],
    ...(sizes === undefined ? {} : { sizes }),
    ...(pump === undefined ? {} : { settings: { pump } }),
    ...(isMeasured ? { balloonTests } : {}),
  };
}

/** Shape, air, verdict and problems of a text that is being written; the last answer stays while the next one is worked out. */
export function useDesign(drawable: Drawable): { readonly design: Design | undefined; readonly isNew: boolean } {
  const dark = useDark();
  const common = useCommon(drawable);
  const { book, colourway } = drawable;
  const airBook = useMemo(() => airBookOf(book), [book]);
  const ask = useMemo(
    () => ({
      ...common,
      kind: 'design' as const,
      dark,
      airBook,
      colourway,
      key: JSON.stringify(['design', common.recipe, common.paints, common.finish, dark, airBook, colourway?.fill]),
    }),
    [common, dark, airBook, colourway],
  );
  const answer = useAnswer(ask);
  return { design: answer?.kind === 'design' ? answer.design : undefined, isNew: answer?.key === ask.key };
}
