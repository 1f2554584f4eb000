import type { ClosingRule, Figure, Gig, TimeLaw } from '@twistwright/books';
import type { ReactElement } from 'react';
import { useBook } from '../book/use-book.ts';
import { Slider } from '../parts/slider.tsx';
import { Tick } from '../parts/tick.tsx';
import { chanceStops, type Dials, nearestStop, rangeAround } from '../planning/change-of-mind.ts';
import { chanceInWords } from '../words/counted.ts';

export interface WhatIfPanelProps {
  readonly gig: Gig;
  readonly booked: Dials;
  readonly dials: Dials;
  readonly onMove: (part: Partial<Dials>) => void;
}

/** Everything about a gig that can be played with; nothing is written down by moving it. */
export function WhatIfPanel({ gig, booked, dials, onMove }: WhatIfPanelProps): ReactElement {
  const hasGuests = gig.kind !== 'made to order' && gig.kind !== 'class' && booked.guests > 0;
  const guests = rangeAround(booked.guests, { least: 5, step: 5 });
  const hours = rangeAround(booked.hours, { least: 0.5, step: 0.25 });
  const stop = nearestStop(dials.chance);
  return (
    <aside className="if noprint" aria-label="What if">
      <h2>What if</h2>
      {hasGuests && (
        <Slider
          label="Guests"
          {...guests}
          value={dials.guests}
          text={String(dials.guests)}
          ends={[String(guests.min), `${guests.max} guests`]}
          onMove={(value) => onMove({ guests: value })}
        />
      )}
      <Slider
        label="Hours"
        {...hours}
        step={0.25}
        value={dials.hours}
        text={`${dials.hours} h`}
        ends={[String(hours.min), `${hours.max} hours`]}
        onMove={(value) => onMove({ hours: value })}
      />
      <Slider
        label="Artists"
        min={1}
        max={Math.max(4, booked.artists)}
        value={dials.artists}
        text={String(dials.artists)}
        ends={['1', `${Math.max(4, booked.artists)} artists`]}
        onMove={(value) => onMove({ artists: value })}
      />
      <Slider
        label="Chance of running out"
        min={0}
        max={chanceStops.length - 1}
        value={stop}
        text={chanceInWords(dials.chance)}
        ends={['1 in 100', '6 in 10']}
        onMove={(index) => onMove({ chance: chanceStops[index] ?? dials.chance })}
      />
      {gig.kind === 'line' && <Closing closing={dials.closing} onMove={(closing) => onMove({ closing })} />}
      <label className="choice">
        <span>Weather</span>
        <span className="chooser">
          <select className="in" value={dials.weather} onChange={(event) => onMove({ weather: event.target.value as Dials['weather'] })}>
            {(['mild', 'hot', 'cold', 'wet'] as const).map((weather) => (
              <option key={weather}>{weather}</option>
            ))}
          </select>
        </span>
      </label>
      {gig.kind !== 'made to order' && gig.kind !== 'class' && <MenuTicks gig={gig} dials={dials} onMove={onMove} />}
    </aside>
  );
}

const rules = { none: 'never', 'fixed time': 'at a fixed time', 'work ahead': 'when the time is full' } as const;

function Closing({ closing, onMove }: { readonly closing: ClosingRule; readonly onMove: (closing: ClosingRule) => void }): ReactElement {
  const choose = (rule: string): void =>
    onMove(
      rule === 'none' ? { rule } : rule === 'fixed time' ? { rule, minutesBeforeEnd: 20 } : { rule: 'work ahead', keptBackMinutes: 5 },
    );
  return (
    <>
      <label className="choice">
        <span>The line closes</span>
        <span className="chooser">
          <select className="in" value={closing.rule} onChange={(event) => choose(event.target.value)}>
            {Object.entries(rules).map(([rule, text]) => (
              <option key={rule} value={rule}>
                {text}
              </option>
            ))}
          </select>
        </span>
      </label>
      {closing.rule === 'work ahead' && (
        <Slider
          label="Kept back at the end"
          min={0}
          max={20}
          value={closing.keptBackMinutes}
          text={`${closing.keptBackMinutes} min`}
          ends={['0', '20 minutes']}
          onMove={(keptBackMinutes) => onMove({ ...closing, keptBackMinutes })}
        />
      )}
      {closing.rule === 'fixed time' && (
        <Slider
          label="Closes before the end"
          min={0}
          max={90}
          step={5}
          value={closing.minutesBeforeEnd}
          text={`${closing.minutesBeforeEnd} min`}
          ends={['0', '90 minutes']}
          onMove={(minutesBeforeEnd) => onMove({ rule: 'fixed time', minutesBeforeEnd })}
        />
      )}
    </>
  );
}

function MenuTicks({ gig, dials, onMove }: Pick<WhatIfPanelProps, 'gig' | 'dials' | 'onMove'>): ReactElement {
  const { book } = useBook();
  const onMenu = book.figures.filter((figure) => gig.menu.some((line) => line.figure === figure.id));
  const others = book.figures.filter((figure) => !onMenu.includes(figure));
  const toggle = (figure: string, checked: boolean): void => {
    const figures = checked ? [...dials.figures, figure] : dials.figures.filter((id) => id !== figure);
    if (figures.length > 0) onMove({ figures });
  };
  const ticks = (figures: readonly Figure[]): ReactElement => (
    <>
      {figures.map((figure) => (
        <Tick
          key={figure.id}
          checked={dials.figures.includes(figure.id)}
          onChange={(checked) => toggle(figure.id, checked)}
          note={minutesNote(figure.minutes)}
        >
          {figure.name}
        </Tick>
      ))}
    </>
  );
  return (
    <>
      <fieldset className="menu">
        <legend>Figures on the menu</legend>
        {ticks(onMenu)}
      </fieldset>
      {others.length > 0 && (
        <details className="because">
          <summary>Other figures</summary>
          <fieldset className="menu">
            <legend className="skip">Other figures</legend>
            {ticks(others)}
          </fieldset>
        </details>
      )}
    </>
  );
}
const minutesNote = (law: TimeLaw | undefined): string | undefined => {
  if (law === undefined) return undefined;
  const middle = law.law === 'log-normal' ? law.median : law.law === 'fixed' ? law.minutes : law.mean;
  return `${middle.toFixed(1)} min`;
};
