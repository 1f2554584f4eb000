import { type ChangeEvent, type ReactElement, useId } from 'react';

export interface SliderProps {
  readonly label: string;
  readonly min: number;
  readonly max: number;
  readonly step?: number;
  readonly value: number;
  /** The value in words with its unit: "3 h", "1 in 10". Read out too. */
  readonly text: string;
  /** What stands at the flat and at the full end. */
  readonly ends: readonly [string, string];
  readonly onMove: (value: number) => void;
  /** The finger has let go, or a key was pressed. */
  readonly onRest?: (value: number) => void;
}

/** A balloon: inflated up to its value, flat rubber after it. */
export function Slider({ label, min, max, step = 1, value, text, ends, onMove, onRest }: SliderProps): ReactElement {
  const id = useId();
  const full = max === min ? 0 : (Math.min(Math.max(value, min), max) - min) / (max - min);
  const rest = (): void => onRest?.(value);
  return (
    <div className="dial">
      <label htmlFor={id}>{label}</label>
      <output htmlFor={id}>{text}</output>
      <input
        id={id}
        type="range"
        min={min}
        max={max}
        step={step}
        value={value}
        aria-valuetext={text}
        style={{ '--full': full } as React.CSSProperties}
        onChange={(event: ChangeEvent<HTMLInputElement>) => onMove(Number(event.target.value))}
        onPointerUp={rest}
        onKeyUp={rest}
        onBlur={rest}
      />
      <div className="ends" aria-hidden="true">
        <span>{ends[0]}</span>
        <span>{ends[1]}</span>
      </div>
    </div>
  );
}
