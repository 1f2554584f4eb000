import { useEffect, useState } from 'react';
import type { FrameWish, MadeFrame } from './frame-making.ts';

/** Milliseconds without a change before a frame is planned. */
const pause = 150;

/** The frame of a wish, planned away from the page; undefined until there is an answer. A new wish ends the search for the one before. */
export function useFrame(wish: FrameWish | undefined): MadeFrame | undefined {
  const [made, setMade] = useState<{ readonly key: string; readonly frame: MadeFrame }>();
  const key = JSON.stringify(wish);
  useEffect(() => {
    if (key === undefined) return undefined;
    let worker: Worker | undefined;
    const waiting = setTimeout(() => {
      worker = new Worker(new URL('./frame-worker.ts', import.meta.url), { type: 'module' });
      worker.addEventListener('message', ({ data }: MessageEvent<MadeFrame>) => setMade({ key, frame: data }));
      worker.postMessage(JSON.parse(key));
    }, pause);
    return () => {
      clearTimeout(waiting);
      worker?.terminate();
    };
  }, [key]);
  return made?.key === key ? made?.frame : undefined;
}
