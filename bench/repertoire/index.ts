import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { menuBoardPdf, recipeCardPdf } from '@twistwright/paper';
import { favouriteColourway, figureFacts, makeableFigures, paintsOf, shippedBook } from '@twistwright/planner';
import { airOf, checkRecipe, pictureOfShape, readRecipe, shapeOf } from '@twistwright/repertoire';
import { launch, openDemo, wide } from '../../browser/browser.ts';
import { startServer } from '../../browser/server.ts';
import { type Measured, median, millisecondsOf, percentile95 } from '../measure.ts';

const root = resolve(import.meta.dirname, '../..');
const book = shippedBook({ name: 'Bench', currency: 'EUR', zone: 'UTC', country: 'GB' });
const made = '2026-06-01';

/** Pictures, cards, boards, what an editor asks at every letter, and a figure in the browser. */
export async function benchRepertoire(): Promise<readonly Measured[]> {
  return [...pictures(), ...(await papers()), ...(await typing()), ...(await stock()), ...(await inTheBrowser())];
}

/** A fresh process that draws every shipped figure as SVG files, as a person at the command line does it, process start included. */
function pictures(): readonly Measured[] {
  const folder = mkdtempSync(join(tmpdir(), 'pictures-'));
  const program = `
    import { writeFileSync } from 'node:fs';
    import { pictureOf, readRecipe, shippedFigures } from '@twistwright/repertoire';
    for (const figure of shippedFigures) {
      const read = readRecipe(figure.recipe);
      if (!read.ok) throw new Error(figure.id);
      writeFileSync(${JSON.stringify(folder)} + '/' + figure.id + '.svg', pictureOf(read.value, figure.colourways[0].fill));
    }`;
  const seconds: number[] = [];
  for (let run = 0; run < 3; run++) {
    const started = performance.now();
    execFileSync(process.execPath, ['--input-type=module', '-e', program], { cwd: join(root, 'apps/command') });
    seconds.push((performance.now() - started) / 1000);
  }
  rmSync(folder, { recursive: true });
  const value = median(seconds);
  const what = `all ${book.figures.length} shipped figures as flat pictures, in a fresh process`;
  return [{ what, value, unit: 's', goal: 'under 3', met: value < 3 }];
}

async function papers(): Promise<readonly Measured[]> {
  const menu = { ...book, figures: book.figures.slice(0, 24) };
  const board = async (): Promise<void> => {
    const answer = await menuBoardPdf(menu, { made });
    if (!answer.ok || answer.value.figures !== 24) throw new Error('the board is not complete');
  };
  const before = process.cpuUsage();
  const cold = (await millisecondsOf(1, board, 0))[0] ?? Number.NaN;
  const { user, system } = process.cpuUsage(before);
  const warm = median(await millisecondsOf(3, board));
  const dog = book.figures.find((figure) => figure.id === 'dog');
  const facts = dog === undefined ? undefined : figureFacts(book, dog);
  const way = dog === undefined ? undefined : favouriteColourway(dog);
  if (facts?.ok !== true || way === undefined) throw new Error('the dog cannot be read');
  const card = median(await millisecondsOf(3, () => recipeCardPdf(book, facts.value, way, { made })));
  return [
    { what: 'menu board of 24 as PDF, first time in the process', value: cold / 1000, unit: 's', goal: 'under 2', met: cold < 2000 },
    { what: 'the same, processor time', value: (user + system) / 1e6, unit: 's' },
    { what: 'the same, warm', value: warm / 1000, unit: 's' },
    { what: 'recipe card of the dog as PDF, warm', value: card, unit: 'ms' },
  ];
}

/** What the editor asks for when a letter is typed: problems, air, shape, picture; it is worked out beside the page, never in it. */
async function typing(): Promise<readonly Measured[]> {
  const times: number[] = [];
  for (const figure of book.figures) {
    const answer = (): void => {
      checkRecipe(figure.recipe ?? '');
      const read = readRecipe(figure.recipe ?? '');
      if (!read.ok) throw new Error(figure.id);
      airOf(read.value);
      pictureOfShape(shapeOf(read.value), read.value.finishing, paintsOf(book, favouriteColourway(figure)?.fill ?? {}));
    };
    times.push(median(await millisecondsOf(3, answer)));
  }
  const middle = median(times);
  return [
    {
      what: 'problems, air, shape and picture of a figure for its editor, middle of all',
      value: middle,
      unit: 'ms',
      goal: 'under 50',
      met: middle < 50,
    },
    { what: 'the same, 95th percentile of the figures', value: percentile95(times), unit: 'ms' },
  ];
}

async function stock(): Promise<readonly Measured[]> {
  const value = median(await millisecondsOf(5, () => makeableFigures(book, new Map())));
  return [{ what: `what can be made of ${book.figures.length} figures from a stock`, value, unit: 'ms' }];
}

/** From the page of a figure to its body on the screen, several openings in one browser. */
async function inTheBrowser(): Promise<readonly Measured[]> {
  execFileSync(process.execPath, [join(root, 'scripts/ensure-web.ts')], { stdio: ['ignore', 2, 2] });
  const server = await startServer();
  const browser = await launch();
  try {
    const context = await browser.newContext({ viewport: wide });
    await openDemo(context, server.url);
    const times: number[] = [];
    for (const figure of ['dog', 'giraffe', 'swan', 'bear', 'crown']) {
      const page = await context.newPage();
      await page.goto(`${server.url}/repertoire/${figure}`);
      await page.waitForFunction(() => performance.getEntriesByName('figure turns').length > 0, undefined, { timeout: 60_000 });
      times.push(
        await page.evaluate(() => {
          const at = (name: string): number => performance.getEntriesByName(name)[0]?.startTime ?? Number.NaN;
          return at('figure turns') - at('figure page');
        }),
      );
      await page.close();
    }
    const value = median(times);
    const what = 'a figure in the browser, from the page to its first turning picture (software WebGL)';
    return [{ what, value, unit: 'ms', goal: 'under 300', met: value < 300 }];
  } finally {
    await browser.close();
    await server.stop();
  }
}
