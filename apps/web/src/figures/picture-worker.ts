import { pictureOf, readRecipe } from '@twistwright/repertoire';

/** One figure to draw: its recipe, and a colour for every role. */
export interface PictureAsk {
  readonly key: string;
  readonly recipe: string;
  readonly colours: Readonly<Record<string, string>>;
}
export interface PictureAnswer {
  readonly key: string;
  /** Missing where the recipe cannot be read. */
  readonly svg?: string;
}

addEventListener('message', (event: MessageEvent<PictureAsk>) => {
  const { key, recipe, colours } = event.data;
  const read = readRecipe(recipe);
  const answer: PictureAnswer = read.ok ? { key, svg: pictureOf(read.value, colours) } : { key };
  postMessage(answer);
});
