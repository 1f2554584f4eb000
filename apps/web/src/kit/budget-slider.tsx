import { type ReactElement, useId } from 'react';

interface BudgetSliderProps {
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly value: number;
  readonly text: string;
  readonly onMove: (value: number) => void;
}

/** The axis of the curve: the inflated part ends under the point that is chosen. */
export function BudgetSlider({ min, max, step, value, text, onMove }: BudgetSliderProps): ReactElement {
  const id = useId();
  const full = max === min ? 0 : (Math.min(Math.max(value, min), max) - min) / (max - min);
  return (
    <div className="dial axis noprint">
      <input
        id={id}
        type="range"
        min={min}
        max={max}
        step={step}
        value={value}
        aria-valuetext={text}
        style={{ '--full': full } as React.CSSProperties}
        onChange={(event) => onMove(Number(event.target.value))}
      />
      <label htmlFor={id}>Money there is</label>
      <output htmlFor={id}>{text}</output>
    </div>
  );
}
