import type { View } from '@twistwright/repertoire';
import type { ReactElement } from 'react';
import { type Drawable, useFlatPicture } from './use-drawing.ts';

export interface FigurePictureProps extends Drawable {
  /** What it shows, for people who do not see it; without it the picture is decoration beside its name. */
  readonly says?: string;
  readonly upToMove?: number | undefined;
  readonly view?: View | undefined;
}

/** A figure as it looks, standing on its floor line. Its place is kept while it is drawn. */
export function FigurePicture({ says, upToMove, view, ...drawable }: FigurePictureProps): ReactElement {
  const svg = useFlatPicture(drawable, { upToMove, view });
  return <Svg svg={svg} {...(says === undefined ? {} : { says })} />;
}

/** SVG text of ours in its own box. */
export function Svg({ svg, says }: { readonly svg: string | undefined; readonly says?: string }): ReactElement {
  const heard = says === undefined ? { 'aria-hidden': true as const } : { role: 'img', 'aria-label': says };
  // biome-ignore lint/security/noDangerouslySetInnerHtml: the text is made by our own drawing code out of numbers and colours
  return <span className="figure-box" {...heard} dangerouslySetInnerHTML={{ __html: svg ?? '' }} />;
}
