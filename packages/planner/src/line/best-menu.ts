import { type Spread, spreadOf } from '@twistwright/units';
import type { LineModel } from './line-model.ts';
import { keepAll } from './line-samples.ts';
import { runLine } from './run-line.ts';

export interface BestMenuOptions {
  readonly seed: number;
  readonly runs: number;
  /** Worth of one of each figure, in the order of the model; 1 each if absent. */
  readonly worth?: readonly number[];
  /** What a figure is worth to a guest who wished for one that is not offered, as a part of its worth; 0.6 if absent. */
  readonly secondBest?: number;
  /** Figures that must be on the menu, by index. */
  readonly always?: readonly number[];
  /** At most so many figures; no limit if absent. */
  readonly most?: number;
  /** Up to so many menus every one is tried; 511 if absent. */
  readonly triesAtMost?: number;
}
export interface MenuTried {
  /** Indexes of the figures offered, rising. */
  readonly figures: readonly number[];
  readonly worth: Spread;
  readonly served: Spread;
}
export interface BestMenu {
  readonly best: MenuTried;
  /** All figures that the model offers, for comparison. */
  readonly whole: MenuTried;
  /** `every menu tried`: the best on these runs. `search`: nothing better by adding, dropping or exchanging one figure. */
  readonly how: 'every menu tried' | 'search';
  readonly menus: number;
}

/**
 * The menu that gives this crowd the most in this time: expected worth of what is handed out, where a guest who has to take another figure
 * than the wished one gets only a part of its worth. A long menu meets every wish and serves few; a short one the other way round. All menus
 * are played with the same luck. Guests who wish for a figure that is not offered choose among the others by their shares.
 * @example bestMenu(model, { seed: 1, runs: 200 }).best.figures
 */
export function bestMenu(model: LineModel, options: BestMenuOptions): BestMenu {
  const candidates = model.figures.flatMap((figure, i) => (figure.offered !== false && figure.share > 0 ? [i] : []));
  if (candidates.length === 0) throw new RangeError('no figure is offered, so there is no menu to choose');
  const judge = new MenuJudge(model, options);
  const whole = judge.of(candidates);
  const optional = candidates.filter((figure) => !(options.always ?? []).includes(figure));
  const always = candidates.filter((figure) => !optional.includes(figure));
  const fits = (menu: readonly number[]): boolean => menu.length > 0 && menu.length <= (options.most ?? candidates.length);
  const isSmall = optional.length < 20 && 2 ** optional.length - 1 <= (options.triesAtMost ?? 511);
  const best = isSmall ? everyMenu(judge, always, optional, fits) : search(judge, always, optional, fits);
  return { best, whole, how: isSmall ? 'every menu tried' : 'search', menus: judge.menus };
}

/** Plays menus, each once. */
class MenuJudge {
  readonly #model: LineModel;
  readonly #options: BestMenuOptions;
  readonly #known = new Map<string, MenuTried>();
  constructor(model: LineModel, options: BestMenuOptions) {
    this.#model = model;
    this.#options = options;
  }
  get menus(): number {
    return this.#known.size;
  }
  of(menu: readonly number[]): MenuTried {
    const figures = [...menu].sort((a, b) => a - b);
    const name = figures.join(' ');
    const known = this.#known.get(name);
    if (known !== undefined) return known;
    const tried = this.#play(figures);
    this.#known.set(name, tried);
    return tried;
  }
  #play(figures: readonly number[]): MenuTried {
    const model = this.#model;
    const { seed, runs, worth, secondBest } = this.#options;
    const offered = new Set(figures);
    const samples = runLine(
      { ...model, figures: model.figures.map((figure, i) => ({ ...figure, offered: offered.has(i) })) },
      { seed, runs, keep: { ...keepAll, items: false, lengths: false, waits: false, figures: true } },
    );
    const shares = model.figures.reduce((sum, figure) => sum + (figure.offered === false ? 0 : figure.share), 0);
    const wished = figures.reduce((sum, i) => sum + (model.figures[i]?.share ?? 0), 0) / shares;
    const part = wished + (1 - wished) * (secondBest ?? 0.6);
    const width = model.figures.length;
    const worths = Float64Array.from({ length: runs }, (_, run) => {
      let sum = 0;
      for (const i of figures) sum += (samples.figures[run * width + i] ?? 0) * (worth?.[i] ?? 1);
      return sum * part;
    });
    return { figures, worth: spreadOf(worths), served: spreadOf(samples.served) };
  }
}

function everyMenu(
  judge: MenuJudge,
  always: readonly number[],
  optional: readonly number[],
  fits: (menu: readonly number[]) => boolean,
): MenuTried {
  let best: MenuTried | undefined;
  for (let set = 0; set < 2 ** optional.length; set++) {
    const menu = [...always, ...optional.filter((_, bit) => ((set >> bit) & 1) === 1)];
    if (fits(menu)) best = better(best, judge.of(menu));
  }
  if (best === undefined) throw new RangeError(`no menu of ${always.length} figures and more fits`);
  return best;
}
/** From the figure that is best alone, adds, drops or exchanges one figure as long as that is better. */
function search(
  judge: MenuJudge,
  always: readonly number[],
  optional: readonly number[],
  fits: (menu: readonly number[]) => boolean,
): MenuTried {
  const starts = always.length > 0 ? [always] : optional.map((figure) => [figure]);
  let best = starts.filter(fits).reduce<MenuTried | undefined>((top, menu) => better(top, judge.of(menu)), undefined);
  if (best === undefined) throw new RangeError(`no menu of ${always.length} figures and more fits`);
  for (;;) {
    const now: readonly number[] = best.figures;
    const out = optional.filter((figure) => !now.includes(figure));
    const inside = optional.filter((figure) => now.includes(figure));
    const menus = [
      ...out.map((figure) => [...now, figure]),
      ...inside.map((figure) => now.filter((other) => other !== figure)),
      ...inside.flatMap((figure) => out.map((other) => [...now.filter((kept) => kept !== figure), other])),
    ].filter(fits);
    const next: MenuTried = menus.reduce<MenuTried>((top, menu) => better(top, judge.of(menu)), best);
    if (next === best) return best;
    best = next;
  }
}
const better = (known: MenuTried | undefined, other: MenuTried): MenuTried =>
  known === undefined || other.worth.mean > known.worth.mean ? other : known;
