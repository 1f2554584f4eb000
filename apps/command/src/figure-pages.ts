import type { Book, Colourway } from '@twistwright/books';
import {
  balloonsTaken,
  colourNames,
  counted,
  type FigureFacts,
  finished,
  type MakeableFigure,
  type MinutesSpread,
  withoutEnd,
} from '@twistwright/planner';
import type { Frame, FramePlan, PieceAir, Step } from '@twistwright/repertoire';
import { recipeWords, trailInches, trailNames } from '@twistwright/repertoire';
import { roundToMoney, showLength, showMoney } from '@twistwright/units';
import { sayWhose } from './calibration-page.ts';
import type { Page } from './page.ts';

const oneDecimal = (value: number): string => value.toFixed(1);
/** "0.6 min (0.4 to 0.8)". */
export const minutesText = ({ p10, p50, p90 }: MinutesSpread): string =>
  p10 === p90 ? `${oneDecimal(p50)} min` : `${oneDecimal(p50)} min (${oneDecimal(p10)} to ${oneDecimal(p90)})`;

const verdictText = (air: PieceAir): string => {
  const { short, long } = air.verdictBand;
  return short === long ? air.verdict : `${air.verdict} (${short} to ${long})`;
};

export function writeFigure(page: Page, book: Book, facts: FigureFacts, way: Colourway | undefined, steps: readonly Step[]): void {
  const { figure, air, minutes } = facts;
  const ruler = book.business.ruler ?? 'in';
  page.say(
    `${figure.name}: ${facts.balloons === 0 ? 'no balloon' : facts.balloons === 1 ? '1 balloon' : `${facts.balloons} balloons`}, ${facts.bubbles === 1 ? '1 bubble' : `${facts.bubbles} bubbles`}, ${minutesText(minutes)}. It ${air.verdict}.`.replace(
      'It tight.',
      'It is tight.',
    ),
  );
  if (facts.techniques.length > 0) page.tell(`Needs: ${facts.techniques.join(', ')}.`);
  const taken = balloonsTaken(book, finished(facts.recipe, way), way);
  if (taken.length > 0) page.tell(`Takes: ${taken.map(({ count, name }) => `${count} x ${name}`).join(', ')}.`);
  if ((figure.tags ?? []).length > 0) page.tell(`Good to know: ${figure.tags?.join(', ')}.`);
  if (figure.recipe !== undefined) {
    page.gap();
    for (const line of figure.recipe.trim().split('\n')) page.verbatim(`    ${line}`);
  }
  if (air.pieces.length > 0) {
    page.gap();
    page.table(
      ['Balloon', 'size', 'blow up to', 'leave flat', 'litres', 'strokes', 'left at the tip', 'verdict'],
      air.pieces.map((piece) => [
        piece.count > 1 ? `${piece.name} x ${piece.count}` : piece.name,
        piece.size,
        showLength(piece.inflatedInches, ruler),
        piece.tailInches > 0 ? showLength(piece.tailInches, ruler) : '',
        oneDecimal(piece.litres),
        piece.strokes === undefined ? '' : oneDecimal(piece.strokes),
        `${showLength(piece.leftFlatInches.mid, ruler)} flat (${showLength(piece.leftFlatInches.low, ruler)} to ${showLength(piece.leftFlatInches.high, ruler)})`,
        verdictText(piece),
      ]),
    );
    page.tell('"blow up to" is inflated length (of a round its width); "leave flat" and "left at the tip" are flat rubber: two rulers.');
    for (const sentence of sayWhose(book, facts.recipe, way)) page.tell(sentence);
    for (const piece of air.pieces) {
      for (const caution of piece.cautions) page.tell(`${piece.name}: ${caution}`);
      for (const change of piece.changes) page.tell(`${piece.name}: ${change.sentence}`);
    }
  }
  page.gap();
  for (const step of steps) page.tell(`${step.number}. ${step.sentence}`);
}

/** The notation at a glance. */
export function writeRecipeWords(page: Page): void {
  page.say('The words of a recipe, each with its meaning. docs/recipes.md says more.');
  for (const { name, words } of recipeWords) {
    page.gap();
    page.table(
      [name, 'meaning'],
      words.map(({ example, says }) => [example, says]),
    );
  }
}

