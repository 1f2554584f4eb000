import { type FrameWish, makeFrame } from './frame-making.ts';

/** Answers once at once, and again where a longer look could find fewer balloons. */
addEventListener('message', ({ data }: MessageEvent<FrameWish>) => {
  const made = makeFrame(data, true);
  postMessage(made);
  if (made.mayImprove) postMessage(makeFrame(data, false));
});
