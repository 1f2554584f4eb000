import { sizeInWords } from '@twistwright/repertoire';

/** A shade as the business calls it. */
export interface Colour {
  readonly id: string;
  readonly name: string;
  /** Body colour as `#rrggbb`; the shipped shade of that name if missing. */
  readonly body?: string;
}

export const finishes = ['standard', 'clear', 'pearl', 'metallic', 'neon', 'pastel', 'muted', 'mirror', 'marbled'] as const;
export type Finish = (typeof finishes)[number];

/** One thing that is bought and counted. */
export type Item = BalloonItem | OtherItem;
export interface BalloonItem {
  readonly id: string;
  readonly kind: 'balloon';
  /** Size code: `260`, `round-5`, `heart-6`. */
  readonly size: string;
  readonly colour: string;
  /** Default `standard`. */
  readonly finish?: Finish;
  /** What is printed on it, such as `eyes`. */
  readonly print?: string;
  /** Who makes it, for what was measured of that maker's balloons; missing: nobody knows, or several do. */
  readonly maker?: string;
  /** Chance that one pops while it is worked; the line settings' if missing. */
  readonly chanceOfPop?: number;
  /** Months that a sealed bag stays good. */
  readonly shelfMonths?: number;
}
export interface OtherItem {
  readonly id: string;
  readonly kind: 'tool' | 'sundry';
  readonly name: string;
}

/** "260 green", "5-inch white round, printed eyes", "pump". */
export function nameOfItem(item: Item, colours: readonly Colour[] = []): string {
  if (item.kind !== 'balloon') return item.name;
  const colour = colours.find((c) => c.id === item.colour)?.name ?? item.colour;
  const finish = item.finish === undefined || item.finish === 'standard' ? '' : ` ${item.finish}`;
  return `${sizeInWords(item.size, `${colour}${finish}`.trim())}${item.print === undefined ? '' : `, printed ${item.print}`}`;
}