export function writeFigureList(
  page: Page,
  book: Book,
  all: readonly MakeableFigure[],
  shown: readonly MakeableFigure[],
  from: string,
): void {
  const hasStock = book.items.length > 0;
  const can = all.filter((entry) => entry.makes > 0).length;
  page.say(
    hasStock
      ? `You can make ${all.length} figures; ${can === all.length ? 'all' : can} of them from what is ${from}.`
      : `${all.length} figures.${shown.length === all.length ? '' : ` ${shown.length} of them are shown.`}`,
  );
  const lacking = all.filter((entry) => entry.makes === 0).length;
  if (hasStock && lacking > 0) page.tell(lackingSentence(all));
  if (shown.length === 0) {
    page.tell('No figure is like that: allow more minutes or more balloons.');
    return;
  }
  page.gap();
  page.table(
    ['Figure', 'id', 'minutes', 'balloons', 'bubbles', 'air', ...(hasStock ? ['can make', 'cost', 'lacking'] : ['hard'])],
    shown.map(({ figure, facts, makes, ways }) => {
      const best = ways.find((way) => way.makes === makes) ?? ways[0];
      const cost = best?.cost ?? ways.find((way) => way.cost !== undefined)?.cost;
      return [
        figure.name,
        figure.id,
        facts === undefined ? 'recipe cannot be read' : minutesText(facts.minutes),
        facts?.balloons ?? '',
        facts?.bubbles ?? '',
        facts?.air.verdict ?? '',
        ...(hasStock
          ? [
              makes === withoutEnd ? 'any' : String(makes),
              cost === undefined ? '' : showMoney(roundToMoney(cost), book.business.currency),
              makes > 0 ? '' : lackingText(ways[0]),
            ]
          : [String(figure.difficulty ?? '')]),
      ];
    }),
  );
}

function lackingText(way: MakeableFigure['ways'][number] | undefined): string {
  if (way === undefined) return '';
  const others = way.substitutes.map(({ from, to }) => `${to} for ${from}`).join(', ');
  return `${way.lacking.map((taking) => taking.name).join(', ')}${others === '' ? '' : `; ${others} would do`}`;
}

/** "Lacking: 260 white for the swan." for at most three, then how many more. */
function lackingSentence(all: readonly MakeableFigure[]): string {
  const without = all.filter((entry) => entry.makes === 0);
  const said = without
    .slice(0, 3)
    .map(({ figure, ways }) => `${ways[0]?.lacking[0]?.name ?? 'a readable recipe'} for ${figure.name.toLowerCase()}`);
  return `Lacking: ${said.join(', ')}${without.length > 3 ? `, and something for ${without.length - 3} more` : ''}.`;
}

export function writeFrame(page: Page, frame: Frame, plan: FramePlan): void {
  const count = plan.trails.length;
  const balloons = count === 1 ? 'one balloon' : `${count} balloons`;
  const inches = (value: number): string => String(Number(value.toFixed(2)));
  page.say(
    `${frame.name ?? 'This frame'} takes ${balloons}${plan.proven ? '; fewer are not possible' : `; no order needs fewer than ${plan.leastBalloons}, so ${count - plan.leastBalloons} may be one too many`}.`.replace(
      /so (\d+) may be one too many/u,
      (_, more: string) => (more === '1' ? 'one may be too many' : `up to ${more} may be too many`),
    ),
  );
  page.tell(
    `${counted(frame.joints.length, 'joint')}, ${counted(frame.edges.length, 'edge')}, ${inches(plan.totalInches)} in of inflated balloon${plan.poppedInches > 0 ? `, ${inches(plan.poppedInches)} in of it popped` : ''}; the longest balloon takes ${inches(plan.longestInches)} in.`,
  );
  if (plan.balloonsForColours > 0) page.tell(`Keeping the colours costs ${plan.balloonsForColours} more.`);
  page.gap();
  plan.trails.forEach((trail, index) => {
    const colour = plan.colours[index];
    const names = trailNames(frame, trail);
    const steps = names.slice(1).map((name, step) => `${trail.popped?.[step] === true ? '(pop) ' : ''}${name}`);
    page.tell(
      `${index + 1}. ${colour === undefined ? '' : `${colour}, `}${inches(trailInches(frame, trail))} in: ${[names[0], ...steps].join(' – ')}`,
    );
  });
}

/** Fill of a colourway by colour name, for steps: "a blue 260". */
export const namesOfFill = (book: Book, way: Colourway | undefined): Readonly<Record<string, string>> =>
  way === undefined ? {} : colourNames(book, way.fill);
