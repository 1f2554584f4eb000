import type { ProblemDetails } from '@twistwright/contract';
import { type BookKitWishes, bagsOfKit, type Kit } from '@twistwright/planner';

/** The papers that the server makes of a kit. */
export type KitPaperName = 'handout' | 'learning' | 'page' | 'list';
const fileNames: Readonly<Record<KitPaperName, string>> = {
  handout: 'first-kit.pdf',
  learning: 'figures-to-learn.pdf',
  page: 'first-kit.html',
  list: 'first-kit.csv',
};

/** What a paper is about: the kit that is seen on the page, or, before that is found, what is wished. */
export interface PaperOrder {
  readonly wishes: BookKitWishes;
  readonly kit: Kit | undefined;
}

/** Asks the server for a paper and hands it to the browser as a file. */
export async function fetchKitPaper(paper: KitPaperName, { wishes, kit }: PaperOrder, name: string): Promise<void> {
  const titled = name === '' || paper === 'list' ? '' : `?name=${encodeURIComponent(name)}`;
  const answer = await fetch(`/api/kit/${paper}${titled}`, {
    method: 'POST',
    credentials: 'same-origin',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(kit === undefined ? wishes : { ...wishes, bought: [...bagsOfKit(kit)].map(([offer, bags]) => ({ offer, bags })) }),
  });
  if (!answer.ok) {
    const told = (await answer.json()) as Partial<ProblemDetails>;
    throw new Error(told.detail ?? told.title ?? `The answer was ${answer.status}.`);
  }
  saveAsFile(await answer.blob(), fileNames[paper]);
}

/** Hands something to the browser as a file to keep. */
export function saveAsFile(content: Blob, name: string): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
