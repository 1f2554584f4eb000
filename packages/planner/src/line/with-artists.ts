import type { LineArtist, LineModel } from './line-model.ts';

/** The same gig with so many artists: those it has, then the same again under new ids. Throws for none. */
export function withArtists(model: LineModel, count: number): LineModel {
  const own = model.artists;
  if (count < 1 || own.length === 0) throw new RangeError(`a line needs an artist: ${count} of ${own.length}`);
  const artists = Array.from({ length: count }, (_, i): LineArtist => {
    const like = own[i % own.length] as LineArtist;
    return i < own.length ? like : { ...like, id: `${like.id} ${Math.floor(i / own.length) + 1}` };
  });
  return { ...model, artists };
}
